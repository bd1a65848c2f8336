import type { Build, Setup } from '../assembly/build.js';
import { isHolderFace, isOfHolder, roleOf } from '../assembly/holders.js';
import { ROUNDING } from '../assembly/limit.js';
import { countOf } from '../assembly/setups.js';
import { yaw, yawInGuide } from '../assembly/statics.js';
import type { Design, Holder } from '../design/design.js';
import { mend } from '../joinery/lamination.js';
import type { Finding } from '../model/finding.js';
import type { Part } from '../model/part.js';
import type { RegisterBudget, RegisterSpread } from '../model/register-budget.js';
import { circleOfConfusion, depthOfFocus, glassShift, registerTolerance } from '../optics/depth.js';
import { diagonal } from '../optics/image-circle.js';
import { publishedHolderFor } from '../standards/holders.js';
import { thicknessSwelling } from '../standards/moisture.js';
import { mm, plainNumber } from '../units/print.js';
import { type Contributor, halfOf, type Interval, intervalOf, sharesOf, worstCase } from './budget.js';
import { filmDepthIn } from './landmarks.js';
import { guideOf, overhangOf } from './loads.js';
import { type Layer, layersBeforeFilm, type Stack, stackUnder } from './stack.js';
import * as straying from './straying.js';

/** What strays, what would tell by how much, and what that leaves. */
interface Stray extends Contributor {
  readonly measure: string;
  /** What is to be done about it; null where nothing but care helps. */
  readonly by: Cure | null;
}

/** A measurement, or a cure, and what strays after it. */
interface Act {
  readonly text: string;
  readonly leaves: readonly Stray[];
}

type Cure = 'stack' | 'holder' | 'rails' | 'rest';
type Acts = Readonly<Partial<Record<Cure, Act>>>;

/** The budgets of every holder, in the middle and at the edge of the picture. */
export const registerBudgets = (design: Design, build: Build): readonly RegisterBudget[] =>
  design.holders.flatMap((holder) => {
    const set = setOf(build, holder);
    return set === null ? [] : budgetsOf(design, build, holder, set);
  });

/** A holder and the glass, each in a set-up. */
interface Pairing {
  readonly glass: Part;
  readonly focusing: Setup;
  readonly film: Part;
  readonly exposing: Setup;
}

function setOf({ parts, setups }: Build, { name }: Holder): Pairing | null {
  const glass = parts.find((part) => roleOf(part) === 'ground-glass');
  const film = parts.find((part) => isHolderFace(part) && isOfHolder(part, name));
  const mine = setups.filter(({ holder, orientation }) => holder === name && orientation === 'upright');
  const focusing = mine.find((setup) => setup.focusing);
  const exposing = mine.find((setup) => !setup.focusing);
  return glass && film && focusing && exposing ? { glass, film, focusing, exposing } : null;
}

function budgetsOf(design: Design, build: Build, holder: Holder, set: Pairing): readonly RegisterBudget[] {
  const stacks = stacksOf(design, build, holder, set);
  const nominal = worse(nominalOf(design, stacks));
  const centre = straysInStack(design, holder, stacks);
  const acts = actsOf(design, holder, stacks);
  const { maxAperture: N, pupilMagnification: P } = design.lens;
  const { short, long } = design.format.image;
  const circle = circleOfConfusion(diagonal({ width: short, height: long }));
  return [
    stated({ holder: holder.name, at: 'centre', nominal, tolerance: registerTolerance(N, circle) }, centre, acts),
    stated(
      {
        holder: holder.name,
        at: 'edge',
        nominal,
        tolerance: depthOfFocus(N, circle, design.focus.nearest, P) / 2,
      },
      [...centre, ...straysAtEdge(design, build, set.exposing)],
      acts,
    ),
  ];
}

