import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { spanOf } from '../../src/assembly/span-of.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import { type ClosedPath, polygon, reversed } from '../../src/geometry/path.js';
import { across } from '../../src/geometry/placement.js';
import { circle, slotAlongX } from '../../src/geometry/shapes.js';
import { boughtRod, joined, standing } from '../../src/joinery/plate.js';
import { type Act, assemblySteps, CAMERA, type Step } from '../../src/model/assembly-steps.js';
import type { FlatPart, Part } from '../../src/model/part.js';
import { orderOf, proveOrder } from '../../src/proof/order.js';
import { heron, recut, without } from '../camera/worked.js';
import { rect, tinyBuild, tinyPlate } from './tiny.js';

const kernel = await loadKernel();

/** Everything into one thing, in this order. */
const inOrder = (...ids: readonly string[]): readonly Step[] => [
  { key: 'all', title: 'all', acts: ids.map((id) => ({ into: CAMERA, each: [id] })) },
];
const messages = (build: Build, steps?: readonly Step[]) =>
  proveOrder(build, kernel, steps).map(({ message }) => message);
const waysOf = (build: Build, steps: readonly Step[]) =>
  orderOf(build, kernel, steps).moves.map(({ way }) => (way ? `${way.sign > 0 ? '+' : '-'}${way.axis}` : null));

