import { svg } from 'lit-html';
import type { WhatIfCamera, WhatIfPoint } from '../../../model/what-if.js';
import { explainedFigure, magnification, plainNumber } from '../../../units/print.js';
import { ratioTicks, roundTicks, wholeTicks } from './ticks.js';

/** What is drawn above one another, over one axis of values. */
export interface ChartsGiven {
  readonly points: readonly WhatIfPoint[];
  readonly label: string;
  readonly unit: string;
  readonly range: readonly [number, number];
  /** The present value, and the one that is read out. */
  readonly now: number;
  readonly at: number;
  /** Of the drawing, px where it is shown as large as it is drawn. */
  readonly width: number;
}

interface Curve {
  readonly title: string;
  readonly of: (point: WhatIfCamera) => number | null;
  readonly ticks: (from: number, to: number, most: number) => readonly number[];
  readonly words: (value: number) => string;
  /** The present value, fine enough for a dot that lies beside a line of the grid to be told from it. */
  readonly exact?: (value: number) => string;
  /** Room above and below a curve that is flat. */
  readonly least: number;
  /** Whether it jumps from one value to the next: what is counted does. */
  readonly jumps?: true;
}

const CURVES: readonly Curve[] = [
  {
    title: 'Nearest focus that the boxes reach',
    of: ({ reach }) => reach,
    ticks: ratioTicks,
    words: magnification,
    exact: (value) => explainedFigure(value, 'magnification'),
    least: 0.03,
  },
  {
    title: 'Sheets, first layout',
    of: ({ sheets }) => sheets,
    ticks: wholeTicks,
    words: (value) => plainNumber(value),
    least: 1,
    jumps: true,
  },
  {
    title: 'Mass, kg, no holder',
    of: ({ mass }) => mass,
    ticks: roundTicks,
    words: (value) => plainNumber(value),
    least: 0.1,
  },
];

const LEFT = 52;
const RIGHT = 14;
const TITLE = 20;
const GAP = 14;
/** Below the last chart: its values and what they are. */
const FOOT = 42;

export function charts(given: ChartsGiven) {
  const { width, range, unit, label } = given;
  const height = width > 500 ? 130 : 96;
  const [from, to] = range;
  const x = (value: number) => LEFT + ((value - from) / (to - from)) * (width - LEFT - RIGHT);
  const tops = CURVES.map((_, i) => i * (TITLE + height + GAP) + TITLE);
  const bottom = (tops.at(-1) ?? 0) + height;
  const most = width > 500 ? 9 : 6;
  const along = unit === 'magnification' ? ratioTicks(from, to, most) : roundTicks(from, to, most);
  const words = (value: number) => (unit === 'magnification' ? magnification(value) : plainNumber(value));
  const title = unit === 'magnification' || unit === '' || unit === 'count' ? label : `${label}, ${unit}`;
  return svg`
    <svg class="plot what-if-plot" role="img" aria-label=${`Reach, sheets and mass over ${label}; the table below has the figures`} viewBox=${`0 0 ${width} ${bottom + FOOT}`}>
      ${CURVES.map((curve, i) => chart(curve, given, { x, top: tops[i] ?? 0, height, along }))}
      ${along.map((value) => svg`<text x=${x(value)} y=${bottom + 18} text-anchor="middle">${words(value)}</text>`)}
      <text x=${LEFT} y=${bottom + 37}>${title}</text>
    </svg>
  `;
}

interface Frame {
  readonly x: (value: number) => number;
  readonly top: number;
  readonly height: number;
  readonly along: readonly number[];
}

