import fc from 'fast-check';
import type { Rectangle } from '../../src/packing/shapes.js';

interface Cut {
  readonly width: number;
  readonly height: number;
  readonly sheets: number;
  /** Lost between two pieces at every cut. */
  readonly web: number;
  /** About so many to a sheet. */
  readonly pieces: number;
}

/**
 * Pieces of so many sheets, cut right across again and again: so it is known that they can be packed into as many, and
 * how.
 */
export const cutSheets = ({ width, height, sheets, web, pieces }: Cut): fc.Arbitrary<readonly Rectangle[]> =>
  fc
    .array(
      fc.array(fc.record({ which: fc.nat(), at: fc.double({ min: 0.1, max: 0.9, noNaN: true }) }), {
        minLength: pieces - 1,
        maxLength: pieces - 1,
      }),
      { minLength: sheets, maxLength: sheets },
    )
    .map((cutsOfSheets) =>
      cutsOfSheets.flatMap((cuts) => {
        const parts: Rectangle[] = [{ width, height, count: 1 }];
        for (const { which, at } of cuts) {
          // mostly one of the larger parts, along its longer side
          parts.sort((a, b) => b.width * b.height - a.width * a.height);
          const index = which % Math.min(3, parts.length);
          const part = parts[index] as Rectangle;
          const across = part.width >= part.height;
          const long = across ? part.width : part.height;
          const first = Math.round(at * (long - web));
          const second = long - web - first;
          if (first < 3 || second < 3) continue;
          const half = (size: number): Rectangle => (across ? { ...part, width: size } : { ...part, height: size });
          parts.splice(index, 1, half(first), half(second));
        }
        return parts;
      }),
    );
