import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { planDesign } from '../../src/index.js';
import { lineDoubt } from '../../src/statistics/line-doubt.js';
import { designOf } from '../design/reading.js';
import { runHere } from './run-here.js';
import { scratch, snapshot } from './scratch.js';

const dunlin = join(import.meta.dirname, '../../designs/dunlin/bench.yaml');

/** What the readings of designs/dunlin/bench.yaml were made from, with normal noise: nowhere in that file. */
const truth = { focalLength: 214, flangeDistance: 196, pupilMagnification: 0.97, maxAperture: 9, circle: 200 };

const design = `# Dunlin, before the bench
name: Dunlin
format: 5x7
lens:
  name: unmarked copying lens
  focalLength: 210 mm   # a guess
  flangeDistance: 195   # another
  barrel: { diameter: 50 mm, grip: 20 mm, front: 20 mm, rear: 18 mm, frontDiameter: 52 mm, rearDiameter: 44 mm, mass: 420 g }
  mount: { by: clamp, side: inside, screws: 4 }
focus: { nearest: 1:3 }
plywood: { thickness: 4.05 mm }
laser: { kerf: 0.15 mm }
`;

/** A folder with a design and a file of readings. */
function bench(readings: string) {
  const place = scratch();
  const [file, into] = [join(place, 'bench.csv'), join(place, 'dunlin.yaml')];
  writeFileSync(file, readings);
  writeFileSync(into, design);
  return { place, file, into, now: () => readFileSync(into, 'utf8') };
}

const benchB =
  'magnification,distance\n0.10,218.9\n0.20,242.3\n0.30,266.6\n0.40,290.1\n0.50,314.6\n0.60,337.9\n0.80,386.4\n1.00,434.1\n';

