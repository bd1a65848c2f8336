import { describe, expect, test } from 'vitest';
import { AXIS, boxOf, holeRound, leastFrom, platesOf } from '../../../src/assembly/measure.js';
import { spanOf, spansOf } from '../../../src/assembly/span-of.js';
import { type Planned, planCamera } from '../../../src/pipeline.js';
import { webLeast } from '../../../src/proof/web.js';
import { designOf } from '../../design/reading.js';
import { heron } from '../../design/worked-designs.js';
import { lawsFrom, withDesign } from '../../laws/law.js';

/** Lenses of many kinds, each with a filter holder and a shutter; the lenses are invented. */
const lenses = [
  { name: 'Heron, 210 mm f/6.3 clamped from inside', text: heron },
  {
    name: 'a 305 mm f/9 clamped from inside, 8x10',
    text: `name: a\nformat: 8x10\nlens:\n  focalLength: 305 mm\n  flangeDistance: 300 mm\n  maxAperture: f/9\n  barrel: { diameter: 66 mm, grip: 22 mm, front: 24 mm, rear: 20 mm, frontDiameter: 72 mm, rearDiameter: 60 mm }\nplywood: { thickness: 5.9 mm, sheet: [900 mm, 600 mm] }\nlaser: { kerf: 0.2 mm }\n`,
  },
  {
    name: 'a 150 mm f/5.6 clamped from the front, 4x5',
    text: `name: a\nformat: 4x5\nlens:\n  focalLength: 150 mm\n  flangeDistance: 145 mm\n  maxAperture: f/5.6\n  barrel: { diameter: 40 mm, grip: 20 mm, front: 16 mm, rear: 12 mm, frontDiameter: 46 mm, rearDiameter: 38 mm }\n  mount: { by: clamp, side: front }\nplywood: { thickness: 4 mm }\nlaser: { kerf: 0.15 mm }\n`,
  },
  {
    name: 'a 180 mm f/5.6 on its flange in front, 4x5',
    text: `name: a\nformat: 4x5\nlens:\n  focalLength: 180 mm\n  flangeDistance: 172 mm\n  maxAperture: f/5.6\n  barrel: { diameter: 52 mm, grip: 10 mm, front: 30 mm, rear: 28 mm, frontDiameter: 60 mm, rearDiameter: 50 mm }\n  flange: { diameter: 74 mm, boltCircle: 64 mm, screws: 3, thickness: 4 mm }\n  mount: { by: flange, side: front }\nplywood: { thickness: 3.1 mm }\nlaser: { kerf: 0.15 mm }\n`,
  },
].flatMap(({ name, text }) =>
  ['filterHolder: {}\nshutter: {}\n', 'filterHolder: { filters: 8 }\n', 'shutter: {}\n'].map((asked) => ({
    name: `${name}; ${asked.trim().replace('\n', ', ')}`,
    planned: planCamera(designOf(`${text}${asked}`)),
  })),
);

const PLATES = ['A1', 'A2', 'A3', 'FH1', 'FH2', 'D1', 'D2', 'D3', 'D5', 'D9'];
const ahead = ({ build }: Planned) => PLATES.flatMap((id) => platesOf(build, id));
const lensFront = ({ build }: Planned) => spanOf(build, 'lens-front');

