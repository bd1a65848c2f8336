import { describe, expect, test } from 'vitest';
import type { Sitting } from '../../src/design/design.js';
import { readDesign } from '../../src/design/read.js';
import { exposureCard } from '../../src/exposure/card.js';
import { exposureCardPage } from '../../src/files/exposure-card.js';
import type { ExposureCard } from '../../src/model/exposure-card.js';
import type { Mark } from '../../src/model/page.js';
import { wordsWidth } from '../../src/paper/words-width.js';
import { heron } from '../design/worked-designs.js';

const read = readDesign(heron, 'heron.yaml');
if ('problems' in read) throw new Error('Heron cannot be read');

const card = (sitting: Sitting, name = 'Heron'): ExposureCard => {
  const made = exposureCard({ ...read.design, name, sitting }, {}, { revision: 'ABC123', reaches: 1 / 2.5 });
  if ('refused' in made) throw new Error(made.refused.what);
  return made;
};
const pageOf = (given: ExposureCard) => {
  const page = exposureCardPage(given);
  if ('refused' in page) throw new Error(page.refused.what);
  return page;
};

const flash = {
  ...{ flashEnergy: 400, flashAperture: 16, flashDistance: 2000, flashSpeed: 100, flashMost: 1200 },
  ...{ aperture: 22, speed: 3 },
};
const meter = { meterTime: 2, meterAperture: 16, meterSpeed: 100, speed: 3, aperture: 16 };
const set = (name: string, factor: number) => ({ name, filters: [{ name, factor }] });
const sixSets = [
  set('Weiches Gegenlicht durch zwei Lagen Überblendung', 2.4),
  set('warm', 2.38),
  set('diffuse', 2.82),
  set('yellow <K2> & more', 2.5),
  set('green', 4),
  set('red', 8),
];
const tenDistances = [600, 700, 800, 900, 1000, 1200, 1500, 2000, 3000, 5000];

const shortCard = card({ ...flash, distances: [900, 1250, 40_000] });
const fullCard = card(
  { ...flash, paper: 'glänzendes Papier, Gradation 2', filterSets: sixSets, distances: tenDistances },
  'Große Rohrdommel mit einem Namen von annähernd sechzig Wörtern',
);
const cards: readonly { readonly what: string; readonly given: ExposureCard }[] = [
  { what: 'a short one by flash', given: shortCard },
  { what: 'one without a reading', given: card({ subject: 3000 }) },
  {
    what: 'one by a meter, with two sets',
    given: card({ ...meter, filterSets: sixSets.slice(0, 2), distances: [900, 3000] }),
  },
  { what: 'ten distances, six sets, a long name and a wide one', given: fullCard },
];

type Words = Extract<Mark, { kind: 'words' }>;
const wordsOn = (marks: readonly Mark[]): readonly Words[] => marks.filter((mark) => mark.kind === 'words');

/** Where ink of a line of words may be; in DejaVu Sans, which is wide, letters reach from 0.24 below to 0.76 above. */
function boxOf({ at, text, size, anchor, bold }: Words) {
  const width = wordsWidth(text, { size, heavy: bold === true });
  const left = at.x - { start: 0, middle: 0.5, end: 1 }[anchor] * width;
  return { left, right: left + width, top: at.y - 0.76 * size, bottom: at.y + 0.24 * size };
}

/** A point of type, mm. */
const POINT = 25.4 / 72;

describe.each(cards)('$what', ({ given }) => {
  const page = pageOf(given);
  const words = wordsOn(page.marks);

  test('stands on a page of A5 with a margin on each side', () => {
    expect([page.width, page.height]).toEqual([148, 210]); // ISO 216: A5 is 148 mm × 210 mm
    for (const mark of words) {
      const { left, right, top, bottom } = boxOf(mark);
      expect(Math.min(left, 148 - right, top, 210 - bottom), mark.text).toBeGreaterThan(7.5);
    }
  });

  test('no words lie on others', () => {
    const boxes = words.filter(({ text }) => text !== '').map((mark) => ({ text: mark.text, ...boxOf(mark) }));
    for (const [i, a] of boxes.entries())
      for (const b of boxes.slice(i + 1)) {
        const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        expect(across > 0.01 && down > 0.01, `${a.text} on ${b.text}`).toBe(false);
      }
  });

  test('is legible: nothing below 6.5 pt, dark on white', () => {
    for (const { size, colour } of words) {
      expect(size / POINT).toBeGreaterThan(6.5 - 1e-9);
      expect(Math.max(...[1, 3, 5].map((k) => Number.parseInt(colour.slice(k, k + 2), 16)))).toBeLessThan(0x70);
    }
  });

  test('has lines to write on for paper, baths, times and volumes', () => {
    for (const note of ['Paper, batch', 'Baths, °C', 'Times', 'Volumes']) {
      const own = words.find(({ text }) => text === note);
      if (own === undefined) throw new Error(`${note} is missing`);
      const ruled = page.marks.some(
        (mark) =>
          mark.kind === 'line' &&
          mark.points.every(({ y }) => y > own.at.y && y < own.at.y + 2) &&
          mark.stroke !== undefined,
      );
      expect(ruled, note).toBe(true);
    }
  });

  test('figures of a column end on one line', () => {
    const figures = words.filter(({ text, anchor }) => anchor === 'end' && /^(\d+ × )?[\d.:∞]+( \?)?$/.test(text));
    const ends = new Set(figures.map(({ at }) => at.x.toFixed(3)));
    expect(figures.length).toBeGreaterThanOrEqual(given.rows.length * ends.size);
    for (const end of ends)
      expect(figures.filter(({ at }) => at.x.toFixed(3) === end).length % given.rows.length).toBe(0);
  });
});

