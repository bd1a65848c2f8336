import type { DesignText } from './worker/questions.js';

/** Tells one design from another by what is written: its text, and the remnants that lie beside it. */
export const markOf = ({ text, beside }: DesignText): string =>
  Object.keys(beside).length === 0 ? text : JSON.stringify([text, beside]);
