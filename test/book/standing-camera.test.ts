import { describe, expect, test } from 'vitest';
import { otherScaleText } from '../../src/book/standing-camera.js';
import { recordOfDesign } from '../../src/compare-cameras.js';
import { changed, designOf } from '../design/reading.js';
import { heron } from '../design/worked-designs.js';
import { keptDesign, secondLens } from '../designs/kept-design.js';
import { chapterPages, plainBook, saidOn, saidUnder } from './plain-book.js';

/*
 * Teal stands, with a lens of 180 mm. Its second lens, of 210 mm, needs another hole in board and plug and another clamp; the
 * boxes stay, and so do the keepers, with the scale of the first lens on them.
 */
const since = recordOfDesign(keptDesign('teal'));
const old = since.plan.revision;
const { pages, plan, steps } = plainBook(secondLens(), { since });
const whole = plainBook(keptDesign('teal'));

describe('the book of what is built since', () => {
  test('says on its cover which revisions fit, and which lines not to trust', () => {
    const [cover] = pages.slice(0, 1).map((page) => saidOn([page]));
    expect(cover).toContain(`Revision ${plan.revision}, built from Teal, revision ${old}, which stands already.`);
    expect(cover).not.toContain('Parts of another revision do not fit');
    expect(cover).toContain('T3 and T3S are kept');
    expect(saidOn(whole.pages.slice(0, 1))).toContain('Parts of another revision do not fit.');
  });

  test('names in its first chapter what is cut again, what is kept and what is to be trusted on it', () => {
    const said = saidOn(chapterPages(pages, 'At the camera that stands').slice(0, 1));
    for (const words of [
      `for Teal, revision ${old}, which stands already`,
      'F6 lens board other edges or holes',
      'lens-clamp lens clamp another shape',
      'T3, T3S bear other lines or words',
      'tailboard part <design file> T3 T3S',
      // pressed into the old board and plug
      '1 × dowel 5 mm in board and plug',
      '1 × dowel 6 mm in board and plug',
    ])
      expect(said).toContain(words);
  });

  test('tells which steps to do: those of the board and its lens, that in which it is a gauge, and the one that puts it in', () => {
    const said = saidUnder(pages, 'Which steps to do');
    const told = [...said.matchAll(/Step (\d+), /g)].map(([, number]) => Number(number));
    const of = (title: string) => steps.find((step) => step.title === title)?.number;
    expect(told).toEqual(['Lens board', 'What the retainers slide on, round the lens board', 'Lens on its board', 'Lens board into the camera, and the retainers over it'].map(of)); // biome-ignore format: one line
    for (const { number, title } of steps) {
      const page = saidUnder(pages, `Step ${number}. ${title}`);
      expect({ title, done: page.includes('Done already at the camera that stands.') }).toEqual({
        title,
        done: !told.includes(number),
      });
    }
  });

  test('warns at the keepers, and wherever the scale is read', () => {
    expect(saidUnder(pages, `Step 5. Keepers on the rails`)).toContain(
      'T3 and T3S: kept, with other lines than drawn.',
    );
    expect(saidUnder(pages, 'The focus scale')).toContain(
      `T3 and T3S are kept from Teal, revision ${old}, and bear the scale of that camera. Every distance, magnification and stop read there is wrong for this one.`,
    );
    expect(saidUnder(pages, 'From the first look to the picture')).not.toContain('Read the focus scale.');
    expect(saidUnder(whole.pages, 'From the first look to the picture')).toContain('Read the focus scale.');
  });

  test('speaks of numbers to be written on parts of its sheets alone', () => {
    // F10 is too small for its number, and stands
    expect(saidUnder(whole.pages, 'Cutting and sorting the sheets')).toContain('F10 bears no engraved number');
    expect(saidUnder(pages, 'Cutting and sorting the sheets')).not.toContain('no engraved number');
  });
});

