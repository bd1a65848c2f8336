import { beforeAll, describe, expect, test } from 'vitest';
import { type Arrangement, arrange } from '../../src/assembly/arrangement.js';
import type { Build } from '../../src/assembly/build.js';
import { workbench } from '../../src/assembly/workbench.js';
import { type Kernel, loadKernel } from '../../src/geometry/kernel.js';
import { reversed } from '../../src/geometry/path.js';
import { frame } from '../../src/geometry/placement.js';
import { rectangle } from '../../src/geometry/shapes.js';
import type { Finding } from '../../src/model/finding.js';
import type { FlatPart } from '../../src/model/part.js';
import { collisions } from '../../src/proof/collisions.js';
import { contacts } from '../../src/proof/contacts.js';
import { clearances, groupsPart } from '../../src/proof/groups.js';
import { buildOf, plank } from '../assembly/planks.js';

/** Blocks of wood whose overlaps, gaps and clearances can be worked out in the head. */

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const on = <T>(build: Build, look: (arrangement: Arrangement) => T, reserve = 0): T =>
  kernel.stage((bench) => look(arrange(build, workbench(bench), reserve)));
const collide = (build: Build, reserve = 0) => on(build, (a) => collisions(build, a, 0.02).findings, reserve);
const touch = (build: Build) => on(build, (a) => contacts(build.parts, a));
const rules = (findings: readonly Finding[]) => findings.map(({ rule }) => rule);

const shelf = plank({ id: 'A', x: [0, 100], y: [0, 50], z: [0, 4] });

describe('two planks', () => {
  test('100 × 50 × 4 and a plank that bites 0.3 into its top share 1500 mm³, 0.3 thick but for their edges', () => {
    const build = buildOf(shelf, plank({ id: 'B', x: [0, 100], y: [0, 50], z: [3.7, 7.7] }));
    const [shared] = on(build, (a) => a.pairs(0).map((pair) => a.shared(pair, 0)));
    expect(shared?.volume).toBeCloseTo(100 * 50 * 0.3, 1);
    // 2V/S of a plate of 100 × 50 × 0.3: 3000 over 10 090
    expect(shared?.depth).toBeCloseTo(3000 / 10090, 4);
    const [finding] = collide(build);
    expect(finding?.rule).toBe('parts-collide');
    expect(finding?.message).toContain('A (plank A) and B (plank B) lie in each other: 1500 mm³, 0.3 mm thick');
    expect(finding?.message).toContain('x 50 mm, y 25 mm, z 3.9 mm');
  });

  test.each([
    { what: 'that only touch', z: [4, 8] as const, found: [] },
    { what: 'that bite 0.01', z: [3.99, 7.99] as const, found: ['parts-collide'] },
  ])('$what', ({ z, found }) => {
    expect(rules(collide(buildOf(shelf, plank({ id: 'B', x: [0, 100], y: [0, 50], z }))))).toEqual(found);
  });

  test.each([
    { what: 'a press fit may bite 0.02', z: [3.985, 7.985] as const, found: [] },
    { what: 'and no more', z: [3.97, 7.97] as const, found: ['parts-collide'] },
  ])('$what', ({ z, found }) => {
    const pressed = plank({ id: 'B', x: [0, 100], y: [0, 50], z, joins: [{ to: 'A', by: 'press' }] });
    expect(rules(collide(buildOf(shelf, pressed)))).toEqual(found);
  });
});

describe('what slides', () => {
  const slider = (z: readonly [number, number]) => plank({ id: 'S', x: [0, 10], y: [0, 10], z, group: 'rear' });
  const post = (z: readonly [number, number]) => plank({ id: 'P', x: [0, 10], y: [0, 10], z });

  test('meets a post between the ends of its travel', () => {
    expect(collide(buildOf(slider([0, 5]), post([50, 54])))[0]?.message).toContain('drawn out 50 mm');
  });

  test('and one that stands only in the reserve', () => {
    const build = buildOf(slider([0, 5]), post([106, 110]));
    expect(collide(build)).toEqual([]);
    expect(collide(build, 8)[0]?.message).toMatch(/drawn out 10[1-8](\.\d)? mm/);
  });

  test('and a post thinner than any step, wherever it stands', () => {
    for (const at of [13.37, 41.9, 77.7])
      expect(rules(collide(buildOf(slider([0, 0.5]), post([at, at + 0.2]))))).toEqual(['parts-collide']);
  });

  // lies flat: own y along z, thick downwards from y = 4
  const board = (slot: number): FlatPart => ({
    ...plank({ id: 'S', x: [-30, 30], y: [0, 200], z: [0, 4], group: 'rear' }),
    holes: [reversed(rectangle({ left: 27, bottom: 160 - slot, right: 33, top: 160 }))],
    placements: [{ group: 'rear', matrix: frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [-30, 4, 0]) }],
  });
  // a standing pin through the slot, 6 square, at z 152 to 158: the board passes it 100 mm
  const pin = plank({ id: 'P', x: [-2.9, 2.9], y: [-10, 10], z: [152, 158] });

  test.each([
    { what: 'a slot as long as travel and pin', slot: 110, found: [] },
    { what: 'one that is shorter', slot: 100, found: ['parts-collide'] },
  ])('$what', ({ slot, found }) => expect(rules(collide(buildOf(board(slot), pin)))).toEqual(found));

  test('two pieces that slide together never meet for that', () => {
    const other = plank({ id: 'P', x: [0, 10], y: [0, 10], z: [50, 54], group: 'rear' });
    expect(collide(buildOf(slider([0, 5]), other))).toEqual([]);
  });
});

