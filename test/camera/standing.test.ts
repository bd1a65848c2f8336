import { describe, expect, test } from 'vitest';
import { nearestFocus } from '../../src/camera/standing.js';
import { compareCameras } from '../../src/compare/compare.js';
import { recordOf } from '../../src/compare/record.js';
import { flatten } from '../../src/geometry/path.js';
import type { FlatPart } from '../../src/model/part.js';
import { type Planned, planCamera, planOf } from '../../src/pipeline.js';
import { changed, designOf, problemsOf } from '../design/reading.js';
import { heron } from '../design/worked-designs.js';

/*
 * A camera is built for a lens of 210 mm; then a second lens is bought for it. What is old is held against the camera as it
 * was built; how far the new lens reaches, against the thin lens: its film stands f(1 + m) from the rear principal plane,
 * which is V + f·m from its seat.
 */

const oldLens = {
  text: heron.slice(heron.indexOf('lens:'), heron.indexOf('plywood:')),
  // camera.md section 17: 203.5 − 4 − 24, and 203.5 + 210/2.5 − 5.8 with the reserve of 0.05 · 210
  closest: 175.5,
  end: 281.7 + 10.5,
};

interface NewLens {
  readonly f: number;
  readonly V: number;
  readonly barrel?: string;
  readonly focus?: string;
  readonly mount?: string;
  readonly stop?: string;
}

const slim =
  '{ diameter: 48 mm, grip: 22 mm, front: 16 mm, rear: 24 mm, frontDiameter: 52 mm, rearDiameter: 44 mm, mass: 420 g }';

/** That of the lens that the camera is built for. */
const old =
  '{ diameter: 58 mm, grip: 22 mm, front: 18 mm, rear: 31 mm, frontDiameter: 64 mm, rearDiameter: 52 mm, mass: 640 g }';

const lensText = ({
  f,
  V,
  barrel = slim,
  focus = '{ nearest: 1:5 }',
  mount = '{ by: clamp }',
  stop = 'f/9',
}: NewLens) => `lens:
  focalLength: ${f} mm
  flangeDistance: ${V} mm
  maxAperture: ${stop}
  barrel: ${barrel}
  mount: ${mount}
focus: ${focus}
`;

const indented = (text: string): string => text.replace(/^(?=.)/gm, '  ');

/** The design of the camera with another lens before it. */
const withLens = (lens: NewLens, design = heron): string =>
  changed(design, oldLens.text, `${lensText(lens)}builtFor:\n${indented(oldLens.text)}`);

const planned = (text: string): Planned => planCamera(designOf(text));
const told = ({ findings }: Planned, rule: string) => findings.filter((finding) => finding.rule === rule);

const flat = ({ parts }: Planned): readonly FlatPart[] => parts.filter((part) => part.kind === 'flat');
const outlineOf = (camera: Planned, id: string) => flat(camera).find((part) => part.id === id)?.outline;
const points = (part: FlatPart) =>
  [part.outline, ...part.holes].map((loop) =>
    flatten(loop).map(({ x, y }) => [x, y].map((at) => Math.round(at * 1e6))),
  );

/** Marks of flat parts that are not what they were, to the millionth of a millimetre. */
const changedParts = (then: Planned, now: Planned): readonly string[] => {
  const old = new Map(flat(then).map((part) => [part.id, JSON.stringify(points(part))]));
  return flat(now)
    .filter((part) => JSON.stringify(points(part)) !== old.get(part.id))
    .map(({ id }) => id);
};

const short: NewLens = { f: 180, V: 172, focus: '{ nearest: 1:2.5, farthest: 1:6.5 }' };
const long: NewLens = { f: 240, V: 236 };
/** Everything on the boxes that could follow the lens. */
const furnished = changed(
  heron,
  'shims:',
  'handle: true\nbaffle: true\nmasks: [{ name: square, image: [100 mm, 100 mm] }]\nshims:',
);

