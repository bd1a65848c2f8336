import { svg } from 'lit-html';
import type { Paper } from './paper.js';

export interface Dimension {
  readonly name: string;
  readonly words: string;
  /** The same where there is less room. */
  readonly short?: string;
  readonly from: number;
  readonly to: number;
  /** y down. */
  readonly y: number;
  /** Where the extension lines begin; none where left out. */
  readonly out?: number;
  /** Where the words go when the line is too short for them; a dimension that may be missed is then left out. */
  readonly beside?: 'left' | 'right' | 'nowhere';
  readonly wrong?: boolean;
}

/** How wide words are on the screen, px. */
export type Measure = (words: string) => number;

const HEAD = { long: 8, half: 2.6 } as const;
/** Past the line of the dimension, px. */
const BEYOND = 4;
/** So much of its words a line is long at least for them to stand above it, running over. */
const NEARLY = 0.6;
/** Words above the line, and in it, px. */
const LETTERS_UP = 3;
const LETTERS_DOWN = 4.5;

/** A dimension along the axis: two heads and its figure, above the line where it has room, else beside it. */
export function dimension(
  { name, words: full, short = full, from, to, y, out, beside = 'right', wrong = false }: Dimension,
  paper: Paper,
  measure: Measure,
) {
  const { px } = paper;
  const [left, right] = [Math.min(from, to), Math.max(from, to)];
  const wide = (right - left) / px;
  const words = wide < measure(full) + 4 && wide > measure(short) + 4 ? short : full;
  const needs = measure(words);
  if (beside === 'nowhere' && wide < needs + 4) return '';
  const heads = wide > 2 * HEAD.long + 2;
  const place = placeOf({ left, right, needs, heads, beside }, paper);
  const tail = heads ? 0 : 14 * px;
  return svg`
    <g class=${`section-dimension ${wrong ? 'wrong' : ''}`} data-dimension=${name}>
      ${
        out === undefined
          ? ''
          : svg`<path class="section-thin" d=${`M${left},${out}V${y - BEYOND * px}M${right},${out}V${y - BEYOND * px}`}></path>`
      }
      <path class="section-thin" d=${`M${left - tail},${y}H${right + tail}`}></path>
      <path class="section-head" d=${head(left, y, heads ? 1 : -1, px) + head(right, y, heads ? -1 : 1, px)}></path>
      <text x=${place.x} y=${y + (place.above ? -LETTERS_UP : LETTERS_DOWN) * px} text-anchor=${place.anchor} font-size=${13 * px}>${words}</text>
    </g>`;
}

/** Whether the line has room for its words. */
export const hasRoom = ({ words, short = words, from, to }: Dimension, { px }: Paper, measure: Measure): boolean =>
  Math.abs(to - from) / px >= measure(short) + 4;

/** An arrowhead whose point is at x; its body lies towards `side`. */
const head = (x: number, y: number, side: 1 | -1, px: number): string =>
  `M${x},${y}l${side * HEAD.long * px},${-HEAD.half * px}v${2 * HEAD.half * px}z`;

function placeOf(
  {
    left,
    right,
    needs,
    heads,
    beside,
  }: {
    readonly left: number;
    readonly right: number;
    readonly needs: number;
    readonly heads: boolean;
    readonly beside: Dimension['beside'];
  },
  { px, left: edge, width, namesAside, bounds }: Paper,
): { readonly x: number; readonly anchor: 'start' | 'middle' | 'end'; readonly above: boolean } {
  if ((right - left) / px > needs + 4) return { x: (left + right) / 2, anchor: 'middle', above: true };
  const gap = (heads ? 6 : 20) * px;
  const toTheRight = { x: right + gap, anchor: 'start' as const, above: false };
  const toTheLeft = { x: left - gap, anchor: 'end' as const, above: false };
  const end = edge + (width - 4) * px;
  const roomRight = (namesAside ? Math.max(bounds.right, end) : end) - toTheRight.x;
  const roomLeft = toTheLeft.x - edge - 4 * px;
  // what is nearly long enough runs over its left end: at its right stand the films
  if ((right - left) / px > NEARLY * needs && roomLeft + right - left > needs * px)
    return { x: right, anchor: 'end', above: true };
  if (beside === 'left') return roomLeft > needs * px ? toTheLeft : toTheRight;
  return roomRight > needs * px ? toTheRight : toTheLeft;
}
