import { describe, expect, test } from 'vitest';
import { box, boxAt, circle, hexagon, rectangle, stepped } from '../../src/geometry/shapes.js';
import { planCamera } from '../../src/pipeline.js';
import { webLeast } from '../../src/proof/web.js';
import { cutTo, hole } from '../camera/altered.js';
import { heron } from '../camera/worked.js';
import { keptDesign, keptDesigns } from '../designs/kept-design.js';

/** 3 mm between cuts, 1 beside the pilot hole of a wood screw: camera.md section 16, common practice, no source. */
const toldOf = (build: typeof heron.build) => webLeast(heron.design, build);

/** Heron with a plain part of 60 × 40 in place of the end stop, cut to these loops. */
const blank = (...holes: Parameters<typeof hole>[0][]) =>
  toldOf(cutTo(heron.build, 'T5', () => ({ outline: rectangle(boxAt(0, 0, 60, 40)), holes: holes.map(hole) })));
const outlined = (outline: Parameters<typeof hole>[0]) =>
  toldOf(cutTo(heron.build, 'T5', () => ({ outline, holes: [] })));

test.each(keptDesigns)('%s is cut with 3 mm everywhere', (name) => {
  const { design, build } = planCamera(keptDesign(name));
  expect(webLeast(design, build)).toEqual([]);
});

describe('between a hole and the edge', () => {
  test('3 mm hold', () => expect(blank(circle(-27 + 4, 0, 8))).toEqual([]));
  test('2.96 do not, and do not read as 3', () => {
    const [told, ...more] = blank(circle(-27 + 3.96, 0, 8));
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      rule: 'web-least',
      level: 'error',
      limit: 3,
      unit: 'mm',
      about: 'plywood.thickness',
      message:
        'In the end stop (T5) 2.96 mm of wood are left between the edge and the hole of 8 mm; it breaks there, and needs 3 mm.',
      hint: 'Use thinner sheet, or move one of the two by 0.1 mm.',
    });
    expect(told?.value).toBeCloseTo(2.96, 6);
  });
  test('the pocket of a nut with its corners to the edges of a strip of 14 leaves 2.84', () => {
    // 7 − 7.2/√3
    const turned = cutTo(heron.build, 'F8', ({ holes: [, ...others] }) => ({
      holes: [hole(hexagon(0, 39, 7.2)), ...others],
    }));
    expect(toldOf(turned)).toMatchObject([
      {
        message: expect.stringMatching(/retainer packing \(F8\) 2\.84 mm .* between the edge and the pocket of a nut/),
      },
    ]);
  });
  test('a hole beyond the edge leaves nothing', () =>
    expect(blank(circle(40, 0, 8))).toMatchObject([{ message: expect.stringMatching(/run into each other/) }]));
  test('nor does one that crosses it', () =>
    expect(blank(circle(30, 0, 8))).toMatchObject([
      { value: 0, message: expect.stringMatching(/run into each other/) },
    ]));
});

describe('between two holes', () => {
  const two = (gap: number) => blank(circle(-10, 0, 10), rectangle(box(-5 + gap, -5, 15, 5)));
  test('3 mm hold, 2.9 do not', () => {
    expect(two(3)).toEqual([]);
    expect(two(2.9)).toMatchObject([
      {
        value: expect.closeTo(2.9, 6),
        message: expect.stringMatching(/between the hole of 10 mm and the opening|slot/),
      },
    ]);
  });
  test('corner to corner', () => {
    // 3 and 2.9 along the diagonal
    const corners = (gap: number) => {
      const off = gap / Math.SQRT2;
      return blank(rectangle(box(-15, -15, -5, -5)), rectangle(box(-5 + off, -5 + off, 8, 8)));
    };
    expect(corners(3.001)).toEqual([]);
    expect(corners(2.9)).toHaveLength(1);
  });
  test('a hole in another one leaves nothing', () =>
    expect(blank(rectangle(boxAt(0, 0, 40, 30)), circle(0, 0, 4))).toMatchObject([
      { message: expect.stringMatching(/run into each other/) },
    ]));
  test('a wood screw’s pilot needs 1', () => {
    const pilot = (gap: number) => blank(circle(0, 0, 2), rectangle(box(1 + gap, -5, 15, 5)));
    expect(pilot(1.001)).toEqual([]);
    expect(pilot(0.9)).toMatchObject([{ limit: 1 }]);
  });
});

