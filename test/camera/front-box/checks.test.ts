import { expect, test } from 'vitest';
import { frontFingers, thinPanel } from '../../../src/camera/front-box/checks.js';
import { heron } from '../worked.js';

const { frontBox } = heron.camera.objects;

/** camera.md section 16: free span over thickness 60, common practice, no source. */
test('thin-panel: 60 thicknesses of 4.05 span 243', () => {
  expect(thinPanel({ ...frontBox, inside: 243 })).toEqual([]);
  const [told] = thinPanel({ ...frontBox, inside: 243.5 });
  expect(told).toMatchObject({ rule: 'thin-panel', level: 'warning', limit: 60, about: 'plywood.thickness' });
  expect(told?.value).toBeCloseTo(60.12, 2);
  expect(told?.hint).toMatch(/sheet of 4\.1 mm/);
});

test('finger-rule: every edge of the front box is looked at', () => {
  expect(frontFingers(frontBox)).toEqual([]);
  const short = { from: 0, to: 20, count: 3, width: 20 / 3 };
  const rows = { panelToSide: short, panelToTop: short, sideToTop: short };
  expect(frontFingers({ ...frontBox, rows })).toHaveLength(3);
});
