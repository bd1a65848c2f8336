import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { heronDesign } from './heron-design.js';
import { runHere } from './run-here.js';
import { scratch } from './scratch.js';

/** Heron with a sitting, or another lens, as a file of its own. */
function file(sitting = '', design = heronDesign): string {
  const path = join(scratch(), 'heron.yaml');
  writeFileSync(path, sitting === '' ? design : `${design}\nsitting: ${sitting}\n`);
  return path;
}

const words = (text: string): readonly string[] => text.split(' ').filter((word) => word !== '');

async function exposed(flags: string, sitting = '', design = heronDesign) {
  const { code, out, err } = await runHere('expose', file(sitting, design), ...words(flags), '--json');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return JSON.parse(out);
}

/** What must be refused: exit 2, one message, nothing on stdout. */
async function refusedBecause(flags: string, sitting = '') {
  const { code, out, err } = await runHere('expose', file(sitting), ...words(flags));
  expect({ code, out }).toEqual({ code: 2, out: '' });
  return err;
}

const flash = '--flash-energy 400 --flash-aperture f/16 --flash-distance 2m --flash-speed 100';
const meter = '--meter-aperture f/16 --meter-speed 100 --aperture f/16';

describe('from one reading to the setting', () => {
  test('V5.38 [common practice, no source]: 120000 Ws in 50 pops of 2400', async () => {
    const { energy, pops, popEnergy } = await exposed(
      `${flash} --aperture f/32 --lamp-distance 1.5m --speed 3 --magnification 1:1 --flash-most 2400`,
    );
    expect([energy, pops, popEnergy]).toEqual([120000, 50, 2400]);
  });

  test('V5.39 [common practice, no source]: 7089.84 Ws at 22, ISO 6, 1:2, the lamp at 1 m', async () => {
    for (const aperture of ['22', 'f/22']) {
      const { energy, stops } = await exposed(
        `${flash} --aperture ${aperture} --lamp-distance 1m --speed 6 --magnification 1:2`,
      );
      expect(Math.abs(energy - 7089.84)).toBeLessThan(0.01);
      expect(stops.distance).toBe(-2); // V5.35: half the distance, four times the light [verified: S42]
    }
  });

  test('V5.57 [verified: S54, "Film reciprocity factors"]: 10 s become 20.417 s', async () => {
    const { time, correctedTime } = await exposed(
      `--meter-time 10s ${meter} --speed 100 --magnification infinity --reciprocity 1.31`,
    );
    expect(time).toBe(10);
    expect(Math.abs(correctedTime - 20.417)).toBeLessThan(0.05);
  });

  test('V5.61 [p from S54; order: common practice, no source]: reciprocity comes last', async () => {
    const { time, correctedTime } = await exposed(
      `--meter-time 2s ${meter} --speed 100 --magnification 1:2 --filter 8 --reciprocity 1.31`,
    );
    expect(time).toBe(36);
    expect(Math.abs(correctedTime - 109.33)).toBeLessThan(0.01);
  });

  test('V5.62 [common practice, no source]: 1/4 s at ISO 100 is 8.333 s on paper of 3', async () => {
    const { time, stops } = await exposed(`--meter-time 1/4s ${meter} --speed 3 --magnification infinity`);
    expect(Math.abs(time - 8.333)).toBeLessThan(1e-3);
    expect(Math.abs(stops.total - 5.059)).toBeLessThan(1e-3);
  });

  // V2.10 [verified: S20, encyclopedia article F-number, "Working f-number"]
  test.each([
    { P: 1.5, m: '1:2', factor: 1.7778, stops: 0.83 },
    { P: 0.7, m: '1:4', factor: 1.84184, stops: 0.881 },
  ])('V2.10: the pupil magnification of the design, $P', async ({ P, m, factor, stops }) => {
    const design = heronDesign.replace('lens:\n', `lens:\n  pupilMagnification: ${P}\n`);
    const { extensionFactor, stops: by } = await exposed(`--magnification ${m}`, '', design);
    expect(Math.abs(extensionFactor - factor)).toBeLessThan(1e-4);
    expect(Math.abs(by.extension - stops)).toBeLessThan(1e-3);
  });

  test('a test on the same paper needs no speed, and has its own extension and filter in it', async () => {
    // the same setting again asks for the same energy, whatever the formula
    const same = await exposed(
      '--flash-energy 900 --flash-aperture f/16 --flash-distance 1m --test-magnification 1:3 --test-filter 2 --magnification 1:3 --filter 2 --aperture 16',
    );
    expect(same.energy).toBeCloseTo(900, 9);
    expect(same.stops.total).toBeCloseTo(0, 9);
    expect(same.assumed.map(({ key }: { key: string }) => key)).toContain('speed');
  });

  test('a long test has its loss in it, which is taken out before anything is multiplied, and put in last', async () => {
    // V5.57 [verified: S54]: 20.417 s by 1.31 are 10 s metered; 3.6 times that are 36 s, and V5.61's 109.33 s
    const test =
      '--meter-time 20.417s --meter-aperture f/16 --test-magnification 1:3 --magnification 1:3 --aperture 16';
    const same = await exposed(test, '{ reciprocity: 1.31 }');
    expect(same.correctedTime).toBeCloseTo(20.417, 9);
    expect(Math.abs(same.time - 10)).toBeLessThan(1e-3);
    expect(same.assumed).toContainEqual({
      key: 'reciprocity',
      message: expect.stringMatching(/^The 20(?:\.\d+)? s of the test are 10 s without reciprocity\.$/),
    });
    const filtered = await exposed(`${test} --filter 3.6`, '{ reciprocity: 1.31 }');
    expect(Math.abs(filtered.correctedTime - 109.33)).toBeLessThan(0.01);
  });
});

