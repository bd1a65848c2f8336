import { chmodSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { loadWorkshop } from '../../src/index.js';
import { seeded } from '../../src/packing/random.js';
import { drawn, handleCoupon, misread, usualFits } from '../coupon/builder.js';
import { changed, designOf } from '../design/reading.js';
import { readSvg } from '../files/read-svg.js';
import { heronDesign } from './heron-design.js';
import { runHere } from './run-here.js';
import { scratch, snapshot } from './scratch.js';

/** Not counted to the first test that asks for it. */
beforeAll(async () => void (await loadWorkshop()), 60_000);

/** A folder with Heron's design and, where given, a file of readings. */
function bench(readings?: string, design = heronDesign) {
  const place = scratch();
  const file = join(place, 'heron.yaml');
  writeFileSync(file, design);
  const read = join(place, 'readings.yaml');
  if (readings !== undefined) writeFileSync(read, readings);
  return {
    place,
    file,
    read,
    take: () => runHere('coupon', file, '--readings', read),
    now: () => readFileSync(file, 'utf8'),
  };
}

const good = 'comb: { x: 78.4, y: 78.4 }\n';
const cutFor = (kerf: number) =>
  `cut: { kerf: ${kerf}, thickness: 4.05, fits: { press: -0.02, glueSlip: 0.08, slide: 0.3, dropIn: 0.6 }, combSum: 80 }\n`;
const cut = cutFor(0.15);

describe('the test piece', () => {
  const cutIn = async (place: string, file: string) => {
    const folder = join(place, 'piece');
    const ended = await runHere('coupon', file, '-o', folder);
    return { ...ended, folder, files: snapshot(folder) };
  };

  test('is a sheet in both forms, its layout, and a form for the readings', async () => {
    const { place, file } = bench();
    const { code, err, out, files } = await cutIn(place, file);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(Object.keys(files).sort()).toEqual([
      '.tailboard.json',
      'readings.yaml',
      'sheets/',
      'sheets/layout.json',
      'sheets/plywood-4.05-1.dxf',
      'sheets/plywood-4.05-1.svg',
    ]);
    expect(out).toContain('210 × 148 mm');
    expect(out).toContain('Never leave the laser alone');
    const svg = files['sheets/plywood-4.05-1.svg'] ?? '';
    expect(svg).toMatch(/<title>Test piece for Heron, .*plywood-4\.05 measured 4\.05 mm/);
    expect(readSvg(svg).groups).toEqual(['engrave', 'cut-inside', 'cut-nested', 'cut-window', 'cut-outside']);
    const { layouts } = JSON.parse(files['sheets/layout.json'] ?? '');
    expect(layouts[0].sheets[0]).toMatchObject({ file: 'plywood-4.05-1.svg', width: 210, height: 148 });
    expect(layouts[0].sheets[0].parts).toHaveLength(23);
  });

  test('is the same, byte for byte, when it is drawn again', async () => {
    const { place, file } = bench();
    const first = await cutIn(place, file);
    const second = await cutIn(place, file);
    expect(second.code).toBe(0);
    expect(second.files).toEqual(first.files);
  });

  test('is not written over a form that somebody has filled in', async () => {
    const { place, file } = bench();
    const { folder } = await cutIn(place, file);
    writeFileSync(join(folder, 'readings.yaml'), good);
    const again = await cutIn(place, file);
    expect(again).toMatchObject({ code: 2, err: expect.stringContaining('readings.yaml was changed') });
    expect(readFileSync(join(folder, 'readings.yaml'), 'utf8')).toBe(good);
  });

  test('is refused where no laser has such a kerf', async () => {
    const { place, file } = bench(undefined, changed(heronDesign, 'kerf: 0.15 mm', 'kerf: 5 mm'));
    const { code, err, out } = await runHere('coupon', file, '-o', join(place, 'piece'));
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('kerf-plausible');
    expect(Object.keys(snapshot(place))).toEqual(['heron.yaml']);
  });

  test('has its form refused as long as nothing is filled in', async () => {
    const { place, file } = bench();
    const { folder } = await cutIn(place, file);
    const before = readFileSync(file, 'utf8');
    const { code, err } = await runHere('coupon', file, '--readings', join(folder, 'readings.yaml'));
    expect(code).toBe(2);
    expect(err).toContain('comb.x: It is not given.');
    expect(readFileSync(file, 'utf8')).toBe(before);
  });
});

describe('readings', () => {
  test('go into the design file, which is otherwise as it was, and the command says what was changed', async () => {
    const { take, now } = bench(good);
    const { code, out, err } = await take();
    expect({ code, err }).toEqual({ code: 0, err: '' });
    // (80 - 78.4) / 10, each way: as M6.06 [common practice, no source]
    expect(now()).toBe(changed(heronDesign, 'laser: { kerf: 0.15 mm }', 'laser: { kerf: 0.16 mm }'));
    expect(out).toMatch(/^laser\.kerf +0\.15 mm -> 0\.16 mm$/m);
    expect(out).not.toMatch(/^laser\.kerfUncertainty/m);
  });

  test('of several places say how far a cut strays; of one place only that it strays further than was thought', async () => {
    const three = bench('comb: { x: [78.4, 78.45, 78.4], y: [78.4, 78.4, 78.45] }\n');
    expect((await three.take()).out).toMatch(/^laser\.kerfUncertainty +\(not written\) -> 0\.00\d mm$/m);
    // 0.155 to 0.16: half of that, the caliper's 0.02 / 10, and not more than a rounded micrometre
    const strays = designOf(three.now()).laser.kerfUncertainty;
    expect(strays).toBeGreaterThanOrEqual(0.0045);
    expect(strays).toBeLessThanOrEqual(0.0056);

    const sure = changed(heronDesign, 'kerf: 0.15 mm', 'kerf: 0.15 mm, kerfUncertainty: 0.001 mm');
    const one = bench('comb: { x: 78.4, y: 78.6 }\n', sure);
    await one.take();
    // 0.16 across and 0.14 along: 0.01 each way at least
    expect(designOf(one.now()).laser.kerfUncertainty).toBeGreaterThanOrEqual(0.01);
  });

  test('taken a second time change nothing', async () => {
    const { take, now } = bench(`${cut}${good}thickness: [4.02, 4.04]\nfits: { press: -0.02, slide: 0.2 }`);
    await take();
    const once = now();
    expect(once).not.toBe(heronDesign);
    const { code, out } = await take();
    expect({ code, now: now() }).toEqual({ code: 0, now: once });
    expect(out).toContain('has these figures already');
  });

  test.each([
    ['a sum larger than drawn', 'comb: { x: 80.4, y: 78.5 }', '1:12  comb.x: ', 'comb-reading'],
    ['combs that disagree', 'comb:\n  x: 78.5\n  y: 78.1\n', '3:6  comb.y: ', 'divided|more or fewer than 10'],
    [
      'a slide tighter than the glue slip',
      `${cut}${good}fits: { glueSlip: 0.2, slide: 0.11 }`,
      '3:31  fits.slide: ',
      'tighter than',
    ],
    [
      'a sheet that is too thick for its slot',
      `${cut}${good}thickness: 4.2\nslot: 4.1\n`,
      '4:7  slot: ',
      'does not enter',
    ],
    ['no YAML', 'comb: { x: 1', 'readings.yaml:1', 'not closed'],
    ['an unknown key', `${good}kerf: 0.15`, '2:1  kerf: ', 'not known'],
  ])('with %s are refused: 2, the place, the reason, and nothing written', async (_, text, place, reason) => {
    const { take, place: folder } = bench(text);
    const before = snapshot(folder);
    const { code, out, err } = await take();
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(place);
    expect(err).toMatch(new RegExp(reason));
    expect(err).toContain('is as it was');
    expect(snapshot(folder)).toEqual(before);
  });

  test('that the design file cannot take byte by byte are refused as well', async () => {
    const shared = changed(
      changed(heronDesign, 'laser: { kerf: 0.15 mm }', 'laser: { kerf: &thin 0.15 mm }'),
      'shims: [0.1 mm,',
      'shims: [*thin,',
    );
    const { take, now } = bench(good, shared);
    expect(await take()).toMatchObject({ code: 2, err: expect.stringContaining('in another place, too') });
    expect(now()).toBe(shared);
  });

  test('tell what the new figures do: a press fit that splits thin sheet', async () => {
    const { take } = bench(`${cut}comb: { x: 78.5, y: 78.5 }\nfits: { press: -0.06 }`);
    expect(await take()).toMatchObject({ code: 0, err: expect.stringContaining('fit-ladder') });
  });

  test('know the piece that they come from, though the design has been changed since', async () => {
    const { take, now } = bench(`${cutFor(0.2)}${good}fits: { slide: 0.4 }`);
    expect((await take()).code).toBe(0);
    // drawn for 0.2, cut with 0.16: each notch was 0.08 tighter than marked
    expect(designOf(now()).workshop.fits.slide).toBeCloseTo(0.32, 9);
  });

  test('keep line ends, the mode of the file, and a link that leads to it', async () => {
    const crlf = `\ufeff${heronDesign.replaceAll('\n', '\r\n')}`;
    const { place, file, read } = bench(good, crlf);
    chmodSync(file, 0o640);
    const link = join(place, 'link.yaml');
    symlinkSync('heron.yaml', link);
    expect((await runHere('coupon', link, '--readings', read)).code).toBe(0);
    expect(readFileSync(file, 'utf8')).toBe(changed(crlf, 'kerf: 0.15 mm', 'kerf: 0.16 mm'));
    expect(statSync(file).mode & 0o777).toBe(0o640);
    expect(snapshot(place)['link.yaml']).toBe('(link)');
    expect(Object.keys(snapshot(place)).sort()).toEqual(['heron.yaml', 'link.yaml', 'readings.yaml']);
  });

  test.each([
    ['where nobody can be asked', ['--readings'], 'Nobody is there to be asked'],
    ['beside a folder to write into', ['--readings', 'r.yaml', '-o', 'x'], '--output goes with'],
    ['from a file that is not there', ['--readings', 'nowhere.yaml'], 'no such file'],
  ])('%s are a wrong call', async (_, words, says) => {
    const { file } = bench();
    expect(await runHere('coupon', file, ...words)).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringContaining(says),
    });
  });
});