describe('small things, whose answer is seen at a glance', () => {
  const board = tinyPlate({
    id: 'board',
    across: 'y',
    low: 0,
    outline: rect(0, 0, 100, 100),
    holes: [rect(40, 40, 60, 45)],
  });
  const tongue = tinyPlate({ id: 'tongue', across: 'z', low: 40.5, outline: rect(40.1, -2, 59.9, 50) });

  test('a tongue goes down into its slot', () =>
    expect(waysOf(tinyBuild(board, tongue), inOrder('board', 'tongue'))).toEqual([null, '-y']));

  test('a hook that is wider behind the slot goes in from neither side', () => {
    const hook = tinyPlate({
      id: 'hook',
      across: 'z',
      low: 40.5,
      outline: polygon([
        [35, -10],
        [65, -10],
        [65, 0],
        [59, 0],
        [59, 4],
        [65, 4],
        [65, 20],
        [35, 20],
        [35, 4],
        [41, 4],
        [41, 0],
        [35, 0],
      ]),
    });
    // across the slot, 6 of it would have to pass the board on either side
    const [message] = messages(tinyBuild(board, hook), inOrder('board', 'hook'));
    expect(message).toMatch(/^hook \(plate hook\) does not go in at step 1, from whichever side it comes/);
    expect(message).toContain('board (plate board)');
  });

  test('a slot open at one end lets it in there alone, although its last place is free', () => {
    const fork = tinyPlate({
      id: 'fork',
      across: 'y',
      low: 0,
      outline: polygon([
        [0, 0],
        [100, 0],
        [100, 100],
        [60, 100],
        [60, 40],
        [40, 40],
        [40, 100],
        [0, 100],
      ]),
    });
    const stopped = tinyPlate({ id: 'stopped', across: 'z', low: 41, outline: rect(30, 4.5, 70, 50) });
    const below = tinyPlate({ id: 'below', across: 'z', low: 41, outline: rect(30, -50, 70, -0.5) });
    const bobbin = tinyPlate({ id: 'bobbin', across: 'z', low: 45, outline: rect(41, -20, 59, 20) });
    // a flat thing in the plane of the fork: wider behind its mouth than the mouth
    expect(waysOf(tinyBuild(fork, bobbin, stopped, below), inOrder('fork', 'stopped', 'below', 'bobbin'))).toEqual([
      null,
      '-z',
      '-z',
      '-z',
    ]);
  });

  test('a key wider than the neck of its keyhole is refused along the plane, and goes in across it', () => {
    const plate = tinyPlate({
      id: 'plate',
      across: 'z',
      low: 0,
      outline: rect(0, 0, 100, 100),
      holes: [circle(50, 50, 20)],
    });
    const disc = tinyPlate({ id: 'disc', across: 'z', low: 0, outline: circle(50, 50, 19.9) });
    expect(waysOf(tinyBuild(plate, disc), inOrder('plate', 'disc'))).toEqual([null, '-z']);
    // lids before and behind: it is shut in
    const lid = (id: string, low: number) => tinyPlate({ id, across: 'z', low, outline: rect(0, 0, 100, 100) });
    const shut = tinyBuild(plate, lid('front', -4), lid('behind', 4), disc);
    expect(messages(shut, inOrder('plate', 'front', 'behind', 'disc'))).toHaveLength(1);
    expect(messages(shut, inOrder('plate', 'front', 'disc', 'behind'))).toEqual([]);
  });

  test.each([
    { width: 20.03, goes: true }, // 0.015 a side is a press fit
    { width: 20.1, goes: false }, // 0.05 a side is wood
  ])('a tongue $width wide in a slot of 20: goes in $goes', ({ width, goes }) => {
    const wide = tinyPlate({
      id: 'tongue',
      across: 'z',
      low: 40.5,
      outline: rect(50 - width / 2, -2, 50 + width / 2, 50),
    });
    expect(messages(tinyBuild(board, wide), inOrder('board', 'tongue')).length === 0).toBe(goes);
  });

  describe('a screw in the hole of a board, its head flush with the front', () => {
    const holed = tinyPlate({
      id: 'holed',
      across: 'z',
      low: 0,
      outline: rect(0, 0, 100, 100),
      holes: [circle(50, 50, 4.5)],
    });
    const screw = (head: 'start' | 'end') =>
      boughtRod({
        id: 'screw',
        name: 'a screw',
        diameter: 4.4,
        length: 20,
        head,
        placements: [standing('front', across(50, 50, 0))],
        joins: joined('screw', 'holed'),
        massKg: 0,
      });
    const wall = tinyPlate({ id: 'wall', across: 'z', low: -40, outline: rect(0, 0, 100, 100) });

    // a way of +z runs towards the film: it comes from the front
    test.each([
      { head: 'start', way: '+z' },
      { head: 'end', way: '-z' },
    ] as const)('comes from the side of its head, which is at its $head', ({ head, way }) =>
      expect(waysOf(tinyBuild(holed, screw(head)), inOrder('holed', 'screw'))).toEqual([null, way]),
    );

    test('does not come tip last, where something stands before its head', () => {
      const walled = tinyBuild(wall, holed, screw('start'));
      expect(messages(walled, inOrder('holed', 'wall', 'screw'))).toEqual([
        expect.stringMatching(
          /^screw \(a screw\) does not go in at step 1. It is driven from the front, where its head is, and meets wall \(plate wall\)/,
        ),
      ]);
      expect(messages(walled, inOrder('holed', 'screw', 'wall'))).toEqual([]);
    });

    test('has its head free where it slides away from what stands before it', () => {
      const sliding = <P extends Part>(part: P): P => ({
        ...part,
        placements: part.placements.map(({ matrix }) => ({ group: 'rear', matrix })),
      });
      const slide = tinyBuild(wall, sliding(holed), sliding(screw('start')));
      expect(messages(slide, inOrder('holed', 'wall', 'screw'))).toEqual([]);
    });
  });

  test('two that keep each other out, until they are put together first', () => {
    // a rod between two cheeks: with both cheeks standing it goes in no more, as one with the first it does
    const cheek = (id: string, low: number) =>
      tinyPlate({ id, across: 'x', low, outline: rect(0, 0, 40, 40), holes: [circle(20, 20, 10)] });
    const rod = tinyPlate({
      id: 'rod',
      across: 'z',
      low: 18,
      outline: polygon([
        [2, 18],
        [6, 18],
        [6, 12],
        [44, 12],
        [44, 18],
        [48, 18],
        [48, 22],
        [44, 22],
        [44, 28],
        [6, 28],
        [6, 22],
        [2, 22],
      ]),
    });
    const build = tinyBuild(cheek('left', 2), cheek('right', 44), rod);
    expect(messages(build, inOrder('left', 'right', 'rod'))).toHaveLength(1);
    expect(messages(build, inOrder('left', 'rod', 'right'))).toEqual([]);
  });

  test('a part that no step names', () => {
    expect(messages(tinyBuild(board, tongue), inOrder('board'))).toEqual([
      'tongue (plate tongue) has its place in the camera, and no step of the assembly says when it goes in.',
    ]);
  });
});

