import { mkdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { plainBook, saidUnder } from '../book/plain-book.js';
import { keptDesign } from '../designs/kept-design.js';
import { readPdf } from '../files/read-pdf.js';
import { type Ended, scratch, snapshot, tailboard } from './scratch.js';

/*
 * Ten Herons, as somebody makes them: what stands on the list is counted and reckoned here anew, from the plan of one
 * camera, the sheets as they lie, and the price file as a plain YAML reader has it.
 */

const designs = join(import.meta.dirname, '../../designs');
const COPIES = 10;

interface Run {
  readonly hardware: readonly { readonly name: string; readonly size: string; readonly total: number; readonly spares: number; readonly wanted: number }[]; // biome-ignore format: one line
  readonly sheets: readonly { readonly material: string; readonly buy: number; readonly sheets: number }[];
  readonly prints: readonly { readonly wanted: number; readonly mass: number }[];
  readonly laser: { readonly minutes: number };
  readonly cost: { readonly total: number; readonly perKit: number; readonly lines: readonly { readonly amount: number }[]; readonly notPriced: readonly string[]; readonly notUsed: readonly string[] }; // biome-ignore format: one line
  readonly kits: readonly { readonly kit: number; readonly parts: readonly { readonly id: string; readonly pieces: readonly { readonly instance: number; readonly sheet: string }[] }[] }[]; // biome-ignore format: one line
}

interface Plan {
  readonly parts: readonly { readonly id: string; readonly count: number; readonly material: string }[];
  readonly hardware: readonly { readonly name: string; readonly size: string; readonly count: number }[];
}

interface Layouts {
  readonly layouts: readonly { readonly material: string; readonly sheets: readonly { readonly file: string; readonly estimatedMinutes: number; readonly parts: readonly { readonly id: string; readonly instance: number }[] }[] }[]; // biome-ignore format: one line
}

interface Priced {
  readonly spares: string;
  readonly sheets: readonly { readonly material: string; readonly price: number }[];
  readonly bought: readonly { readonly name: string; readonly size?: string; readonly price?: number; readonly pack?: number; readonly spares?: string }[]; // biome-ignore format: one line
  readonly printed: readonly { readonly perKg: number }[];
  readonly laser: { readonly perMinute: number };
}

let folder = '';
let made: Ended;
let run: Run;
let plan: Plan;
let layouts: Layouts;
const prices = parse(readFileSync(join(designs, 'class/prices.yaml'), 'utf8')) as Priced;

beforeAll(async () => {
  folder = realpathSync(await mkdtemp(join(tmpdir(), 'tailboard-test-')));
  const heron = join(designs, 'heron.yaml');
  made = await tailboard(
    ['build', heron, '--copies', `${COPIES}`, '--prices', join(designs, 'class/prices.yaml'), '--effort', '0'],
    folder,
  );
  const read = (path: string) =>
    JSON.parse(readFileSync(join(folder, 'output/heron-10-kits', path), 'utf8')) as unknown;
  run = read('kits.json') as Run;
  layouts = read('sheets/layout.json') as Layouts;
  plan = JSON.parse((await tailboard(['plan', heron, '--json'], folder)).out) as Plan;
}, 600_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const percentOf = (text: string) => Number(/^[\d.]+/.exec(text)?.[0]);
const onSheets = () => layouts.layouts.flatMap(({ sheets }) => sheets.flatMap(({ parts }) => parts));

describe('ten Herons', () => {
  test('are written into a folder of their own', () => {
    expect(made.code).toBe(0);
    expect(made.out).toContain('into output/heron-10-kits.');
  });

  test('each on sheets of its own, for nobody looked for better: that is told', () => {
    const sheets = run.kits.flatMap(({ parts }) => [
      ...new Set(parts.flatMap(({ pieces }) => pieces.map(({ sheet }) => sheet))),
    ]);
    expect(new Set(sheets).size).toBe(sheets.length);
    expect(made.out).toContain('With effort 0 each kit lies on sheets of its own.');
  });

  test('have ten times every cut piece on their sheets, each under a number of its own', () => {
    const found = onSheets().map(({ id, instance }) => `${id}.${instance}`);
    expect(new Set(found).size).toBe(found.length);
    const cut = plan.parts.filter(({ material }) => layouts.layouts.some((one) => one.material === material));
    const wanted = cut.flatMap(({ id, count }) => Array.from({ length: COPIES * count }, (_, n) => `${id}.${n + 1}`));
    expect([...found].sort()).toEqual([...wanted].sort());
    expect(found.length).toBeGreaterThan(600);
  });

  test('have on each packing list one kit, each piece on the sheet where it lies', () => {
    const at = new Map(
      layouts.layouts.flatMap(({ sheets }) =>
        sheets.flatMap(({ file, parts }) => parts.map(({ id, instance }) => [`${id}.${instance}`, file] as const)),
      ),
    );
    const given = run.kits.flatMap(({ parts }) =>
      parts.flatMap(({ id, pieces }) =>
        pieces.map((piece) => [`${id}.${piece.instance}`, `${piece.sheet}.svg`] as const),
      ),
    );
    expect(given.filter(([piece, sheet]) => at.get(piece) !== sheet)).toEqual([]);
    expect(new Set(given.map(([piece]) => piece)).size).toBe(onSheets().length);
    const kinds = run.kits.map(({ parts }) => parts.map(({ id, pieces }) => `${id} ${pieces.length}`).join());
    expect(new Set(kinds).size).toBe(1);
    expect(kinds).toHaveLength(COPIES);
  });

  test('have ten times the hardware, and the spares that the price file asks for', () => {
    const [listed, choice] = [run.hardware.slice(0, plan.hardware.length), run.hardware.slice(plan.hardware.length)];
    const wanted = plan.hardware.map(({ name, size, count }) => {
      const entries = prices.bought.filter((entry) => entry.name === name);
      const entry = entries.find((one) => one.size !== undefined && size.startsWith(one.size)) ?? entries.find((one) => one.size === undefined); // biome-ignore format: one line
      const percent = percentOf(entry?.spares ?? prices.spares);
      return { name, size, total: COPIES * count + Math.ceil(Math.round(COPIES * count * percent) / 100) };
    });
    expect(listed.map(({ name, size, total }) => ({ name, size, total }))).toEqual(wanted);
    // what the register is set with, as the book of one camera has it
    const book = saidUnder(plainBook(keptDesign('heron'), { laidOut: false }).pages, 'Bought parts');
    expect(choice.length).toBeGreaterThan(0);
    expect(book.match(/shim, to choose from/g)).toHaveLength(choice.length);
    for (const { name, size, wanted: all } of choice)
      expect(book).toContain(`${all / COPIES} ${name}, to choose from ${size}`);
  });

  test('cost what the list says', () => {
    const sheets = run.sheets.map(({ material, buy }) => {
      const entry = prices.sheets.find((one) => one.material === material || one.material === material.split('-')[0]);
      expect(entry).toBeDefined();
      return buy * (entry?.price ?? 0);
    });
    const bought = prices.bought.map(({ name, size, price = 0, pack = 1 }) => {
      const others = prices.bought.filter((one) => one.name === name && one.size !== undefined && one.size !== size);
      const own = run.hardware.filter((line) => {
        if (line.name !== name) return false;
        if (size !== undefined) return line.size.startsWith(size);
        return !others.some((one) => line.size.startsWith(one.size ?? ''));
      });
      expect(own.length).toBeGreaterThan(0);
      return Math.ceil(own.reduce((sum, { total }) => sum + total, 0) / pack) * price;
    });
    const mass = run.prints.reduce((sum, print) => sum + print.wanted * print.mass, 0);
    const printed = (Math.round(1000 * mass) / 1000) * (prices.printed[0]?.perKg ?? 0);
    const minutes = layouts.layouts.flatMap((one) => one.sheets.map((sheet) => Math.max(1, Math.round(sheet.estimatedMinutes)))); // biome-ignore format: one line
    const laser = minutes.reduce((sum, each) => sum + each, 0) * prices.laser.perMinute;
    const amounts = [...sheets, ...bought, printed, laser].map((amount) => Math.round(100 * amount + 1e-6) / 100);
    const total = amounts.reduce((sum, amount) => sum + amount, 0);
    expect(run.cost.total).toBeCloseTo(total, 6);
    expect(run.cost.perKit).toBeCloseTo(total / COPIES, 1);
    expect(made.out).toContain(`Cost: ${total.toFixed(2)} EUR for all`);
    // what the example leaves out on purpose
    expect(run.cost.notPriced).toEqual(['filter gels 75 × 75', '210 mm f/6.3 process lens']);
    expect(run.cost.notUsed).toEqual([]);
  });

  test('are told of on paper: the page for the class is one page, and each kit has its list', async () => {
    const { pages } = await readPdf(readFileSync(join(folder, 'output/heron-10-kits/kits.pdf')));
    const words = pages.map(({ lines }) => lines.map(({ text }) => text).join(' '));
    expect(words[0]).toContain('10 kits for the class');
    for (const hazard of ['Laser:', 'Glass:', 'Glue and paint:', 'Contact adhesive'])
      expect(words[0]).toContain(hazard);
    expect(words[1]).toContain('What it costs');
    expect(words[1]).toContain(run.cost.total.toFixed(2));
    for (let kit = 1; kit <= COPIES; kit++) expect(words.join(' ')).toContain(`Kit ${kit} of ${COPIES}`);
  });
});

describe('a run that is called wrongly', () => {
  const wrong = async (words: readonly string[], files: Readonly<Record<string, string>> = {}) => {
    const place = scratch();
    mkdirSync(join(place, 'x'), { recursive: true });
    for (const [name, text] of Object.entries(files)) writeFileSync(join(place, name), text);
    const before = snapshot(place);
    const ended = await tailboard(['build', join(designs, 'heron.yaml'), ...words], place);
    expect(snapshot(place)).toEqual(before);
    return ended;
  };

  test.each([['0'], ['ten'], ['2.5'], ['-1'], ['101'], ['']])('%j is no number of kits', async (copies) => {
    const { code, err } = await wrong([`--copies=${copies}`]);
    expect(code).toBe(2);
    expect(err).toContain(`--copies: ${copies} is not a whole number from 1 to 100.`);
  });

  test('prices without kits are asked what for', async () => {
    const { code, err } = await wrong(['--prices', 'p.yaml'], { 'p.yaml': 'currency: EUR\n' });
    expect([code, err]).toEqual([
      2,
      '--prices is for a run of kits: say how many with --copies 10, or --copies 1 for one.\n',
    ]);
  });

  test('a mistake in the price file is told with its place', async () => {
    const { code, err } = await wrong(['--copies', '2', '--prices', 'p.yaml'], {
      'p.yaml': 'currency: EUR\nspares: some\n',
    });
    expect(code).toBe(2);
    expect(err).toMatch(/^p\.yaml:2:9 {2}spares: "some" is not a percentage\./);
  });

  test('a price file that is not there is named', async () => {
    const { code, err } = await wrong(['--copies', '2', '--prices', 'gone.yaml']);
    expect(code).toBe(2);
    expect(err).toContain('gone.yaml');
  });

  test('a camera that breaks a rule is refused, and nothing is written', async () => {
    const { code, err } = await tailboard(
      ['build', join(designs, 'kiwi.yaml'), '--copies', '2', '--effort', '0'],
      scratch(),
    );
    expect(code).toBe(1);
    expect(err).toContain('Not built, nothing written: ');
  }, 300_000);
});