/** The layers between the seat and glass, and between the seat and the film, of each holder. */
export const layersUnder = (
  design: Design,
  build: Build,
): readonly { readonly holder: string; readonly glass: readonly Part[]; readonly film: readonly Part[] }[] =>
  design.holders.flatMap((holder) => {
    const set = setOf(build, holder);
    if (set === null) return [];
    // whatever was measured of them: a part that is cut anew is not what was measured
    const glass = stackUnder(build, set.focusing, set.glass).layers;
    const film = stackUnder(build, set.exposing, set.film).layers;
    const partsOf = (layers: readonly Layer[]) => layers.map(({ part }) => part);
    const inHolder = layersBeforeFilm(build, holder, set.exposing);
    return [{ holder: holder.name, glass: partsOf(glass), film: partsOf([...film, ...inHolder]) }];
  });

interface Stacks {
  readonly glass: Stack;
  readonly film: Stack;
  /** What a holder that is made has between its face and the film. */
  readonly inHolder: readonly Layer[];
  /** From the face of the holder to the film. */
  readonly filmDepth: number;
  /** Whether it has a window before the film. */
  readonly window: boolean;
  readonly pane: Part;
}

function stacksOf(design: Design, build: Build, holder: Holder, { glass, focusing, film, exposing }: Pairing): Stacks {
  return {
    glass: asMeasured(design, holder, stackUnder(build, focusing, glass), glass),
    film: spacerAsMeasured(holder, stackUnder(build, exposing, film)),
    inHolder: layersBeforeFilm(build, holder, exposing),
    filmDepth: filmDepthIn(design, build, holder, exposing),
    window: build.parts.some((part) => roleOf(part) === 'window' && isOfHolder(part, holder.name)),
    pane: glass,
  };
}

/**
 * The stack under a glass that was measured where it stands: how its frame is made up is no matter any more, and what is left
 * is the spacer under it, if that was not measured too.
 */
function asMeasured({ groundGlass }: Design, holder: Holder, drawn: Stack, pane: Part): Stack {
  const stack = spacerAsMeasured(holder, drawn);
  const { measured, frosted } = groundGlass;
  if (measured === undefined) return stack;
  const ofSpacer = drawn.layers.filter(({ part }) => isOfSpacer(part));
  const frame = measured - (frosted === 'lens' ? 0 : paneThickness(pane));
  const isGlued = holder.spacer !== undefined && ofSpacer.length > 0;
  const height = frame + (isGlued ? holder.spacer.measured : thicknessOf(ofSpacer));
  return stackOf(
    stack.layers.filter(({ part }) => isOfSpacer(part)),
    { drawn: height, settled: height },
  );
}

/** The same for a spacer: its plies and shims are one thing, as thick as it was read. */
function spacerAsMeasured({ spacer }: Holder, stack: Stack): Stack {
  const ofSpacer = stack.layers.filter(({ part }) => isOfSpacer(part));
  if (spacer === undefined || ofSpacer.length === 0) return stack;
  const more = spacer.measured - thicknessOf(ofSpacer);
  return stackOf(
    stack.layers.filter(({ part }) => !isOfSpacer(part)),
    { drawn: stack.drawn + more, settled: stack.settled + more },
  );
}

const stackOf = (layers: readonly Layer[], height: Pick<Stack, 'drawn' | 'settled'>): Stack => ({
  layers,
  glueLines: layers.filter(({ glued }) => glued).length,
  ...height,
});

const thicknessOf = (layers: readonly Layer[]): number => layers.reduce((sum, { thickness }) => sum + thickness, 0);

const isOfSpacer = ({ id }: Part): boolean => id.startsWith('SP');

/** Where the lens sees the frosted face, less where the film lies, both from the seat. */
interface Nominal {
  readonly drawn: number;
  /** With everything pushed home onto the seat, as the cords do. */
  readonly settled: number;
}

function nominalOf({ groundGlass }: Design, { glass, film, filmDepth, pane }: Stacks): Nominal {
  const behindFront = groundGlass.frosted === 'lens' ? 0 : paneThickness(pane) - shiftOf(groundGlass, pane);
  return {
    drawn: glass.drawn + behindFront - film.drawn - filmDepth,
    settled: glass.settled + behindFront - film.settled - filmDepth,
  };
}

/** A stack that is not drawn as high as its layers are thick is pushed home by the cords: the worse of the two counts. */
const worse = ({ drawn, settled }: Nominal): number =>
  Math.abs(settled) > Math.abs(drawn) + ROUNDING ? settled : drawn;

