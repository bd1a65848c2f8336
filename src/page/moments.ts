import type { State } from './state.js';

/**
 * Tells the browser's own record of times when a change was asked for, and when what became of it was drawn, under the
 * names tailboard:asked, tailboard:figures, tailboard:camera and tailboard:sheets. Of each the last is kept.
 */
export const markAsked = (): void => mark('asked');

/** @param before what was drawn last; null where nothing was */
export function markDrawn(before: State | null, now: State): void {
  if (now.reading !== null && now.reading !== before?.reading) mark('figures');
  const solids = now.shown?.solids ?? null;
  if (solids !== null && solids !== before?.shown?.solids) mark('camera');
  if (now.sheets.shown !== null && now.sheets.shown !== before?.sheets.shown) mark('sheets');
}

function mark(moment: string): void {
  const name = `tailboard:${moment}`;
  performance.clearMarks(name);
  performance.mark(name);
}
