import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { spansOf } from '../../src/assembly/span-of.js';
import { boundsOf, reversed } from '../../src/geometry/path.js';
import { across } from '../../src/geometry/placement.js';
import { circle, slotAlongX } from '../../src/geometry/shapes.js';
import type { FlatPart, Part } from '../../src/model/part.js';
import { planCamera } from '../../src/pipeline.js';
import { oneWayRules } from '../../src/proof/one-way.js';
import { heron, without } from '../camera/worked.js';
import { keptDesign, keptDesigns } from '../designs/kept-design.js';
import { placed, rect, tinyBuild, tinyPlate } from './tiny.js';

const told = (...parts: readonly Part[]) => oneWayRules(tinyBuild(...parts)).map(({ message }) => message);

/** A plate of 80 × 40 with a square window, `off` its middle along x. */
const windowed = (off: number, id = 'plate', change: Partial<FlatPart> = {}): FlatPart =>
  tinyPlate({
    id,
    across: 'z',
    low: 0,
    outline: rect(-40, -20, 40, 20),
    holes: [rect(off - 5, -5, off + 5, 5)],
    change,
  });
const rod = (x: number, y: number, diameter: number): Part => ({
  kind: 'bought',
  id: `rod-${diameter}`,
  name: 'rod',
  shape: { form: 'cylinder', diameter, length: 10 },
  placements: [{ group: 'front', matrix: across(x, y, -3) }],
  joins: [],
  massKg: 0.001,
});

describe('a plate turned in its place', () => {
  test.each([
    { off: 0, wrong: false, why: 'its window stays where it is' },
    { off: 0.14, wrong: false, why: 'its window moves by 0.28, less than a slide fit' },
    { off: 0.2, wrong: true, why: 'its window moves by 0.4' },
    { off: 10, wrong: true, why: 'its window moves by 20' },
  ])('$off off the middle: $why', ({ off, wrong }) => {
    const found = oneWayRules(tinyBuild(windowed(off)));
    expect(found.length > 0).toBe(wrong);
    if (!wrong) return;
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ rule: 'one-way', level: 'warning', limit: 0.3, unit: 'mm' });
    expect(found[0]?.value).toBeCloseTo(Math.min(2 * off, 10), 6); // one window at the most off by its own width
    expect(found[0]?.message).toMatch(
      /^plate \(plate plate\) goes in turned end for end as well: an edge of it then lies/,
    );
  });

  test('a bar through the window keeps it from going in any other way', () =>
    expect(told(windowed(10), rod(10, 0, 9.9))).toEqual([]));

  test('a thing beside one end keeps it from being turned a quarter, not from being turned over', () => {
    const square = tinyPlate({
      id: 'square',
      across: 'z',
      low: 0,
      outline: rect(-40, -40, 40, 40),
      holes: [rect(-20, -5, 20, 5)],
    });
    expect(told(square)).toHaveLength(1);
    expect(told(square, rod(15, 0, 9.9))).toEqual([]);
  });

  test('an empty hole of the size of a pin does nothing, one for a wood screw does', () => {
    const drilled = (diameter: number) => ({ ...windowed(0), holes: [circle(20, 0, diameter).toReversed()] });
    expect(told(drilled(6))).toEqual([]);
    expect(told(drilled(2))).toHaveLength(1);
  });

  test('words turned upside down on the same face are read wrong, on the face below they are missed', () => {
    const scale = { marks: [{ text: '1:2', x: 0, y: 0, height: 3, turn: 0 }] };
    const [message] = told({ ...windowed(0), ...scale });
    expect(message).toContain('its scale is then read wrong');
    // of an outline that is alike to itself only when it is turned over nothing is told
    const keyed = {
      ...windowed(0),
      ...scale,
      holes: [],
      outline: rect(-40, -20, 40, 20).map((v, i) => (i === 0 ? { ...v, x: v.x + 6 } : v)),
    };
    expect(told(keyed)).toEqual([]);
  });
});

describe('two plates that look alike', () => {
  const here = placed(windowed(0, 'wide'), across(0, 0, 0));
  const there = (hole: number): FlatPart => ({
    ...placed(windowed(0, 'narrow'), across(0, 0, 50)),
    holes: [rect(-hole / 2, -hole / 2, hole / 2, hole / 2).toReversed()],
  });

  test('with the same window are the same', () => expect(told(here, there(10))).toEqual([]));
  test('with another window must be told apart', () => {
    const found = told(here, there(20));
    expect(found).toHaveLength(1);
    expect(found[0]).toContain('goes in where narrow (plate narrow) belongs, as it is, and narrow in its place');
  });
  test('a bar through the wider window of one tells them apart', () => {
    const bar: Part = { ...rod(0, 0, 15), placements: [{ group: 'front', matrix: across(0, 0, 47) }] };
    expect(told(here, there(20), bar)).toEqual([]);
  });
  test('of another thickness are told apart by hand', () =>
    expect(told(here, { ...there(20), thickness: 6 })).toEqual([]));
});