const paneThickness = (pane: Part): number =>
  pane.kind === 'bought' && pane.shape.form === 'plate' ? pane.shape.thickness : 0;
const shiftOf = ({ refractiveIndex }: Design['groundGlass'], pane: Part): number =>
  glassShift(paneThickness(pane), refractiveIndex);

const GLUED = 'Glue the frame and the spacer first, then measure from seat face to frosted face and choose the shims.';

/**
 * What strays between seat and glass, and between seat and film. The width of the cut is not among it: no face of the
 * stack is cut, the mill and the glue make them.
 */
function straysInStack(design: Design, holder: Holder, { glass, film, inHolder, window }: Stacks): readonly Stray[] {
  const { plywood, groundGlass } = design;
  const sides = [
    { layers: glass.layers, sign: 1 },
    { layers: [...film.layers, ...inHolder], sign: -1 },
  ] as const;
  const plies = sides.flatMap(({ layers, sign }) => layers.filter(isPly).map((layer) => ({ layer, sign })));
  const materials = [...new Set(plies.map(({ layer }) => materialOf(layer)))];
  const shims = sides.flatMap(({ layers, sign }) =>
    layers.filter((one) => !isPly(one)).map((layer) => ({ layer, sign })),
  );
  const sizes = [...new Set(shims.map(({ layer }) => nearly(layer.thickness)))];
  const readings = plywood.readings;
  const several = readings.length > 1;
  return nonzero([
    ...materials.flatMap((material): readonly Stray[] => {
      const own = plies.filter(({ layer }) => materialOf(layer) === material);
      const read = several && material === plywood.material;
      const [least, most] = read ? [Math.min(...readings), Math.max(...readings)] : [0, 0];
      const net = own.reduce((sum, { sign }) => sum + sign, 0);
      return [
        {
          name: `${counted(own.length, 'ply', 'plies')} of ${material}, ${read ? 'as the readings spread' : 'read once'}`,
          // parts are drawn as thick as the thickest reading; what lies under the film counts the other way
          shift: read ? (((least - most) / 2) * net) / own.length : 0,
          half: read
            ? (most - least) / 2
            : (isBoard(design, material) ? straying.oneReadingOfBoard : straying.oneReading).value,
          spread: 'uniform',
          sensitivity: 1,
          count: own.length,
          measure: read
            ? GLUED
            : `Read the sheet at its corners and in the middle, and write the readings as a list. ${GLUED}`,
          by: 'stack',
        },
        {
          name: `the caliper that read ${material}`,
          shift: 0,
          half: straying.caliperOnWood.value,
          spread: { normal: 2 },
          sensitivity: net,
          count: 1,
          measure: GLUED,
          by: 'stack',
        },
      ];
    }),
    glueLines(design, glass.glueLines, film.glueLines + Math.max(0, inHolder.length - 1)),
    ...sizes.map((size): Stray => {
      const own = shims.filter(({ layer }) => nearly(layer.thickness) === size);
      return {
        name: `${counted(own.length, 'shim', 'shims')} of ${mm(size)}, from one strip`,
        shift: 0,
        half: size * straying.shimStock.value,
        spread: 'uniform',
        sensitivity: own.reduce((sum, { sign }) => sum + sign, 0),
        count: 1,
        measure: 'Measure ten shims in one pile and write a tenth of it under shims.',
        by: 'stack',
      };
    }),
    {
      name: 'the reading of the ground glass in its frame',
      shift: 0,
      half: groundGlass.measured === undefined ? 0 : straying.depthReading.value,
      spread: { normal: 2 },
      sensitivity: 1,
      count: 1,
      measure: 'Read it again at the four corners of the glass, and write the mean under groundGlass.measured.',
      by: 'stack',
    },
    {
      name: `the reading of the spacer of the ${holder.name}`,
      shift: 0,
      half: holder.spacer === undefined ? 0 : straying.depthReading.value,
      spread: { normal: 2 },
      sensitivity: 1,
      count: 1,
      measure: `Read it again at its four corners, and write the mean under spacer of the ${holder.name}.`,
      by: 'stack',
    },
    {
      name: 'thickness of the pane, which the picture passes',
      shift: 0,
      half: groundGlass.frosted === 'eye' ? straying.paneThickness.value : 0,
      spread: 'uniform',
      // the frosted face is seen its thickness/n behind the front
      sensitivity: 1 / groundGlass.refractiveIndex,
      count: 1,
      measure: 'Measure the pane with the caliper and write groundGlass.thickness.',
      by: 'stack',
    },
    {
      name: `thickness of the window of the ${holder.name}`,
      shift: 0,
      half: window ? straying.paneThickness.value : 0,
      spread: 'uniform',
      // a thicker one brings the film forward
      sensitivity: 1 - 1 / groundGlass.refractiveIndex,
      count: 1,
      measure: `Measure the window of the ${holder.name} with the caliper and write its thickness.`,
      by: 'holder',
    },
    ...straysOfHolder(design, holder),
    {
      name: 'damp in the plies',
      shift: 0,
      half: thicknessSwelling(straying.moistureChange.value),
      spread: 'uniform',
      sensitivity: plies.reduce((sum, { layer, sign }) => sum + sign * layer.thickness, 0),
      count: 1,
      measure: 'Seal both faces and all edges of frame and spacer, and measure them again on a damp day.',
      by: null,
    },
  ]);
}

