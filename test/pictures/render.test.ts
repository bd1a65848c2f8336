import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import type { Mesh } from '../../src/geometry/mesh.js';
import { type Body, type Colour, draw, type Vector } from './draw.js';
import { stands } from './parts-file.js';
import { type Picture, png } from './png.js';

/** A box with its corners numbered by bits: 1 for the high x, 2 for the high y, 4 for the high z. */
function box(low: Vector, high: Vector): Mesh {
  const positions = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((c) => [0, 1, 2].map((k) => ((c >> k) & 1 ? high : low)[k as 0]));
  const sides = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ] as const;
  return { positions, triangles: sides.flatMap(([a, b, c, d]) => [a, b, c, a, c, d]) };
}

const RED: Colour = [200, 0, 0];
const BLUE: Colour = [0, 0, 200];

/** A lath that lies along x, and one along y that crosses it 10 nearer to +z. */
const lying: Body = { mesh: box([-50, -10, 0], [50, 10, 5]), colour: RED };
const crossing: Body = { mesh: box([-10, -50, 15], [10, 50, 20]), colour: BLUE };

/** 200 pixels for 100 mm and the edge around it: the middle of the picture is x = y = 0. */
const view = { width: 200, height: 200, from: [0, 0, 1] as Vector };

const seen = ({ width, pixels }: Picture, x: number, y: number): string => {
  const [red = 0, green = 0, blue = 0] = pixels.subarray(3 * (y * width + x));
  if (red > 200 && green > 200 && blue > 200) return 'paper';
  return red > 60 && blue === 0 ? 'red' : blue > 60 && red === 0 ? 'blue' : 'line';
};

describe('two laths that cross', () => {
  test.each([
    { from: 'above', towards: [0, 0, 1] as Vector, middle: 'blue' },
    { from: 'below', towards: [0, 0, -1] as Vector, middle: 'red' },
  ])('from $from the nearer one hides the other', ({ towards, middle }) => {
    for (const bodies of [
      [lying, crossing],
      [crossing, lying],
    ]) {
      const picture = draw(bodies, { ...view, from: towards });
      expect(seen(picture, 100, 100)).toBe(middle);
      expect(seen(picture, 30, 100)).toBe('red');
      expect(seen(picture, 100, 30)).toBe('blue');
      expect(seen(picture, 30, 30)).toBe('paper');
    }
  });

  test('x runs to the right and y upwards for who stands behind', () => {
    const stub: Body = { mesh: box([20, 20, 0], [50, 50, 5]), colour: BLUE };
    const picture = draw([lying, stub, { mesh: box([-50, -50, 0], [-45, -45, 5]), colour: RED }], view);
    expect(seen(picture, 165, 35)).toBe('blue');
    expect(seen(picture, 35, 165)).toBe('paper');
  });

  test('a line parts two pieces of one colour that lie flush', () => {
    const left: Body = { mesh: box([-50, -50, 0], [0, 50, 5]), colour: RED };
    const right: Body = { mesh: box([0, -50, 0], [50, 50, 5]), colour: RED };
    expect(seen(draw([left, right], view), 100, 60)).toBe('line');
    expect(seen(draw([{ mesh: box([-50, -50, 0], [50, 50, 5]), colour: RED }], view), 100, 60)).toBe('red');
  });

  test('strokes on a face are seen from its own side alone', () => {
    const engraved: Body = { ...lying, lines: [[[-40, 0, 5], [40, 0, 5]]] }; // biome-ignore format: one line
    const own = draw([engraved], view);
    const other = draw([engraved], { ...view, from: [0, 0, -1] });
    expect([...own.pixels.subarray(3 * (200 * 100 + 60))].slice(0, 3)).not.toEqual([...own.pixels.subarray(3 * (200 * 95 + 60))].slice(0, 3)); // biome-ignore format: one line
    expect(seen(other, 60, 100)).toBe('red');
  });
});

test('a picture is written as PNG says: rows of three bytes a pixel behind a filter byte', () => {
  const bytes = Buffer.from(png({ width: 2, height: 1, pixels: Uint8Array.of(1, 2, 3, 4, 5, 6) }));
  const at = bytes.indexOf('IDAT');
  expect([...bytes.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]); // ISO/IEC 15948, 5.2
  expect(bytes.subarray(-4).toString('hex')).toBe('ae426082'); // the check sum of every IEND: from memory
  expect([...inflateSync(bytes.subarray(at + 4, at + 4 + bytes.readUInt32BE(at - 4)))]).toEqual([0, 1, 2, 3, 4, 5, 6]);
});

describe('what stands in a set-up', () => {
  const thin = { name: 'thin upright', holder: 'thin holder', orientation: 'upright', focusing: false } as const;
  const glass = { ...thin, name: 'glass for thin', focusing: true };
  const placed = (group: string, when?: string | readonly string[]) =>
    when === undefined ? { group, matrix: [] } : { group, matrix: [], when };

  // the contract's words on placements and set-ups
  test.each([
    { what: 'a box stands always', placement: placed('front'), inThin: true, inGlass: true },
    { what: 'a holder stands where no one focuses', placement: placed('thin holder'), inThin: true, inGlass: false },
    { what: 'another holder never', placement: placed('thick holder'), inThin: false, inGlass: false },
    { what: 'one set-up', placement: placed('loose', 'glass for thin'), inThin: false, inGlass: true },
    { what: 'a list', placement: placed('back', ['thin upright', 'x']), inThin: true, inGlass: false },
  ])('$what', ({ placement, inThin, inGlass }) => {
    expect(stands(placement, thin)).toBe(inThin);
    expect(stands(placement, glass)).toBe(inGlass);
  });
});