describe('a new lens before boxes that stand', () => {
  test.each([
    { name: 'shorter', lens: short },
    { name: 'longer', lens: long },
    { name: 'faster and heavier', lens: { ...long, stop: 'f/5.6', barrel: slim.replace('420 g', '2 kg') } },
    { name: 'from the front', lens: { ...long, mount: '{ by: clamp, side: front }' } },
  ])('$name: of wood nothing but its board and the plug is another', ({ lens }) =>
    expect(changedParts(planned(heron), planned(withLens(lens)))).toEqual(['F6', 'F7']),
  );

  test('with a third box as well', () => {
    const three = changed(heron, 'shims:', 'boxes: 3\nshims:');
    expect(changedParts(planned(three), planned(withLens(long, three)))).toEqual(['F6', 'F7']);
  });

  test('handle, baffle and the ledge for masks stay; a mask is cut for the lens that throws its shadow', () =>
    expect(changedParts(planned(furnished), planned(withLens(short, furnished)))).toEqual(['F6', 'F7', 'MK1']));

  test('without builtFor the boxes would be others', () => {
    const alone = planned(changed(heron, oldLens.text, lensText(long)));
    const parts = changedParts(planned(heron), alone);
    for (const id of ['F1', 'F2L', 'F3', 'R1L', 'T1U', 'T2']) expect(parts).toContain(id);
  });

  test('the slide is where it was', () => {
    const { camera, build } = planned(withLens(long));
    expect(camera.settingOut.closest.value).toBeCloseTo(oldLens.closest, 9);
    expect(camera.settingOut.farthest.value + camera.settingOut.reserve).toBeCloseTo(oldLens.end, 9);
    // V + f·m less the shallowest film: 236 + 240/5 − 5.8
    expect(build.stations.at(-1)?.rear).toBeCloseTo(236 + 240 / 5 - 5.8 - oldLens.closest, 9);
  });
});

