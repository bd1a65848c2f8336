import type { Variable } from '../design/variables.js';
import type { WhatIfTry } from '../model/what-if.js';
import { density, fNumber, kg, magnification, mm, modulus, plainNumber } from '../units/print.js';

export interface TriesGiven extends Pick<Variable, 'path' | 'value' | 'unit'> {
  /** Of the lens, mm. */
  readonly focalLength: number;
  /** Of the holder whose film depth it is, mm: the film lies within. */
  readonly holderThickness?: number;
}

/** So many steps from one end of a range to the other: as many as a curve of a hand's width shows. */
export const STEPS = 32;

/** Values closer than this are the same, in parts of the range. */
const SAME = 1e-6;

/**
 * The values of a number that are tried, in figures that one would write; none for what has no sensible range, or what
 * shapes no camera.
 */
export function triesOf(given: TriesGiven): readonly WhatIfTry[] {
  const range = rangeOf(given);
  if (range === null) return [];
  const [from, to] = range;
  const tries = (given.unit === 'count' ? whole(from, to) : even(from, to)).map((value) =>
    written(value, given, to - from),
  );
  const apart = (a: number, b: number) => Math.abs(a - b) > SAME * (to - from);
  return tries.filter(
    ({ value, written: text }, i) =>
      apart(value, given.value) && tries.slice(0, i).every((before) => before.written !== text),
  );
}

/** A head at a twentieth and a coin at its own size: what portraits and copies want. */
const FARTHEST = 1 / 20;
const CLOSEST = 1;
/** Deeper than any holder that is hung behind a camera, a processing one among them, mm. */
const DEEPEST = 60;
/** Nothing that holds a film is thinner in front of it, mm: `odd-figure` says so, too. */
const SHALLOWEST = 1;
/** What is given as nothing at all is tried up to here, mm. */
const UP_TO = 10;
/** Other numbers are tried by so much less and more. */
const SHARE = 0.3;

function rangeOf({
  path,
  value,
  unit,
  focalLength: f,
  holderThickness = DEEPEST,
}: TriesGiven): readonly [number, number] | null {
  const reaching = (from: number, to: number): readonly [number, number] => [
    Math.min(from, value),
    Math.max(to, value),
  ];
  if (path === 'focus.nearest')
    // u = f (1 + 1/m), from the front principal plane
    return unit === 'mm' ? reaching(f * (1 + 1 / CLOSEST), f * (1 + 1 / FARTHEST)) : reaching(FARTHEST, CLOSEST);
  if (/^holders\[\d+\]\.filmDepth$/.test(path)) {
    // between the faces of the holder: at neither of them there is a film
    const most = Math.min(DEEPEST, holderThickness);
    return reaching(Math.max(SHALLOWEST, most / STEPS), most - most / STEPS);
  }
  // how fast the laser is shapes no camera
  if (unit === 'mm/s' || unit === 's') return null;
  if (value === 0) return unit === 'mm' ? [0, UP_TO] : null;
  if (unit === 'count') return [Math.max(1, Math.ceil(value / 2)), Math.max(value + 2, 2 * value)];
  const share = SHARE * Math.abs(value);
  return [value - share, value + share];
}

const even = (from: number, to: number): readonly number[] =>
  Array.from({ length: STEPS + 1 }, (_, i) => from + ((to - from) * i) / STEPS);

const whole = (from: number, to: number): readonly number[] =>
  Array.from({ length: Math.min(STEPS, to - from) + 1 }, (_, i) => from + i);

/** A value as it would be written, and what that is. */
function written(value: number, { unit }: TriesGiven, span: number): WhatIfTry {
  const round = roundTo(value, span / STEPS);
  switch (unit) {
    case 'magnification': {
      // written as 1:2.15, which is no round number
      const inverse = (n: number) => Number(n.toFixed(2));
      const near = value > 1 ? inverse(value) : 1 / inverse(1 / value);
      return { value: near, written: magnification(near) };
    }
    case 'mm':
      return { value: round, written: mm(round) };
    case 'kg':
      return { value: round, written: kg(round) };
    case 'kg/m³':
      return { value: round, written: density(round) };
    case 'N/mm²':
      return { value: round, written: modulus(round) };
    case 'f-number': {
      const stop = Number(value.toFixed(2));
      return { value: stop, written: fNumber(stop) };
    }
    default:
      return { value: round, written: plainNumber(round) };
  }
}

/** To the coarsest of 1, 2, 5, 10 and so on that is no coarser than a step. */
function roundTo(value: number, step: number): number {
  const decade = 10 ** Math.floor(Math.log10(step));
  const grain = decade * (step >= 5 * decade ? 5 : step >= 2 * decade ? 2 : 1);
  return Number(plainNumber(Math.round(value / grain) * grain));
}