describe('where the sitter is', () => {
  test('V1.01-like: u = f(1 + 1/m) and its inverse', async () => {
    // 210 mm at 1:4: 210·5 = 1050 mm [OpenStax, University Physics vol. 3, thin lens]
    expect((await exposed('--subject 1.05m')).magnification).toBeCloseTo(0.25, 9);
    expect((await exposed('--magnification 1:4')).subjectDistance).toBeCloseTo(1050, 6);
  });

  test('by the head: its height on the glass over 250 mm [P], or over what is given', async () => {
    expect((await exposed('--head 62.5mm')).magnification).toBeCloseTo(0.25, 9);
    expect((await exposed('--head 55mm --head-height 220mm')).magnification).toBeCloseTo(0.25, 9);
    // 60 % of 171.4 mm [5x7 less its rebate, common practice] is 102.84 mm
    expect((await exposed('--head 60%')).magnification).toBeCloseTo(102.84 / 250, 9);
  });

  test('nobody says, or it has no image', async () => {
    expect(await refusedBecause('--aperture 16')).toMatch(/--subject 1\.2m, --magnification 1:4 or --head 90mm/);
    expect(await refusedBecause('--subject 200mm')).toMatch(/within the focal length of 210 mm/);
    expect(await refusedBecause('--subject 211mm')).toMatch(/210 times life size/); // 210/(211 − 210)
    // 1500/60
    expect(await refusedBecause('--head 1500mm --head-height 60mm')).toMatch(/25 times life size.*--head 90mm/);
  });
});

describe('what today says goes before the file', () => {
  const sitting =
    '{ subject: 2 m, aperture: f/22, speed: 100, filter: [2, 3], density: 0.3, flashEnergy: 400, flashAperture: f/16, flashDistance: 2 m, flashSpeed: 100, filterSets: [{ name: warm, filters: [{ name: straw, factor: 1.5 }, { density: 0.2 }] }], filterSet: warm }';

  test('the file alone is enough', async () => {
    const { aperture, filters, energy } = await exposed('', sitting);
    expect([aperture, filters.length]).toEqual([22, 5]);
    expect(energy).toBeGreaterThan(400);
  });

  test('a key replaces its own, a list the list, another way the other', async () => {
    const { magnification, filters, aperture } = await exposed(
      '--magnification 1:4 --filter 4 --filter-set none --density 0',
      sitting,
    );
    expect([magnification, aperture]).toEqual([0.25, 22]);
    expect(filters).toEqual([{ name: 'factor 4', factor: 4 }]);
    expect((await exposed('--head 50mm', sitting)).magnification).toBeCloseTo(0.2, 9);
  });

  test('a meter reading puts aside the flash of the file, and a flash the meter', async () => {
    const metered = await exposed('--meter-time 1s --meter-aperture f/22 --meter-speed 100 --filter 1', sitting);
    expect([metered.energy, metered.lampDistance]).toEqual([null, null]);
    expect(metered.time).toBeGreaterThan(1);
    const steady = '{ subject: 2 m, speed: 100, meterTime: 1 s, meterAperture: f/22, meterSpeed: 100 }';
    const flashed = await exposed(flash, steady);
    expect(flashed.time).toBeNull();
    expect(flashed.energy).toBeGreaterThan(0);
  });

  test('a meter reading that is begun today must be ended, whatever flash the file has', async () => {
    expect(await refusedBecause('--meter-aperture f/8', sitting)).toMatch(/time of the meter reading is not given/);
    const steady = '{ subject: 2 m, speed: 100, meterTime: 1 s, meterAperture: f/22, meterSpeed: 100 }';
    expect(await refusedBecause('--flash-distance 1m', steady)).toMatch(/energy of the flash reading is not given/);
  });

  test('a test typed today is on its own paper: the speed that the meter of the file had does not enter', async () => {
    const { stops } = await exposed(
      '--flash-energy 3kJ --test-magnification 1:4',
      `${sitting.replace('speed: 100', 'speed: 6')}`,
    );
    expect(stops.speed).toBe(0);
  });

  test('keys at hand need no reading', async () => {
    const { energy, time, wanting } = await exposed(
      '--subject 2m',
      '{ meterAperture: f/16, flashSpeed: 100, speed: 6 }',
    );
    expect([energy, time]).toEqual([null, null]);
    expect(wanting.join(' ')).toMatch(/--flash-energy.*--meter-time/);
  });
});

