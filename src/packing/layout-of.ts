import type { Box } from '../geometry/path.js';
import type { Filling } from './fill.js';
import { offcutOf } from './offcut.js';
import type { Piece } from './pieces.js';
import type { Plan } from './plan.js';
import type { Bed, Layout, PackedSheet, Place } from './shapes.js';
import type { Stance } from './stance.js';

/** A filling written out, sheets on which nothing lies left out. */
export function layoutOf(
  plan: Plan,
  filling: Filling,
  { pieces, beds, spacing }: { pieces: readonly Piece[]; beds: readonly Bed[]; spacing: number },
): Layout {
  const sheets: PackedSheet[] = [];
  const taken: (readonly Box[])[] = [];
  const stanceOf = (i: number) => (pieces[i] as Piece).stances[filling.stance[i] as number] as Stance;
  const isNested = (i: number) => (filling.host[i] as number) >= 0;
  plan.forEach((bed, n) => {
    const here = pieces.flatMap((_, i) => ((filling.stance[i] as number) >= 0 && filling.sheet[i] === n ? [i] : []));
    if (here.length === 0) return;
    const places = here.map(
      (i): Place => ({
        blank: (pieces[i] as Piece).blank,
        turn: stanceOf(i).turn,
        x: filling.x[i] as number,
        y: filling.y[i] as number,
        within: isNested(i)
          ? { place: here.indexOf(filling.host[i] as number), window: filling.window[i] as number }
          : null,
      }),
    );
    sheets.push({ bed, places });
    const outer = here.filter((i) => !isNested(i));
    taken.push(
      outer.map((i) => {
        const { width, height } = stanceOf(i);
        const [left, bottom] = [filling.x[i] as number, filling.y[i] as number];
        return { left, bottom, right: left + width, top: bottom + height };
      }),
    );
  });
  return { sheets, offcut: offcutOf(sheets, taken, beds, spacing) };
}
