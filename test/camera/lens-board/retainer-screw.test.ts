import { expect, test } from 'vitest';
import { retainerScrew } from '../../../src/camera/lens-board/parts.js';
import { planCamera, planOf } from '../../../src/pipeline.js';
import { keptDesign } from '../../designs/kept-design.js';

/*
 * From behind: panel (t), card of 0.2, packing (t) with the nut down on the card, retainer (t), washers of 0.8 (ISO 7089),
 * head. A nut M4 is 3.2 high (ISO 4032). camera.md section 5, derived.
 */
const bare = planCamera(keptDesign('heron')).camera.objects.lensBoard.wood;
const woodOf = (thickness: number) => ({ ...bare, ply: { ...bare.ply, thickness } });

test('in ply of any thickness the thumb screw of a retainer ends short of the card, and well in the nut', () => {
  for (let t = 3; t <= 9; t = Math.round(100 * t + 1) / 100) {
    const { length, washers } = retainerScrew(woodOf(t));
    const ends = length - 0.8 * washers - t;
    expect.soft(t - ends, `${t}: M4 × ${length} on ${washers}`).toBeGreaterThanOrEqual(0.1 - 1e-9);
    expect.soft(ends - (t - 3.2), `${t}: M4 × ${length} on ${washers}`).toBeGreaterThanOrEqual(1.9);
  }
});

test.each([
  { name: 'heron', length: 8, washers: 0 }, // 2 × 4.05 = 8.1
  { name: 'teal', length: 12, washers: 2 }, // 2 × 5.9 = 11.8: 12 would stand on the card, and 10 is 1.4 in the nut
])('the list of $name says so, and its washers lie under the heads', ({ name, length, washers }) => {
  const planned = planCamera(keptDesign(name));
  const { hardware } = planOf(planned);
  const line = hardware.find((own) => own.name === 'thumb screw' && own.for.includes('retainers'));
  expect(line?.size).toContain(`M4 × ${length},`);
  const under = hardware.filter((own) => own.name === 'washer' && own.for.includes('retainers'));
  expect(under.reduce((sum, { count }) => sum + count, 0)).toBe(washers);
  expect(planned.parts.find(({ id }) => id === 'retainer-washer')?.placements.length ?? 0).toBe(washers);
});