/** Two sheets of the same name are one; shims that differ by less than this are the same. */
const nearly = (thickness: number): number => Math.round(thickness * 1000) / 1000;
const isBoard = ({ boards }: Design, material: string): boolean =>
  Object.values(boards).some((board) => board.material === material);
const isPly = ({ part }: Layer): boolean => part.kind === 'flat';
const materialOf = ({ part }: Layer): string => (part.kind === 'flat' ? part.material : '');
const counted = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;
const nonzero = (strays: readonly Stray[]): readonly Stray[] =>
  strays.filter((one) => one.count > 0 && (halfOf(one) > 0 || one.shift !== 0));

/** A shop that has measured its glue lines is believed to a caliper's reading. Under the film they count the other way. */
function glueLines({ workshop, defaulted }: Design, underGlass: number, underFilm: number): Stray {
  const usual = defaulted.includes('workshop') || defaulted.includes('workshop.glueLine');
  const { least, most } = straying.glueLine.value;
  const count = underGlass + underFilm;
  return {
    name: counted(count, 'glue line', 'glue lines'),
    shift: ((usual ? (least + most) / 2 : workshop.glueLine) * (underGlass - underFilm)) / Math.max(1, count),
    half: usual ? (most - least) / 2 : straying.caliperOnWood.value,
    spread: 'uniform',
    sensitivity: 1,
    count,
    measure: GLUED,
    by: 'stack',
  };
}

/** The holder's own error: what is known of its depth, and in a slot the film that floats forward from the back of it. */
function straysOfHolder(
  { format }: Design,
  { tolerance, filmFloat: float, name, make, measured }: Holder,
): readonly Stray[] {
  // of one that is made its layers are known, unless somebody wrote how far they stray
  if (make !== undefined && measured === undefined && tolerance === null) return [];
  const slot = publishedHolderFor(format.name)?.slotDepth.value;
  const published = slot !== undefined && tolerance === slot.tolerance;
  return [
    tolerance !== null
      ? {
          name: published ? `the published tolerance of ${format.name} holders` : `the tolerance of the ${name}`,
          shift: 0,
          half: tolerance,
          spread: 'uniform',
          sensitivity: -1,
          count: 1,
          measure: `Measure each ${name} that you own on a loaded sheet, write their mean, and mark those that stray.`,
          by: 'holder',
        }
      : {
          name: `the reading of the ${name}’s depth`,
          shift: 0,
          half: straying.depthReading.value,
          spread: { normal: 2 },
          sensitivity: -1,
          count: 1,
          measure: `Measure the depth of the ${name} again in four places of a loaded sheet, and write the mean.`,
          by: 'holder',
        },
    {
      name: 'film that floats in its slot',
      shift: -float / 2,
      half: float / 2,
      spread: 'uniform',
      sensitivity: -1,
      count: 1,
      measure: 'Tap the holder on its closed end, and hold it so that the film lies back; a thicker film floats less.',
      by: null,
    },
  ];
}

