import { describe, expect, test } from 'vitest';
import { stands } from '../../src/assembly/setups.js';
import { spanOf, spansOf } from '../../src/assembly/span-of.js';
import { stepsOf } from '../../src/camera/objects.js';
import { boundsOf } from '../../src/geometry/path.js';
import { apply } from '../../src/geometry/placement.js';
import { stepsOfCamera } from '../../src/model/assembly-steps.js';
import type { Part, Placement } from '../../src/model/part.js';
import { type Planned, planCamera, planOf } from '../../src/pipeline.js';
import { keptDesign, keptDesigns } from '../designs/kept-design.js';
import { faceOf } from './face-of.js';

/*
 * What is left and what right, which face is the marked one, how many there are, and what is glued: the words of the bench
 * against the parts where they stand. The camera's axes: x to the right as seen from behind, y up, z to the rear.
 */

const kept = keptDesigns.map((name) => ({ name, planned: planCamera(keptDesign(name)) }));

const partOf = ({ parts }: Planned, id: string): Part => {
  const part = parts.find((one) => one.id === id);
  if (part === undefined) throw new Error(`there is no ${id}`);
  return part;
};

/** Places in the first set-up in which the part stands at all: things that turn are looked at upright. */
function placesOf({ build }: Planned, part: Part): readonly Placement[] {
  for (const setup of build.setups) {
    const here = part.placements.filter((placement) => stands(placement, setup));
    if (here.length > 0) return here;
  }
  return [];
}

const AXES = ['x', 'y', 'z'] as const;

/** Where the face points that the laser sees, which bears the mark: `+z` is to the rear. */
function marked(planned: Planned, id: string): readonly string[] {
  return placesOf(planned, partOf(planned, id)).map(({ matrix }) => {
    const from = apply(matrix, { x: 0, y: 0, z: 0 });
    const to = apply(matrix, { x: 0, y: 0, z: 1 });
    const axis = AXES.find((one) => Math.abs(to[one] - from[one]) > 0.5) ?? 'x';
    return `${to[axis] > from[axis] ? '+' : '-'}${axis}`;
  });
}

/** Every face of it points that way. */
const faces = (planned: Planned, id: string): string => [...new Set(marked(planned, id))].join(' and ');

/** Where along its axis the marked face lies. */
function markedAt(planned: Planned, id: string): number {
  const part = partOf(planned, id);
  const [place] = placesOf(planned, part);
  if (part.kind !== 'flat' || place === undefined) throw new Error(`${id} is not cut`);
  return apply(place.matrix, { x: 0, y: 0, z: part.thickness })[faces(planned, id)[1] as 'x' | 'y' | 'z'];
}

/** All that is said in a step. */
const saidIn = ({ camera }: Planned, key: string): string =>
  stepsOf(camera.objects)
    .filter(({ step }) => step === key)
    .flatMap(({ acts, checks = [] }) => [...acts, ...checks])
    .join(' ');

/** What a pattern finds in the words of a step, where it must be said once. */
function said(planned: Planned, key: string, pattern: RegExp): readonly string[] {
  const all = [...saidIn(planned, key).matchAll(new RegExp(pattern, 'g'))];
  expect(all.length, `${pattern} in ${key}`).toBe(1);
  return all[0]?.slice(1) ?? [];
}

const count = (planned: Planned, id: string): number => placesOf(planned, partOf(planned, id)).length;
/** Lines of the shopping list for one use. */
const bought = (planned: Planned, use: RegExp): readonly string[] =>
  planOf(planned)
    .hardware.filter((line) => use.test(line.for))
    .map((line) => `${line.count} of ${line.size}`);
const has = ({ parts }: Planned, id: string): boolean =>
  parts.some((part) => part.id === id && part.placements.length > 0);

