import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { compose, shift } from '../../src/geometry/placement.js';
import { box, boxAt, circle, rectangle } from '../../src/geometry/shapes.js';
import { planCamera } from '../../src/pipeline.js';
import { nutEdge } from '../../src/proof/edges.js';
import { cutTo, hole, replaced } from '../camera/altered.js';
import { heron, moving } from '../camera/worked.js';
import { keptDesign, keptDesigns } from '../designs/kept-design.js';

/**
 * From the middle of a hole to the edge max(2d, t) where it carries load, max(1.25d, d/2 + 3) where it guides, 3d from
 * hole to hole: camera.md sections 14 and 16, common practice, no source. Heron's sheet is 4.05 thick.
 */
const told = (build: Build) => nutEdge(heron.design, build);
const recut = (id: string, outline: ReturnType<typeof rectangle>) => told(cutTo(heron.build, id, () => ({ outline })));

test.each(keptDesigns)('%s: every screw stands in wood', (name) => {
  const { design, build } = planCamera(keptDesign(name));
  expect(nutEdge(design, build)).toEqual([]);
});

describe('to the edge', () => {
  const { bolt, soleWidth, soleFront } = heron.camera.objects.rearStandard;
  test.each([
    {
      // M6: 12; the sole's own y runs to the front
      name: 'lock bolt in the sole',
      id: 'R4L',
      inside: rectangle(box(-soleWidth / 2, -bolt - 12.01, soleWidth / 2, -soleFront)),
      outside: rectangle(box(-soleWidth / 2, -bolt - 11.9, soleWidth / 2, -soleFront)),
      limit: 12,
      message:
        'The lock bolt stands 11.9 mm from the edge of the sole, lower ply (R4L): the wood breaks out when it is tightened.',
    },
    {
      // M4 at 45° on a circle of 88.2: 31.183 and 8
      name: 'clamp’s screws in the plug',
      id: 'F7',
      inside: rectangle(boxAt(0, 0, 78.37, 78.37)),
      outside: rectangle(boxAt(0, 0, 78.17, 78.17)),
      limit: 8,
      message:
        'The screw of the lens clamp stands 7.9 mm from the edge of the plug (F7): the wood breaks out when it is tightened.',
    },
    {
      // 3 mm: 6
      name: 'keeper’s screws in the rail',
      id: 'T2',
      inside: rectangle(boxAt(0, 0, 12.01, 330)),
      outside: rectangle(boxAt(0, 0, 11.8, 330)),
      limit: 6,
      message:
        'The screw of a keeper stands 5.9 mm from the edge of the rail ply (T2): the wood breaks out when it is tightened.',
    },
    {
      // 1/4-20, 6.35 across its thread: 12.7
      name: 'tripod nut in the doubler',
      id: 'T4',
      inside: rectangle(boxAt(0, 0, 25.41, 25.41)),
      outside: rectangle(boxAt(0, 0, 25.2, 25.2)),
      limit: 12.7,
      message:
        'The tripod nut stands 12.6 mm from the edge of the tripod doubler (T4): the wood breaks out when it is tightened.',
    },
    {
      // M4, guiding: 5
      name: 'turn-button’s screw',
      id: 'R6',
      inside: rectangle(box(-8, -5.01, 19, 5.01)),
      outside: rectangle(box(-8, -4.9, 19, 4.9)),
      limit: 5,
      message:
        'The screw of a turn-button stands 4.9 mm from the edge of the turn-button (R6): the wood breaks out round it.',
    },
    {
      // a guide pin of 5: 6.25; the screw of M4 wants 5
      name: 'retainer’s packing',
      id: 'F8',
      inside: rectangle(boxAt(0, 0, 12.51, 140)),
      outside: rectangle(boxAt(0, 0, 12.4, 140)),
      limit: 6.25,
      message:
        'The guide pin of a retainer stands 6.2 mm from the edge of the retainer packing (F8): the wood breaks out round it.',
    },
  ])('$name', ({ id, inside, outside, limit, message }) => {
    expect(recut(id, inside)).toEqual([]);
    const [found, ...more] = recut(id, outside);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ rule: 'nut-edge', level: 'error', unit: 'mm', message });
    expect(found?.limit).toBeCloseTo(limit, 6);
    expect(found?.value).toBeLessThan(limit);
    expect(found?.hint).toMatch(/wider|smaller circle/);
  });

  test('the end stop’s screws', () => {
    // 3 mm, guiding: 4.5
    const stop = (nearer: number) =>
      told(
        cutTo(heron.build, 'T5', ({ outline }) => {
          const rear = Math.max(...outline.map(({ y }) => y));
          return { outline: outline.map((v) => (v.y === rear ? { ...v, y: rear - nearer } : v)) };
        }),
      );
    expect(stop(0.5)).toEqual([]);
    expect(stop(0.6)).toMatchObject([
      { limit: 4.5, message: expect.stringMatching(/screw of the end stop stands 4\.4 mm/) },
    ]);
  });

  test('slots count from wherever the screw may slide to', () => {
    // the retainer's slots end 6.3 from its inner edge: 10 − (7 − 3.3)
    const inner = (cut: number) =>
      told(
        cutTo(heron.build, 'F9', ({ outline }) => ({
          outline: outline.map((v) => (v.x < 0 ? { ...v, x: v.x + cut } : v)),
        })),
      );
    expect(inner(0.04)).toEqual([]);
    expect(inner(0.1)).toMatchObject([
      { limit: 6.25, message: expect.stringMatching(/guide pin of a retainer stands 6\.2 mm/) },
    ]);
  });

  test('thick sheet wants its thickness where a screw carries', () => {
    const thick = { ...heron.design, plywood: { ...heron.design.plywood, thickness: 8.5 } };
    const [found] = nutEdge(thick, heron.build).filter(({ message }) => message.includes('(T2)'));
    expect(found).toMatchObject({ limit: 8.5, hint: 'Use sheet of 8 mm or less.' });
  });

  test('wood screws of a flange are found by their pilot holes', () => {
    // Curlew: six on a circle of 104 in sheet of 6.15; the uppermost wants 52 + 6.15
    const { design, build } = planCamera(keptDesign('curlew'));
    const board = (side: number) =>
      nutEdge(
        design,
        cutTo(build, 'F6', () => ({ outline: rectangle(boxAt(0, 0, side, side)) })),
      );
    expect(board(116.31)).toEqual([]);
    expect(board(116)).toMatchObject([
      {
        about: 'lens.mount',
        message: expect.stringMatching(/^The screw of the lens’s flange stands 6 mm/),
        hint: expect.stringMatching(/6 mm or less/),
      },
    ]);
  });
});