/**
 * What swings the corner of the picture: the sole askew in its rails, and the tailboard as it bends at full draw, each
 * way. Glass and film swing together, and both out of the plane in which the lens is sharp.
 */
function straysAtEdge({ format, workshop, laser }: Design, build: Build, exposing: Setup): readonly Stray[] {
  const guide = guideOf(build);
  const askew = yawInGuide(guide);
  const wider = yaw(laser.kerfUncertainty, guide.length);
  const { tilt } = overhangOf(build, exposing, workshop.modulus);
  const half = { short: format.image.short / 2, long: format.image.long / 2 };
  // upright the long side stands up, lengthwise it lies
  const [across, up] =
    (askew - tilt) * (half.long - half.short) > 0 ? [half.long, half.short] : [half.short, half.long];
  const edge = { shift: 0, spread: 'uniform', sensitivity: 1, count: 1 } as const;
  return nonzero([
    {
      ...edge,
      name: `play of the sole in its rails, ${mm(nearly(guide.play))} a side`,
      half: askew * across,
      measure: 'Press the sole against one rail before you lock it.',
      by: 'rails',
    },
    {
      ...edge,
      name: `width of the cut at sole and rails, ${mm(laser.kerfUncertainty)}`,
      half: wider * across,
      measure: 'Set the second rail against the sole with a strip of card before you drill for its dowels.',
      by: 'rails',
    },
    {
      ...edge,
      name: 'bending of the tailboard at full draw',
      half: tilt * up,
      measure: 'Rest the rear end of the tailboard on a second support.',
      by: 'rest',
    },
  ]);
}

/** What a measurement leaves, and what would make that smaller. */
const reading = (name: string, half: number, measure: string): Stray => ({
  name,
  shift: 0,
  half,
  spread: { normal: 2 },
  sensitivity: 1,
  count: 1,
  measure,
  by: null,
});

function actsOf({ shims }: Design, { name }: Holder, { glass, film, inHolder }: Stacks): Acts {
  const glued = inHolder.length > 0 ? `, the glued ${name}` : '';
  const step = Math.min(...shims);
  const under = (stack: Stack) => stack.layers.some(({ part }) => isOfSpacer(part));
  return {
    // without a shim nothing can be done about what was measured
    ...(shims.length > 0
      ? {
          stack: {
            text: under(film)
              ? `the glued glass frame${glued} and the glued spacer of the ${name}, and shim`
              : `the glued glass frame${under(glass) ? ' on its glued spacer' : ''}${glued}, and shim`,
            leaves: [
              {
                ...reading('half of the thinnest shim', step / 2, 'Buy a thinner shim, and write it under shims.'),
                spread: 'uniform' as const,
              },
              {
                ...reading(
                  'the reading of the glued stack',
                  straying.depthReading.value,
                  'Read it at the four corners of the glass, and take the mean.',
                ),
                count: 1 + (under(film) ? 1 : 0) + (inHolder.length > 0 ? 1 : 0),
              },
            ],
          },
        }
      : {}),
    holder: {
      text: `the depth of each ${name} in four places`,
      // the mean of four readings strays by half of one
      leaves: [reading('the mean of four readings', straying.depthReading.value / 2, 'Read it in sixteen places.')],
    },
    rails: { text: 'the play of the sole, and press it to one rail', leaves: [] },
    rest: { text: 'the tilt of the loaded back with a square, and rest the rear end on a stick', leaves: [] },
  };
}

type Head = Pick<RegisterBudget, 'holder' | 'at' | 'nominal' | 'tolerance'>;

/** After some measurements: what they were about is gone, and what they leave has come. */
const after = (strays: readonly Stray[], acts: Acts, done: readonly Cure[]): readonly Stray[] => [
  ...strays.filter(({ by }) => by === null || acts[by] === undefined || !done.includes(by)),
  ...done.flatMap((by) => (strays.some((one) => one.by === by) ? (acts[by]?.leaves ?? []) : [])),
];

function stated(head: Head, strays: readonly Stray[], acts: Acts): RegisterBudget {
  const measured = after(strays, acts, ['stack']);
  // shims are chosen to what was measured, so what was drawn no longer counts
  const aim = acts.stack === undefined ? head.nominal : 0;
  return {
    ...head,
    ...spread(head.nominal, strays),
    measured: spread(aim, measured),
    toHalve: toHalve(strays, acts),
  };
}