describe('where a part comes near to itself', () => {
  const waist = (width: number) =>
    outlined(
      stepped(box(0, 0, 60, 40), {
        top: [{ from: 20, to: 30, depth: -(40 - width) / 2 }],
        bottom: [{ from: 20, to: 30, depth: -(40 - width) / 2 }],
      }),
    );
  test('a neck', () => {
    expect(waist(3)).toEqual([]);
    expect(waist(2.9)).toMatchObject([
      {
        value: expect.closeTo(2.9, 6),
        message: 'The end stop (T5) is 2.9 mm wide at its narrowest, and breaks there; it needs 3 mm.',
        hint: 'Use thinner sheet, or make it 0.1 mm wider there.',
      },
    ]);
  });
  test('a strip, all along', () => {
    expect(outlined(rectangle(boxAt(0, 0, 60, 3)))).toEqual([]);
    expect(outlined(rectangle(boxAt(0, 0, 60, 2.9)))).toHaveLength(1);
  });
  test('a tooth between two notches of an opening', () => {
    const tooth = (width: number) =>
      blank(
        stepped(boxAt(0, 0, 30, 10), {
          top: [
            { from: -10, to: 0, depth: 6 },
            { from: width, to: 10, depth: 6 },
          ],
        }),
      );
    expect(tooth(3)).toEqual([]);
    expect(tooth(2.9)).toHaveLength(1);
  });
  test('corners, however sharp or blunt, are no necks', () => {
    const triangle = [
      { x: 0, y: 0, bulge: 0 },
      { x: 40, y: 0, bulge: 0 },
      { x: 0, y: 10, bulge: 0 },
    ];
    expect(outlined(triangle)).toEqual([]);
    expect(
      outlined([
        { x: 0, y: 0, bulge: 0 },
        { x: 40, y: 0, bulge: 0 },
        { x: 40, y: 10, bulge: 0 },
        { x: 2, y: 10, bulge: 0 },
        { x: 0, y: 8, bulge: 0 },
      ]),
    ).toEqual([]);
    expect(outlined(circle(0, 0, 20))).toEqual([]);
  });
});

describe('the cure is named by what the wood is for', () => {
  test('a pin beside the opening: a wider holder', () => {
    // the frame's opening reaches down to 87.7: a hole of 6.2 whose edge is 2.9 from it
    const pin = cutTo(heron.build, 'G1', ({ holes: [window = [], ...others] }) => ({
      holes: [window, ...others.slice(1), hole(circle(40, -87.7 - 2.9 - 3.1, 6.2))],
    }));
    expect(toldOf(pin)).toMatchObject([
      { about: 'holders', hint: 'Make the rims of the narrowest holder 0.1 mm wider: its pins stand in them.' },
    ]);
  });

  describe('a groove for lock ribs in the seat, Heron’s opening reaching to 87.7', () => {
    const grooved = (from: number) =>
      toldOf(cutTo(heron.build, 'B1', ({ holes }) => ({ holes: [...holes, hole(rectangle(box(-78, from, 78, 97)))] })));
    test('3 mm from it', () => expect(grooved(90.7)).toEqual([]));
    test.each([
      { from: 90.6, message: /2\.89 mm|2\.9 mm/ },
      { from: 85, message: /run into each other/ },
    ])('from $from', ({ from, message }) =>
      expect(grooved(from)).toMatchObject([
        {
          rule: 'web-least',
          about: 'holders',
          message: expect.stringMatching(message),
          hint: expect.stringMatching(/middle of the rib/),
        },
      ]),
    );
  });

  test('screws of the mount beside the hole that the lens passes: the other side of the board', () => {
    // a clamp's screw of 4.5 on a circle of 88.2, 31.18 to each side of the axis
    const wide = (diameter: number) =>
      toldOf(
        cutTo(heron.build, 'F7', ({ holes: [, ...others] }) => ({ holes: [hole(circle(0, 0, diameter)), ...others] })),
      );
    // 2 (44.1 − 2.25 − 3)
    expect(wide(77.68)).toEqual([]);
    expect(wide(77.8)).toMatchObject([
      { about: 'lens.mount', hint: expect.stringMatching(/other side of the board/), limit: 3 },
    ]);
  });
});