test('the camera as cut says how near it reaches: its slot ends at the reserve, before what two boxes could reach', async () => {
  const { slide, tailboard } = JSON.parse((await runHere('plan', file(), '--json')).out);
  // the slot holds travel, reserve, 6 mm of bolt and 1 mm at each end (worked example: 10.5 mm of reserve for 210 mm)
  const reserve = tailboard.slot - slide.travel - 6 - 2;
  expect(reserve).toBeCloseTo(10.5, 6);
  const reach = 1 / 2.5 + reserve / 210;
  expect(reach).toBeLessThan(slide.reachableMagnification);
  const idsAt = async (m: number) =>
    (await exposed(`--magnification ${m}`)).remarks.map(({ id }: { id: string }) => id);
  expect(await idsAt(reach * 0.999)).not.toContain('too-near');
  expect(await idsAt(reach * 1.001)).toContain('too-near');
});

describe('what is refused', () => {
  test.each([
    ['--subject 1m --magnification 1:4', /--subject and --magnification say the same/],
    ['--magnification 1:4 --head 90mm', /--magnification and --head/],
    ['--magnification 1:4 --meter-time 1s --flash-energy 400', /--meter-time and --flash-energy/],
    ['--magnification 1:4 --meter-speed 100 --flash-aperture 16', /--meter-speed belongs to a meter.*--flash-aperture/],
    ['--magnification 1:4 --meter-time 1s --lamp-distance 1m', /--lamp-distance to a flash/],
    ['--magnification 1:4 --aperture f/4', /f\/4 is wider than the lens opens.*f\/6\.3/],
    ['--magnification 1:4 --filter-set warm', /No filter set is called "warm"/],
    ['--magnification 1:4 --filter 0.5', /--filter: "0\.5" is less than.*from 1 to/],
    ['--magnification 1:4 --filter', /argument missing/],
    ['--magnification 1:4 --density 9', /--density: "9" is more than/],
    ['--magnification 1:4 --aperture f/x', /--aperture: "f\/x" is not an f-number\. Write f\/6\.3/],
    ['--magnification 1:4 --speed fast', /--speed: "fast" is not a number\. Write a number such as 6\./],
    ['--magnification 1:4 --filter x', /--filter: "x" is not a number\. Write a number such as 2\./],
    ['--magnification 1:4 --flash-energy 400W', /--flash-energy: "400W" is not an energy/],
    ['--magnification 1:4 --meter-time 1/4', /--meter-time: The fraction "1\/4" has no unit/],
    ['--magnification 1:4 --reciprocity 0.9', /--reciprocity: "0\.9" is less/],
    ['--magnification 1:4 --reciprocity steep', /--reciprocity: "steep" is not a number/],
    ['--head 0%', /--head/],
    ['--head 900%', /--head: "900%" is more/],
    ['--magnification 1,5', /decimal comma/],
    ['--magnification 1:4 --process slide', /--process: "slide" is not known here. Write negative or reversal/],
    ['--magnification 1:4 --meter-time 1s', /aperture of the meter reading is not given.*--meter-aperture f\/16/],
    ['--magnification 1:4 --flash-energy 400 --flash-aperture 16', /--flash-distance 2m/],
    ['--magnification 1:4 --flash-distance 1m', /energy of the flash reading is not given/],
    ['--magnification 1:4 --meter-time 1s --meter-aperture 16', /--meter-speed 100; or --test-magnification/],
    ['--magnification 1:4 --test-magnification 1:3', /A test is nothing without its setting/],
    [`--magnification 1:4 ${flash} --test-filter 2`, /--test-magnification 1:4/],
    ['--magnification 1:4 --nonsense 3', /unknown option/],
    // what is not said in the voice of a file
    ['--magnification 1:4 --density 9', /--density: "9" is more than this flag takes\. Write a value from 0 to 6/],
    ['--magnification 1:4 --head 900%', /--head: "900%" is more than this flag takes/],
    // a unit was forgotten
    [
      '--magnification 1:4 --flash-distance 1.5',
      /^--flash-distance: 1\.5 mm from the lamp to the sitter\? Write 1\.5 m\.$/m,
    ],
    ['--magnification 1:4 --lamp-distance 90', /90 mm from the lamp to the sitter\? Write 90 cm\.$/m],
    ['--magnification 1:4 --lamp-distance 20mm', /20 mm from the lamp to the sitter\? Write 0\.1 m or more\.$/m],
    ['--magnification 1:4 --lamp-distance 200m', /more than this flag takes\. Write a value from 0\.1 m to 100 m\./],
    ['--magnification 1:4 --lamp-distance far', /not a length\. Write 1\.5 m, or feet such as 4 ft\./],
    ['--head 90mm --head-height 23', /^--head-height: 23 mm from chin to crown\? Write 23 cm\.$/m],
    ['--subject 1', /^--subject: 1 mm from the lens to the sitter\? Write 1 m\.$/m],
    ['--subject 150', /within the focal length of 210 mm: it has no image\. Was 150 cm meant\?/],
  ])('%s', async (flags, because) => expect(await refusedBecause(flags)).toMatch(because));

  test.each([
    ['{ subject: 1 m, head: 90 mm }', /heron\.yaml:\d+:\d+ +sitting\.head: It stands beside subject/],
    ['{ meterTime: 1 s, flashEnergy: 400 }', /sitting\.flashEnergy: It stands beside meterTime/],
    ['{ subject: 0.1 m }', /within the focal length/],
    ['{ distances: [1 m, 0.1 m] }', /sitting\.distances\[1\].*within the focal length/],
    ['{ filterSet: warm }', /No set is called "warm"/],
    ['{ filterSets: [{ name: none, filters: [{ factor: 2 }] }] }', /says that no set is used/],
    [
      '{ filterSets: [{ name: a, filters: [{ factor: 2, density: 1 }] }] }',
      /filters\[0\]: It has a factor and a density/,
    ],
    ['{ filterSets: [{ name: a, filters: [{ name: x }] }] }', /neither a factor nor a density/],
    [
      '{ filterSets: [{ name: a, filters: [{ factor: 2 }] }, { name: A, filters: [{ factor: 2 }] }] }',
      /this name already/,
    ],
    ['{ filter: [] }', /The list is empty/],
    ['{ filter: [2, x] }', /sitting\.filter\[1\]: "x" is not a number/],
    ['{ reciprocity: [] }', /The list is too short/],
    ['{ reciprocity: [1.31] }', /reciprocity\[0\]: Here stands 1\.31.*\n.*\n.*\n.*as keys: metered, given/],
    ['{ reciprocity: { metered: 1 s } }', /is not a number/],
    ['{ reciprocity: [{ metered: 1 s }] }', /reciprocity\[0\]\.given: It is not given.*\n.*\n.*\n.*given: 25 s/],
    ['{ reciprocity: [{ metered: 10 s, given: 8 s }] }', /asks for more, never for less/],
    ['{ reciprocity: [{ metered: 10 s, given: 25 s }, { metered: 5 s, given: 30 s }] }', /does not rise/],
    ['{ aperature: f/16 }', /Did you mean aperture\?/],
    ['{ flashDistance: 1.5 }', /heron\.yaml:\d+:\d+ +sitting\.flashDistance: 1\.5 mm from the lamp.*Write 1\.5 m\./s],
    ['{ lampDistance: 1 }', /sitting\.lampDistance: 1 mm from the lamp to the sitter\?/],
    ['{ subject: 1.2 }', /sitting\.subject: 1\.2 mm from the lens to the sitter\?.*Write 1\.2 m\./s],
    ['{ distances: [1 m, 1.5] }', /sitting\.distances\[1\]: 1\.5 mm from the lens.*Write 1\.5 m\./s],
    ['{ distances: [1 m, 120] }', /within the focal length.*Was 120 cm meant\?/s],
  ])('in the file: %s', async (sitting, because) =>
    expect(await refusedBecause('--magnification 1:4', sitting)).toMatch(because),
  );
});