test('pieces of different set-ups may want the same place', () => {
  const glass = plank({
    id: 'G',
    x: [0, 10],
    y: [0, 10],
    z: [0, 4],
    group: 'loose',
    when: ['glass for holder, upright'],
  });
  const holder = plank({ id: 'H', x: [0, 10], y: [0, 10], z: [0, 4], group: 'loose', when: ['holder, upright'] });
  expect(collide(buildOf(glass, holder))).toEqual([]);
});

test('a back that clears the foot upright may meet it when its open end lies to the right', () => {
  // reaches 60 to the left of the axis: upright and a quarter turn on it clears y = −55, three quarter turns on it does not
  const upright = { when: ['glass for holder, upright'], group: 'back' as const };
  const arm = plank({ id: 'B', x: [-10, 10], y: [-10, 60], z: [0, 4], ...upright });
  const left = plank({ id: 'W', x: [-62, -58], y: [-10, 10], z: [0, 4] });
  const right = plank({ id: 'W', x: [58, 62], y: [-10, 10], z: [0, 4] });
  expect(collide(buildOf(arm, left))).toEqual([]);
  const [finding] = collide(buildOf(arm, right));
  expect(finding?.message).toContain('turned with its open end to the right');
});

describe('what is joined touches', () => {
  const glued = (gap: number) =>
    buildOf(
      shelf,
      plank({ id: 'B', x: [0, 100], y: [0, 50], z: [4 + gap, 8 + gap], joins: [{ to: 'A', by: 'glue' }] }),
    );

  test('a glue line of 0.08 is none too wide', () => expect(touch(glued(0.08))).toEqual([]));

  test('one of 0.3 is: it does not hold, and nothing else does', () => {
    const findings = touch(glued(0.3));
    expect(findings[0]).toMatchObject({ rule: 'parts-touch', level: 'warning', limit: 0.15 });
    expect(findings[0]?.value).toBeCloseTo(0.3, 4);
    expect(findings[0]?.message).toContain('B (plank B) is to be glued to A and stands 0.3 mm away from it');
    expect(findings.some(({ message }) => message.includes('hangs in the air'))).toBe(true);
  });

  test('a plank that is joined to nothing and touches nothing hangs in the air', () => {
    const loose = plank({ id: 'L', x: [0, 10], y: [0, 10], z: [50, 54] });
    const pair = glued(0);
    const [finding, ...more] = touch({ ...pair, parts: [...pair.parts, loose] });
    expect(finding?.message).toContain('L (plank L) hangs in the air');
    expect(more).toEqual([]);
  });

  test('what rests needs one bearer of those named', () => {
    const resting = (z: number) =>
      plank({
        id: 'R',
        x: [0, 10],
        y: [0, 10],
        z: [z, z + 4],
        joins: [
          { to: 'A', by: 'rest' },
          { to: 'B', by: 'rest' },
        ],
      });
    const pair = glued(0);
    expect(touch({ ...pair, parts: [...pair.parts, resting(8)] })).toEqual([]);
    expect(touch({ ...pair, parts: [...pair.parts, resting(9)] })[0]?.message).toContain('is to rest on A or B');
  });
});

describe('air round what moves', () => {
  // a rear block of 40 in a channel of the front: 0.25 to the left, 0.25 to the right, 0.3 above, resting below
  const channel = (left: number, top: number) => [
    plank({ id: 'floor', x: [-30, 30], y: [-4, 0], z: [0, 200] }),
    plank({ id: 'left', x: [-30, -20 - left], y: [0, 20], z: [0, 200] }),
    plank({ id: 'right', x: [20.25, 30], y: [0, 20], z: [0, 200] }),
    plank({ id: 'lid', x: [-30, 30], y: [20 + top, 24 + top], z: [0, 200] }),
    plank({ id: 'block', x: [-20, 20], y: [0, 20], z: [10, 60], group: 'rear', joins: [{ to: 'floor', by: 'slide' }] }),
  ];
  const airs = (build: Build) =>
    on(build, clearances)
      .filter(({ between }) => between[1] === 'rear')
      .map(({ direction, air }) => [direction, air] as const);

  test('is measured to four sides, and what bears the load lies on it', () => {
    const found = Object.fromEntries(airs(buildOf(...channel(0.25, 0.3))));
    expect(found.left).toBeCloseTo(0.25, 2);
    expect(found.right).toBeCloseTo(0.25, 2);
    expect(found.up).toBeCloseTo(0.3, 2);
    expect(found.down).toBeNull();
  });

  const judged = (left: number, top: number) => {
    const build = buildOf(...channel(left, top));
    return groupsPart(build.parts, on(build, clearances)).filter(({ message }) => message.includes('the front'));
  };

  test.each([
    { what: '0.06 a side slides', left: 0.06, top: 0.3, found: [] },
    { what: '0.03 jams', left: 0.03, top: 0.3, found: ['groups-part'] },
    { what: '1.4 over it still guides', left: 0.25, top: 1.4, found: [] },
    { what: '1.7 does not', left: 0.25, top: 1.7, found: ['groups-part'] },
  ])('$what', ({ left, top, found }) => expect(rules(judged(left, top))).toEqual(found));

  test('the message says where', () => {
    expect(judged(0.03, 0.3)[0]?.message).toBe(
      'The sliding rear jams in the front: between block and left there is 0.03 mm of air to the left.',
    );
    expect(judged(0.25, 1.7)[0]?.message).toContain('Nothing guides the sliding rear in the front towards the top');
  });

  test('glue between what must move is an error', () => {
    const parts = channel(0.25, 0.3).map((part) =>
      part.id === 'block' ? { ...part, joins: [{ to: 'floor', by: 'glue' as const }] } : part,
    );
    const build = buildOf(...parts);
    const [finding] = groupsPart(build.parts, on(build, clearances));
    expect(finding?.message).toContain('block (plank block) would be held fast to floor');
  });
});
