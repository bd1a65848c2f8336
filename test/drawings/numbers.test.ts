import { expect, test } from 'vitest';
import { atStep } from '../../src/drawings/at-step.js';
import { numberedOf, numberText } from '../../src/drawings/numbers.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import { planCamera } from '../../src/pipeline.js';
import { orderOf } from '../../src/proof/order.js';
import { keptDesign } from '../designs/kept-design.js';

const kernel = await loadKernel();

test('two screws that come with their heads are two, and a bolt with its head is one', () => {
  const { build } = planCamera(keptDesign('godwit'));
  const { moves } = orderOf(build, kernel);
  const textsWith = (id: string): readonly string[] => {
    const step = moves.find(({ pieces }) => pieces.some((key) => key.replace(/#.*$/u, '') === id))?.step ?? 0;
    return numberedOf(atStep(build, moves, step).arrivals).map(numberText);
  };
  expect(textsWith('batten-screw')).toContain('2 × wood screw 3 mm');
  expect(textsWith('lock-bolt')).toContain('carriage bolt M6 × 40');
});
