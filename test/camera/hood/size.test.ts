import { describe, expect, test } from 'vitest';
import { AXIS, holeRound, leastFrom, platesOf } from '../../../src/assembly/measure.js';
import { spanOf, spansOf } from '../../../src/assembly/span-of.js';
import { halfOfSquare } from '../../../src/camera/light-ahead.js';
import { type Planned, planCamera } from '../../../src/pipeline.js';
import { oneWayRules } from '../../../src/proof/one-way.js';
import { webLeast } from '../../../src/proof/web.js';
import { designOf } from '../../design/reading.js';
import { heron } from '../../design/worked-designs.js';
import { keptDesign } from '../../designs/kept-design.js';
import { lawsFrom, withDesign } from '../../laws/law.js';

/** The light that a square lets in at the pupil is the pupil: V8.01 of the optics values, verified there: 25 and 50 across. */
test.each([
  { f: 100, N: 4, across: 25 },
  { f: 200, N: 4, across: 50 },
])('f = $f, f/$N: $across at the pupil', ({ f, N, across }) => {
  const light = { focalLength: f, maxAperture: N, halfField: 0.4, alongLong: 0.3, pupil: 7 };
  expect(2 * halfOfSquare(light, 7)).toBeCloseTo(across, 9);
  // behind the pupil it is no wider
  expect(2 * halfOfSquare(light, 20)).toBeCloseTo(across, 9);
  // 10 ahead of it 0.3 · 10 on each side
  expect(2 * halfOfSquare(light, -3)).toBeCloseTo(across + 6, 9);
});

/** Lenses of many kinds, invented. */
const lenses = [
  { name: 'Heron, 210 mm f/6.3', text: heron },
  {
    name: 'a 90 mm f/8 wide on 4x5',
    text: 'name: a\nformat: 4x5\nlens:\n  focalLength: 90 mm\n  flangeDistance: 96 mm\n  maxAperture: f/8\n  barrel: { diameter: 40 mm, grip: 14 mm, front: 16 mm, rear: 20 mm, frontDiameter: 50 mm, rearDiameter: 44 mm }\nplywood: { thickness: 3.1 mm }\nlaser: { kerf: 0.15 mm }\n',
  },
  {
    name: 'a 305 mm f/9 on 8x10',
    text: 'name: a\nformat: 8x10\nlens:\n  focalLength: 305 mm\n  flangeDistance: 300 mm\n  maxAperture: f/9\n  barrel: { diameter: 66 mm, grip: 22 mm, front: 24 mm, rear: 20 mm, frontDiameter: 72 mm, rearDiameter: 60 mm }\nplywood: { thickness: 5.9 mm, sheet: [900 mm, 600 mm] }\nlaser: { kerf: 0.2 mm }\n',
  },
  {
    name: 'a 300 mm f/4.5 on 4x5, of narrow field',
    text: 'name: a\nformat: 4x5\nlens:\n  focalLength: 300 mm\n  flangeDistance: 280 mm\n  maxAperture: f/4.5\n  barrel: { diameter: 80 mm, grip: 20 mm, front: 30 mm, rear: 20 mm, frontDiameter: 86 mm, rearDiameter: 70 mm }\nplywood: { thickness: 4 mm, sheet: [900 mm, 600 mm] }\nlaser: { kerf: 0.15 mm }\n',
  },
].flatMap(({ name, text }) =>
  ['hood: {}\n', 'hood: {}\nfilterHolder: {}\n', 'hood: { depth: 60 mm }\ncap: true\n'].map((asked) => ({
    name: `${name}; ${asked.trim().replaceAll('\n', ', ')}`,
    planned: planCamera(designOf(`${text}${asked}`)),
  })),
);

/** Half the mouth at its narrowest, and its z, off the walls as they stand. */
function mouthOf({ build }: Planned) {
  const walls = [...spansOf(build, 'LH4'), ...spansOf(build, 'LH5')];
  const [left, right] = [...spansOf(build, 'LH4')].sort((a, b) => a.x[0] - b.x[0]);
  const [floor, top] = [...spansOf(build, 'LH5')].sort((a, b) => a.y[0] - b.y[0]);
  if (!left || !right || !floor || !top) throw new Error('a hood has four walls');
  return {
    z: Math.min(...walls.map(({ z }) => z[0])),
    half: Math.min(-left.x[1], right.x[0], -floor.y[1], top.y[0]),
  };
}