function chart(curve: Curve, { points, width, now, at }: ChartsGiven, { x, top, height, along }: Frame) {
  const known = points.flatMap((point) => {
    const value = point.kind === 'camera' ? curve.of(point) : null;
    return value === null || point.kind === 'none' ? [] : [{ point, value }];
  });
  const values = known.map(({ value }) => value);
  const [low, high] = values.length === 0 ? [0, 1] : [Math.min(...values), Math.max(...values)];
  const spare = Math.max(0.12 * (high - low), (curve.least - (high - low)) / 2, 0.06 * (high - low) || curve.least / 2);
  const [least, largest] = [Math.max(0, low - spare), high + spare];
  const y = (value: number) => top + height - ((value - least) / (largest - least)) * height;
  const here = known.find(({ point }) => point.value === now);
  const end = width - RIGHT;
  return svg`
    <text class="what-if-title" x=${LEFT} y=${top - 6}>${curve.title}</text>
    ${gapsOf(points).map(([from, to]) => svg`<rect class="what-if-gap" x=${x(from) - 3} y=${top} width=${x(to) - x(from) + 6} height=${height}></rect>`)}
    ${along.map((value) => svg`<line class="plot-grid" x1=${x(value)} x2=${x(value)} y1=${top} y2=${top + height}></line>`)}
    ${
      values.length === 0
        ? ''
        : curve.ticks(least, largest, 4).map(
            (value) => svg`
              <line class="plot-grid" x1=${LEFT} x2=${end} y1=${y(value)} y2=${y(value)}></line>
              <text x=${LEFT - 6} y=${y(value) + 4.5} text-anchor="end">${curve.words(value)}</text>`,
          )
    }
    <rect class="plot-axis" x=${LEFT} y=${top} width=${end - LEFT} height=${height}></rect>
    ${runsOf(points, curve).map((run) => svg`<polyline class="plot-curve" points=${run.map(([value, to]) => `${x(value)},${y(to)}`).join(' ')}></polyline>`)}
    ${known
      .filter(({ point }) => point.broken.length > 0)
      .map(({ point, value }) => svg`<path class="what-if-broken" d=${cross(x(point.value), y(value))}></path>`)}
    <line class="what-if-at" x1=${x(at)} x2=${x(at)} y1=${top} y2=${top + height}></line>
    <line class="plot-now" x1=${x(now)} x2=${x(now)} y1=${top} y2=${top + height}></line>
    ${
      here === undefined
        ? ''
        : svg`
            <circle class="plot-now" cx=${x(now)} cy=${y(here.value)} r="4.5"></circle>
            ${nowLabel(`now: ${(curve.exact ?? curve.words)(here.value)}`, [x(now), y(here.value)], { top, end, rising: (known[known.indexOf(here) + 1]?.value ?? 0) > here.value })}`
    }
  `;
}

interface Beside {
  readonly top: number;
  readonly end: number;
  /** Whether the curve goes up to the right of the point. */
  readonly rising: boolean;
}

/** Beside the point, where there is room and the curve does not go. */
function nowLabel(words: string, [x, y]: readonly [number, number], { top, end, rising }: Beside) {
  const left = x + 9 + LETTER_WIDTH * words.length > end;
  const below = rising !== left || y - 8 < top + 12;
  return svg`<text class="what-if-now" x=${left ? x - 9 : x + 9} y=${below ? y + 17 : y - 8} text-anchor=${left ? 'end' : 'start'}>${words}</text>`;
}

/** At most, px. */
const LETTER_WIDTH = 7;

const cross = (x: number, y: number): string => `M${x - 4},${y - 4}l8,8M${x - 4},${y + 4}l8,-8`;

/** Stretches of a curve between values at which there is no camera. */
function runsOf(
  points: readonly WhatIfPoint[],
  { of, jumps }: Curve,
): readonly (readonly (readonly [number, number])[])[] {
  const runs: (readonly [number, number])[][] = [[]];
  for (const point of points) {
    if (point.kind === 'none') runs.push([]);
    else {
      const value = of(point);
      if (value === null) continue;
      const run = runs.at(-1);
      const before = run?.at(-1);
      if (jumps && before && before[1] !== value) {
        const middle = (before[0] + point.value) / 2;
        run?.push([middle, before[1]], [middle, value]);
      }
      run?.push([point.value, value]);
    }
  }
  return runs.filter((run) => run.length > 1);
}

/** Stretches of values at which there is no camera. */
export function gapsOf(points: readonly WhatIfPoint[]): readonly (readonly [number, number])[] {
  const gaps: [number, number][] = [];
  points.forEach((point, i) => {
    if (point.kind !== 'none') return;
    const last = gaps.at(-1);
    if (last && points[i - 1]?.kind === 'none') last[1] = point.value;
    else gaps.push([point.value, point.value]);
  });
  return gaps;
}