describe.each(kept)('the words for $name', ({ planned }) => {
  test('left and right', () => {
    const x = (id: string) => spanOf(planned.build, id).x;
    const onLeft = (a: string, b: string) => (x(a)[1] < x(b)[1] ? [a, b] : [b, a]);
    const [leftSide, rightSide] = said(planned, 'front-box', /(F2[LR]), the left side. Add (F2[LR]) on the right/);
    expect([leftSide, rightSide]).toEqual(onLeft('F2L', 'F2R'));
    const [left, right] = said(planned, 'keepers', /Lay (T3S?) on the left rail and (T3S?) on the right/);
    expect([left, right]).toEqual(onLeft('T3', 'T3S'));
    const [block] = said(
      planned,
      'retainer-packing',
      /Its cut corner is above, on the (left|right) as seen from behind/,
    );
    const corner = spanOf(planned.build, 'F10');
    expect(corner.y[0]).toBeGreaterThan(0);
    expect(block).toBe(corner.x[0] > 0 ? 'right' : 'left');
    const [side, place] = said(
      planned,
      'retainer-packing',
      /On the (left|right), as seen from behind, the nut is above; on the (left|right) it is below/,
    );
    const nuts = spansOf(planned.build, 'retainer-nut');
    const above = nuts.filter(({ y }) => y[0] > 0);
    const below = nuts.filter(({ y }) => y[1] < 0);
    expect([above, below].map((all) => all.map(({ x: [from] }) => (from > 0 ? 'right' : 'left')))).toEqual([
      [side],
      [place],
    ]);
    expect(side).not.toBe(place);
  });

  test('pins left and right', () => {
    const pins = planned.parts
      .filter(({ id, placements }) => id.startsWith('seat-pin-') && placements.length > 0)
      .map((part) => ({ part, at: apply((placesOf(planned, part)[0] as Placement).matrix, { x: 0, y: 0, z: 0 }) }))
      .sort((a, b) => a.at.x - b.at.x)
      .flatMap(({ part }) => (part.kind === 'bought' && part.shape.form === 'cylinder' ? [part.shape.diameter] : []));
    const text = saidIn(planned, 'fences');
    const told = /dowels ([\d.]+) mm on the left and ([\d.]+) mm on the right/.exec(text)?.slice(1).map(Number) ?? [];
    expect(told).toEqual(pins);
    const wanted = new Map<string, number[]>();
    for (const part of planned.parts) {
      const spacer = /^(SP\d+)-pin/.exec(part.id)?.[1];
      const [first] = placesOf(planned, part);
      if (spacer === undefined || first === undefined || part.kind !== 'bought' || part.shape.form !== 'cylinder')
        continue;
      const list = wanted.get(spacer) ?? [];
      const { x } = apply(first.matrix, { x: 0, y: 0, z: 0 });
      if (x < 0) list.unshift(part.shape.diameter);
      else list.push(part.shape.diameter);
      wanted.set(spacer, list);
    }
    const own = has(planned, 'SP1T') || has(planned, 'SP2T') ? saidIn(planned, 'spacers') : '';
    for (const [, id = '', a, b] of own.matchAll(/into (SP\d)T, ([\d.]+) mm on the left and ([\d.]+) mm on the right/g))
      expect([Number(a), Number(b)], id).toEqual(wanted.get(id));
  });

  test('marked faces', () => {
    const towards = { up: '+y', down: '-y' } as const;
    // what lies at the bench as it stands in the camera
    for (const [key, pattern, ids] of [
      ['sole', /Lay R4L down, its marked face (up|down)/, ['R4L']],
      ['rails', /two T2 at each side of T1U, marked faces (up|down)/, ['T2']],
      ['front-box-top', /its marked face (up|down) and its arrow/, ['F3']],
      ['end-stop', /rear end of T1U, its marked face (up|down)/, ['T5']],
    ] as const)
      for (const id of ids)
        expect(faces(planned, id), id).toBe(towards[said(planned, key, pattern)[0] as 'up' | 'down']);
    said(planned, 'sole', /R4U on it with its lines and names up/);
    expect(faces(planned, 'R4U')).toBe('+y');
    said(planned, 'keepers', /T3S? on the right one, the scales up/);
    expect([faces(planned, 'T3'), faces(planned, 'T3S')]).toEqual(['+y', '+y']);
    // what lies with its front down: up is to the rear
    const rearwards = { up: '+z', down: '-z' } as const;
    for (const [key, pattern, id] of [
      ['fences', /Set the long fences B3 and the short fence B4 against the card, their marked faces (up|down)/, 'B3'],
      ['fences', /Set the long fences B3 and the short fence B4 against the card, their marked faces (up|down)/, 'B4'],
      ['glass-frame', /Lay G1 on the flat board, its marked face (up|down)/, 'G1'],
      ['glass-frame', /Last comes G2.*? with its marked face (up|down)/, 'G2'],
    ] as const)
      expect(faces(planned, id), id).toBe(rearwards[said(planned, key, pattern)[0] as 'up' | 'down']);
    const [side] = said(planned, 'ribs', /from the front, their marked faces to the (left|right)/);
    expect(faces(planned, 'R5')).toBe(side === 'left' ? '-x' : '+x');
    const [rear] = said(planned, 'rear-standard', /Its marked face looks to the (rear|front), and its long end down/);
    expect(faces(planned, 'R3')).toBe(rear === 'rear' ? '+z' : '-z');
    const back = spanOf(planned.build, 'R3').y;
    expect(-back[0]).toBeGreaterThan(back[1]);
    const [nutSide] = said(
      planned,
      'retainer-packing',
      /card [\d.]+ mm thick on the (rear|front) face of both F8, the marked one/,
    );
    expect(faces(planned, 'F8')).toBe(nutSide === 'rear' ? '+z' : '-z');
    said(planned, 'board-in', /the marked face to the wood/);
    expect(faces(planned, 'F9')).toBe('+z');
    said(planned, 'turn-buttons', /Put an R6 on each screw, its marked face on the back/);
    expect(faces(planned, 'R6')).toBe('-z');
    said(planned, 'glass-in', /its marked face to the glass/);
    expect(faces(planned, 'G3')).toBe('-z');
  });

  test('marked faces that meet', () => {
    for (const [key, a, b, pattern] of [
      ['turning-ring', 'B1', 'B2', /The (marked|unmarked) faces meet/],
      ['tailboard', 'T1U', 'T1L', /The two (marked|unmarked) faces meet/],
      ['lens-board', 'F6', 'F7', /Their (marked|unmarked) faces meet/],
    ] as const) {
      const meet = Math.abs(markedAt(planned, a) - markedAt(planned, b)) < 0.3;
      expect({ a, faces: said(planned, key, pattern)[0] }).toEqual({ a, faces: meet ? 'marked' : 'unmarked' });
    }
    for (const [key, ids] of [
      ['front-box', ['F1', 'F2L', 'F2R', 'F3', 'F4']],
      ['rear-box', ['R1L', 'R1R', 'R2T', 'R2F']],
    ] as const) {
      said(planned, key, /Every marked face goes (inside)/);
      for (const id of ids) {
        const [sign, axis] = faces(planned, id) as unknown as [string, 'x' | 'y' | 'z'];
        const [from, to] = spanOf(planned.build, id)[axis];
        // the panel has the box behind it, the walls have the axis within
        const inwards = axis === 'z' ? '+' : from + to > 0 ? '-' : '+';
        expect({ id, sign }).toEqual({ id, sign: inwards });
      }
    }
  });

  test('on which side a thing is glued', () => {
    const [where] = said(planned, 'turn-buttons', /disc R7 on the (rear|front) face of R3/);
    const [standard, disc] = [spanOf(planned.build, 'R3').z, spanOf(planned.build, 'R7').z];
    expect(where).toBe(disc[0] >= standard[1] - 1e-6 ? 'rear' : 'front');
    const [frost] = said(
      planned,
      'ground-glass',
      /its frosted side (down, towards G1 and the lens|up, away from G1, towards your eye)/,
    );
    expect(frost?.startsWith('down')).toBe(planned.design.groundGlass.frosted === 'lens');
    const [face] = said(planned, 'ground-glass', /The frosted side faces (the lens|your eye)/);
    expect(face === 'the lens').toBe(planned.design.groundGlass.frosted === 'lens');
    for (const [i, { name, filmDepth }] of planned.design.holders.entries()) {
      if (!has(planned, `SP${i + 1}T`)) continue;
      // the glass is raised to a film that lies deeper, a holder to a glass that does
      const under = filmDepth > planned.design.groundGlass.depth ? 'the glass frame' : `the ${name} itself`;
      expect(saidIn(planned, 'spacers')).toContain(`The ${name} needs a spacer. It lies on the seat under ${under},`);
    }
  });

  test('as many as there are', () => {
    const told = (key: string, pattern: RegExp) => Number(said(planned, key, pattern)[0]);
    expect(told('tripod-nut', /Glue the (\d+) pieces of T4/)).toBe(count(planned, 'T4'));
    expect(told('keepers', /drive the (\d+) wood screws/)).toBe(count(planned, 'keeper-screw'));
    expect(told('end-stop', /with the (\d+) wood screws/)).toBe(count(planned, 'stop-screw'));
    expect(told('felt', /Cut the felt: (\d+) strips/)).toBe(count(planned, 'felt-long'));
    expect(told('felt', /top and bottom, and (\d+) strips/)).toBe(count(planned, 'felt-side'));
    for (const { id } of planned.parts.filter((part) => /^SP\d+$/.test(part.id) && part.placements.length > 0))
      expect(Number(new RegExp(`(\\d+) × ${id} and ${id}T`).exec(saidIn(planned, 'spacers'))?.[1])).toBe(
        count(planned, id),
      );
    const clamped = has(planned, 'lens-clamp');
    if (clamped) {
      const [screws, length] = said(planned, 'lens', /Drive the (\d+) screws M4 × (\d+) from/).map(Number);
      expect(screws).toBe(count(planned, 'clamp-screw'));
      expect(bought(planned, /^lens clamp, through/)).toEqual([`${screws} of M4 × ${length}`]);
    }
    const [button] = said(planned, 'turn-buttons', /A screw M4 × (\d+), put through/);
    // a handle may have screws of the same length
    const alike = planned.parts.filter(({ name }) => name.startsWith(`M4 × ${button} countersunk`));
    const all = alike.reduce((sum, { id }) => sum + count(planned, id), 0);
    expect(all).toBeGreaterThanOrEqual(4);
    expect(bought(planned, /^turn-buttons/)).toContain(`${all} of M4 × ${button}`);
    const { mount } = planned.design.lens;
    if (mount.by === 'flange') expect(told('lens', /Drive its (\d+) wood screws/)).toBe(mount.screws);
    // shims in the glass frame, as they are counted out
    const shims = /thin frames? cut with a knife: (.*?)\. Lay/.exec(saidIn(planned, 'glass-frame'))?.[1] ?? '';
    const counted = [...shims.matchAll(/(\d+) × ([\d.]+) mm/g)].map(([, many, thick]) => [Number(thick), Number(many)]);
    const laid = planned.parts
      .filter(({ id }) => /^glass-shim-/.test(id))
      .map((part) => [
        part.kind === 'bought' && part.shape.form === 'plate' ? part.shape.thickness : 0,
        placesOf(planned, part).length,
      ])
      .filter(([, many]) => many !== 0);
    expect(counted.sort()).toEqual(laid.sort());
  });

  test('lengths of the well', () => {
    const B1 = partOf(planned, 'B1');
    const opening = B1.kind === 'flat' ? boundsOf(B1.holes.reduce((a, b) => (sizeOf(a) > sizeOf(b) ? a : b))) : null;
    const setup = planned.build.setups.find(({ orientation, focusing }) => orientation === 'upright' && focusing);
    const here = (id: string) => spansOf(planned.build, id, setup === undefined ? {} : { setup });
    const inner = Math.min(
      ...here('B3')
        .filter(({ x }) => x[0] > 0)
        .map(({ x }) => x[0]),
    );
    const number = (pattern: RegExp) => Number(said(planned, 'fences', pattern)[0]);
    expect(number(/edge of the opening to each long fence it is ([\d.]+) mm/)).toBeCloseTo(
      inner - (opening?.right ?? 0),
      2,
    );
    const lower = Math.min(...here('B3').map(({ y }) => y[0]));
    expect(number(/two B3, which reach ([\d.]+) mm past its inner edge/)).toBeCloseTo(
      (here('B4')[0]?.y[1] ?? 0) - lower,
      2,
    );
    if (!has(planned, 'fence-open')) return;
    const [board] = here('fence-open');
    const [wide, deep] = said(planned, 'fences', /slides run in, ([\d.]+) mm × ([\d.]+) mm/).map(Number);
    for (const [told, [from, to]] of [
      [wide, board?.x ?? [0, 0]],
      [deep, board?.y ?? [0, 0]],
    ] as const)
      expect(Math.abs((told ?? 0) - (to - from)), 'to the hundredth').toBeLessThanOrEqual(0.005 + 1e-9);
  });

  test('nothing is glued that is screwed, laid on or slides', () => {
    const glued = new Set(
      planned.parts.flatMap(({ id, joins }) =>
        joins.filter(({ by }) => by === 'glue' || by === 'finger').flatMap(({ to }) => [id, to]),
      ),
    );
    for (const { acts, borrows = [] } of stepsOf(planned.camera.objects))
      for (const sentence of acts.flatMap((text) => text.split(/(?<=[.:!?])\s/))) {
        if (
          !/\b[Gg]lue\b/.test(sentence) ||
          /\b(no glue|none|[Bb]efore|not |dry\b|the glue (holds|sets))/.test(sentence)
        )
          continue;
        for (const { id, kind } of planned.parts)
          if (kind === 'flat' && new RegExp(`(?<![A-Za-z0-9-])${id}(?![A-Za-z0-9-])`).test(sentence)) {
            // what only lends a hand in a step comes off again
            const mayBe = glued.has(id) && !borrows.includes(id);
            expect({ id, glued: mayBe, sentence }).toEqual({ id, glued: true, sentence });
          }
      }
  });

  test('a holder goes on its spacer where it does not stand on the seat', () => {
    const seat = spanOf(planned.build, 'B1').z[1];
    for (const { name } of planned.design.holders) {
      const tried = new RegExp(`Try the ${name} in the well: glass out, holder in(| on its spacer),`);
      const [where] = said(planned, 'glass-in', tried);
      expect(where !== '').toBe(spanOf(planned.build, faceOf(planned.parts, name).id).z[0] > seat + 0.01);
    }
  });

  test('a back with a tongue goes on in three ways', () => {
    const setup = planned.build.setups.find(({ orientation }) => orientation === 'upright');
    const { y } = spanOf(planned.build, 'B1', setup === undefined ? {} : { setup });
    const tongue = y[1] + y[0] > 0.5;
    expect(/never use it with the tongue down/.test(saidIn(planned, 'turn-buttons'))).toBe(tongue);
    expect(/all four ways/.test(saidIn(planned, 'turn-buttons'))).toBe(!tongue);
  });
});

const sizeOf = (loop: Parameters<typeof boundsOf>[0]): number => {
  const { left, right, bottom, top } = boundsOf(loop);
  return (right - left) * (top - bottom);
};

test('steps are numbered as the words are found', () => {
  for (const { planned } of kept)
    for (const { key } of stepsOfCamera(planned.parts)) expect(saidIn(planned, key)).not.toBe('');
});
