import { describe, expect, test } from 'vitest';
import type { Extent } from '../../src/assembly/extent.js';
import { piecesOf } from '../../src/assembly/pieces.js';
import { spanOf, spansOf } from '../../src/assembly/span-of.js';
import { stepsOf } from '../../src/camera/objects.js';
import { type Act, assemblySteps, idsOf, names, stepsOfCamera } from '../../src/model/assembly-steps.js';
import type { StepWords } from '../../src/model/build-step.js';
import type { Part } from '../../src/model/part.js';
import { type Planned, planCamera } from '../../src/pipeline.js';
import { changed, designOf } from '../design/reading.js';
import { heron as heronText } from '../design/worked-designs.js';
import { keptDesign, keptDesigns } from '../designs/kept-design.js';
import { lawsFrom, withDesign } from '../laws/law.js';
import { AHEAD, heronWith, SMALL_PARTS } from './asked-for.js';
import { fourByFive, heronMade, planned } from './made-holders.js';

const kept = [
  ...keptDesigns.map((name) => ({ name, planned: planCamera(keptDesign(name)) })),
  { name: 'heron with small parts', planned: heronWith(...SMALL_PARTS) },
  {
    name: 'kiwi with a handle across and its masks on packing',
    planned: withDesign(keptDesign('kiwi'), {
      handle: true,
      masks: [{ name: 'square', image: { width: 60, height: 60 }, corners: 0, holder: 'film holder' }],
    }),
  },
  { name: 'heron with a filter holder and a shutter', planned: heronWith('filterHolder: {}', 'shutter: {}') },
  {
    name: 'heron with a shutter on elastic',
    planned: heronWith('shutter: { time: 1/60 s, elastic: { pull: 400 g } }'),
  },
  { name: 'heron with all that goes ahead of a lens', planned: heronWith(...AHEAD) },
  { name: 'heron with a hood', planned: heronWith('hood: {}') },
  { name: 'heron with a cap', planned: heronWith('cap: true') },
  { name: 'heron that makes its paper holder', planned: planned(heronMade()) },
  { name: 'heron that makes a deeper one', planned: planned(heronMade(', insert: 4x5, filmDepth: 10.35 mm')) },
  { name: 'a 4x5 that makes its film holder', planned: planned(fourByFive) },
];
/** Steps of what is made only where somebody asks for it, or where a holder needs it. */
const OPTIONAL = new Map([
  ['spacers', /^SP/],
  ['baffle', /^R8$/],
  ['middle-box', /^C1L$/],
  ['middle-felt', /^felt-middle-long$/],
  ['middle-on', /^R10$/],
  ['middle-stops', /^F14$/],
  ['handle', /^F11$/],
  ['handle-on', /^F11$/],
  ['accessory-frame', /^A1$/],
  ['frame-on', /^A1$/],
  ['filter-holder', /^FH1$/],
  ['shutter', /^D1$/],
  ['shutter-slides', /^D4$/],
  ['hood', /^LH1$/],
  ['cap', /^LC1$/],
  ['front-on', /^(?:FH1|D1|LH1|LC1)$/],
  ['mask-ledge', /^B6$/],
  ['masks', /^MK/],
  ['stop-wallet', /^WW1$/],
  ['stops', /^WS/],
  ['holder-shell', /^HF/],
  ['dark-slide', /^HS/],
  ['holder-lid', /^HD/],
  ['tank-chamber', /^KC/],
  ['tank-spout', /^tank-spout/],
  ['tank-window', /^tank-glass/],
  ['tank-front', /^KF/],
  ['tank-rim', /^KL/],
  ['tank-lid', /^KD/],
  ['tank-shut', /^tank-cord/],
]);
const { law } = lawsFrom(20_261_129);

const placed = ({ parts }: Planned): readonly Part[] => parts.filter(({ placements }) => placements.length > 0);
const made = (planned: Planned): readonly Part[] => placed(planned).filter(({ kind }) => kind !== 'bought');
const wordsIn = (planned: Planned): readonly StepWords[] => stepsOf(planned.camera.objects);
const sentencesOf = ({ acts, checks = [], cautions = [] }: StepWords): readonly string[] => [
  ...acts,
  ...checks,
  ...cautions,
];

