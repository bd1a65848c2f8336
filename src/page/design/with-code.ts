import { html } from 'lit-html';

/** Words that quote a command or a key between backticks, with each as code. */
export const withCode = (words: string) =>
  words.split('`').map((piece, i) => (i % 2 === 0 ? piece : html`<code>${piece}</code>`));