function spread(nominal: number, strays: readonly Stray[]): RegisterSpread {
  const shares = sharesOf(strays);
  const contributors = strays.map((one, i) => ({
    name: one.name,
    half: halfOf(one),
    share: shares[i] ?? { variance: 0, worst: 0 },
    measure: one.measure,
  }));
  return {
    worst: worstCase(nominal, strays),
    interval95: intervalOf(nominal, strays),
    contributors: contributors.sort((a, b) => b.share.variance - a.share.variance),
  };
}

const reachOf = ([low, high]: Interval): number => (high - low) / 2;

/** The fewest measurements that halve the interval, or the best two. */
function toHalve(strays: readonly Stray[], acts: Acts): string {
  const full = reachOf(intervalOf(0, strays));
  const kinds = [...new Set(strays.flatMap(({ by }) => (by !== null && acts[by] ? [by] : [])))];
  const ways = [...kinds.map((kind) => [kind]), ...kinds.flatMap((a, i) => kinds.slice(i + 1).map((b) => [a, b]))].map(
    (done) => ({ done, left: reachOf(intervalOf(0, after(strays, acts, done))) }),
  );
  const enough = ways.filter(({ left }) => left <= full / 2 + ROUNDING);
  const fewest = enough.filter(({ done }) => done.length === enough[0]?.done.length);
  const best = (fewest.length > 0 ? fewest : ways).reduce<(typeof ways)[number] | null>(
    (least, way) => (least === null || way.left < least.left ? way : least),
    null,
  );
  if (best === null || best.left >= full) return `Nothing that is measured makes ±${hundredths(full)} smaller.`;
  const text = best.done.map((by) => acts[by]?.text ?? '').join('; and ');
  const falls = `that brings ±${hundredths(full)} to ±${hundredths(best.left)}`;
  return fewest.length > 0 ? `Measure ${text}: ${falls}.` : `No two measurements halve it. Measure ${text}: ${falls}.`;
}

const hundredths = (length: number): string => `${plainNumber(length, 2)} mm`;
const signed = (length: number): string => {
  const text = plainNumber(length, 2);
  return text.startsWith('-') || text === '0' ? text.replace('-', '−') : `+${text}`;
};
const range = ([low, high]: Interval): string => `${signed(low)} to ${signed(high)} mm`;

const farthest = ([low, high]: Interval): number => (Math.abs(low) > Math.abs(high) ? low : high);
const within = ([low, high]: Interval, tolerance: number): boolean =>
  low >= -tolerance - 1e-9 && high <= tolerance + 1e-9;

/** What the rules say of the register of each holder. */
export const registerRules = (
  design: Design,
  build: Build,
  budgets = registerBudgets(design, build),
): readonly Finding[] => [...stackFilled(design, build), ...withinBudget(design, budgets)];

/**
 * register: a stack that is drawn higher or lower than its layers are thick. The glass where it is drawn may be right, but
 * what is cut will bring it elsewhere.
 */
