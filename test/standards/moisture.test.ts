import { describe, expect, test } from 'vitest';
import { panelRule, panelSwelling, thicknessSwelling, woodShrinkage } from '../../src/standards/moisture.js';

describe('a panel of 250 mm in its plane', () => {
  test('three-ply from 7 to 20 % of moisture', () => {
    // M4.32 [verified: R27], exact
    expect(250 * panelSwelling.value.along).toBeCloseTo(0.45, 9);
    expect(250 * panelSwelling.value.across).toBeCloseTo(0.675, 9);
  });
  test('by the rule of an association, over the same 60 % of humidity', () => {
    // M4.33 [verified: R28], exact; the two differ by 1.5 to 2.3
    const rule = 250 * 6 * panelRule.value;
    expect(rule).toBeCloseTo(0.3, 9);
    expect((250 * panelSwelling.value.along) / rule).toBeCloseTo(1.5, 9);
    expect((250 * panelSwelling.value.across) / rule).toBeCloseTo(2.25, 9);
  });
});

describe('a sheet in its thickness', () => {
  test('swells as solid wood does across the rings', () => {
    // M4.34 [verified: R29]: along, radial, tangential
    expect(woodShrinkage.value).toEqual({ along: 0.004, radial: 0.04, tangential: 0.08 });
    // all of it from oven-dry to fibre saturation, 28 % [from memory]
    expect(thicknessSwelling(0.28)).toBeCloseTo(0.04, 12);
    expect(4.05 * thicknessSwelling(0.03)).toBeCloseTo(0.0174, 4);
    expect(thicknessSwelling(-0.03)).toBeCloseTo(-thicknessSwelling(0.03), 12);
  });
});
