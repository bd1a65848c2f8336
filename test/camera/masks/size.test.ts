import { describe, expect, test } from 'vitest';
import { partOf, platesIn } from '../../../src/assembly/measure.js';
import { ON_THE_ROAD } from '../../../src/assembly/setups.js';
import { spanOf, spansOf } from '../../../src/assembly/span-of.js';
import { type MasksGiven, sizeMasks } from '../../../src/camera/masks/size.js';
import { boundsOf } from '../../../src/geometry/path.js';
import { keptDesign } from '../../designs/kept-design.js';
import { lawsFrom, withDesign } from '../../laws/law.js';
import { heronWith } from '../asked-for.js';

const SQUARE = 'masks: [{ name: square, image: [110 mm, 110 mm], corners: 5 mm }]';
const TWO = `masks:
  - { name: square, image: [110 mm, 110 mm], corners: 5 mm }
  - { name: deep, format: quarter-plate, holder: processing holder }`;

const windowOf = (planned: ReturnType<typeof heronWith>, id: string) => {
  const part = planned.parts.find((one) => one.id === id);
  if (part?.kind !== 'flat' || part.holes[0] === undefined) throw new Error(`${id} has no opening`);
  const { left, right, bottom, top } = boundsOf(part.holes[0]);
  return { width: right - left, height: top - bottom };
};

describe('the opening of a mask', () => {
  /*
   * Similar triangles from the middle of the exit pupil, 210 ahead of the film at infinity. The paper holder's film lies 5.8
   * behind the seat, the mask 0.2 ahead of it: 110 × (1 − 6/210) = 106.857. In the processing holder, 24 deep, a picture of
   * 77.55 by 102.95: × (1 − 24.2/210).
   */
  test('is smaller than the picture by what the shadow grows', () => {
    const { width, height } = windowOf(heronWith(TWO), 'MK1');
    expect(width).toBeCloseTo(106.857, 2);
    expect(height).toBeCloseTo(106.857, 2);
    const deep = windowOf(heronWith(TWO), 'MK2');
    expect(deep.width).toBeCloseTo(77.55 * (1 - 24.2 / 210), 6);
    expect(deep.height).toBeCloseTo(102.95 * (1 - 24.2 / 210), 6);
  });
});

describe('its place in the back', () => {
  const { build } = heronWith(SQUARE);
  const seat = spanOf(build, 'B1').z[1];
  test('two plies on the ledge end 0.2 below the seat', () => {
    const [ply] = spansOf(build, 'MK1');
    const thick = 2 * ((ply?.z[1] ?? 0) - (ply?.z[0] ?? 0));
    expect(seat - (spanOf(build, 'B6').z[1] + thick)).toBeCloseTo(0.2, 6);
  });
  test('the ledge looks into the opening, and leaves 2 mm round the light at both ends of the travel', () => {
    const { build: own } = heronWith(SQUARE);
    const setup = own.setups[0];
    const [ledge] = platesIn(partOf(own, 'B6'));
    const inner = (ledge?.holes[0] ?? []).map(({ x, y }) => [Math.abs(x), Math.abs(y)] as const);
    expect(setup?.orientation).toBe('upright');
    // rim 26 at z 53; film half 60.3 and 85.7 at 181.3 + 106.2; rear face of the ledge at 167.2 + 106.2
    const share = (167.2 + 106.2 - 53) / (181.3 + 106.2 - 53);
    expect(Math.min(...inner.map(([x]) => x))).toBeGreaterThanOrEqual(26 + 34.3 * share + 2);
    expect(Math.min(...inner.map(([, y]) => y))).toBeGreaterThanOrEqual(26 + 59.7 * share + 2);
    expect(Math.max(...inner.map(([x]) => x))).toBeLessThan(62.3 - 1);
    expect(Math.max(...inner.map(([, y]) => y))).toBeLessThan(87.7 - 1.5);
  });
  test('the ledge stays within the turning ring, whichever way the back is turned', () => {
    const { x, y } = spanOf(build, 'B6');
    expect(Math.max(x[1], y[1])).toBeLessThan(spanOf(build, 'B2').x[1] - 0.9);
  });
  test('nothing of back and holders is other than without masks', () => {
    const plain = new Map(heronWith().parts.map((part) => [part.id, JSON.stringify(part)]));
    for (const id of ['B1', 'B2', 'B3', 'B4', 'G1', 'G2', 'G3', 'R3'])
      expect(JSON.stringify(heronWith(SQUARE).parts.find((part) => part.id === id))).toBe(plain.get(id));
  });
});

