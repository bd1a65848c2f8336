import { expect, test } from 'vitest';
import { atStep } from '../../src/drawings/at-step.js';
import { numberedOf, numberText } from '../../src/drawings/numbers.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import type { Design } from '../../src/index.js';
import type { Move } from '../../src/model/assembly-move.js';
import { planCamera } from '../../src/pipeline.js';
import { orderOf } from '../../src/proof/order.js';
import { keptDesign } from '../designs/kept-design.js';

const kernel = await loadKernel();

/** What stands in the drawing of the step that brings a part, or a whole. */
function textsOf(design: Design, brings: (move: Move) => boolean): readonly string[] {
  const { build } = planCamera(design);
  const { moves } = orderOf(build, kernel);
  return numberedOf(atStep(build, moves, moves.find(brings)?.step ?? 0).arrivals).map(numberText);
}

const brings =
  (id: string) =>
  ({ pieces }: Move): boolean =>
    pieces.some((key) => key.replace(/#.*$/u, '') === id);

test('two screws that come with their heads are two, and a bolt with its head is one', () => {
  const godwit = keptDesign('godwit');
  expect(textsOf(godwit, brings('batten-screw'))).toContain('2 × wood screw 3 mm');
  expect(textsOf(godwit, brings('lock-bolt'))).toContain('carriage bolt M6 × 40');
});

test('holders that are made are called as their owner calls them', () => {
  const heron = keptDesign('heron');
  const names = ['plate back', 'washing box'];
  const renamed = { ...heron, holders: heron.holders.map((holder, i) => ({ ...holder, name: names[i] as string })) };
  const texts = textsOf(renamed, ({ whole }) => whole === 'tank');
  expect(texts).toEqual(expect.arrayContaining(names));
  expect(texts).not.toContain('tank');
  expect(texts).not.toContain('paper holder');
  expect(textsOf(heron, ({ whole }) => whole === 'tank lid')).toContain('lid');
});

test.each(['unmarked copying lens', 'lens of a scrapped copier, 1:1', 'portrait lens for 5x7'])(
  'a lens is called %s where its owner calls it so',
  (name) => {
    const teal = keptDesign('teal');
    expect(textsOf({ ...teal, lens: { ...teal.lens, name } }, brings('lens-front'))).toContain(name);
  },
);

test('two bought holders whose names begin alike are told apart', () => {
  const teal = keptDesign('teal');
  const names = ['holder for paper', 'holder for film'];
  const holders = teal.holders.map((holder, i) => ({ ...holder, name: names[i] as string }));
  expect(textsOf({ ...teal, holders }, brings('cord'))).toEqual(expect.arrayContaining(names));
});