/** Six builders with lasers, sheets, hands and calipers of their own fill in the form that came with their piece. */
test('from the piece to the design file: the scalars that were measured, and not a byte more', async () => {
  const { coupon, sheet } = drawn();
  const random = seeded(3);
  const between = (least: number, most: number) => least + (most - least) * random();
  const shop = bench();
  await runHere('coupon', shop.file, '-o', join(shop.place, 'piece'));
  const form = readFileSync(join(shop.place, 'piece', 'readings.yaml'), 'utf8');
  for (let builder = 0; builder < 6; builder++) {
    const design = heronDesign.replaceAll('\n', builder % 2 === 0 ? '\n' : '\r\n');
    const kerf = between(0.13, 0.17);
    const truth = { kerfX: kerf + 0.004, kerfY: kerf - 0.004, thickness: between(3.95, 4.15), feels: usualFits };
    const read = handleCoupon(coupon, sheet, truth, () => misread(random));
    const filled = Object.entries({
      ...read.fits,
      x: read.x,
      y: read.y,
      thickness: read.thickness,
      slot: read.slot,
    }).reduce((text, [key, value]) => text.replace(new RegExp(`^( *)${key}:$`, 'm'), `$1${key}: ${value} mm`), form);
    const { take, now } = bench(filled, design);
    expect(await take()).toMatchObject({ code: 0 });
    const after = now();
    const { laser, plywood, workshop } = designOf(after);
    const { press, glueSlip, slide, dropIn } = workshop.fits;
    const end = after.includes('\r') ? '\r\n' : '\n';
    expect(after).toBe(
      design
        .replace('kerf: 0.15 mm', `kerf: ${laser.kerf} mm`)
        .replace('thickness: 4.05 mm', `thickness: ${plywood.thickness} mm`)
        .concat(
          `workshop: { fits: { press: ${press} mm, glueSlip: ${glueSlip} mm, slide: ${slide} mm, dropIn: ${dropIn} mm } }${end}`,
        ),
    );
    // a caliper of ±0.02 mm over ten cuts, and its scale
    expect(Math.abs(laser.kerf - kerf)).toBeLessThanOrEqual(0.0031);
    // so that what the laser does in either direction is within what was written
    expect(Math.abs(truth.kerfX - laser.kerf)).toBeLessThanOrEqual(laser.kerfUncertainty + 0.001);
    expect(Math.abs(plywood.thickness - truth.thickness)).toBeLessThanOrEqual(0.0251);
    expect(Math.abs(press - usualFits.press)).toBeLessThanOrEqual(0.04);
    expect(Math.abs(slide - usualFits.slide)).toBeLessThanOrEqual(0.07);
  }
});
