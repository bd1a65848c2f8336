import { expect, test } from 'vitest';
import { fittingIds } from '../../../src/camera/tank-fittings/parts.js';
import { tankFittingSteps } from '../../../src/camera/tank-fittings/steps.js';
import { fittedTank } from './fitted.js';

test('the words name every print, the lamp, and the gas', () => {
  const [step] = tankFittingSteps(fittedTank());
  const { acts = [], checks = [], cautions = [] } = step ?? {};
  const words = [...acts, ...checks].join(' ');
  for (const part of Object.values(fittingIds(2)).filter((one) => !one.startsWith('tank-seal')))
    expect(words).toContain(part);
  expect(words).toMatch(/45° clockwise/); // lugs of 30° and half of that past their way in
  expect(words).toMatch(/lamp/);
  expect(cautions.join(' ')).toMatch(/gas/);
  for (const sentence of [...acts, ...checks, ...cautions]) expect(sentence).toMatch(/\.$/);
});
