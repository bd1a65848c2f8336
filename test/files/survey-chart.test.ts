import { describe, expect, test } from 'vitest';
import { pageSvg } from '../../src/files/page-svg.js';
import { surveyChart } from '../../src/files/survey-chart.js';
import type { Mark, Page } from '../../src/model/page.js';
import { wordsWidth } from '../../src/paper/words-width.js';
import { randomDrawer } from '../survey/random-drawer.js';
import { surveyOf } from '../survey/surveying.js';

const wordsOf = ({ marks }: Page) => marks.filter((mark) => mark.kind === 'words');
type Words = Extract<Mark, { kind: 'words' }>;

/** How light a tone is, from 0 to 255: what a print without colour leaves of it (weights of ITU-R BT.601, from memory). */
function lightness(tone: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => Number.parseInt(tone.slice(at, at + 2), 16));
  return 0.299 * r + 0.587 * g + 0.114 * b;
}

function spanOf({ at, text, size, anchor, bold }: Words): readonly [number, number] {
  const width = wordsWidth(text, { size, heavy: bold === true });
  const left = at.x - { start: 0, middle: width / 2, end: width }[anchor];
  return [left, left + width];
}

describe.each([3, 60])('the chart of %i lenses', (count) => {
  const survey = surveyOf(randomDrawer(count));
  const pages = surveyChart(survey);
  const all = pages.flatMap(wordsOf);

  test('names each lens once and each format on every page', () => {
    for (const { name } of survey.lenses) expect(all.filter(({ text }) => text === name)).toHaveLength(1);
    for (const page of pages)
      for (const { name } of survey.formats.slice(0, 3)) expect(wordsOf(page).map(({ text }) => text)).toContain(name);
  });

  test('nothing stands beyond its page, nor over its neighbour on the same line', () => {
    for (const page of pages) {
      const lines = new Map<number, Words[]>();
      for (const one of wordsOf(page)) {
        const [left, right] = spanOf(one);
        expect(left).toBeGreaterThanOrEqual(0);
        expect(right, one.text).toBeLessThanOrEqual(page.width);
        expect(one.at.y).toBeLessThanOrEqual(page.height);
        lines.set(one.at.y, [...(lines.get(one.at.y) ?? []), one]);
      }
      for (const line of lines.values()) {
        const spans = line.map(spanOf).sort(([a], [b]) => a - b);
        spans.slice(1).forEach(([left], i) => {
          expect(left).toBeGreaterThanOrEqual(spans[i]?.[1] ?? 0);
        });
      }
    }
  });

  test('every cell says its state in words, with the reach below where there is one', () => {
    const said = (text: string) => all.filter((one) => one.text === text).length;
    const states = (state: string) => survey.pairs.filter((pair) => pair.state === state).length;
    expect(said('covers')).toBe(states('covers'));
    expect(said('never')).toBe(states('never-covers'));
    expect(said('unknown')).toBe(states('coverage-unknown'));
    expect(said('no camera')).toBe(states('does-not-close'));
    expect(all.filter(({ text }) => text.startsWith('from '))).toHaveLength(states('covers-from'));
    expect(all.filter(({ text }) => /^to \d/.test(text))).toHaveLength(
      survey.pairs.filter(({ camera }) => camera).length,
    );
  });

  test('is an SVG', () => {
    for (const page of pages) expect(pageSvg(page)).toMatch(/^<svg .*What the lenses could become/s);
  });
});

test('dark letters are read on every tone', () => {
  const [page] = surveyChart(surveyOf(randomDrawer(20)));
  const tones =
    page?.marks.flatMap((mark) =>
      mark.kind === 'line' && mark.closed && mark.points.length === 4 ? [mark.fill ?? ''] : [],
    ) ?? [];
  expect(new Set(tones).size).toBeGreaterThanOrEqual(4);
  for (const tone of tones) expect(lightness(tone)).toBeGreaterThan(180);
});