describe('a ring on a plate, both with the same oblong window', () => {
  const window = [rect(-30, -50, 30, 50).toReversed()];
  const ring = (by: 'glue' | 'screw') =>
    tinyPlate({
      id: 'ring',
      across: 'z',
      low: 0,
      outline: rect(-60, -60, 60, 60),
      holes: window,
      change: { joins: [{ to: 'plate', by }] },
    });
  const plate = tinyPlate({ id: 'plate', across: 'z', low: 4, outline: rect(-80, -70, 80, 70), holes: window });
  const ofRing = (parts: readonly string[]) => parts.filter((message) => message.startsWith('ring'));

  test('glued window on window shows a wrong way before the glue', () =>
    expect(ofRing(told(ring('glue'), plate))).toEqual([]));
  test('only screwed it does not', () => expect(ofRing(told(ring('screw'), plate))).toHaveLength(1));
});

// the plug with six screws on a circle, keepers whose screws would lie alike to both ends, spacers under glass and holder
test.each(keptDesigns)('%s goes together one way', (name) =>
  expect(oneWayRules(planCamera(keptDesign(name)).build)).toEqual([]),
);

describe('Heron', () => {
  const changed = (id: string, change: (part: FlatPart) => FlatPart): Build => ({
    ...heron.build,
    parts: heron.build.parts.map((part) => (part.id === id && part.kind === 'flat' ? change(part) : part)),
  });

  test('retainers whose slots lie to one side draw less far when they are turned over', () => {
    const lopsided = changed('F9', (part) => ({
      ...part,
      holes: part.holes.map((hole, i) => {
        const y = hole.reduce((sum, v) => sum + v.y, 0) / hole.length;
        const diameter = i === 0 ? 4.5 : 5.3;
        return slotAlongX(-0.2, y, 7 + diameter, diameter)
          .toReversed()
          .map((v, k, all) => ({
            ...v,
            bulge: -(all[(k + 1) % all.length]?.bulge ?? 0),
          }));
      }),
    }));
    const [found] = oneWayRules(lopsided);
    expect(found?.message).toMatch(/^F9 \(retainer\) goes in turned over as well: an edge of it then lies 0.4 mm/);
  });

  test('keepers that no screw holds in their places can be taken for each other', () => {
    const messages = oneWayRules(without('keeper-screw')).map(({ message }) => message);
    expect(messages.some((message) => /T3.* goes in where T3S? \(keeper/.test(message) || /^T3S? /.test(message))).toBe(
      true,
    );
  });

  /** As rails were once: both dowels of one thickness, so that the hole nearer to the end goes on the other one too. */
  const withEqualDowels = (build: Build, diameter: number): Build => ({
    ...build,
    parts: build.parts.map((part): Part => {
      if (part.id.startsWith('rail-dowel') && part.kind === 'bought' && part.shape.form === 'cylinder')
        return { ...part, shape: { ...part.shape, diameter } };
      if (part.id !== 'T2' || part.kind !== 'flat') return part;
      const holes = part.holes.map((hole) => {
        const { left, right, bottom, top } = boundsOf(hole);
        return right - left < 3 ? hole : reversed(circle((left + right) / 2, (bottom + top) / 2, diameter));
      });
      return { ...part, holes };
    }),
  });
  test.each([5, 6])('rails on two dowels of %s mm go on turned, as far off as their ends differ', (diameter) => {
    const found = oneWayRules(withEqualDowels(heron.build, diameter)).filter(({ message }) => message.startsWith('T2'));
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toMatch(/^T2 \(rail ply\) goes in turned .* as well: an edge of it then lies 6 mm/);
    // 24 mm from one end and 30 from the other
    expect(found[0]?.value).toBeCloseTo(30 - 24, 6);
  });
  test('something at the bench that is in the way of the turned rail keeps it out', () => {
    const { build } = heron;
    const tabs = spansOf(build, 'T2').map(({ x, y }) =>
      tinyPlate({
        id: 'T1-stop',
        across: 'y',
        low: y[0],
        outline: rect(x[0], -20, x[1], -1),
        change: { joins: [{ to: 'T1U', by: 'glue' }] },
      }),
    );
    expect(tabs).toHaveLength(4);
    const parts = withEqualDowels(build, 6).parts;
    // of no step of the camera: it is not known when it comes, so that it does not count as there
    const late = oneWayRules({ ...build, parts: [...parts, ...tabs] });
    expect(late.some(({ message }) => message.startsWith('T2'))).toBe(true);
    // as an end of the upper ply it is
    const there = tabs.map((tab): Part => ({ ...tab, id: 'T1U' }));
    expect(oneWayRules({ ...build, parts: [...parts, ...there] }).some(({ message }) => message.startsWith('T2'))).toBe(
      false,
    );
  });

  test('rails without their dowels go in end for end, and the keepers’ screws miss them', () =>
    expect(
      oneWayRules(without('rail-dowel-6', 'rail-dowel-5'))
        .map(({ message }) => message)
        .join(),
    ).toMatch(/T2 \(rail ply\) goes in/));
});