/** What must hold of each camera, said of the first place where it does not. */
function mustHold(planned: Planned): void {
  const words = wordsIn(planned);
  const steps = stepsOfCamera(planned.parts);
  const numberOf = new Map(steps.map(({ key, number }) => [key, number]));
  const stepOf = (id: string) => steps.find(({ acts }) => acts.some((act) => names(act, id)));

  // each step says what to do, and nothing is said of a step that the camera has not
  for (const { key } of steps)
    expect(
      words.filter(({ step }) => step === key).flatMap(({ acts }) => acts),
      key,
    ).not.toEqual([]);
  expect(words.filter(({ step }) => !numberOf.has(step))).toEqual([]);

  // a made part is named where it comes in
  for (const { id } of made(planned)) {
    const step = stepOf(id);
    const said = words.filter((one) => one.step === step?.key).flatMap(({ acts }) => acts);
    expect(
      said.some((text) => mentions(text, id)),
      `${id} is named in step ${step?.key}`,
    ).toBe(true);
  }

  // and nowhere before, but where it lends a hand and is said to
  const ids = made(planned).map(({ id }) => id);
  for (const one of words) {
    const number = numberOf.get(one.step) ?? 0;
    for (const id of ids) {
      const own = steps.indexOf(stepOf(id) as (typeof steps)[number]) + 1;
      const early = sentencesOf(one).some((text) => mentions(text, id)) && own > number;
      expect(early, `${id} of step ${own} is spoken of in step ${number}`).toBe(
        early && (one.borrows ?? []).includes(id),
      );
    }
    for (const id of one.borrows ?? []) expect(steps.indexOf(stepOf(id) as never) + 1).toBeGreaterThan(number);
  }

  // what tired people can follow
  for (const text of words.flatMap(sentencesOf)) {
    for (const sentence of text.split(/(?<=[.:!?])\s/))
      expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(30);
    expect(text).not.toMatch(/undefined|null|NaN|\[object|'/);
    expect(text).not.toMatch(/\b0 (wood screws|strips|pieces)|\s{2}/);
  }
}

/** A part's mark as a word of its own: SP2 is not meant by SP2T. */
const mentions = (text: string, id: string): boolean => new RegExp(`(?<![A-Za-z0-9-])${id}(?![A-Za-z0-9-])`).test(text);

describe('the table of steps', () => {
  test('has as many as a person can keep apart, each with a key of its own', () => {
    const always = assemblySteps.length - OPTIONAL.size;
    expect(always).toBeGreaterThanOrEqual(18);
    expect(always).toBeLessThanOrEqual(26);
    expect(new Set(assemblySteps.map(({ key }) => key)).size).toBe(assemblySteps.length);
  });

  test.each(kept)('every part of $name comes in with one act', ({ planned }) => {
    const acts = assemblySteps.flatMap(({ acts }) => acts);
    for (const { id } of placed(planned))
      expect(
        acts.flatMap((act: Act) => idsOf(act).filter((_, i, all) => names({ into: '', each: [all[i] ?? ''] }, id))),
        id,
      ).toHaveLength(1);
  });

  test('is numbered without a gap, and leaves out what a camera has not', () => {
    for (const { planned } of kept) {
      const steps = stepsOfCamera(planned.parts);
      expect(steps.map(({ number }) => number)).toEqual(steps.map((_, i) => i + 1));
      const without = [...OPTIONAL].filter(([key, ids]) => {
        const there = planned.parts.some(({ id }) => ids.test(id));
        expect(steps.some((step) => step.key === key)).toBe(there);
        return !there;
      });
      expect(steps).toHaveLength(assemblySteps.length - without.length);
    }
  });

  test.each(kept)('what comes in at $name has something to join there', ({ planned }) => {
    const parts = new Map(placed(planned).map((part) => [part.id, part]));
    const joined = (a: string, b: string) =>
      parts.get(a)?.joins.some(({ to }) => to === b) || parts.get(b)?.joins.some(({ to }) => to === a);
    const there = new Map<string, string[]>();
    for (const { key, acts } of stepsOfCamera(planned.parts))
      for (const act of acts) {
        const present = there.get(act.into) ?? [];
        const brought: readonly string[][] =
          'whole' in act
            ? [[...(there.get(act.whole) ?? [])]]
            : 'each' in act
              ? act.each.flatMap((pattern) =>
                  [...parts.keys()].filter((id) => names({ into: '', each: [pattern] }, id)).map((id) => [id]),
                )
              : [[...parts.keys()].filter((id) => names(act, id))];
        const things = brought.filter((ids) => ids.length > 0);
        for (const [i, thing] of things.entries()) {
          // a thing may lie loose until the next one comes that holds it, as card under a clip
          const holding = [...present, ...(things[i + 1] ?? [])];
          const holds = present.length === 0 || thing.some((a) => holding.some((b) => joined(a, b)));
          expect(holds, `${thing.join(' ')} in step ${key}`).toBe(true);
          present.push(...thing);
        }
        there.set(act.into, present);
      }
    expect([...parts.keys()].filter((id) => !there.get('camera')?.includes(id))).toEqual([]);
  });
});

describe('what is said at the bench', () => {
  test.each(kept)('of $name', ({ planned }) => mustHold(planned));
  test('of any camera', () => law(15, mustHold));
});

/** The figure in the one sentence that a pattern finds. */
function figure(planned: Planned, pattern: RegExp): number {
  const found = wordsIn(planned)
    .flatMap(sentencesOf)
    .flatMap((text) => pattern.exec(text)?.[1] ?? []);
  expect(found, String(pattern)).toHaveLength(1);
  return Number(found[0]);
}

/** In which order two things are said. */
function saidBefore(planned: Planned, first: RegExp, then: RegExp): void {
  const order = stepsOfCamera(planned.parts).flatMap(({ key }) =>
    wordsIn(planned)
      .filter(({ step }) => step === key)
      .flatMap(({ acts }) => acts),
  );
  const [a, b] = [first, then].map((pattern) => order.findIndex((text) => pattern.test(text)));
  expect(a, String(first)).toBeGreaterThanOrEqual(0);
  expect(b, String(then)).toBeGreaterThan(a as number);
}

/** What a reader at the bench could not do as it was said once. */
describe('done at the bench', () => {
  const all = (planned: Planned) => wordsIn(planned).flatMap(sentencesOf).join(' ');

  test.each(kept)('$name: each rail has its ends told apart by holes that are there', ({ planned }) => {
    const rods = planned.parts.flatMap(({ id, kind, placements, ...part }) =>
      id.startsWith('rail-dowel-') && kind === 'bought' && 'shape' in part && part.shape.form === 'cylinder'
        ? [{ diameter: part.shape.diameter, zs: spansOf(planned.build, id).map(({ z }) => (z[0] + z[1]) / 2) }]
        : [],
    );
    const [front, rear] = rods.sort((a, b) => (a.zs[0] ?? 0) - (b.zs[0] ?? 0));
    expect(rods.map(({ zs }) => zs.length)).toEqual([2, 2]);
    expect(front?.diameter).not.toBe(rear?.diameter);
    expect(figure(planned, /end with the hole of ([\d.]+) mm is the front one/)).toBe(front?.diameter);
    expect(figure(planned, /is the front one, the end with the hole of ([\d.]+) mm the rear one/)).toBe(rear?.diameter);
  });

  test.each(kept)('$name: the rails leave the slots of the panel free', ({ planned }) => {
    const rails = Math.min(...spansOf(planned.build, 'T2').map(({ z }) => z[0]));
    expect(rails - spanOf(planned.build, 'F1').z[1]).toBeGreaterThanOrEqual(-1e-6);
    expect(all(planned)).toContain('The front ends of the rails are flush with the rear edge of the row of slots');
  });

  test.each(kept)('$name: pins are cut to the length that they have', ({ planned }) => {
    const longs = (pattern: RegExp) =>
      planned.parts.flatMap((part) =>
        pattern.test(part.id) && part.kind === 'bought' && part.shape.form === 'cylinder' ? [part.shape.length] : [],
      );
    const seat = longs(/^seat-pin-/);
    expect(seat).toHaveLength(2);
    const told = figure(planned, /Cut the two seat pins to ([\d.]+) mm/);
    for (const length of seat) expect(told).toBeCloseTo(length, 2);
    const own = all(planned).matchAll(/Cut its own pins to ([\d.]+) mm/g);
    const spacers = longs(/^SP\d+-pin-/);
    for (const [, length] of own) expect(spacers.some((one) => Math.abs(one - Number(length)) < 0.006)).toBe(true);
  });

  test.each(kept)('$name: the long fences have their place along the back', ({ planned }) => {
    const setup = planned.build.setups.find(({ focusing, orientation }) => focusing && orientation === 'upright');
    if (setup === undefined) throw new Error('nothing stands in the well');
    const edge = spanOf(planned.build, 'B1', { setup }).y[1];
    const ends = spansOf(planned.build, 'B3', { setup }).map(({ y }) => y[1]);
    const told = figure(planned, /open ends are ([\d.]+) mm from the open edge of B1/);
    for (const end of ends) expect(Math.abs(edge - end - told)).toBeLessThan(0.0051);
  });

  test.each(kept)('$name: a tool still reaches what it has to', ({ planned }) => {
    saidBefore(planned, /Countersink the four corner holes of R3/, /Push the box into R3/);
    saidBefore(planned, /Pull the nut out again/, /Put the nut in from the marked side/);
    saidBefore(planned, /Countersink the two holes of T5/, /Screw it on with the 2 wood screws/);
    saidBefore(planned, /Now measure G1/, /fix them with small spots/);
    saidBefore(planned, /Cut the two seat pins/, /Press the two seat pins/);
  });

  test.each(kept)('$name: battens are higher than what stands out below', ({ planned }) => {
    const below = spanOf(planned.build, 'T1L').y[0] - Math.min(...spansOf(planned.build, 'T4').map(({ y }) => y[0]));
    expect(figure(planned, /T4 stands ([\d.]+) mm out of the underside/)).toBeCloseTo(below, 2);
  });

  test.each(kept)('$name: the turn-buttons have the air that is told', ({ planned }) => {
    const setup = planned.build.setups[0];
    if (setup === undefined) throw new Error('there is no set-up');
    const air = spanOf(planned.build, 'R6', { setup }).z[0] - spanOf(planned.build, 'B1', { setup }).z[1];
    expect(figure(planned, /over the back with up to ([\d.]+) mm of air/)).toBeCloseTo(air, 6);
  });

  test.each(kept)('$name: a holder is bored for the pins that it lies on, or these are pulled', ({ planned }) => {
    for (const { id, name, kind, ...part } of planned.parts) {
      if (!/^holder-\d+$/.test(id) || kind !== 'bought' || !('shape' in part) || part.shape.form !== 'plate') continue;
      const bored = (part.shape.holes ?? []).length > 0;
      expect(all(planned)).toContain(
        bored ? `The ${name} needs holes for the pins` : `The ${name} has no holes for the seat pins`,
      );
    }
  });
});

/** Measured on the parts where they stand, as with a rule: nothing here asks what the objects were sized from. */
function measured(planned: Planned): void {
  const { build } = planned;
  const span = (id: string) => spanOf(build, id);
  const near = (pattern: RegExp, length: number, within = 0.0051) =>
    expect(Math.abs(figure(planned, pattern) - length), `${pattern} against ${length}`).toBeLessThan(within);
  const cornerwise = (a: number, b: number) => Math.hypot(a, b);
  const width = ([from, to]: readonly [number, number]) => to - from;
  const gap = (left: string, right: string) => span(right).x[0] - span(left).x[1];
  const [onRule, seated] = [
    0.051,
    build.setups.find(({ focusing, orientation }) => focusing && orientation === 'upright'),
  ];
  if (seated === undefined) throw new Error('nothing stands in the well');

  // front box
  const deep = span('F2L').z[1] - span('F1').z[0];
  near(/diagonals of the top.*Each is ([\d.]+) mm/, cornerwise(width(span('F1').x), deep), onRule);
  const inside = { x: gap('F2L', 'F2R'), y: span('F3').y[0] - span('F4').y[1] };
  near(/open rear end.*Each is ([\d.]+) mm/, cornerwise(inside.x, inside.y), onRule);
  near(/The sides stand ([\d.]+) mm apart inside/, inside.x);
  near(/floor and top stand ([\d.]+) mm apart/, inside.y);
  const strips = spansOf(build, 'F5');
  const upright = strips.filter(({ x, y }) => width(x) < width(y));
  near(
    /leave a square of ([\d.]+) mm/,
    Math.max(...upright.map(({ x }) => x[0])) - Math.min(...upright.map(({ x }) => x[1])),
  );
  near(/ends ([\d.]+) mm short of the next wall/, (inside.y - width((upright[0] as Extent).y)) / 2);
  const panel = planned.parts.find(({ id }) => id === 'F1');
  const openings = panel?.kind === 'flat' ? panel.holes.map((loop) => loop.map(({ y }) => y)) : [];
  const opening = openings.find((ys) => Math.min(...ys) < 0 && Math.max(...ys) > 0) as number[];
  near(/lower edge of the opening in F1 it is ([\d.]+) mm/, Math.min(...opening) - span('T1U').y[1]);

  // tailboard and sole
  const rails = spansOf(build, 'T2');
  const left = rails.filter(({ x }) => x[1] < 0);
  const right = rails.filter(({ x }) => x[0] > 0);
  const between = Math.min(...right.map(({ x }) => x[0])) - Math.max(...left.map(({ x }) => x[1]));
  near(/rails stand ([\d.]+) mm apart/, between);
  near(/with the card of ([\d.]+) mm at each side/, (between - width(span('R4L').x)) / 2);
  near(/keepers reach ([\d.]+) mm inwards/, span('T3').x[1] - Math.max(...left.map(({ x }) => x[1])));
  near(/sole is ([\d.]+) mm wide/, width(span('R4U').x));
  near(/It is ([\d.]+) mm thick, and the glue/, span('R4U').y[1] - span('R4L').y[0]);
  near(/they end ([\d.]+) mm inside it/, span('R3').y[0] - span('R4L').y[0]);
  near(/they end ([\d.]+) mm inside it/, span('R5').y[0] - span('R4L').y[0]);
  near(/front edge of the sole to R3 it is ([\d.]+) mm/, span('R3').z[0] - span('R4U').z[0]);

  // lens board
  near(/F6 stands ([\d.]+) mm over F7/, span('F7').x[0] - span('F6').x[0]);
  const xs = panel?.kind === 'flat' ? panel.holes.find((loop) => loop.some(({ y }) => y > 0)) : undefined;
  near(/plug goes into.*with ([\d.]+) mm of play/, Math.max(...(xs ?? []).map(({ x }) => x)) - span('F7').x[1], 0.0051);
  const packing = spansOf(build, 'F8');
  near(
    /The F8 stand ([\d.]+) mm apart/,
    Math.max(...packing.map(({ x }) => x[0])) - Math.min(...packing.map(({ x }) => x[1])),
  );
  near(/board lies ([\d.]+) mm deeper/, span('F6').z[0] - span('F8').z[0]);
  near(
    /Each F9 reaches ([\d.]+) mm over the board/,
    span('F6').x[1] - Math.max(...spansOf(build, 'F9').map(({ x }) => x[0])),
  );

  // rear box
  const [wide, high] = [span('R1R').x[1] - span('R1L').x[0], span('R2T').y[1] - span('R2F').y[0]];
  near(/free end.*Each is ([\d.]+) mm/, cornerwise(wide, high), onRule);
  near(/Outside it is ([\d.]+) mm wide and high/, wide);
  if (spansOf(build, 'C1L').length > 0) {
    const middle = { inside: gap('C1L', 'C1R'), wide: span('C1R').x[1] - span('C1L').x[0] };
    near(/end away from C3.*Each is ([\d.]+) mm/, cornerwise(middle.wide, middle.wide), onRule);
    near(/Inside, the walls stand ([\d.]+) mm apart/, middle.inside);
    near(/there is ([\d.]+) mm of play to the sides/, inside.x - middle.wide);
    const bands = spansOf(build, 'felt-middle-long').map(({ z }) => z[0]);
    near(/middle box, ([\d.]+) mm and then/, Math.min(...bands) - span('C1L').z[0]);
    near(/and then ([\d.]+) mm behind/, Math.max(...bands) - span('C1L').z[0]);
    near(/4 pieces of ([\d.]+) mm for top/, width(span('felt-middle-long').x));
    near(/4 pieces of ([\d.]+) mm for the sides/, width((spansOf(build, 'felt-middle-side')[0] as Extent).y));
    near(/after ([\d.]+) mm the batten meets/, span('C3').z[0] - span('R10').z[1]);
    near(/front face of each block it is ([\d.]+) mm/, span('F14').z[0] - span('F1').z[1]);
  } else {
    near(/it has ([\d.]+) mm of play from side to side/, inside.x - wide);
    near(/felt aside, is ([\d.]+) mm all round/, span('R2F').y[0] - span('F4').y[1]);
  }
  near(
    /pencil lines.*: ([\d.]+) mm and/,
    Math.min(...spansOf(build, 'felt-long').map(({ z }) => z[0])) - span('R1L').z[0],
  );
  near(
    /pencil lines.* and ([\d.]+) mm from/,
    Math.max(...spansOf(build, 'felt-long').map(({ z }) => z[0])) - span('R1L').z[0],
  );
  near(/strips ([\d.]+) mm long for top/, width(span('felt-long').x));
  near(/strips ([\d.]+) mm long for the sides/, width((spansOf(build, 'felt-side')[0] as Extent).y));

  // back, upright
  const here = (id: string) => spanOf(build, id, { setup: seated });
  near(/B1 stands ([\d.]+) mm over B2/, here('B2').y[0] - here('B1').y[0]);
  const fences = spansOf(build, 'B3', { setup: seated })
    .map(({ x }) => x)
    .sort((a, b) => a[0] - b[0]);
  near(/long fences stand ([\d.]+) mm apart/, (fences[1]?.[0] ?? 0) - (fences[0]?.[1] ?? 0));
  if (planned.parts.some(({ id }) => id === 'fence-open'))
    near(/From B4 to the fence at the open end it is ([\d.]+) mm/, here('fence-open').y[0] - here('B4').y[1]);

  // ground glass and spacers
  const pockets = spansOf(build, 'G2', { setup: seated }).map(({ z }) => z[0]);
  near(
    /front face of G1 to the ledge it is ([\d.]+) mm/,
    Math.min(...pockets) - here('G1').z[0],
    figure(planned, /to the ledge.*within ([\d.]+) mm/) + 0.006,
  );
  const laid = piecesOf(planned.parts).filter(({ part }) => /^SP\d+(T|-shim-\d+)?$/.test(part.id));
  for (const id of new Set(laid.map(({ part }) => part.id.replace(/[T-].*/, '')))) {
    const own = laid.filter(({ part }) => part.id.replace(/[T-].*/, '') === id);
    const first = own[0]?.placement.when?.[0];
    const zs = own.filter(({ placement }) => placement.when?.includes(first ?? '')).map(({ extent }) => extent.z);
    const thick = Math.max(...zs.map(([, to]) => to)) - Math.min(...zs.map(([from]) => from));
    const told = wordsIn(planned)
      .filter(({ step }) => step === 'spacers')
      .flatMap(({ checks = [] }) =>
        checks.flatMap(
          (text) =>
            /t is ([\d.]+) mm thick at all four corners, within ([\d.]+)/.exec(text)?.slice(1).map(Number) ?? [],
        ),
      );
    expect(told.length).toBeGreaterThan(0);
    const near = told.some((value, i) => i % 2 === 0 && Math.abs(value - thick) <= (told[i + 1] ?? 0) + 0.006);
    expect(near, `${id} is ${thick} thick, told ${told.join(' ')}`).toBe(true);
  }
}

describe('figures in the words are those of the parts', () => {
  test.each(kept)('of $name', ({ planned }) => measured(planned));

  test.each(['3.6', '5.2'])('of Heron from a sheet of %s mm', (thickness) => {
    const text = changed(heronText, '4.05 mm', `${thickness} mm`);
    measured(planCamera(designOf(text)));
  });
});