describe('packed for the road', () => {
  const { build, parts } = heronWith(TWO);
  const road = build.setups.find(({ name }) => name === ON_THE_ROAD);
  if (road === undefined) throw new Error('there is no such set-up');
  test('they lie on the protector, one on the other, the cords on the last', () => {
    const z = (id: string) => spanOf(build, id, { setup: road }).z;
    expect(z('MK1')[0]).toBeCloseTo(z('G3')[1], 9);
    expect(z('MK2')[0]).toBeCloseTo(z('MK1')[1], 9);
    expect(z('cord')[0]).toBeCloseTo(z('MK2')[1], 9);
  });
  test('and nowhere else: in the light they would cut it', () => {
    for (const part of parts.filter(({ id }) => id.startsWith('MK')))
      for (const { when } of part.placements) expect(when).toEqual([ON_THE_ROAD]);
  });
});

describe('where the light leaves too little of a ledge at the ring', () => {
  const wood = {
    ply: { material: 'plywood-4', thickness: 4, density: 680 },
    fits: { press: -0.02, glueSlip: 0.08, slide: 0.3, dropIn: 0.6 },
  };
  const given: MasksGiven = {
    wood,
    seat: 100,
    opening: { width: 100, height: 140 },
    ringOutside: 160,
    // half the opening at the seat, and so much narrower for each mm ahead of it
    light: (z) => ({ short: 50 - 0.05 * (100 - z), long: 70 - 0.1 * (100 - z) }),
    masks: [],
    turns: { behindSeat: 0, upright: [], lengthwise: [] },
    packed: { behindSeat: 0, upright: [], lengthwise: [] },
    on: 'G3',
    standing: null,
  };
  test('it stands farther ahead, and the masks have more plies', () => {
    // 0.1 × 8.2 = 0.82 under two plies and 1.22 under three, less 0.4 of play; four leave 0.1 × 16.2 − 0.4 = 1.22
    const { plies, ledge } = sizeMasks(given);
    expect(plies).toBe(4);
    expect(ledge.opening.height).toBeCloseTo(140 - 2 * 1.62, 9);
    expect(sizeMasks({ ...given, light: (z) => ({ short: 50, long: 70 - 0.2 * (100 - z) }) }).plies).toBe(2);
  });
  test('but not without end', () =>
    expect(sizeMasks({ ...given, light: () => ({ short: 50, long: 70 }) }).plies).toBe(5));
  test('what stands ahead is drawn: packing between card and ledge', () => {
    const { build } = withDesign(keptDesign('kiwi'), {
      masks: [{ name: 'square', image: { width: 60, height: 60 }, corners: 0, holder: 'film holder' }],
    });
    const [packing, ledge] = ['B7', 'B6'].map((id) => spanOf(build, id));
    expect(ledge?.z[1]).toBeCloseTo(packing?.z[0] ?? 0, 9);
    expect(packing?.z[1]).toBeCloseTo(spanOf(build, 'ledge-card').z[0], 9);
    expect(spansOf(build, 'MK1')).toHaveLength(3);
  });
});

const { lawOfSoundCameras } = lawsFrom(20_261_201);
test('in a sound camera masks break nothing but where the light leaves them no ledge', () =>
  lawOfSoundCameras(40, ({ design, findings }) => {
    const { short, long } = design.format.image;
    const asked = {
      name: 'smaller',
      image: { width: 0.7 * short, height: 0.7 * long },
      corners: 3,
      holder: design.holders[0]?.name ?? '',
    };
    const planned = withDesign(design, { masks: [asked] });
    const before = new Set(findings.map(({ rule, level }) => `${rule} ${level}`));
    const more = planned.findings.map(({ rule, level }) => `${rule} ${level}`).filter((one) => !before.has(one));
    expect(more.filter((one) => one !== 'mask-held error' && one !== 'mask-edge note')).toEqual([]);
    // never larger than asked, at any focus: the pupil is nearest to the film at the farthest
    const note = planned.findings.find(({ rule }) => rule === 'mask-edge');
    const [, far, near] = /is ([\d.]+) mm wide at the farthest focus and ([\d.]+) mm/.exec(note?.message ?? '') ?? [];
    expect(Number(far)).toBeLessThanOrEqual(asked.image.width + 0.06);
    expect(Number(near)).toBeLessThanOrEqual(Number(far));
  }));
