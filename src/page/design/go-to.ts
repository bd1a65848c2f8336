import type { Problem } from '../../index.js';
import type { App } from '../app.js';

export const fieldId = (path: string): string => `field-${path}`;
export const DESIGN_TEXT = 'design-text';

/** So many characters of a line are seen in a narrow frame. */
const SEEN = 24;

/** Everything that a key stands in, from the outside in: `holders`, `holders[1]`, `holders[1].rib`. */
const waysTo = (path: string): readonly string[] =>
  [...path.matchAll(/\.|\[/g)].map(({ index }) => path.slice(0, index)).concat(path);

/** Shows a key in the form, opens what it stands in and puts the focus there: for whoever reads a finding about it. */
export function goToKey(app: App, path: string): void {
  app.turnTo('design');
  app.change(({ designView }) => ({
    designView: {
      ...designView,
      as: 'form',
      sought: '',
      opened: { ...designView.opened, ...Object.fromEntries(waysTo(path).map((way) => [way, true])) },
    },
  }));
  // the page is drawn before the next picture, and this comes behind
  requestAnimationFrame(() => {
    const place = waysTo(path)
      .toReversed()
      .map((way) => document.getElementById(fieldId(way)))
      .find((found) => found !== null);
    place?.scrollIntoView({ block: 'center' });
    place?.focus({ preventScroll: true });
  });
}

/** Shows the text and marks the token at fault. */
export function goToLine(app: App, { line, column, length }: Problem): void {
  app.turnTo('design');
  app.change(({ designView }) => ({ designView: { ...designView, as: 'text' } }));
  requestAnimationFrame(() => {
    const text = document.getElementById(DESIGN_TEXT);
    if (!(text instanceof HTMLTextAreaElement)) return;
    const start =
      text.value
        .split('\n')
        .slice(0, line - 1)
        .join('\n').length +
      (line > 1 ? 1 : 0) +
      column -
      1;
    text.focus({ preventScroll: true });
    text.setSelectionRange(start, start + length);
    // a text area has as many rows and columns as its text, and lies in a frame that moves
    const frame = text.closest('.design-paper');
    frame?.scrollTo({
      top: Math.max(0, line - 4) * (text.clientHeight / text.rows),
      left: Math.max(0, column - SEEN) * (text.clientWidth / text.cols),
    });
    frame?.scrollIntoView({ block: 'nearest' });
  });
}
