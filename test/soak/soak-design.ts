import fc from 'fast-check';
import { randomDesign } from '../random-design.js';

/** Of what is made only where somebody asks for it, most is not asked for. */
const seldom = <T>(value: fc.Arbitrary<T>, ofTen = 4): fc.Arbitrary<T | null> =>
  fc.oneof({ weight: ofTen, arbitrary: value }, { weight: 10 - ofTen, arbitrary: fc.constant(null) });

const tenths = (least: number, most: number): fc.Arbitrary<number> =>
  fc.integer({ min: least * 10, max: most * 10 }).map((n) => n / 10);

const asked = fc.record({
  boxes: seldom(fc.constant('boxes: 3'), 2),
  baffle: seldom(fc.constant('baffle: true')),
  handle: seldom(fc.constant('handle: true')),
  cap: seldom(fc.constant('cap: true')),
  hood: seldom(fc.constant('hood: {}')),
  filterHolder: seldom(fc.integer({ min: 1, max: 4 }).map((n) => `filterHolder: { filters: ${n} }`)),
  shutter: seldom(fc.constantFrom('1/15 s', '1/30 s', '1/60 s').map((time) => `shutter: { time: ${time} }`)),
  masks: seldom(
    fc
      .record({ across: tenths(30, 80), up: tenths(30, 105), corners: tenths(0, 8) })
      .map(
        ({ across, up, corners }) =>
          `masks: [{ name: inner, image: [${across} mm, ${up} mm], corners: ${corners} mm }]`,
      ),
  ),
  stops: seldom(
    fc
      .record({ hole: tenths(8, 25), wide: tenths(30, 60) })
      .map(({ hole, wide }) => `stops: { fullAperture: ${hole} mm, slot: [${wide} mm, 1 mm] }`),
  ),
  made: seldom(
    fc.record({ depth: tenths(0, 18), window: fc.boolean() }).map(
      // a tray is deep, what only holds its paper is not
      ({ depth, window }) =>
        `  - { name: made, filmDepth: ${(window ? 14 + depth : 4.5 + depth / 4).toFixed(2)} mm, make: true${window ? ', window: { thickness: 3 mm }' : ''} }`,
    ),
  ),
});

/** Lens and focus of another design, as those of a camera that stands; its focus stands in one line. */
const standing = seldom(
  randomDesign.map((text) => {
    const [, lens, focus] = /^(lens:\n(?: {2}.*\n)+)(focus:.*\n)/m.exec(text) ?? [];
    return `builtFor:\n${`${lens}${focus}`.replace(/^(?=.)/gm, '  ')}`.trimEnd();
  }),
  1,
);

/** How far what was glued strays from what was drawn, mm: seldom farther than can be. */
const stray = fc.integer({ min: -105, max: 105 }).map((n) => n / 100);

/** What somebody measured on the camera that stands. */
const measured = fc.record({ glass: seldom(stray, 3), spacers: seldom(stray, 2) });

const GLASS = /^(groundGlass: \{ thickness: ([\d.]+) mm, depth: ([\d.]+) mm, frosted: (\w+))/m;

function asBuilt(text: string, { glass, spacers }: { readonly glass: number | null; readonly spacers: number | null }) {
  const [, , thickness, depth, frosted] = GLASS.exec(text) ?? [];
  const film = Number(depth) - (frosted === 'eye' ? Number(thickness) * (1 - 1 / 1.52) : 0);
  const framed = glass === null ? text : text.replace(GLASS, `$1, measured: ${(Number(depth) + glass).toFixed(2)} mm`);
  if (spacers === null) return framed;
  return framed.replace(/^( {2}- \{ name: holder \d, filmDepth: ([\d.]+) mm)/gm, (holder, start, filmDepth) => {
    const drawn = Math.abs(Number(filmDepth) - film);
    return drawn < 0.1 ? holder : `${start}, spacer: { measured: ${Math.max(0.05, drawn + spacers).toFixed(2)} mm }`;
  });
}

const whole: fc.Arbitrary<string> = fc
  .tuple(randomDesign, asked, standing, measured)
  .map(([drawn, { made, ...others }, builtFor, strays]) => {
    const text = asBuilt(drawn, strays);
    const keys = { ...others, builtFor };
    // how far a slide that stands runs past the focus is not asked
    const reached = builtFor === null ? text : text.replace(/, past(Infinity|Nearest): [\d.]+ mm/g, '');
    const holders = made === null ? reached : reached.replace('holders:\n', () => `holders:\n${made}\n`);
    return `${holders}${Object.values(keys)
      .filter((line) => line !== null)
      .map((line) => `${line}\n`)
      .join('')}`;
  });

/** What a hand that slips leaves of a text. */
const slips: readonly ((text: string, at: number, other: string) => string)[] = [
  // cut off
  (text, at) => text.slice(0, at),
  // a stroke too many, or a passage pasted over another
  (text, at, other) => text.slice(0, at) + other + text.slice(at),
  (text, at, other) => text.slice(0, at) + other + text.slice(at + other.length),
  // a line that is not there, or twice
  (text, at) => lines(text, at, () => []),
  (text, at) => lines(text, at, (line) => [line, line]),
  // another number
  (text, at, other) => lines(text, at, (line) => [line.replace(/-?\d+(\.\d+)?/, () => other)]),
];

function lines(text: string, at: number, instead: (line: string) => readonly string[]): string {
  const all = text.split('\n');
  const chosen = at % all.length;
  return all.flatMap((line, i) => (i === chosen ? instead(line) : [line])).join('\n');
}

const slipped: fc.Arbitrary<string> = fc
  .tuple(
    whole,
    fc.nat(10_000),
    fc.nat(slips.length - 1),
    fc.oneof(
      fc.constantFrom('0', '-1', '1e9', '0.001', ':', '{', '"', '\t', '[', '#', '1/0', '1:0', 'null', '٣', '𝟓', ' '),
      fc.string({ minLength: 1, maxLength: 3, unit: 'binary' }),
    ),
  )
  .map(([text, at, slip, other]) => (slips[slip] as (typeof slips)[number])(text, at % text.length, other));

/** Design files of every kind of camera that can be asked for, one in ten as a slip of the hand leaves it. */
export const soakDesign: fc.Arbitrary<string> = fc.oneof(
  { weight: 9, arbitrary: whole },
  { weight: 1, arbitrary: slipped },
);

/** As many as are drawn at once: the least that can be begun again. */
export const CHUNK = 1000;

/** A thousand designs: the same ones for the same two numbers. */
export const chunkOf = (seed: number, chunk: number): readonly string[] =>
  fc.sample(soakDesign, { seed: seed + chunk, numRuns: CHUNK });
