import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { explain } from '../../src/explain/explain.js';
import { explainPage, explanationJson, figureList } from '../../src/files/explain-page.js';
import type { Colour } from '../../src/files/plan-page.js';
import type { Explanation } from '../../src/model/explanation.js';
import { designOf } from '../design/reading.js';
import { evaluate } from '../explain/evaluate.js';

const same = (text: string) => text;
const plain: Colour = { heading: same, faint: same, error: same, warning: same, note: same };

const textOf = (name: string) => readFileSync(join(import.meta.dirname, `../../designs/${name}.yaml`), 'utf8');

const known = new Map<string, Explanation>();

function explanationOf(name: string, figure: string): Explanation {
  const before = known.get(`${name} ${figure}`);
  if (before) return before;
  const text = textOf(name);
  const explained = explain(text, designOf(text), figure);
  if (explained.kind !== 'explanation') throw new Error(explained.kind);
  known.set(`${name} ${figure}`, explained.explanation);
  return explained.explanation;
}

const page = (name: string, figure: string, width = 100) =>
  explainPage(explanationOf(name, figure), { width, colour: plain });

describe('the rear box of Heron as a page', () => {
  const text = page('heron', 'slide.rearBoxInside');

  test('value, formula and numbers one under another', () => {
    expect(text).toMatch(/^rear box, inside {2}slide\.rearBoxInside\n {2}188\.15 mm\n/);
    expect(text).toContain('  W_ri = i_h + 2 (g + e + r)\n       = 171.4 + 2 × (2 + 0.3 + 6.075)\n');
  });

  test('the numbers as printed give the value as printed', () => {
    const numbers = /^ {7}= (.*)$/m.exec(text)?.[1] ?? '';
    expect(evaluate(numbers)).toBeCloseTo(188.15, 9);
  });

  test('each input with where it comes from', () => {
    expect(text).toMatch(/i_h +171\.4 mm +long side of the image \(format 5x7: nominal less 6\.4 each way/);
    expect(text).toMatch(/r +6\.075 mm +least width of the turning ring\n += max\(6, 1\.5 t\)\n +t +4\.05 mm/);
    expect(text).toContain('(plywood.thickness)');
  });

  test('what governs, what is next and how far, and what moves it', () => {
    expect(text).toMatch(/Governs\n +the long side of the image/);
    expect(text).toMatch(
      /Next behind it\n +the front panel .*: 141\.6 mm; it governs once the\n +first is 46\.55 mm less/,
    );
    expect(text).toMatch(/format, long side of the image +171\.4 mm +\+1 mm: \+1 mm +−1 mm: −1 mm/);
    expect(text).toMatch(/plywood\.thickness +4\.05 mm +\+0\.1 mm: \+0\.3 mm +−0\.1 mm: −0\.15 mm/);
  });

  test.each([80, 100])('fits %i columns', (width) => {
    const lines = page('heron', 'slide.reachableMagnification', width).split('\n');
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(width);
  });
});

test('magnifications as the trade says them', () => {
  const text = page('heron', 'slide.reachableMagnification');
  expect(text).toMatch(/\n {2}1:2\.145\n/); // 210/97.9, to the thousandth that small steps are told to
  expect(text).toMatch(/lens\.flangeDistance +203\.5 mm +\+1 mm: 1:2\.1\d+, nearer /);
  expect(text).toMatch(/\d other keys move it, each less/);
});

test('a figure that there is not, and a word', () => {
  expect(page('curlew', 'optics.coversFrom')).toMatch(/none: the design does not give lens\.coverage\n$/);
  const text = page('heron', 'slide.passesInsideRearBox');
  expect(text).toMatch(/\n {2}yes; 40\.975 mm decides\n/); // 188.15/2 − (100.2/2 + 3)
});

test('equal claims both govern', () => {
  expect(page('heron', 'slide.farthest')).toMatch(/the bare glass: 281\.7 mm; the same: both govern/);
});

test('the list gives each figure a line of its own, with value and words', () => {
  const text = textOf('heron');
  const explained = explain(text, designOf(text));
  if (explained.kind !== 'list') throw new Error(explained.kind);
  const list = figureList(explained.list, { width: 100, colour: plain });
  expect(list).toMatch(/^slide\.rearBoxInside +188\.15 mm +rear box, inside$/m);
  expect(list).toMatch(/^slide\.passesInsideRearBox +yes: whether the lens passes inside the rear$/m);
  expect(list).toMatch(/^tailboard\.indexOffsets\.processing holder +18\.2 mm/m);
});

test('as JSON the same, numbers without the last bits', () => {
  const { value, formula, changes } = JSON.parse(explanationJson(explanationOf('heron', 'slide.rearBoxInside')));
  expect(value).toBe(188.15);
  expect(formula.symbols).toBe('i_h + 2 (g + e + r)');
  expect(changes.map(({ path, more }: { path: string; more: number }) => [path, more])).toEqual([
    ['format', 1],
    ['plywood.thickness', 0.3],
  ]);
});
