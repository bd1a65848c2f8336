import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { colours } from '../../src/cli/terminal.js';
import { surveyPage } from '../../src/files/survey-page.js';
import { readLenses } from '../../src/forms/read-lenses.js';
import { prepareSurvey } from '../../src/survey/survey.js';
import { randomDrawer } from '../survey/random-drawer.js';
import { runHere } from './run-here.js';
import { compiled, ended, scratch, snapshot, tailboard } from './scratch.js';

const DUNLIN = 'designs/dunlin/drawer.yaml';

const TWO = `plywood: { thickness: 4.05 mm }
formats: [5x7, whole-plate]
focus: { nearest: 1:4 }
lenses:
  - name: copying lens
    focalLength: 214 mm
    flangeDistance: 196 mm
    maxAperture: f/9
    coverage: { diameter: 430 mm, at: 1:1 }
    barrel: { diameter: 56 mm, grip: 20 mm, front: 20 mm, rear: 28 mm, frontDiameter: 62 mm, rearDiameter: 50 mm }
  - { name: the one without a name, focalLength: 180 mm, maxAperture: f/6.8 }
`;

function drawer(text: string): string {
  const file = join(scratch(), 'drawer.yaml');
  writeFileSync(file, text);
  return file;
}

describe('survey', () => {
  test('prints a block for each lens, narrow enough for a terminal, on stdout', async () => {
    const { code, out, err } = await runHere('survey', drawer(TWO));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    // circle of 430 at 1:1 is 215 at infinity, more than the 209.6 of a 5x7 and less than the 264.8 of a whole plate
    expect(out).toContain('copying lens: f 214, flange distance 196, f/9, image circle 215 at infinity');
    expect(out).toMatch(/^ {2}5x7 h +all /m);
    expect(out).toMatch(/^ {2}whole-plate h +1:4\.3\d? on /m);
    expect(out).toContain('Assumed: flange distance (as long as f)');
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  test('judges no lens by a barrel that nobody measured, and says what it took', async () => {
    const { out } = await runHere('survey', drawer(TWO.replace('focus: { nearest: 1:4 }\n', '')));
    expect(out).not.toMatch(/^ {2}\S+ h !/m);
    expect(out).toMatch(/Not judged before the assumed is measured: cone-clear, straight dark edges \(/);
    expect(out).toContain('1:5, taken since the');
    expect(out).not.toMatch(/1:5 asked for/);
    expect((await runHere('survey', drawer(TWO))).out).toContain('the 1:4 asked for');
  });

  test('names a rule that stands in plain words', async () => {
    const heavy = TWO.replace('rearDiameter: 50 mm', 'rearDiameter: 50 mm, mass: 9 kg');
    const { out } = await runHere('survey', drawer(heavy));
    expect(out).toMatch(/^ {2}5x7 h ! /m);
    expect(out).toContain('! clamp-grip, a lens that slips on a tilted tripod (every format)');
    expect(out).toContain('a design of this pair would break a rule');
  });

  test('questions units as plan does, of a lens, of the sheet, and of a format', async () => {
    const text = TWO.replace('focalLength: 180 mm', 'focalLength: 7')
      .replace('thickness: 4.05 mm', 'thickness: 0.16')
      .replace('5x7,', '{ name: own, width: 30, height: 70 },');
    const { code, out } = await runHere('survey', drawer(text));
    expect(code).toBe(0);
    const flat = out.replace(/\s+/g, ' ');
    expect(flat).toMatch(/7 mm is odd for lens\.focalLength; .* If it was meant in inches, write 177\.8 mm/);
    expect(flat).toMatch(/drawer\.yaml: 0\.16 mm is odd for plywood\.thickness/);
    expect(flat).toMatch(/drawer\.yaml: 30 mm is odd for format/);
    const sorted = (await runHere('survey', drawer(text), '--sort', 'name')).out.replace(/\s+/g, ' ');
    expect(sorted).toContain('the one without a name: 7 mm is odd for lens.focalLength');
    expect((await runHere('survey', drawer(TWO))).out).not.toContain(' is odd for ');
  });

  test('says once which image a size of your own is taken to have', async () => {
    const own = TWO.replace('5x7,', '{ name: square, width: 200 mm, height: 200 mm },');
    const { out } = await runHere('survey', drawer(own));
    // 6.4 mm less each way, as in a design
    expect(out.match(/an image of 193\.6 × 193\.6 \(square\)/g)).toHaveLength(1);
    const given = own.replace('height: 200 mm', 'height: 200 mm, image: [198 mm, 198 mm]');
    expect((await runHere('survey', drawer(given))).out).not.toContain('an image of');
  });

  test('fits a terminal of 80 columns, whatever the formats are called', async () => {
    const wide = TWO.replace('[5x7, whole-plate]', '[half-plate-american, 11x14, whole-plate]');
    const read = readLenses([{ file: 'wide.yaml', text: wide }]);
    if ('problems' in read) throw new Error('the list is wrong');
    const { count, pairs, document } = prepareSurvey({ ...read, formats: null });
    for (const acrossLenses of [false, true]) {
      const page = surveyPage(document(pairs(0, count)), { width: 80, colour: colours(false), acrossLenses });
      const lines = page.split('\n');
      for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(80);
      // each pair on one line: its sheets stand behind its format
      if (!acrossLenses)
        expect(
          lines.filter((line) => /^ {2}(?:half-plate-american|11x14|whole-plate) .* [-\d]+$/.test(line)),
        ).toHaveLength(count);
    }
  });

  test('says once that a list is given twice', async () => {
    const file = drawer(TWO);
    const { code, out, err } = await runHere('survey', file, file, file);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err.match(/given twice/g)).toHaveLength(1);
    expect(err).not.toContain('has a lens of this name');
    expect((await runHere('survey', file, drawer(TWO))).err).toContain('the same list as');
  });

  test('prints one document, and the same in a table', async () => {
    const json = JSON.parse((await runHere('survey', DUNLIN, '--json')).out);
    expect(json).toMatchObject({ schema: 1 });
    expect(json.pairs).toHaveLength(6 * 4);
    const csv = (await runHere('survey', DUNLIN, '--csv')).out.split('\r\n');
    expect(csv).toHaveLength(1 + 6 * 4 + 1);
  });

  test('looks at the formats that are asked for, in the order that is asked for', async () => {
    const words = ['survey', DUNLIN, '--format', '8x10', '--format', '11x14', '--sort', 'reach', '--json'];
    const { formats, pairs } = JSON.parse((await runHere(...words)).out);
    expect(formats.map(({ name }: { name: string }) => name)).toEqual(['8x10', '11x14']);
    const reaches = pairs.flatMap(({ reachable }: { reachable: number | null }) => reachable ?? []);
    expect(reaches).toEqual([...reaches].sort((a, b) => b - a));
  });

  test('puts the lenses of several lists together', async () => {
    const other = drawer(
      'plywood: { thickness: 6 mm }\nformats: [4x5]\nlenses: [{ name: other, focalLength: 200 mm }]\n',
    );
    const { lenses, pairs } = JSON.parse((await runHere('survey', DUNLIN, other, '--json')).out);
    expect(lenses).toHaveLength(7);
    expect(pairs).toHaveLength(6 * 4 + 1);
    expect(lenses.at(-1)).toMatchObject({ name: 'other', file: other });
  });

  test('draws a chart, and another in its place, but not in the place of something else', async () => {
    const chart = join(scratch(), 'chart.svg');
    const { code, err } = await runHere('survey', DUNLIN, '--chart', chart);
    expect({ code, err }).toEqual({ code: 0, err: `Wrote ${chart}.\n` });
    expect(readFileSync(chart, 'utf8')).toContain('copying lens');
    expect((await runHere('survey', DUNLIN, '--chart', chart)).code).toBe(0);
    writeFileSync(chart, 'precious');
    const refused = await runHere('survey', DUNLIN, '--chart', chart);
    expect(refused).toMatchObject({
      code: 2,
      out: '',
      err: `${chart}: is something else, and is left alone. Give another name.\n`,
    });
    expect(readFileSync(chart, 'utf8')).toBe('precious');
  });

  test('draws as many charts as it takes to be read', async () => {
    const folder = scratch();
    const { err } = await runHere(
      'survey',
      drawer(randomDrawer(50)),
      '--format',
      '5x7',
      '--chart',
      join(folder, 'c.svg'),
    );
    expect(err).toBe(`Wrote ${join(folder, 'c-1.svg')} to ${join(folder, 'c-2.svg')}.\n`);
    expect(Object.keys(snapshot(folder)).sort()).toEqual(['c-1.svg', 'c-2.svg']);
  });

  test.each([
    [['--sort', 'raech'], '--sort "raech" is not known. Did you mean reach?'],
    [['--sort', 'price'], 'Write reach, mass, sheets, travel, size, name, covers.'],
    [['--format', '5x8'], '--format "5x8" is neither in the table of formats nor in the list.'],
    [['--json', '--csv'], 'Give --json or --csv, not both.'],
    [['--chart', 'chart.pdf'], 'chart.pdf: a drawing is an SVG. Give a name that ends in .svg.'],
    [['nowhere.yaml'], 'nowhere.yaml: there is no such file or folder.'],
  ])('%j is refused', async (words, message) => {
    const { code, out, err } = await runHere('survey', DUNLIN, ...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(message);
    expect(existsSync('chart.pdf')).toBe(false);
  });

  test('a list that is wrong is refused with its place, and nothing is drawn', async () => {
    const file = drawer('plywood: { thickness: 4 mm }\nlenses:\n  - { name: one, focalLength: 210 mn }\n');
    const chart = `${file}.svg`;
    const { code, out, err } = await runHere('survey', file, '--chart', chart);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(`${file}:3:31  lenses[0].focalLength: "210 mn" is not a length.`);
    expect(existsSync(chart)).toBe(false);
  });

  test('a file that no list is as large as is refused', async () => {
    const { code, err } = await runHere('survey', drawer('#'.repeat(1024 * 1024 + 1)));
    expect(code).toBe(2);
    expect(err).toContain('larger than 1024 KB, so it is no list of lenses.');
  });
});

describe('on threads', () => {
  // five batches, so that each of three threads gets one and some get more
  const text = randomDrawer(9);
  const read = readLenses([{ file: 'drawer.yaml', text }]);
  if ('problems' in read) throw new Error('the list was refused');
  const given = { drawers: read.drawers, formats: null };
  const here = prepareSurvey(given);
  let alone = '';
  beforeAll(() => {
    alone = JSON.stringify(here.pairs(0, here.count));
  });

  test.each([1, 2, 3])('%i of them give what one thread gives alone', async (threads) => {
    // the module that finds its worker beside itself, as it is shipped
    const { surveyOnThreads } = (await import(
      compiled('cli/survey-threads.js')
    )) as typeof import('../../src/cli/survey-threads.js');
    const told: number[] = [];
    const pairs = await surveyOnThreads(given, { count: here.count, threads, onProgress: (done) => told.push(done) });
    expect(JSON.stringify(pairs)).toBe(alone);
    expect(told.at(-1)).toBe(1);
  });

  test('Ctrl-C ends them all', async () => {
    const file = drawer(randomDrawer(1000));
    const { code, out } = await ended(
      [process.execPath, compiled('cli/main.js'), 'survey', file],
      scratch(),
      (signal) => {
        setTimeout(() => signal('SIGINT'), 3000);
      },
    );
    expect({ code, out }).toEqual({ code: 130, out: '' });
  });

  test('the shipped program prints a large survey', async () => {
    // more pairs than are done on one thread
    const file = drawer(randomDrawer(18));
    const { code, out, err } = await tailboard(['survey', file, '--json'], scratch());
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(JSON.parse(out).pairs).toHaveLength(18 * 12);
  });
});
