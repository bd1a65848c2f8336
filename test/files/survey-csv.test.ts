import { describe, expect, test } from 'vitest';
import { surveyCsv } from '../../src/files/survey-csv.js';
import type { SurveyDocument } from '../../src/model/survey.js';
import { randomDrawer } from '../survey/random-drawer.js';
import { surveyOf } from '../survey/surveying.js';

/** A table by RFC 4180, section 2: fields in quotes may hold commas, breaks, and quotes that are doubled. */
function readCsv(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [[]];
  let field = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i] ?? '';
    if (quoted && sign === '"' && text[i + 1] === '"') {
      field += '"';
      i++;
    } else if (sign === '"') quoted = !quoted;
    else if (!quoted && (sign === ',' || (sign === '\r' && text[i + 1] === '\n'))) {
      rows.at(-1)?.push(field);
      field = '';
      if (sign === '\r') {
        rows.push([]);
        i++;
      }
    } else field += sign;
  }
  if (quoted || field !== '' || rows.at(-1)?.length !== 0) throw new Error('the table does not end with a line break');
  return rows.slice(0, -1);
}

const survey = surveyOf(randomDrawer(20));
const [header = [], ...rows] = readCsv(surveyCsv(survey));
const cell = (row: readonly string[], column: string) => row[header.indexOf(column)];

describe('the table of a survey', () => {
  test('has a header and a row for each pair, all of the same length', () => {
    expect(header.slice(0, 2)).toEqual(['lens', 'format']);
    expect(new Set(header).size).toBe(header.length);
    expect(rows).toHaveLength(survey.pairs.length);
    for (const row of rows) expect(row).toHaveLength(header.length);
  });

  test('says the same as the document, to a millionth, and nothing where there is nothing', () => {
    survey.pairs.forEach(({ lens, format, state, camera, reachable, asked }, i) => {
      const row = rows[i] ?? [];
      expect([cell(row, 'lens'), cell(row, 'format'), cell(row, 'state')]).toEqual([lens, format, state]);
      const figures = {
        reachable_magnification: reachable,
        asked_magnification: asked,
        travel_mm: camera?.travel ?? null,
        mass_kg: camera?.mass ?? null,
      };
      for (const [column, value] of Object.entries(figures))
        if (value === null) expect(cell(row, column)).toBe('');
        else expect(Number(cell(row, column))).toBeCloseTo(value, 6);
    });
  });

  test('no number has an exponent, and names of columns have their units', () => {
    for (const row of rows) for (const field of row) expect(field).not.toMatch(/^-?[\d.]+e/);
    for (const column of ['travel_mm', 'mass_kg', 'plywood_area_mm2']) expect(header).toContain(column);
  });
});

describe('names', () => {
  const called = (name: string): SurveyDocument => {
    const [lens, ...lenses] = survey.lenses;
    const [pair] = survey.pairs;
    if (lens === undefined || pair === undefined) throw new Error('there is no pair');
    return { ...survey, lenses: [{ ...lens, name }, ...lenses], pairs: [{ ...pair, lens: name }] };
  };
  const field = (name: string) => readCsv(surveyCsv(called(name)))[1]?.[0];

  test.each(['6 in, brass', 'the "good" one', 'a\r\nb', "d'or", 'f/9 = slow'])('%j comes back as it was', (name) =>
    expect(field(name)).toBe(name),
  );

  test.each(['=1+1', '+1', '-1 dioptre', '@SUM(A1)', ' =1', '\t=1'])('%j becomes no formula', (name) =>
    expect(field(name)).toBe(`'${name}`),
  );

  test('a lens with such a name keeps its figures', () =>
    expect(readCsv(surveyCsv(called('=1+1')))[1]?.[2]).toBe(String(survey.lenses[0]?.focalLength)));
});