/** The steps with some parts brought in later than they should be. */
const late = (ids: readonly string[], key: string): readonly Step[] =>
  assemblySteps.map((step) => ({
    ...step,
    acts: [
      ...step.acts.flatMap((act): readonly Act[] => {
        if ('each' in act) return [{ ...act, each: act.each.filter((id) => !ids.includes(id)) }];
        return 'asOne' in act && act.asOne.some((id) => ids.includes(id)) ? [] : [act];
      }),
      ...(step.key === key ? [{ into: CAMERA, each: ids }] : []),
    ],
  }));

const changed = (id: string, change: (part: FlatPart) => FlatPart): Build => ({
  ...heron.build,
  parts: heron.build.parts.map((part) => (part.id === id && part.kind === 'flat' ? change(part) : part)),
});
const flat = (id: string): FlatPart => {
  const part = heron.build.parts.find((one) => one.id === id);
  if (part?.kind !== 'flat') throw new Error(`there is no plate ${id}`);
  return part;
};

describe('Heron', () => {
  const { moves, findings } = orderOf(heron.build, kernel);
  const wayOf = (...pieces: readonly string[]) => {
    const way = moves.find((move) => move.pieces.join() === pieces.join())?.way;
    return way && `${way.sign > 0 ? '+' : '-'}${way.axis}`;
  };

  test('goes together', () => expect(findings).toEqual([]));

  // what the description of the construction says of them
  test.each([
    { piece: 'F3', way: '-y' }, // the top drops in last
    { piece: 'F1', way: '+z' },
    { piece: 'R5#1', way: '+z' }, // ribs go into the standard along z
    { piece: 'F4', way: '-x' }, // floor into the left side
    { piece: 'keeper-screw#1', way: '-y' },
    { piece: 'retainer-screw#1', way: '+z' },
    { piece: 'button-screw#1', way: '+z' }, // from the front
    { piece: 'seat-pin-5#1', way: '-z' }, // from the seat side
    { piece: 'seat-pin-6#1', way: '-z' },
    { piece: 'lock-knob', way: '+y' },
    { piece: 'lens-clamp', way: '-z' }, // its flange is laid on the plug, and its nuts lie in it
    { piece: 'T5', way: '-y' },
  ])('$piece comes along $way', ({ piece, way }) => expect(wayOf(piece)).toBe(way));

  test('the rear slides in from behind, the front box stands down into the tailboard', () => {
    expect(moves.find(({ whole }) => whole === 'rear')?.way).toEqual({ axis: 'z', sign: -1 });
    expect(moves.find(({ whole }) => whole === 'front box')?.way).toEqual({ axis: 'y', sign: -1 });
    expect(wayOf('lock-head', 'lock-bolt')).toBe('-y');
  });

  test('every piece of every set-up is moved', () => {
    const moved = new Set(moves.flatMap(({ pieces }) => pieces.map((key) => key.replace(/#.*/, ''))));
    expect(heron.build.parts.filter(({ id }) => !moved.has(id)).map(({ id }) => id)).toEqual([]);
  });
});

describe('assembly-order: Heron with a fault in it', () => {
  test('tenons of the panel a millimetre too long stand on the lower ply', () => {
    const low = Math.min(...flat('F1').outline.map(({ y }) => y));
    const long = recut(
      'F1',
      flat('F1').outline.map((v) => (v.y === low ? { ...v, y: v.y - 1 } : v)),
    );
    expect(messages(long)[0]).toMatch(
      /^The front box does not go in: its F1 \(front panel\) is kept out at step 9.*T1L \(tailboard, lower ply\)/,
    );
  });

  // the sole has 0.25 of play to either rail
  test.each([
    { by: 0.24, blocked: false },
    { by: 0.4, blocked: true },
  ])('a sole $by wider on each side: blocked $blocked', ({ by, blocked }) => {
    const wider = recut(
      'R4L',
      flat('R4L').outline.map((v) => ({ ...v, x: v.x + Math.sign(v.x) * by })),
    );
    const found = messages(wider);
    expect(found.some((told) => /^The rear does not go in: its R4L .*T2 \(rail ply\)/.test(told))).toBe(blocked);
    if (!blocked) expect(found).toEqual([]);
  });

  test('a top whose fingers are locked into closed slots', () => {
    // the panel stands 5 higher, and the notches for the top's fingers have become windows
    const { outline, holes } = flat('F1');
    const top = Math.max(...outline.map(({ y }) => y));
    const notches = outline.filter(({ y, x }) => y < top && y > top - 5 && Math.abs(x) < 95);
    const windows: ClosedPath[] = [];
    for (let i = 0; i < notches.length; i += 2) {
      const [a, b] = [notches[i], notches[i + 1]];
      if (a && b) windows.push(reversed(rect(Math.min(a.x, b.x), a.y, Math.max(a.x, b.x), top)));
    }
    const higher = outline
      .filter(({ y, x }) => !(y > top - 5 && Math.abs(x) < 95))
      .map((v) => (v.y === top ? { ...v, y: top + 5 } : v));
    const build = changed('F1', (part) => ({ ...part, outline: higher, holes: [...holes, ...windows] }));
    expect(messages(build)[0]).toMatch(/^F3 \(front box top\) does not go in at step 7, from whichever side it comes/);
  });

  test('retainers whose slots are too short to let go of the board', () => {
    const build = changed('F9', (part) => ({
      ...part,
      holes: part.holes.map((hole) => {
        const y = hole.reduce((sum, v) => sum + v.y, 0) / hole.length;
        return slotAlongX(3, y, 7, 5.3);
      }),
    }));
    expect(messages(build).join()).toMatch(
      /The lens board, with both retainers drawn, does not come out to the front: F9 \(retainer\)/,
    );
  });

  /** A thing glued to the tailboard or the standard, put there in the last step. */
  const added = (plate: FlatPart): readonly string[] =>
    messages({ ...heron.build, parts: [...heron.build.parts, plate] }, [
      ...assemblySteps,
      { key: 'more', title: 'more', acts: [{ into: CAMERA, each: [plate.id] }] },
    ]);

  test('a block glued behind the end stop: the camera goes together, and the rear never comes out', () => {
    const y = spanOf(heron.build, 'R4L').y[0];
    const z = spanOf(heron.build, 'T5').z[1];
    const block = tinyPlate({ id: 'block', across: 'z', low: z - 4, outline: rect(-40, y + 5, 40, y + 20) });
    expect(added(block)).toEqual([
      expect.stringMatching(
        /^The sliding rear, with the end stop off and the bolt out, does not come out behind: block \(plate block\) stands in the way of R[345]/,
      ),
    ]);
  });

  test('a bar glued over the well: neither glass nor holder comes out', () => {
    const z = spanOf(heron.build, 'holder-2').z[1] + 10;
    const bar = tinyPlate({ id: 'bar', across: 'z', low: z, outline: rect(-110, 0, 110, 8) });
    expect(added(bar).join()).toMatch(/The glass or holder, with the cords off, does not come out behind: bar/);
  });

  test.each([
    // the description has the rails after the legs: their foremost screws would have to pass the front box's floor
    { late: ['keeper-screw'], at: 'legs', told: /^keeper-screw .*F4 \(front box floor\)/ },
    { late: ['rail-dowel-6', 'rail-dowel-5'], at: 'legs', told: /^rail-dowel-\d .* does not go in/ },
    // tee nut from above before the floor closes over it
    { late: ['tripod-flange', 'tripod-barrel'], at: 'legs', told: /^tripod-flange .* Even from above it meets F[34] / },
    // the bolt is dropped in while there is no holder over it
    { late: ['lock-bolt', 'lock-head'], at: 'glass-in', told: /^lock-head .*does not go in/ },
    // closed buttons keep the back out
    { late: ['B1'], at: 'turn-buttons', told: /^B1 .*R6/ },
    { late: ['F4'], at: 'legs', told: /^F4 .*does not go in/ },
    // the end stop is what keeps the sole in
    { late: ['R4L', 'R4U'], at: 'turn-buttons', told: /^R4L .*does not go in/ },
  ])('$late not before step $at', ({ late: ids, at, told }) => {
    const found = messages(heron.build, late(ids, at));
    expect(
      found.some((message) => told.test(message)),
      found.join('\n'),
    ).toBe(true);
  });

  test('without its top it goes together as well: nothing leans on what is not there', () =>
    expect(messages(without('F3'))).toEqual([]));
});