describe('the example on the kitchen table', () => {
  test('finds the lens that it was made from, each figure within its interval', async () => {
    const { code, out } = await runHere('lens', dunlin, '--at', '1:4', '--json');
    const lens = JSON.parse(out);
    expect(code).toBe(0);
    expect(Math.abs(lens.focalLength - truth.focalLength)).toBeLessThan(lens.intervals.focalLength);
    expect(Math.abs(lens.flangeDistance - truth.flangeDistance)).toBeLessThan(lens.intervals.flangeDistance);
    const [place] = lens.predictions;
    expect(Math.abs(place.distance - (196 + 214 / 4))).toBeLessThan(place.interval);
    for (const [figure, value] of [
      [lens.pupilMagnification, truth.pupilMagnification],
      [lens.maxAperture, truth.maxAperture],
      [lens.coverage, truth.circle],
    ])
      expect(Math.abs(figure.value - value)).toBeLessThan(figure.interval);
    expect(lens.outliers).toEqual([]);
  });

  test('leads to a camera that can be cut, and changes nothing of the design but the lens', async () => {
    const { into, now } = bench(benchB);
    const { code, err } = await runHere('lens', dunlin, '--write', into);
    expect(code).toBe(0);
    expect(err).toContain('everything else in it is as it was');
    const taken = designOf(now());
    expect(planDesign(taken).findings.filter(({ level }) => level === 'error')).toEqual([]);
    expect(taken.lens.uncertainty).toMatchObject({ readings: 9 });
    const kept = (text: string) => text.split('\n').filter((line) => !/focalLength|flangeDistance/.test(line));
    const added = ['  maxAperture: ', '  coverage: ', '  pupilMagnification: '];
    expect(kept(now()).filter((line) => !added.some((start) => line.startsWith(start)))).toEqual(kept(design));
    expect(now()).toMatch(/^ {2}focalLength: 21\d\.?\d* mm {3}# a guess$/m);
    expect(now()).toMatch(/^ {2}flangeDistance: 19\d\.?\d* {3}# another$/m);
  });
});

describe('the document', () => {
  test('has what was promised, and more behind it', async () => {
    const { file } = bench(benchB);
    const { out } = await runHere('lens', file, '--json', '--at', '1:2', '--at', 'infinity');
    const lens = JSON.parse(out);
    expect(Object.keys(lens)).toEqual(
      expect.arrayContaining([
        'schema',
        'readings',
        'focalLength',
        'flangeDistance',
        'standardErrors',
        'correlation',
        'residualStandardDeviation',
        'outliers',
        'predictions',
      ]),
    );
    // V7.08 and V7.09, common practice, no source: constructed
    expect(lens).toMatchObject({ schema: 1, readings: 8, outliers: [], focalLength: expect.closeTo(239.408478, 6) });
    expect(lens.standardErrors).toEqual({
      focalLength: expect.closeTo(0.369608, 6),
      flangeDistance: expect.closeTo(0.208673, 6),
    });
    expect(lens.predictions).toMatchObject([
      { magnification: 0.5, distance: expect.closeTo(314.3551, 4), standardError: expect.closeTo(0.1054, 4) },
      { magnification: 0, distance: expect.closeTo(194.6509, 4), standardError: expect.closeTo(0.2087, 4) },
    ]);
  });

  test('is the same each time', async () => {
    const { file } = bench(benchB);
    expect(await runHere('lens', file, '--json')).toEqual(await runHere('lens', file, '--json'));
  });
});

describe('the page', () => {
  test('stays within eighty columns but for words, and marks what lies far out', async () => {
    const { file } = bench(benchB.replace('290.1', '295.1'));
    const { out } = await runHere('lens', file);
    const words = out.replaceAll(/\s+/g, ' ');
    const strip = out.split('\n').filter((line) => /^ +\d+ +1:/.test(line));
    expect(strip).toHaveLength(8);
    expect(strip.every((line) => line.replace(/ outlier$/, '').length <= 80)).toBe(true);
    expect(strip.filter((line) => line.includes('X'))).toEqual([expect.stringMatching(/^ +4 .*outlier$/)]);
    expect(words).toMatch(/Reading 4 is .* It was not left out/);
    expect(words).toMatch(/Without it the focal length would be 239\.\d+ mm/);
    expect(out).toContain('thoriated');
    expect(out).toContain('capacitors');
    expect(words).toContain("its maker's instructions"); // one apostrophe on all pages
  });
});

describe('the drawing', () => {
  test('is an SVG with scales and figures, and is replaced by its like alone', async () => {
    const { place, file } = bench(benchB);
    const plot = join(place, 'rest.svg');
    expect(await runHere('lens', file, '--plot', plot, '--at', '1:2')).toMatchObject({
      code: 0,
      err: `Wrote ${plot}.\n`,
    });
    const drawn = readFileSync(plot, 'utf8');
    expect(drawn).toContain('lens seat to film, mm');
    expect(drawn).toContain('1:2: 314.36 mm');
    expect((await runHere('lens', file, '--plot', plot)).code).toBe(0);
    writeFileSync(plot, '<svg/>');
    expect((await runHere('lens', file, '--plot', plot)).code).toBe(2);
    expect(readFileSync(plot, 'utf8')).toBe('<svg/>');
  });
});

describe('into a design', () => {
  test('that says at which magnification its circle is stated, the circle is brought there', async () => {
    const { into, now } = bench(benchB);
    writeFileSync(into, design.replace('  barrel', '  coverage: { diameter: 300 mm, at: 1:1 }\n  barrel'));
    expect((await runHere('lens', dunlin, '--write', into)).code).toBe(0);
    const { coverage } = designOf(now()).lens;
    expect(coverage?.at).toBe(1);
    // P = 0.97 makes of 200 mm at infinity 406; the readings of a circle stray by some 3 mm
    expect(Math.abs((coverage?.diameter ?? 0) - 200 * (1 + 1 / 0.97))).toBeLessThan(8);
    expect(now()).toMatch(/at: 1:1 \}/);
  });

  test('a second time nothing is written', async () => {
    const { into, now } = bench(benchB);
    await runHere('lens', dunlin, '--write', into);
    const once = now();
    expect((await runHere('lens', dunlin, '--write', into)).err).toContain('as it was');
    expect(now()).toBe(once);
  });

  // the nearer together the readings, the nearer the correlation comes to −1, and the more its last digits weigh
  test.each([0, 0.8, 0.96, 0.978])('the doubt at life size is the same with readings from %d on', async (from) => {
    const noise = [0.2, -0.3, 0.1, 0.35, -0.25, -0.1, 0.3, -0.3];
    const rows = noise.map((off, i) => {
      const m = from + (1 - from) * (i / 7);
      return `${m === 0 ? 'infinity' : m},${196 + 214 * m + off}`;
    });
    const { file, into, now } = bench(`magnification,distance\n${rows.join('\n')}\n`);
    const [place] = JSON.parse((await runHere('lens', file, '--at', '1:1', '--json')).out).predictions;
    expect((await runHere('lens', file, '--write', into)).code).toBe(0);
    const { uncertainty } = designOf(now()).lens;
    if (uncertainty === null) throw new Error('no uncertainty was written');
    const { focalLength: slopeError, flangeDistance: interceptError, correlation } = uncertainty;
    const written = lineDoubt({ slopeError, interceptError, correlation, freedom: 6 }, 1);
    // both errors are written to hundredths of a millimetre: 2.447 · (0.005 + 0.005) is what that may cost
    expect(Math.abs(written - place.interval)).toBeLessThan(0.0245);
  });

  test('a focal length of some inches does not take the place of one in millimetres', async () => {
    const { file, into, now } = bench('magnification,distance\n1:4,9.82\n1:2,11.93\n1:1,16.16\n');
    const { code, out, err } = await runHere('lens', file, '--write', into);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/meant in inches, the focal length is 214\.\d mm/);
    expect(now()).toBe(design);
    expect((await runHere('lens', file)).out).toMatch(/warning: .*focal length is 8\.\d mm/);
  });

  test('an outlier is told loudly, and written all the same', async () => {
    const { file, into, now } = bench(benchB.replace('290.1', '295.1'));
    const { code, err } = await runHere('lens', file, '--write', into);
    expect(code).toBe(0);
    expect(err).toMatch(/WARNING: reading 4 .*before you cut wood/);
    expect(now()).not.toBe(design);
  });
});

describe('a call that is wrong ends with 2, and writes nothing', () => {
  test.each([
    ['readings that are not there', ['no-such.csv'], /no-such\.csv/],
    ['a magnification that is none', ['FILE', '--at', '3 m'], /--at: "3 m" is not a magnification/],
    ['a design that is not there', ['FILE', '--write', 'no-such.yaml'], /no-such\.yaml/],
    ['a drawing that is none', ['FILE', '--plot', 'rest.png'], /SVG/],
  ])('%s', async (_, words, says) => {
    const { place, file } = bench(benchB);
    const before = snapshot(place);
    const { code, out, err } = await runHere('lens', ...words.map((word) => (word === 'FILE' ? file : word)));
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(says);
    expect(snapshot(place)).toEqual(before);
  });

  test('readings of which no lens comes, with a design and a drawing to write', async () => {
    const { place, file, into } = bench('magnification,distance\n1:4,249.5\n1:2,303\n');
    const before = snapshot(place);
    const { code, out, err } = await runHere('lens', file, '--write', into, '--plot', join(place, 'rest.svg'));
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/There are 2 readings/);
    expect(snapshot(place)).toEqual(before);
  });
});