describe.each(lenses)('$name', ({ planned }) => {
  const { build, camera, design } = planned;
  const { lens, format } = design;
  const { seat } = camera.objects.lensBoard;
  const { z, half } = mouthOf(planned);

  test('rays from all round the pupil to the corners of the picture, upright and lengthwise, pass its mouth with 1 mm to spare', () => {
    const { short, long } = format.image;
    const radius = lens.focalLength / lens.maxAperture / 2;
    let most = 0;
    for (const [w, h] of [
      [short, long],
      [long, short],
    ] as const)
      for (let k = 0; k < 360; k++)
        for (const side of [1, -1]) {
          // at infinity all light of one point of the picture is parallel
          const x = radius * Math.cos((k * Math.PI) / 180) + (side * (seat - z) * w) / 2 / lens.focalLength;
          const y = radius * Math.sin((k * Math.PI) / 180) + (side * (seat - z) * h) / 2 / lens.focalLength;
          most = Math.max(most, Math.abs(x), Math.abs(y));
        }
    expect(half - most).toBeGreaterThanOrEqual(1 - 1e-9);
  });

  test('the openings behind its walls let in the round of the whole field: f/N + 2·distance·tan(half field)', () => {
    const tangent = Math.sqrt(format.image.short ** 2 + format.image.long ** 2) / 2 / lens.focalLength;
    for (const plate of ['LH1', 'LH2', 'LH3'].flatMap((id) => platesOf(build, id))) {
      const hole = holeRound(plate);
      if (hole === null) throw new Error(`${plate.part.id} has no opening`);
      const light = lens.focalLength / lens.maxAperture + 2 * Math.max(0, seat - plate.low) * tangent;
      expect(2 * leastFrom(AXIS, hole), plate.part.id).toBeGreaterThanOrEqual(light);
    }
  });

  test('stands ahead of the lips of the rails and of the thumb screws beside them', () => {
    const rear = spanOf(build, 'LH3').z[1];
    for (const id of ['A5', 'retainer-screw'])
      for (const span of spansOf(build, id)) expect(span.z[0] - rear, id).toBeGreaterThan(0.2);
  });

  test('says nothing against itself', () => {
    const rules = ['glass-clear', 'filter-clear', 'retainer-reach', 'rail-held', 'finger-rule', 'hood-depth'];
    expect(planned.findings.filter(({ rule, level }) => rules.includes(rule) && level !== 'note')).toEqual([]);
    expect(webLeast(design, build).filter(({ message }) => /\((?:A|LH|LC)\d/.test(message))).toEqual([]);
    // and nothing of it goes in where it does not belong
    expect(oneWayRules(build).filter(({ message }) => /\b(?:A|LH|LC)\d/.test(message))).toEqual([]);
  });
});

describe('how deep it is', () => {
  const asked = (key: string) => planCamera(designOf(`${heron}${key}\n`));
  const depthOf = (planned: Planned) => spanOf(planned.build, 'lens-front').z[0] - mouthOf(planned).z;

  test('as wide as the accessory frame, and as deep as that lets it be', () => {
    const planned = asked('hood: {}');
    const { x } = spanOf(planned.build, 'LH4');
    expect(x[1] - x[0]).toBeCloseTo(planned.camera.objects.accessoryFrame?.outside ?? 0, 6);
    // Heron's pupil is taken at 0: the square is as far out as (half − 1 − 210/6.3/2) 210/(half the long side)
    const { long } = planned.design.format.image;
    const { half, z } = mouthOf(planned);
    expect(-z).toBeCloseTo(((half - 1 - 210 / 6.3 / 2) * 210) / (long / 2), 6);
  });

  test('80 mm at most where nobody asks for more', () => {
    const narrow = lenses.find(({ name }) => name.startsWith('a 300 mm f/4.5') && name.endsWith('hood: {}'));
    if (!narrow) throw new Error('there is such a lens');
    expect(depthOf(narrow.planned)).toBeCloseTo(80, 6);
  });

  test('as it is asked for, and then as wide as that asks', () => {
    const [short, deep] = [asked('hood: { depth: 60 mm }'), asked('hood: { depth: 140 mm }')];
    expect(depthOf(short)).toBeCloseTo(60, 6);
    expect(depthOf(deep)).toBeCloseTo(140, 6);
    const { long } = deep.design.format.image;
    expect(mouthOf(deep).half - mouthOf(short).half).toBeCloseTo((80 * long) / 2 / 210, 6);
  });
});

test('nothing goes in the wrong way where a hood is narrower than the frame that it hangs on', () => {
  // Kiwi's: an edge of its packing, turned end for end, lay 8 mm from where it should
  const { build } = withDesign(keptDesign('kiwi'), { hood: { depth: null }, cap: true });
  expect(oneWayRules(build).filter(({ message }) => /\b(?:LH|LC)\d/.test(message))).toEqual([]);
});

test('the plan is the same as ever where nobody asks for it', () => {
  const plain = planCamera(designOf(heron));
  expect(plain.parts.filter(({ id }) => /^(?:LH|LC)\d/.test(id))).toEqual([]);
  expect(plain.build.setups.filter(({ ahead }) => ahead !== undefined)).toEqual([]);
});

const { law } = lawsFrom(20_261_201);

test('whatever the lens: hood and cap find their place, and nothing of them is cut too thin', () =>
  law(15, ({ design }) => {
    const asked = withDesign(design, { hood: { depth: null }, cap: true });
    const own = ['glass-clear', 'filter-clear', 'retainer-reach', 'rail-held', 'cap-covers', 'cap-held', 'hood-depth'];
    expect(asked.findings.filter(({ rule, level }) => own.includes(rule) && level !== 'note')).toEqual([]);
    const thin = webLeast(asked.design, asked.build).map(({ message }) => message);
    expect(thin.filter((message) => /\((?:A|LH|LC)\d\)/.test(message))).toEqual([]);
  }));