const textOf = (given: ExposureCard) =>
  wordsOn(pageOf(given).marks)
    .map(({ text }) => text)
    .join(' ');

describe('what a card says', () => {
  test('what is set, what it was carried over from, and whose it is', () => {
    const text = textOf(card({ ...flash, paper: 'glossy', process: 'reversal', lampDistance: 1500, distances: [900] }));
    for (const said of [
      'Heron',
      'revision ABC123',
      '210 mm f/6.3 process lens',
      'f/22',
      'speed 3',
      'glossy',
      'reversal',
    ])
      expect(text).toContain(said);
    expect(text).toContain('From a flash of 400 J at 2 m: f/16 for speed 100. The lamp stands at 1.5 m.');
    expect(text).toContain('1200 J at most');
  });

  test('the charge of a flash where there is one, chemicals and whose word goes first always', () => {
    const [byFlash, byMeter] = [
      textOf(card({ ...flash, distances: [900] })),
      textOf(card({ ...meter, distances: [900] })),
    ];
    expect(byFlash).toContain('never open one');
    expect(byMeter).not.toContain('never open one');
    for (const text of [byFlash, byMeter]) {
      expect(text).toContain('Chemicals: gloves');
      expect(text).toContain("The makers' instructions and local rules go before");
    }
  });

  test('a time of which the loss is not known with a question mark', () => {
    expect(textOf(card({ ...meter, distances: [900] }))).toMatch(/\d \?/);
    expect(textOf(card({ ...meter, reciprocity: 1.3, distances: [900] }))).not.toMatch(/\d \?/);
  });

  test('the energy of each pop, and how many of them', () => {
    // V5.38 [common practice, no source]: 120000 Ws in 50 pops of 2400, at life size with a 210 mm lens
    const sitting = { ...flash, flashMost: 2400, aperture: 32, lampDistance: 1500, distances: [420] };
    expect(textOf(card(sitting))).toMatch(/pops × J .*50 × 2400/);
    expect(textOf(card(sitting))).not.toContain('120000');
    expect(textOf(card({ ...sitting, flashMost: undefined }))).toMatch(/J in all .*120000/);
  });

  test('the times of a column with their points below each other, the shortest to 2 %', () => {
    const times = (meterTime: number, distances: readonly number[], reciprocity = 1) =>
      wordsOn(pageOf(card({ ...meter, meterTime, speed: 100, reciprocity, distances })).marks)
        .filter(({ text, anchor, at }) => anchor === 'end' && /^[\d./]+$/.test(text) && at.x > 139)
        .map(({ text }) => text);
    // f = 210 mm: (1 + 1/2)² at 630 mm, (1 + 1/(u/f − 1))² farther off; of 8.17 s
    expect(times(8.17, [630, 2520, 5000])).toEqual(['18.4', '9.7', '8.9']);
    expect(times(50, [630, 2520])).toEqual(['113', '60']);
    expect(times(1 / 30, [630, 2520])).toEqual(['1/13', '1/25']);
  });

  test('that reciprocity is in its times, where it is', () => {
    const said = 'Reciprocity is in the times';
    expect(textOf(card({ ...meter, reciprocity: 1.3, distances: [900] }))).toContain(said);
    expect(textOf(card({ ...meter, distances: [900] }))).not.toContain(said);
    expect(textOf(card({ ...meter, meterTime: 0.01, speed: 100, reciprocity: 1.3, distances: [900] }))).not.toContain(
      said,
    );
    expect(textOf(card({ ...flash, distances: [900] }))).not.toContain(said);
  });

  test('from where a distance counts, and what the film stands behind', () => {
    const text = textOf(card({ ...flash, distances: [900] }));
    // f 210 mm, flange distance 203.5 mm: a thin lens stands 6.5 mm before the seat
    expect(text).toContain('Distances count from the front principal plane, about 7 mm before the lens seat.');
    expect(text).toContain('lens to eyes');
    expect(text).toContain('film past ∞');
  });

  test('a short name of a set unbroken over its column, a long one cut there and whole below', () => {
    const heads = (given: ExposureCard) =>
      wordsOn(pageOf(given).marks).flatMap(({ text, anchor }) => (anchor === 'end' ? [text] : []));
    const filterSets = [set('deep', 16), set('deepest', 1e4)];
    expect(
      heads(card({ ...meter, meterTime: 1 / 30, speed: 100, reciprocity: 1.3, filterSets, distances: [900] })),
    ).toEqual(expect.arrayContaining(['deep', 'deepest']));
    expect(heads(fullCard)).toContainEqual(expect.stringMatching(/^\S+.*…$/));
    expect(textOf(fullCard)).toContain('Weiches Gegenlicht durch zwei Lagen Überblendung: ');
  });

  test('the letters are as large as the page allows', () => {
    const sizeOf = (given: ExposureCard) => wordsOn(pageOf(given).marks).find(({ text }) => text === 'm')?.size ?? 0;
    expect(sizeOf(shortCard) / POINT).toBeCloseTo(8.5, 9);
    expect(sizeOf(fullCard) / POINT).toBeLessThan(8);
  });
});

test('sets that no page can hold are refused as such', () => {
  const many = Array.from({ length: 24 }, (_, i) => set(`set number ${i}`, 1.5 + i));
  const refused = exposureCardPage(card({ ...flash, filterSets: many, distances: [900] }));
  expect(refused).toEqual({
    refused: { what: expect.stringContaining('24 filter sets'), accepted: expect.stringContaining('fewer sets') },
  });
});