test('hole to hole: three diameters', () => {
  // two of the end stop's screws of 3 mm
  const apart = (gap: number) => {
    const z = heron.camera.objects.tailboard.start + heron.camera.objects.tailboard.length - 5;
    const stop = cutTo(heron.build, 'T5', () => ({
      holes: [gap / 2, -gap / 2].map((x) => hole(circle(x, z, 3.2))),
    }));
    const upper = cutTo(stop, 'T1U', ({ holes }) => ({
      holes: [...holes.slice(0, -2), ...[gap / 2, -gap / 2].map((x) => hole(circle(x, z, 2)))],
    }));
    return told(
      replaced(upper, 'stop-screw', (places) =>
        places.map((place) => {
          const x = place.matrix[12] ?? 0;
          return { ...place, matrix: compose(shift((Math.sign(x) * gap) / 2 - x, 0, 0), place.matrix) };
        }),
      ),
    );
  };
  expect(apart(9.01)).toEqual([]);
  expect(apart(8.9)).toMatchObject([
    { limit: 9, message: expect.stringMatching(/two holes stand 8\.9 mm apart/), hint: 'Set them 9 mm apart.' },
    { limit: 9 },
  ]);
});

describe('no bolt across a glue line', () => {
  // a doubler of 60 pushed aside: its edge comes to the hole of 8 for the nut's barrel in the lower ply
  test('the edge 5 mm from the middle of a hole of 8', () => expect(told(moving('T4', { x: 25 }))).toEqual([]));
  test('the edge through the hole', () =>
    expect(told(moving('T4', { x: 30 }))).toMatchObject([
      {
        rule: 'nut-edge',
        level: 'error',
        value: 1,
        limit: 0,
        unit: 'glue lines',
        message: expect.stringMatching(
          /tripod nut in the tailboard, lower ply \(T1L\) lies across the edge of the tripod doubler/,
        ),
        hint: expect.stringMatching(/clear of T4/),
      },
    ]));
});
