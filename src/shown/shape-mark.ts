import type { Path, Vertex } from '../geometry/path.js';
import type { Prism } from '../geometry/solid.js';
import type { Part } from '../model/part.js';

/**
 * A short mark of all that shapes a part: equal shapes have equal marks. Two sums of 32 bits by Fowler, Noll and Vo
 * (FNV-1a, from different beginnings): that two shapes of one camera share both is past all likelihood.
 */
export function shapeMark(part: Part): string {
  const sum = begin();
  if (part.kind === 'printed') for (const prism of [...part.solid.add, SEAM, ...part.solid.cut]) addPrism(sum, prism);
  else if (part.kind === 'flat') {
    add(sum, part.thickness);
    for (const loop of [part.outline, ...part.holes]) addLoop(sum, loop);
    for (const { vertices } of part.engraving) addLoop(sum, vertices);
    for (const { text, x, y, height, turn } of part.marks)
      for (const value of [x, y, height, turn, ...[...text].map((letter) => letter.codePointAt(0) ?? 0)])
        add(sum, value);
  } else if (part.shape.form === 'cylinder') {
    add(sum, part.shape.diameter);
    add(sum, part.shape.length);
  } else {
    add(sum, part.shape.thickness);
    for (const loop of [part.shape.outline, ...part.shape.holes]) addLoop(sum, loop);
  }
  return `${part.kind} ${sum.bits.map((half) => (half >>> 0).toString(16)).join('')}`;
}

interface Sum {
  readonly bits: [number, number];
  readonly number: Float64Array;
  readonly words: Uint32Array;
}

const PRIME = 0x01000193;
const BEGIN = [0x811c9dc5, 0x5bd1e995] as const;

/** Stands between what is joined and what is taken away. */
const SEAM: Prism = { profile: [], holes: [], height: -1, matrix: [] };

function begin(): Sum {
  const number = new Float64Array(1);
  return { bits: [...BEGIN], number, words: new Uint32Array(number.buffer) };
}

function add({ bits, number, words }: Sum, value: number): void {
  number[0] = value;
  for (const word of words)
    for (const half of [0, 1] as const) {
      const mixed = Math.imul(bits[half] ^ word, PRIME);
      // the prime moves bits upwards alone: without this the high ones would never be seen below
      bits[half] = mixed ^ (mixed >>> 15);
    }
}

function addLoop(sum: Sum, loop: readonly Vertex[] | Path['vertices']): void {
  add(sum, loop.length);
  for (const { x, y, bulge } of loop) {
    add(sum, x);
    add(sum, y);
    add(sum, bulge);
  }
}

function addPrism(sum: Sum, { profile, holes, height, matrix, taper = 1 }: Prism): void {
  add(sum, height);
  add(sum, taper);
  for (const value of matrix) add(sum, value);
  for (const loop of [profile, ...holes]) addLoop(sum, loop);
}