describe('the document', () => {
  test('has the promised keys, null where they do not apply', async () => {
    const bare = await exposed('--magnification 1:4');
    expect(bare).toMatchObject({
      schema: 1,
      magnification: 0.25,
      subjectDistance: 1050,
      extensionFactor: 1.5625,
      filterFactor: 1,
      aperture: 6.3,
      workingAperture: 7.875,
      energy: null,
      pops: null,
      time: null,
      correctedTime: null,
    });
    expect(Object.keys(bare.stops)).toEqual(
      expect.arrayContaining(['extension', 'filter', 'speed', 'aperture', 'distance', 'total']),
    );
    expect(Object.keys(bare.depthOfField)).toEqual(['near', 'far']);
    expect([bare.stops.speed, bare.stops.aperture, bare.stops.distance]).toEqual([null, null, null]);
    expect(bare.assumed.map(({ key }: { key: string }) => key)).toEqual([
      'aperture',
      'lens.pupilMagnification',
      'circleOfConfusion',
    ]);
  });

  test('without a speed nothing is carried over, and it says what is wanting', async () => {
    const { energy, wanting } = await exposed(`--magnification 1:4 ${flash}`);
    expect(energy).toBeNull();
    expect(wanting).toEqual(['for an energy: --speed, of the paper or film']);
  });
});