describe('what it reaches there', () => {
  test('the nearest, by the thin lens: a long lens loses it', () => {
    const near = (oldLens.end + 5.8 - 236) / 240; // 62/240, 1:3.87
    const wish = planned(withLens({ ...long, focus: '{ nearest: 1:2.5 }' }));
    const [finding, ...more] = told(wish, 'reach-near');
    expect(more).toEqual([]);
    expect(finding?.level).toBe('error');
    expect(finding?.value).toBeCloseTo(near, 9);
    expect(finding?.message).toContain('asks for a slide 34 mm longer'); // 240/2.5 − 62
    expect(finding?.hint).toContain('Write nearest: 1:3.88');
    expect(nearestFocus(designOf(withLens(long)))).toBeCloseTo(near, 9);
    // f(1 + m) from the principal plane at the end: what lies between it and the seat is V − f
    expect(240 * (1 + near)).toBeCloseTo(oldLens.end + 5.8 - (236 - 240), 9);
  });

  test('what is proposed is reached', () => {
    const near = planned(withLens({ ...long, focus: '{ nearest: 1:3.88 }' }));
    // 240/62 = 3.871: one hundredth more than what is told in a sentence
    expect(near.findings.filter(({ level }) => level === 'error')).toEqual([]);
    expect(told(near, 'boxes-as-built')[0]?.message).toMatch(
      /210 mm f\/6\.3 process lens.* from infinity .* to 1:3\.87/,
    );
  });

  test('infinity: a short lens loses it, with the deepest holder first', () => {
    const [finding, ...more] = told(planned(withLens({ ...short, focus: '{ nearest: 1:2.5 }' })), 'reach-infinity');
    expect(more).toEqual([]);
    expect(finding?.value).toBeCloseTo(oldLens.closest + 24 - 172, 9); // 27.5
    expect(finding?.message).toContain('with the processing holder');
    expect(finding?.hint).toBe('Write farthest: 1:6.54.'); // 180/27.5 = 6.545
    expect(planned(withLens(short)).findings.filter(({ level }) => level === 'error')).toEqual([]);
  });

  test('where no holder is as deep as the ground glass, with that first', () => {
    const deepGlass = changed(heron, /.*- \{ name: processing holder.*\n/.exec(heron)?.[0] ?? '', '').replace(
      'depth: 5.8 mm',
      'depth: 9 mm',
    );
    const [finding] = told(planned(withLens({ ...short, V: 150 }, deepGlass)), 'reach-infinity');
    expect(finding?.message).toContain('with the ground glass');
  });

  test('both ends at once where the asked range lies beyond', () => {
    const [finding] = told(
      planned(withLens({ ...short, f: 120, V: 118, focus: '{ nearest: 1:5 }' })),
      'reach-infinity',
    );
    // (175.5 + 24 − 118)/120 and (292.2 + 5.8 − 118)/120
    expect(finding?.hint).toBe(`Write farthest: 1:${Math.floor(12000 / 81.5) / 100} and nearest: 1.5:1.`);
  });

  test('a lens for which they are too short at infinity', () => {
    const [finding] = told(planned(withLens({ f: 360, V: 355 })), 'reach-near');
    expect(finding?.message).toContain('even at infinity the film would stand 57 mm behind'); // 355 − 298
    expect(finding?.hint).toBe('Leave out builtFor: this lens needs boxes of its own.');
  });

  test('compare says the same of the old camera and the new lens', () => {
    const [then, now] = [heron, withLens({ ...long, focus: '{ nearest: 1:4 }' })].map((text) => {
      const one = planned(text);
      return recordOf(planOf(one), one.build);
    });
    if (then === undefined || now === undefined) throw new Error('two cameras were planned');
    const { recut, inOldBoxes, lost } = compareCameras(then, now);
    expect(recut).toEqual(['F6', 'F7', 'lens-clamp']);
    expect(inOldBoxes.map(({ nearest }) => nearest)).toEqual([
      expect.closeTo(62 / 240, 6),
      expect.closeTo((oldLens.end + 24 - 236) / 240, 6),
    ]);
    expect(lost.filter(({ what }) => what.includes('panel'))).toEqual([]);
  });
});

describe('a lens that the panel does not suit', () => {
  const thick = slim.replace('diameter: 48 mm', 'diameter: 96 mm').replace('frontDiameter: 52', 'frontDiameter: 99');

  test('board-in-opening: the opening and what is asked of it, and the cure works', () => {
    const wide: NewLens = { ...long, barrel: thick };
    const [finding] = told(planned(withLens(wide)), 'board-in-opening');
    expect(finding).toMatchObject({ level: 'error', unit: 'mm' });
    expect(finding?.value).toBeCloseTo(104.2, 1);
    const asked = /lens\.mount\.opening: ([\d.]+ mm)/.exec(finding?.hint ?? '')?.[1] ?? '';
    const sawn = planned(withLens({ ...wide, mount: `{ by: clamp, opening: ${asked} }` }));
    expect(told(sawn, 'board-in-opening')).toEqual([]);
  });

  test('board-out: what stands behind the board and does not pass the opening', () => {
    const [finding] = told(planned(withLens({ ...long, barrel: thick })), 'board-out');
    // from the front its disc, 138.2 across, would lie between the retainers: 138.2 + 12 + 4 − 28 is more than 104.2
    expect(finding?.hint).not.toContain('side: front');
    const asked = /lens\.mount\.opening: ([\d.]+ mm)/.exec(finding?.hint ?? '')?.[1] ?? '';
    const sawn = planned(withLens({ ...long, barrel: thick, mount: `{ by: clamp, opening: ${asked} }` }));
    expect(sawn.findings.filter(({ rule }) => rule.startsWith('board-'))).toEqual([]);
  });

  // what has no wood is cut as wide as the wood lets it, 150.75
  test.each([
    { opening: 110, cut: 110 },
    { opening: 150.7, cut: 150.7 },
    { opening: 160, cut: 150.75 },
    { opening: 300, cut: 150.75 },
  ])('an opening of $opening mm makes no other boxes', ({ opening, cut }) => {
    const mount = `{ by: clamp, opening: ${opening} mm }`;
    const [then, now] = [heron, withLens({ ...long, focus: '{ nearest: 1:4 }', mount })].map((text) => {
      const one = planned(text);
      return recordOf(planOf(one), one.build);
    });
    if (then === undefined || now === undefined) throw new Error('two cameras were planned');
    // the panel is sawn, board and plug are made anew, and the retainers beside them are as long as they
    const { recut, sawn, why, glued } = compareCameras(then, now);
    expect(recut).toEqual(['F1', 'F6', 'F7', 'F8', 'F9', 'lens-clamp']);
    // the panel is glued in all round, and what it is glued to is not lost for it
    expect(sawn).toEqual(['F1']);
    expect(why.F1).toBe(`an opening of ${cut} × ${cut} mm, was 104.2 × 104.2 mm`);
    expect(glued).toEqual([]);
    expect(outlineOf(planned(heron), 'F1')).toEqual(outlineOf(planned(withLens({ ...long, mount })), 'F1'));
  });

  // front box of Heron 207.35 outside; beside the board, at its edge, packings of 14 with 0.3 to it, and 14 of land under it
  const widest = 207.35 - 2 * (14 + 0.3 + 14); // 150.75

  test.each([{ opening: 150.8 }, { opening: 300 }])('an opening of $opening mm has no wood', ({ opening }) => {
    const now = planned(withLens({ ...long, mount: `{ by: clamp, opening: ${opening} mm }` }));
    const errors = now.findings.filter(({ level }) => level === 'error');
    expect(errors).toMatchObject([{ rule: 'board-in-opening', value: opening, about: 'lens.mount.opening' }]);
    expect(errors[0]?.limit).toBeCloseTo(widest, 6);
    // a clamp round a barrel of 48 is 48.2 + 42 across, and 2 pass round it: less than the 104.2 that are there
    expect(errors[0]?.hint).toBe(
      'Leave out lens.mount.opening: this lens asks for 92.2 mm, and the opening is 104.2 mm wide as it was built.',
    );
    expect(planned(withLens(long)).findings.filter(({ level }) => level === 'error')).toEqual([]);
    expect(told(now, 'boxes-as-built')[0]?.message).toMatch(/^Boxes, panel and tailboard stay/);
  });

  test.each([{ opening: 60 }, { opening: 100 }, { opening: 104.1 }])(
    'no saw makes an opening of 104.2 mm one of $opening mm',
    ({ opening }) => {
      const now = planned(withLens({ ...long, mount: `{ by: clamp, opening: ${opening} mm }` }));
      const errors = now.findings.filter(({ level }) => level === 'error');
      expect(errors).toMatchObject([{ rule: 'board-in-opening', value: opening, about: 'lens.mount.opening' }]);
      expect(errors[0]?.limit).toBeCloseTo(104.2, 6);
      expect(errors[0]?.hint).toMatch(/^Leave out lens\.mount\.opening/);
      // all else is told of the panel that stands
      expect(changedParts(planned(heron), now)).not.toContain('F1');
    },
  );

  test('one that is too narrow for the lens as well is told what the lens asks for', () => {
    // a clamp round a barrel of 96 is 96.2 + 42 across, and 2 pass round it
    const [only, ...more] = planned(
      withLens({ ...long, barrel: thick, mount: '{ by: clamp, opening: 100 mm }' }),
    ).findings.filter(({ rule }) => rule.startsWith('board-'));
    expect(more).toEqual([]);
    expect(only?.hint).toBe('Write lens.mount.opening: 140.2 mm, which is what this lens asks for.');
  });

  test('an opening that is sawn out is told with what stays', () => {
    const now = planned(withLens({ ...long, mount: '{ by: clamp, opening: 120 mm }' }));
    expect(told(now, 'boxes-as-built')[0]?.message).toMatch(/panel is sawn out from 104\.2 mm to 120 mm/);
  });

  test('no opening is proposed that the panel has no wood for', () => {
    // the flange of a clamp round a barrel of 110 is 110.2 + 42 across: with air 154.2
    const huge = slim.replace('diameter: 48 mm', 'diameter: 110 mm').replace('frontDiameter: 52', 'frontDiameter: 118');
    const wide: NewLens = { ...long, barrel: huge };
    const inside = planned(withLens(wide));
    for (const rule of ['board-in-opening', 'board-out'])
      expect(told(inside, rule)[0]?.hint).toMatch(/from the front: side: front, and saw the opening out to 140\.2 mm/);
    const front = planned(withLens({ ...wide, mount: '{ by: clamp, side: front, opening: 140.2 mm }' }));
    expect(front.findings.filter(({ rule }) => rule.startsWith('board-'))).toEqual([]);
    const refused = told(planned(withLens({ ...wide, mount: '{ by: clamp, opening: 154.2 mm }' })), 'board-in-opening');
    // 18 on each side of what is there
    expect(refused[0]?.hint).toBe(
      'This lens asks for 154.2 mm. Mount the lens from the front: side: front, and saw the opening out to 140.2 mm and write lens.mount.opening: 140.2 mm: board and retainers then stand 18 mm farther out on each side.',
    );
  });

  test('the other side of the board is proposed only where its board goes in', () => {
    const near: NewLens = { ...long, focus: '{ nearest: 1:2 }' };
    // the clamp of a barrel of 58 stands in front in a disc of 100.2, and 100.2 + 12 + 4 − 28 is less than 104.2
    expect(told(planned(withLens(near)), 'reach-near')[0]?.hint).toContain('side: front');
    const hung = changed(heron, 'shims:', 'filterHolder: { filters: 4 }\nshutter: { time: 1/30 s }\nshims:');
    // a frame before the lens from the front asks for more than 104.2
    const front = planned(withLens({ ...near, barrel: old, mount: '{ by: clamp, side: front }' }, hung));
    expect(told(front, 'board-in-opening')).toHaveLength(1);
    const inside = planned(withLens({ ...near, barrel: old }, hung));
    expect(told(inside, 'board-in-opening')).toEqual([]);
    expect(told(inside, 'reach-near')[0]?.hint).not.toContain('side: front');
  });

  test('box-meets-panel: a lens that the rear box cannot pass around', () => {
    // 188.15 inside, 3 of air on each side
    const wide = (rim: number) => slim.replace('rearDiameter: 44 mm', `rearDiameter: ${rim} mm`);
    const [finding] = told(planned(withLens({ ...long, barrel: wide(183) })), 'box-meets-panel');
    expect(finding?.value).toBeCloseTo(4.05 + 2, 6);
    expect(finding?.limit).toBeCloseTo(46 + 2, 6);
    expect(finding?.hint).toContain('a narrower flange or ring');
    expect(told(planned(withLens({ ...long, barrel: wide(182) })), 'box-meets-panel')).toEqual([]);
  });
});

describe('lens.mount.opening alone', () => {
  const pinned = changed(heron, 'screws: 4 }', 'screws: 4, opening: 104.2 mm }');

  test('a narrower lens leaves the panel, the retainers and their packing as they are', () => {
    const other = changed(pinned, 'diameter: 58 mm', 'diameter: 50 mm');
    const parts = changedParts(planned(pinned), planned(other));
    // another weight moves the nut of the tripod: where the tailboard is there already, builtFor holds it
    expect(parts.filter((id) => !id.startsWith('T1'))).toEqual(['F6', 'F7']);
    const free = changed(heron, 'diameter: 58 mm', 'diameter: 50 mm');
    expect(changedParts(planned(heron), planned(free))).toEqual(expect.arrayContaining(['F1', 'F8', 'F9']));
  });
});

describe('what is read', () => {
  test('the run past the focus is no wish any more', () => {
    const text = withLens({ ...long, focus: '{ nearest: 1:5, pastInfinity: 4 mm, pastNearest: 3 mm }' });
    expect(problemsOf(text).map(({ path }) => path)).toEqual(['focus.pastInfinity', 'focus.pastNearest']);
  });

  test('the old lens is read as carefully as the new one', () => {
    const text = changed(withLens(long), oldLens.text.split('\n').find((line) => line.includes('barrel:')) ?? '', '');
    expect(problemsOf(text).map(({ path }) => path)).toEqual(['builtFor.lens.barrel']);
  });
});