describe.each(lenses)('$name', ({ planned }) => {
  const { build, camera, design } = planned;
  const { lens, format } = design;
  const frame = camera.objects.accessoryFrame;
  if (!frame) throw new Error('something was asked for');

  test('stands out past the lens by 2 mm, and by no ring more than that takes', () => {
    const [front] = lensFront(planned).z;
    const rings = Math.min(...spansOf(build, 'A1').map(({ z }) => z[0]));
    expect(front - rings).toBeGreaterThanOrEqual(2 - 1e-9);
    expect(front - rings).toBeLessThan(2 + design.plywood.thickness);
    expect(frame.rings).toBe(spansOf(build, 'A1').length);
  });

  test('lets in f/N + 2·distance·tan(half field) wherever a plate stands, the distance from the lens seat', () => {
    const tangent = Math.sqrt(format.image.short ** 2 + format.image.long ** 2) / 2 / lens.focalLength;
    for (const plate of ahead(planned)) {
      const hole = holeRound(plate);
      if (hole === null) continue;
      const distance = camera.objects.lensBoard.seat - plate.low;
      const light = lens.focalLength / lens.maxAperture + 2 * Math.max(0, distance) * tangent;
      expect(2 * leastFrom(AXIS, hole), plate.part.id).toBeGreaterThanOrEqual(light);
    }
  });

  test('leaves 8 mm for fingers round the lens, and lets out whatever holds it in front', () => {
    expect(frame.opening / 2 - lens.barrel.frontDiameter / 2).toBeGreaterThanOrEqual(8 - 1e-9);
    const holding = ['lens-clamp', 'pinch-bolt', 'lens-flange'].flatMap((id) => spansOf(build, id));
    for (const { x, z } of holding.filter((span) => span.z[0] < frame.board - 1e-6))
      expect(frame.opening / 2 - Math.max(-x[0], x[1]), String(z)).toBeGreaterThanOrEqual(1 - 1e-9);
  });

  test('lies between the retainers, and its plates have 10 mm of land on the ring', () => {
    const inner = Math.min(...spansOf(build, 'F9').map(({ x }) => Math.min(Math.abs(x[0]), Math.abs(x[1]))));
    for (const id of ['A1', 'A2', 'A3', 'A4', 'A5'])
      for (const { x } of spansOf(build, id))
        expect(inner - Math.max(-x[0], x[1]), id).toBeGreaterThanOrEqual(1 - 1e-9);
    for (const plate of [...platesOf(build, 'D1'), ...platesOf(build, 'FH1')]) {
      const { left, right, bottom } = boxOf(plate.outline);
      expect(Math.min(-left, right, -bottom) - frame.opening / 2, plate.part.id).toBeGreaterThanOrEqual(
        10 - planned.design.workshop.fits.dropIn,
      );
    }
  });

  test('says nothing against itself', () => {
    const rules = ['glass-clear', 'filter-clear', 'retainer-reach', 'gel-covers', 'shutter-dark', 'web-least'];
    expect(planned.findings.filter(({ rule, level }) => rules.includes(rule) && level !== 'note')).toEqual([]);
  });
});

test('a design that asks for nothing has no frame, and the board that it had', () => {
  const plain = planCamera(designOf(heron));
  expect(plain.camera.objects.accessoryFrame).toBeUndefined();
  expect(plain.parts.filter(({ id }) => /^(?:A|FH|D)\d/.test(id))).toEqual([]);
  // 104.2 + 28 of the two worked cameras in section 17, which the clamp asks for
  expect(plain.camera.objects.lensBoard.board).toBeCloseTo(132.2, 6);
});

test('where the frame is wider than the board that the lens asks for, the board is made wider for it', () => {
  const wide = planCamera(designOf(`${heron}filterHolder: { side: 125 mm }\n`));
  const { lensBoard, accessoryFrame } = wide.camera.objects;
  // gel 125, its play 1, two limbs of 8 in the holder and two in the channel, drop-in 0.6; then 6 and 1 at each retainer
  expect(accessoryFrame?.outside).toBeCloseTo(125 + 1 + 16 + 0.6 + 16, 9);
  expect(lensBoard.board).toBeCloseTo(158.6 + 12 + 2, 9);
});

const { law } = lawsFrom(20_261_130);

test('whatever the lens: a shutter and a filter holder find their place, and nothing of them is cut too thin', () =>
  law(15, ({ design }) => {
    const asked = withDesign(design, {
      filterHolder: { filters: 4, side: null },
      shutter: { by: { time: 1 / 30 }, elastic: null },
    });
    const own = ['glass-clear', 'filter-clear', 'retainer-reach', 'gel-covers', 'shutter-dark', 'shutter-falls'];
    expect(asked.findings.filter(({ rule, level }) => own.includes(rule) && level !== 'note')).toEqual([]);
    const thin = webLeast(asked.design, asked.build).map(({ message }) => message);
    expect(thin.filter((message) => /\((?:A\d|FH\d|D\d+)\)/.test(message))).toEqual([]);
  }));