function stackFilled(design: Design, build: Build): readonly Finding[] {
  const { short, long } = design.format.image;
  const limit = registerTolerance(design.lens.maxAperture, circleOfConfusion(diagonal({ width: short, height: long })));
  const all = design.holders.flatMap((holder) => {
    const set = setOf(build, holder);
    if (set === null) return [];
    const stacks = stacksOf(design, build, holder, set);
    const { drawn, settled } = nominalOf(design, stacks);
    const asRead = readingsOf(design, holder);
    // what is drawn too far off is told where it is drawn
    const told = asRead === null && Math.abs(drawn) > limit + ROUNDING;
    const isOff = !told && Math.abs(settled) > limit + ROUNDING;
    const onSpacer = [...stacks.glass.layers, ...stacks.film.layers].some(({ part }) => isOfSpacer(part));
    return [{ holder, stacks, settled, asRead, isOff, byFrame: holder.spacer === undefined, onSpacer }];
  });
  // spacers are reckoned from the frame: what lies on none tells how that stands
  const ofFrame = all.filter(({ byFrame, isOff, asRead }) => byFrame && isOff && asRead !== null);
  const bare = all.filter(({ byFrame, onSpacer }) => byFrame && !onSpacer);
  const cured = ofFrame.some(({ onSpacer }) => !onSpacer) ? bare : ofFrame;
  return all
    .filter(({ isOff }) => isOff)
    .map(({ holder, stacks: { glass, film }, settled, asRead, byFrame }) => ({
      rule: 'register',
      level: 'error' as const,
      value: settled,
      limit,
      unit: 'mm',
      about: 'shims',
      message:
        asRead === null
          ? `Sharp on the glass is soft in the picture: the layers that are cut for the ${holder.name} come to ${mm(thousandth(glass.settled))} under the glass and ${mm(thousandth(film.settled))} under the film, so that the glass stands ${mm(thousandth(Math.abs(settled)))} ${settled > 0 ? 'behind' : 'ahead of'} the film; ${hundredths(limit)} is allowed.`
          : `Sharp on the glass is soft in the picture: with ${asRead} as measured, the glass stands ${mm(thousandth(Math.abs(settled)))} ${settled > 0 ? 'behind' : 'ahead of'} the film of the ${holder.name}; ${hundredths(limit)} is allowed.`,
      hint:
        asRead === null
          ? `Put a shim of ${mm(thousandth(Math.abs(settled)))} under the ${settled > 0 ? 'holder' : 'glass'}.`
          : byFrame
            ? frameCure(
                design,
                build,
                cured.map((one) => one.settled),
                limit / 2,
              )
            : ofFrame.length > 0
              ? `First mend the frame of the glass, as is said of the ${ofFrame[0]?.holder.name}, and write what it then measures: the spacer is reckoned from it.`
              : spacerCure(design, build, holder, settled, limit / 2),
    }));
}

/** What was measured of a camera that stands, in words; null where nothing was. */
function readingsOf({ groundGlass }: Design, { spacer, name, measured }: Holder): string | null {
  const glass = groundGlass.measured === undefined ? [] : [`the frosted face at ${mm(groundGlass.measured)}`];
  const film = measured === undefined ? [] : [`the film of the ${name} at ${mm(measured)}`];
  const glued = spacer === undefined ? [] : [`the spacer of the ${name} ${mm(spacer.measured)} thick`];
  const words = [...glass, ...glued, ...film];
  return words.length === 0 ? null : words.join(' and ');
}

/** Shims of a stack, as they are drawn in it: under the pane in its frame, or in the spacer of a holder. */
const shimsIn = (build: Build, stack: RegExp): readonly number[] =>
  build.parts.flatMap((part) => {
    const [, microns] = stack.exec(part.id) ?? [];
    if (microns === undefined) return [];
    return Array.from({ length: countOf(part.placements, build.setups) }, () => Number(microns) / 1000);
  });

const pieces = (all: readonly number[]): string => all.map((one) => mm(one)).join(' and ');

/** What is done to the spacer of a holder that stands: the shims that `plan` names. */
function spacerCure(design: Design, build: Build, holder: Holder, settled: number, within: number): string {
  const { name } = holder;
  const layers = layersUnder(design, build).find((one) => one.holder === name);
  const under = layers?.film.some(isOfSpacer) ? 'holder' : 'glass';
  const number = design.holders.indexOf(holder) + 1;
  const { add, takeOut, remainder } = mend({
    lacks: under === 'glass' ? -settled : settled,
    shims: design.shims,
    inIt: shimsIn(build, new RegExp(`^SP${number}-shim-(\\d+)$`)),
    within,
  });
  const other = under === 'glass' ? 'holder' : 'glass';
  if (add.length + takeOut.length === 0)
    return `No shim at hand mends the spacer of the ${name}: put ${mm(thousandth(Math.abs(settled)))} under the ${(under === 'glass') === settled < 0 ? under : other}.`;
  const out = takeOut.length === 0 ? [] : [`take shims of ${pieces(takeOut)} out of the spacer of the ${name}`];
  const more =
    add.length === 0 ? [] : [`put shims of ${pieces(add)} to ${out.length > 0 ? 'it' : `the spacer of the ${name}`}`];
  const left = Math.abs(thousandth(remainder));
  return `${upper([...out, ...more].join(' and '))}${left === 0 ? '' : `; that leaves ${mm(left)}`}; then measure it again.`;
}