test('index lines of an earlier camera are warned of as its scale is, and other lines are no matter of the scale', () => {
  const said = (...otherLines: readonly string[]) =>
    otherScaleText({ name: 'Teal', revision: 'ABC234', recut: [], sawn: [], kept: [], otherLines, withoutLine: [], hardware: null, fast: [] }, { scale: ['T3', 'T3S'], index: ['R4U'] })?.[0]; // biome-ignore format: one line
  expect(said('R4U')).toContain('R4U is kept from Teal, revision ABC234, and bears the index lines of that camera.');
  expect(said('T3', 'R4U')).toContain('T3 and R4U are kept');
  expect(said('T3', 'R4U')).toContain('the scale and the index lines of that camera');
  expect(said('B1')).toBeUndefined();
});

test('a holder that came later makes no line of the old sole wrong', () => {
  const more = changed(
    heron,
    'shims:',
    '  - { name: tin box, filmDepth: 12 mm, width: 150 mm, length: 210 mm, thickness: 24 mm, mass: 330 g }\nshims:',
  );
  const before = recordOfDesign(designOf(heron));
  const { pages: own } = plainBook(designOf(more), { since: before });
  const scale = saidUnder(own, 'The focus scale');
  expect(scale).toContain(
    `R4U is kept from Heron, revision ${before.plan.revision}, and knows nothing of the tin box.`,
  );
  // 12 − 5.8
  expect(scale).toContain('Line 3 stands 6.2 mm behind line 1.');
  expect(scale).not.toContain('wrong');
  expect(saidOn(own)).not.toContain('Trust none of them');
  expect(saidUnder(own, 'From the first look to the picture')).toContain('Read the focus scale.');
  // where the line is to be drawn
  expect(saidOn(own)).toContain('R4U: kept, with other lines than drawn.');
});

test('a panel whose opening is sawn out stays where it is glued in, and its step is done', () => {
  const second = secondLens();
  const { mount } = second.lens;
  const wide = { ...second, lens: { ...second.lens, mount: { ...mount, opening: 120 } } };
  const { pages: own, steps: all } = plainBook(wide, { since });
  // Teal: 47.1 is what its first lens reaches from the axis behind the board, and 2 pass round it
  expect(saidUnder(own, 'Cut or printed again')).toContain(
    'F1 front panel an opening of 120 × 120 mm, was 98.2 × 98.2 mm',
  );
  expect(saidUnder(own, 'Cut or printed again')).toContain('F1 stays where it is glued in');
  const panel = all.find(({ title }) => title === 'Floor, sides and panel of the front box')?.number;
  expect(panel).toBeGreaterThan(0);
  expect(saidUnder(own, 'Which steps to do')).not.toContain(`Step ${panel}, `);
});

describe('a spacer that is of shims alone, and so no part that is cut', () => {
  // 5.8 − 4.9 = 0.9, less than a ply
  const thin = changed(
    heron,
    'shims:',
    '  - { name: thin box, filmDepth: 4.9 mm, width: 150 mm, length: 210 mm, thickness: 12 mm, mass: 330 g }\nshims:',
  );
  const own = plainBook(designOf(thin), { since: recordOfDesign(designOf(heron)) });
  const spacers = own.steps.find(({ title }) => title === 'Spacers')?.number;

  test('is a step to do', () => {
    const said = saidUnder(own.pages, 'Which steps to do');
    expect(said).toContain(
      `Step ${spacers}, Spacers: makes the spacer of the thin box. Do of it what is told of that.`,
    );
    // nothing that stands is in its way
    expect(said).not.toContain('Take the old parts off');
    expect(said.match(/Step \d+, /g)).toHaveLength(1);
  });

  test('is said below the drawing of the step, and of no other', () => {
    expect(saidUnder(own.pages, `Step ${spacers}. Spacers`)).toContain('Make here: the spacer of the thin box.');
    expect(saidOn(own.pages).match(/Make here/g)).toHaveLength(1);
  });
});

test('where nothing is cut again, no sheets are asked for, and every step is done', () => {
  const { pages: own } = plainBook(keptDesign('teal'), { since });
  expect(saidUnder(own, 'Cut or printed again')).toContain('Nothing: every part is there already.');
  expect(saidUnder(own, 'Which steps to do')).toContain('all of them are done');
  expect(saidUnder(own, 'Cutting and sorting the sheets')).toContain('Nothing is cut');
  expect(saidOn(own)).not.toContain('where each part lies on its sheet');
  expect(saidUnder(own, 'The focus scale')).not.toContain('wrong');
});