test('a distance in feet is taken as it is in metres', async () => {
  // 3 ft are 914.4 mm, exact: international yard and pound agreement, 1959
  expect((await exposed('--subject 3ft')).subjectDistance).toBeCloseTo(914.4, 9);
});

test('the page says first what to set, and last what to mind', async () => {
  const { out } = await runHere(
    'expose',
    file(),
    ...words(`${flash} --aperture f/16 --lamp-distance 2m --speed 50 --magnification 1:4 --flash-most 800`),
  );
  // 400 · 2 · 1.25² = 1250 J, two pops of 625 [the formula of V5.38]
  const at = [
    'f/16',
    '2 pops of 625 J',
    '78 % of full power',
    '1:4',
    'How it comes about',
    'extension to 1:4',
    'Taken for granted',
    'many-pops',
    'never open it',
  ];
  // what has nothing beside it takes no room from what has
  expect(out).toMatch(/2 pops of 625 J {2}78 %/);
  const places = at.map((text) => out.indexOf(text));
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(places).not.toContain(-1);
});

describe('the page says', () => {
  async function page(flags: string) {
    const { code, out, err } = await runHere('expose', file(), ...words(flags));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    return out;
  }
  const unbroken = (text: string) => text.replace(/\n +/g, ' ');
  const steady = `--meter-time 2s ${meter} --speed 100 --magnification 1:2 --filter 8`;

  test('V5.61 [p from S54; order: common practice, no source]: reciprocity by its name, behind the others', async () => {
    const out = await page(`${steady} --reciprocity 1.31`);
    expect(out).toMatch(/Time +109 s \(1 min 49 s\) +with reciprocity; 36 s without/);
    // 1.5² · 8 = 18; 109.33/36 = 3.04, 1.60 stops; 109.33/2 = 54.7, 5.77 stops
    expect(out).toMatch(
      /together +× 18\.0 +\+4\.17\n +reciprocity +× 3\.04 +\+1\.60\n +with reciprocity +× 54\.7 +\+5\.77\n/,
    );
    expect(out).not.toContain('such a time loses');
  });

  test('that reciprocity is not known, or nothing where there is none', async () => {
    const unknown = await page(steady);
    expect(unknown).toMatch(/Time +36 s +without reciprocity,\s+which\s+is\s+not\s+known/);
    expect(unknown).toMatch(/together, without reciprocity +× 18\.0/);
    const short = await page(`--meter-time 1/60s ${meter} --speed 100 --magnification 1:2 --reciprocity 1.31`);
    expect(short).not.toContain('reciprocity');
  });

  test('by flash, what a reading counts where there are several lamps; all distances of lamps in metres', async () => {
    const out = unbroken(await page(`${flash} --speed 50 --magnification 1:4`));
    expect(out).toMatch(
      /A reading counts all lamps that fired at it.*keep their proportion.*main lamp.*all move alike/,
    );
    expect(out).toContain('as far off as at the reading, 2 m.');
    expect(out).not.toContain('2000 mm');
    expect(await page(steady)).not.toContain('lamps that fired');
  });

  test('of hot lamps only what is true beside a window, too', async () =>
    expect(unbroken(await page(steady))).toContain('Where lamps are hot, keep gels, cloth and hands away'));
});
