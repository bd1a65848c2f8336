import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { benchCsv, benchSheet, benchYaml } from '../../src/forms/bench-sheet.js';
import { readBench } from '../../src/forms/read-bench.js';
import { type BenchSheet, benchColumns } from '../../src/model/bench-sheet.js';

const bench = readFileSync(join(import.meta.dirname, '../../designs/dunlin/bench.yaml'), 'utf8');

const sheetOf = (text: string, file: string): BenchSheet => {
  const read = benchSheet(text, file);
  if ('problems' in read) throw new Error(read.problems.map(({ what }) => what).join(' '));
  return read.sheet;
};
const readingsOf = (text: string, file: string) => {
  const read = readBench(text, file);
  if ('problems' in read) throw new Error(read.problems.map(({ what }) => what).join(' '));
  return read.bench;
};

test('the readings of the example stand in cells as they were written', () => {
  const sheet = sheetOf(bench, 'bench.yaml');
  expect(sheet.readings[3]).toEqual({ image: '79.5 mm', object: '240 mm', distance: '266.8 mm' });
  expect(sheet.pupils.front).toBe('23.8 mm, 23.6 mm, 23.9 mm, 23.7 mm');
  expect(sheet.coverage[2]).toEqual({ diameter: '404 mm', magnification: '1:1', distance: '' });
});

test('what is written from the cells is read as the same readings', () => {
  const sheet = sheetOf(bench, 'bench.yaml');
  expect(readingsOf(benchYaml(sheet), 'again.yaml')).toEqual(readingsOf(bench, 'bench.yaml'));
  expect(readingsOf(benchCsv(sheet), 'again.csv').readings).toEqual(readingsOf(bench, 'bench.yaml').readings);
});

test('a table with a mistake in a cell is laid out all the same, so that it can be mended there', () => {
  const { readings } = sheetOf('magnification,distance (in)\n1:3,10.5\n1:2,12x mm\n', 'table.csv');
  expect(readings).toEqual([
    { magnification: '1:3', distance: '10.5 in' },
    { magnification: '1:2', distance: '12x mm' },
  ]);
});

test.each([
  ['magnification,distanse\n1:3,200\n', 'a.csv', 'distance'],
  ['readings: [{ magnification: 1:3, distance: 200 mm, colour: red }]\n', 'a.yaml', 'not known'],
  ['readings: { magnification: 1:3 }\n', 'a.yaml', 'a group of keys'],
  ['readings: [\n', 'a.yaml', 'closed'],
])('what no cell is for is told: %s', (text, file, word) => {
  const read = benchSheet(text, file);
  const told = 'problems' in read ? read.problems.map(({ what, accepted }) => `${what} ${accepted}`).join(' ') : '';
  expect(told).toContain(word);
});

test('whatever is typed into a cell comes back from YAML as what was typed', () => {
  const typed = fc.oneof(
    fc.string({ maxLength: 12 }),
    fc.constantFrom('1:3', '±0.5 mm', '3/8"', 'no', '0x10', '1e3', 'a: b', '12,5 mm', '- 3', '#4', '.5', '~', "7'"),
  );
  const row = fc.record(Object.fromEntries(benchColumns.map((key) => [key, typed])), { requiredKeys: ['distance'] });
  fc.assert(
    fc.property(typed, fc.array(row, { minLength: 1, maxLength: 3 }), (name, readings) => {
      const sheet = {
        name,
        readings,
        pupils: { front: '', rear: '' },
        coverage: [],
        hole: { diameter: '', enlargement: '' },
      };
      const back = parse(benchYaml(sheet)) as { name?: unknown; readings: Record<string, unknown>[] };
      const kept = (value: unknown) => (value === undefined ? '' : String(value));
      const plain = (text: string) => (/^\d+(\.\d+)?$/.test(text.trim()) ? String(Number(text)) : text.trim());
      expect(kept(back.name)).toBe(plain(name));
      for (const [i, one] of readings.entries())
        for (const [key, text] of Object.entries(one)) expect(kept(back.readings[i]?.[key])).toBe(plain(text ?? ''));
    }),
    { numRuns: 300, seed: 7 },
  );
});

test.each(['305', '1e3', 'null', 'true', '9 in triplet', 'a # b'])('a lens may be called %s', (name) => {
  const sheet = { ...sheetOf(bench, 'bench.yaml'), name };
  expect(readingsOf(benchYaml(sheet), 'again.yaml').name).toBe(name);
});
