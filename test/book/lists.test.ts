import { beforeAll, describe, expect, test } from 'vitest';
import { stepsOfCamera } from '../../src/model/assembly-steps.js';
import { keptDesign, keptDesigns, secondLens } from '../designs/kept-design.js';
import { chapterPages, linesOn, type PlainBook, plainBook } from './plain-book.js';

/** Kinds of what is counted when it is bought, by what the list of bought parts and the steps call it; the first that fits. */
const KINDS: readonly (readonly [kind: string, named: RegExp])[] = [
  ['tee nut', /\btee nut\b/],
  ['nut', /\bnut\b/],
  ['washer', /\bwasher\b/],
  ['carriage bolt', /\bcarriage bolt\b/],
  ['knob', /\bknob\b/],
  ['wood screw 2.5', /wood screw 2\.5\b/],
  ['wood screw 3', /wood screw 3\b/],
  ['screw', /\bscrew\b|\bbolt\b|^M4 × \d+ countersunk/],
  ['dowel', /\bdowel\b|\bpin\b|\bpeg\b/],
  ['clip', /^glass clip/],
  ['cord', /^elastic cord/],
];
const kindOf = (named: string): string | undefined => KINDS.find(([, pattern]) => pattern.test(named))?.[0];

function summed(
  lines: readonly { readonly named: string; readonly count: number }[],
): Readonly<Record<string, number>> {
  const sums = new Map<string, number>();
  for (const { named, count } of lines) {
    const kind = kindOf(named);
    if (kind !== undefined) sums.set(kind, (sums.get(kind) ?? 0) + count);
  }
  return Object.fromEntries([...sums].sort());
}

/** What is bought among the things to tick at each step: a count without a number of a part after it, then a name. */
function tickedIn({ planned, pages }: PlainBook) {
  const inSteps = stepsOfCamera(planned.parts).flatMap(({ number, title }) => {
    const isNext = new RegExp(`^Step ${number + 1}\\.`);
    const lines = chapterPages(pages, `Step ${number}. ${title}`).flatMap(linesOn);
    const end = lines.findIndex(([first]) => isNext.test(first?.text ?? ''));
    return end < 0 ? lines : lines.slice(0, end);
  });
  return inSteps.flatMap((line) =>
    line.flatMap(({ text, bold }, i) => {
      const [, count] = (bold === true && /^(\d+) ×$/.exec(text)) || [];
      return count === undefined ? [] : [{ named: line[i + 1]?.text ?? '', count: Number(count) }];
    }),
  );
}

/** What the two lists of tools name, without what it is for. */
function toolsIn({ pages }: PlainBook): readonly string[] {
  const lines = chapterPages(pages, 'What you need').flatMap(linesOn);
  const from = lines.findIndex((line) => line.some(({ text }) => text === 'At the bench'));
  const to = lines.findIndex(([first]) => first?.text === 'The test piece first');
  const own = lines.slice(from, to);
  const left = own[0]?.find(({ text }) => text === 'At the bench')?.at.x ?? Number.NaN;
  return own
    .flatMap((line) => line.filter(({ at }) => Math.abs(at.x - left) < 0.01))
    .flatMap(({ text }) => (/^At the bench$|^When it stands$/.test(text) ? [] : [text]));
}

/** By which a tool is known to be something bought: card by its thickness, all else by its name. */
function calls(name: string, size: string): readonly RegExp[] {
  if (/^card( strip)?$/.test(name))
    return [...size.matchAll(/([\d.]+)( mm)?( and [\d.]+ mm)? thick/g)].map(
      ([, thick]) => new RegExp(`^card ${thick}\\b`),
    );
  const [head = name] = name.split(', ');
  return [new RegExp(`\\b${head}s?\\b`)];
}

/** Tools that have the name of something bought in theirs. */
const IS_A_TOOL = /felt pen|^bolt .* with a wide washer$|strip of thick glass|^spanner/;

const designs = [
  ...keptDesigns.map((name) => [name, () => keptDesign(name)] as const),
  ['teal-210', secondLens] as const,
];

describe.each(designs)('the lists in the book of %s', (_, designOf) => {
  let book: PlainBook;
  beforeAll(() => {
    book = plainBook(designOf(), { laidOut: false });
  }, 180_000);

  test('the steps ask for as many screws, nuts, dowels and the like as are bought', () => {
    const bought = book.plan.hardware.map(({ name, size, count }) => ({ named: `${name} ${size}`, count }));
    expect(summed(tickedIn(book))).toEqual(summed(bought));
  });

  test('no tool is a bought thing again, and none stands there twice', () => {
    const tools = toolsIn(book);
    expect(tools.length).toBeGreaterThan(20);
    expect(new Set(tools).size).toBe(tools.length);
    for (const { name, size } of book.plan.hardware)
      for (const call of calls(name, size))
        expect(
          tools.filter((tool) => call.test(tool) && !IS_A_TOOL.test(tool)),
          name,
        ).toEqual([]);
  });
});
