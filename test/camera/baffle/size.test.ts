import { describe, expect, test } from 'vitest';
import { partOf, platesIn } from '../../../src/assembly/measure.js';
import { spanOf, spansOf } from '../../../src/assembly/span-of.js';
import { sizeBaffle } from '../../../src/camera/baffle/size.js';
import { type LightInBox, leftOpen } from '../../../src/camera/light-in-box.js';
import { boundsOfPoints } from '../../../src/geometry/path.js';
import { lawsFrom, withDesign } from '../../laws/law.js';
import { heronWith } from '../asked-for.js';

const ply = { material: 'plywood-4.05', thickness: 4.05, density: 680 };
const wood = { ply, fits: { press: -0.02, glueSlip: 0.08, slide: 0.3, dropIn: 0.6 } };

/** Heron: section 17 of the description of the camera; exit pupil 203.5 − 210, 210/6.3 wide. */
const light: LightInBox = {
  rim: { z: 53, radius: 26 },
  pupil: { z: -6.5, radius: 210 / 6.3 / 2 },
  films: [181.3, 199.5],
  image: { short: 60.3, long: 85.7 },
  gate: { z: 175.5, short: 62.3, long: 87.7 },
  travel: 106.2 + 10.5,
};

describe('what a plate that slides with the film leaves open', () => {
  /*
   * By similar triangles, at z 112 and the far end, 116.7 out. Along the long side: from the rim (26 at 53) to the film
   * (85.7 at 298) 26 + 59.7 × 175.7/245 = 68.8131, and 2 of room; to the gate (87.7 at 292.2) 26 + 61.7 × 175.7/239.2 =
   * 71.3206; from the pupil (16.6667 at −6.5) 16.6667 + 71.0333 × 235.2/298.7 = 72.5992, the widest.
   */
  test('the widest of three bundles, at the far end of the travel', () => {
    expect(leftOpen(light, 112).long).toBeCloseTo(72.5992, 4);
    // along the short side from the rim to the gate: 26 + 36.3 × 175.7/239.2
    expect(leftOpen(light, 112).short).toBeCloseTo(52.6635, 4);
  });
  test('2 mm round the light where film and gate lie far apart', () => {
    const thick = { ...light, films: [175.5 + 60], gate: { z: 175.5, short: 0, long: 0 } };
    // 26 + 59.7 × 59/182.5 closest, 26 + 59.7 × 175.7/299.2 far out
    expect(leftOpen(thick, 112).long).toBeCloseTo(2 + 26 + (59.7 * 175.7) / 299.2, 4);
  });
  test('a rim wider than the picture is left whole', () => {
    const wide = { ...light, rim: { z: 53, radius: 95 } };
    expect(leftOpen(wide, 60).long).toBeGreaterThan(94);
    expect(leftOpen(wide, 50).long).toBeGreaterThanOrEqual(95);
  });
});

describe('the baffle', () => {
  const given = { wood, inside: 188.15, boxFront: 6.05, lensRear: 53, ringFront: 167.4 };
  const sized = sizeBaffle({ ...given, light: (z) => leftOpen(light, z) });
  test('stands in the middle between lens and ring', () => {
    expect(sized.front - 53).toBeCloseTo(167.4 - (sized.front + 4.05), 9);
    expect(sized.behindEdge).toBeCloseTo(sized.front - 6.05, 9);
  });
  test('leaves open what its rear face must, where the light is wider', () =>
    expect(sized.opening.long).toBeCloseTo(leftOpen(light, sized.front + 4.05).long, 9));

  test.each([10, 80, 93, 120])('light of %s by half: something is left of the frame', (half) => {
    const { outside, opening } = sizeBaffle({ ...given, light: () => ({ short: half / 2, long: half }) });
    expect(outside / 2 - opening.long).toBeGreaterThanOrEqual(3 - 1e-9);
  });
});

const { lawOfSoundCameras } = lawsFrom(20_261_130);
test('in a sound camera a baffle leaves the picture alone, and breaks nothing but where it has no room', () =>
  lawOfSoundCameras(40, ({ design, findings }) => {
    const told = withDesign(design, { baffle: true }).findings;
    const rulesOf = (all: typeof told) => new Set(all.map(({ rule, level }) => `${rule} ${level}`));
    const before = rulesOf(findings);
    expect([...rulesOf(told)].filter((one) => !before.has(one) && one !== 'baffle-room error')).toEqual([]);
  }));

describe('its parts, in Heron', () => {
  const { build } = heronWith('baffle: true');
  const frame = spanOf(build, 'R8');
  const strips = spansOf(build, 'R9');
  test('the frame hangs in the box with 1 mm on every side, behind the lens', () => {
    const box = { left: spanOf(build, 'R1L').x[1], right: spanOf(build, 'R1R').x[0] };
    expect(frame.x[0] - box.left).toBeCloseTo(1, 6);
    expect(box.right - frame.x[1]).toBeCloseTo(1, 6);
    expect(frame.y).toEqual(frame.x);
    expect(frame.z[0]).toBeGreaterThan(spanOf(build, 'lens-rear').z[1] + 2);
  });
  test('it bears on four strips, one on each wall', () => {
    expect(strips).toHaveLength(4);
    for (const { z } of strips) expect(z[0]).toBeCloseTo(frame.z[1], 9);
    const walls = strips.map(({ x, y }) =>
      [x[0], x[1], y[0], y[1]].filter((at) => Math.abs(Math.abs(at) - 94.075) < 0.01),
    );
    expect(walls.map((at) => at.length)).toEqual([1, 1, 1, 1]);
  });
  test('its opening lets the picture through upright and lengthwise, and is no square', () => {
    const [plate] = platesIn(partOf(build, 'R8'));
    const opening = plate?.holes[0] ?? [];
    const { left, right, bottom, top } = boundsOfPoints(opening);
    expect(right - left).toBeCloseTo(top - bottom, 9);
    expect(opening).toHaveLength(12);
  });
  test('a camera that does not ask has none', () =>
    expect(heronWith().parts.some(({ id }) => id === 'R8' || id === 'R9')).toBe(false));
  test('asking changes no other part', () => {
    const own = heronWith('baffle: true').parts.filter(({ id }) => !/^R[89]$/.test(id));
    const [without, with_] = [heronWith().parts, own].map((parts) =>
      // the tripod's nut follows the weight
      parts.filter(({ id }) => !/^(T1|T4|tripod)/.test(id)).map((part) => JSON.stringify(part)),
    );
    expect(with_).toEqual(without);
  });
});