/**
 * What is done to the frame of the glass: one cure for all holders that stand on no spacer of their own, for spacers are
 * reckoned from the frame.
 *
 * @param off of those holders, how far the glass stands behind their film
 */
function frameCure({ shims }: Design, build: Build, off: readonly number[], within: number): string {
  const behind = (Math.max(...off) + Math.min(...off)) / 2;
  const inIt = shimsIn(build, /^glass-shim-(\d+)$/);
  const { add, takeOut, remainder } = mend({ lacks: -behind, shims, inIt, within });
  const left = Math.abs(thousandth(remainder));
  const leaves = left === 0 ? '' : `; that leaves ${mm(left)}`;
  if (add.length + takeOut.length > 0) {
    const out = takeOut.length === 0 ? [] : [`take shims of ${pieces(takeOut)} out from under the glass`];
    const more = add.length === 0 ? [] : [`put shims of ${pieces(add)} ${out.length > 0 ? 'in' : 'under the glass'}`];
    return `${upper([...out, ...more].join(' and '))}${leaves}; then measure the frame again.`;
  }
  const under = mend({ lacks: Math.abs(behind), shims, inIt: [], within });
  const what = under.add.length > 0 ? `shims of ${pieces(under.add)}` : mm(thousandth(Math.abs(behind)));
  return behind > 0
    ? `${inIt.length === 0 ? 'The frame has no shims to take out' : 'No shim taken out of the frame brings the glass nearer'}: put ${what} under the holder.`
    : `Put ${what} under the glass; then measure the frame again.`;
}

const upper = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/**
 * register-budget: one line a holder. A warning where even glued, measured and shimmed the register leaves its tolerance in
 * more than one camera of twenty, for then measuring the stack is not enough; else a note with what to expect.
 */
function withinBudget(design: Design, budgets: readonly RegisterBudget[]): readonly Finding[] {
  return design.holders.flatMap(({ name }, i) => {
    const own = budgets.filter(({ holder }) => holder === name);
    const told = own.find(({ measured, tolerance }) => !within(measured.interval95, tolerance)) ?? own[0];
    return told === undefined ? [] : [lineOf(told, design, i)];
  });
}

function lineOf(budget: RegisterBudget, design: Design, index: number): Finding {
  const { shims, holders } = design;
  const own = holders[index];
  const asRead = own ? readingsOf(design, own) : null;
  const { holder, at, tolerance, interval95, worst, measured } = budget;
  const finding = {
    rule: 'register-budget',
    value: farthest(measured.interval95),
    limit: tolerance,
    unit: 'mm',
    about: shims.length > 0 ? `holders[${index}].filmDepth` : 'shims',
  } as const;
  if (within(measured.interval95, tolerance))
    return {
      ...finding,
      level: 'note',
      message: `${asRead === null ? 'Cut and glued unmeasured' : `With ${asRead} as measured`}, the glass stands ${range(interval95)} from the film of the ${holder} in 19 of 20 cameras (${range(worst)} at worst); ${hundredths(tolerance)} either way is allowed. Glued first, measured and then shimmed: ${range(measured.interval95)}.`,
      hint: budget.toHalve,
    };
  const largest = measured.contributors[0];
  const where = at === 'centre' ? '' : ' at its corners';
  const how = shims.length > 0 ? 'even glued first, measured and shimmed' : 'without shims';
  return {
    ...finding,
    level: 'warning',
    message: `Sharp on the glass may be soft in the picture${where}: ${how}, glass and film of the ${holder} stand ${range(measured.interval95)} apart in 19 of 20 cameras; ${hundredths(tolerance)} either way is allowed.${largest ? ` Most of it is ${largest.name}.` : ''}`,
    hint: shims.length > 0 ? (largest?.measure ?? GLUED) : 'Write the shims that you have, [0.1 mm, 0.25 mm, 0.5 mm].',
  };
}

const thousandth = (length: number): number => Math.round(length * 1000) / 1000;
