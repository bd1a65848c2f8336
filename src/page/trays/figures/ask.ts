import type { App } from '../../app.js';
import { markOf } from '../../mark-of.js';
import type { FiguresState } from './state.js';

/** What moves a figure is asked for when nobody has gone on for so long, ms. */
const STAYED = 400;

const put = ({ change }: App, patch: Partial<FiguresState>): void =>
  change(({ figures }) => ({ figures: { ...figures, ...patch } }));

/** Has a figure explained: how it came about at once, what moves it when the reader stays. */
export function askFigure(
  app: App,
  figure: string,
  { held, trail = [] }: { held: boolean; trail?: readonly string[] },
): void {
  const { shown, figures } = app.state();
  if (shown === null) return;
  const { of } = shown;
  const mark = markOf(of);
  const same = figures.asked?.figure === figure && figures.asked.of === mark;
  put(app, { asked: { figure, of: mark, held, trail }, left: null });
  if (same) return;
  put(app, { moves: null });
  const isAsked = () => {
    const { asked } = app.state().figures;
    return asked?.figure === figure && asked.of === mark;
  };
  const explained = app.ask('explain', { of, figure }, { rank: 2 }).catch(() => null);
  void explained.then((about) => {
    if (!isAsked()) return;
    put(app, { about });
    // the explanation must not stand over the figure that has the focus
    requestAnimationFrame(() => {
      const { activeElement } = document;
      if (activeElement?.getAttribute('data-figure') === figure) activeElement.scrollIntoView({ block: 'nearest' });
    });
    window.setTimeout(() => {
      if (!isAsked()) return;
      void app.ask('moves', { of, figure }, { rank: 8 }).then((moves) => {
        if (isAsked()) put(app, { moves: moves ?? NONE });
      });
    }, STAYED);
  });
}

/** The figure that is explained is explained anew when the design has changed. */
export function attendFigures(app: App): void {
  const { shown, figures } = app.state();
  const { asked } = figures;
  if (asked !== null && shown !== null && asked.of !== markOf(shown.of)) askFigure(app, asked.figure, asked);
}

/** Nothing moves what has no value. */
const NONE = { changes: [], otherChanges: 0 };

/** A pointer that crosses a figure on its way does not ask; ms. */
const RESTED = 180;

/** Has a figure explained when the pointer stays on it, unless another one is held. */
export function restOn(app: App, figure: string | null): void {
  put(app, { under: figure });
  if (figure === null) return;
  window.setTimeout(() => {
    const { under, asked } = app.state().figures;
    if (under === figure && asked?.held !== true) askFigure(app, figure, { held: false });
  }, RESTED);
}

/** Has a figure explained that the keyboard came to. */
export function comeTo(app: App, figure: string): void {
  const { asked, left } = app.state().figures;
  if (left !== figure) askFigure(app, figure, { held: asked?.held ?? false });
}

/** Puts the explanation away; the focus goes back to the figure in the list that it began with. */
export function putAway(app: App): void {
  const { asked } = app.state().figures;
  if (asked === null) return;
  const first = asked.trail[0] ?? asked.figure;
  const inside = document.activeElement?.closest('.explained') instanceof Element;
  put(app, { asked: null, about: null, moves: null, left: first });
  if (inside) document.querySelector<HTMLElement>(`[data-figure="${CSS.escape(first)}"]`)?.focus();
}
