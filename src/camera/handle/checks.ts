import type { Build, Setup } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { loadsOf, type PlacedLoad } from '../../assembly/mass.js';
import { partOf, platesIn } from '../../assembly/measure.js';
import { ON_THE_ROAD, stands } from '../../assembly/setups.js';
import { spanOf } from '../../assembly/span-of.js';
import { centreOfGravity, crossBandedModulus, sectionModulus } from '../../assembly/statics.js';
import { boundsOfPoints } from '../../geometry/path.js';
import type { Finding } from '../../model/finding.js';
import { standardGravity } from '../../standards/gravity.js';
import { bendingStrength, birchPlies, birchVeneer } from '../../standards/materials.js';
import { birchCrushing, rollingShear } from '../../standards/wood-strength.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import type { Handle } from './size.js';

/** A hand goes in, gloved or not: what is clear, and how thick it grips; common practice, no source. */
const HAND = { width: 90, height: 30, grip: { least: 12, most: 40 } };

/** handle-room: a hand goes through it, and its plate lies on the top of the front box whole. */
export function handleRoom({ along }: Handle, build: Build): readonly Finding[] {
  const [ply] = platesIn(partOf(build, 'F13'));
  const finger = boundsOfPoints(ply?.holes[0] ?? [{ x: 0, y: 0 }]);
  const [plies, plate, top] = [spanOf(build, 'F13'), spanOf(build, 'F11'), spanOf(build, 'F3')];
  const thick = along === 'z' ? widthOf(plies.x) : widthOf(plies.z);
  const [width, height] = [finger.right - finger.left, finger.top - finger.bottom];
  const short = Math.min(
    plate.z[0],
    top.z[1] - plate.z[1],
    plate.x[0] - spanOf(build, 'F2L').x[0],
    spanOf(build, 'F2R').x[1] - plate.x[1],
  );
  const rule = { rule: 'handle-room', level: 'error', unit: 'mm', about: 'handle' } as const;
  return [
    ...unless(short >= -ROUNDING, {
      ...rule,
      value: short,
      limit: 0,
      message: `The plate of the handle stands ${mm(tenth(-short))} out over the front box: there is no room for a handle on its top.`,
      hint: 'Leave handle out: carry so small a camera in its bag.',
    }),
    ...unless(width >= HAND.width - ROUNDING && height >= HAND.height - ROUNDING, {
      ...rule,
      value: Math.min(width - HAND.width, height - HAND.height),
      limit: 0,
      message: `The handle leaves ${mm(tenth(width))} by ${mm(tenth(height))} for a hand, which needs ${mm(HAND.width)} by ${mm(HAND.height)}.`,
      hint: 'Cut its finger hole larger.',
    }),
    ...unless(thick >= HAND.grip.least - ROUNDING && thick <= HAND.grip.most + ROUNDING, {
      ...rule,
      value: thick,
      limit: thick < HAND.grip.least ? HAND.grip.least : HAND.grip.most,
      message: `A handle ${mm(tenth(thick))} thick ${thick < HAND.grip.least ? 'cuts the hand' : 'is not gripped'}.`,
      hint: 'Glue it of more plies or of fewer.',
    }),
  ];
}

const widthOf = ([from, to]: readonly [number, number]): number => to - from;

/** So far a hand that holds a bar along the axis holds level, and so far the camera hangs askew on one across; common practice, no source. */
const OFF_BALANCE = 10;

/** handle-balance: the middle of the finger hole against the centre of gravity, packed for the road. */
export function handleBalance(_own: Handle, build: Build): readonly Finding[] {
  const road = build.setups.find(({ name }) => name === ON_THE_ROAD);
  if (road === undefined) return [];
  const { z } = spanOf(build, 'F12');
  const off = (z[0] + z[1]) / 2 - weighed(build.parts.flatMap(loadsOf), road).at.z;
  return unless(Math.abs(off) <= OFF_BALANCE + ROUNDING, {
    rule: 'handle-balance',
    level: 'warning',
    value: Math.abs(off),
    limit: OFF_BALANCE,
    unit: 'mm',
    about: 'handle',
    message: `The handle stands ${mm(tenth(Math.abs(off)))} ${off > 0 ? 'behind' : 'ahead of'} the middle of the weight: carried by it, the camera nods ${off > 0 ? 'forwards' : 'backwards'}.`,
    hint: `Glue it ${mm(tenth(Math.abs(off)))} farther ${off > 0 ? 'forwards' : 'backwards'}.`,
  });
}

const weighed = (loads: readonly PlacedLoad[], setup: Setup) =>
  centreOfGravity(loads.filter(({ placement }) => stands(placement, setup)));

/** A camera that is swung up weighs so many times what it does; the description of the camera, section 12, common practice. */
const SWUNG = 3;
/** Across a countersunk head M4, less what its slot takes; from memory: ISO 2009. */
const HEAD = 7.5;

/** handle-strength: three times the heaviest camera, on everything that it hangs from, the weakest of it told. */
export function handleStrength(own: Handle, build: Build): readonly Finding[] {
  const loads = build.parts.flatMap(loadsOf);
  const heaviest = Math.max(...build.setups.map((setup) => weighed(loads, setup).massKg));
  const loadN = SWUNG * heaviest * standardGravity.value;
  const weakest = holdsOf(own, build).reduce((least, one) => (one.holdsN < least.holdsN ? one : least));
  return unless(weakest.holdsN >= loadN - ROUNDING, {
    rule: 'handle-strength',
    level: 'error',
    value: weakest.holdsN,
    limit: loadN,
    unit: 'N',
    about: 'handle',
    message: `Carried by its handle the camera may come down: ${weakest.what} hold ${plainNumber(weakest.holdsN, 0)} N, and swung up it pulls with ${plainNumber(loadN, 0)} N, ${SWUNG} times its weight.`,
    hint: weakest.cure,
  });
}

/** Wood of this size holds no more. */
const HEAVY = 'Leave handle out: so heavy a camera is carried in both arms.';

interface Held {
  readonly what: string;
  readonly holdsN: number;
  readonly cure: string;
}

/** What the camera hangs from, one after another; each holds all of it. Glue between foot and plate counts as nothing. */
export function holdsOf({ along }: Handle, build: Build): readonly Held[] {
  const [screw, washer] = [spanOf(build, 'handle-screw'), partOf(build, 'handle-washer')];
  const screws = build.parts.find(({ id }) => id === 'handle-screw')?.placements.length ?? 0;
  const [plate, plies] = [spanOf(build, 'F11'), spanOf(build, 'F13')];
  const bore = along === 'z' ? widthOf(screw.x) : widthOf(screw.z);
  const outside =
    washer.kind === 'bought' && washer.shape.form === 'plate' ? 2 * boundsOfPoints(washer.shape.outline).right : 0;
  const [finger] = platesIn(partOf(build, 'F13')).flatMap(({ holes }) => holes.map(boundsOfPoints));
  const bar = plies.y[1] - (finger?.top ?? plies.y[1]);
  const thick = along === 'z' ? widthOf(plies.x) : widthOf(plies.z);
  const gripped = finger ? finger.right - finger.left : 0;
  return [
    {
      what: 'the plies under the washers of its nuts',
      holdsN: screws * beyondSlot(outside / 2, bore / 2) * birchCrushing.value,
      cure: HEAVY,
    },
    {
      what: 'the heads of its screws in the plate',
      holdsN: ((screws * Math.PI) / 4) * (HEAD ** 2 - bore ** 2) * birchCrushing.value,
      cure: HEAVY,
    },
    {
      what: 'the plies of its bar, bent over the hand,',
      // a load in the middle of the span: F L/4 = f W
      holdsN: (4 * sectionModulus(thick, bar) * strengthOf(build, 'F13', along)) / gripped,
      cure: HEAVY,
    },
    {
      what: 'the walls of the top, bent from side to side,',
      holdsN: topHolds(build),
      cure: 'Lay the grain of F3 from side to side, or glue a second ply on it.',
    },
    {
      what: 'the glued fingers of the top',
      holdsN: flanksOf(build) * rollingShear.value,
      cure: HEAVY,
    },
    {
      what: 'the glued faces of the plate and the top',
      holdsN: (widthOf(plate.x) * widthOf(plate.z) * rollingShear.value) / PEEL,
      cure: HEAVY,
    },
  ];
}

/** At the rim of a plate that is pulled off the glue bears several times the mean; a choice of ours. */
const PEEL = 5;

/** Of a disc, what lies beyond a slot through its middle: two segments, mm². */
function beyondSlot(radius: number, half: number): number {
  if (half >= radius) return 0;
  return 2 * (radius * radius * Math.acos(half / radius) - half * Math.sqrt(radius * radius - half * half));
}

/** In bending, N/mm², with the span along an axis of the camera; across the face grain where nobody says how it lies. */
function strengthOf(build: Build, id: string, span: 'x' | 'z'): number {
  const part = partOf(build, id);
  if (part.kind !== 'flat') return 0;
  const own = { x: 0, y: 4 } as const;
  const [place] = part.placements;
  const row = span === 'x' ? 0 : 2;
  const runs = part.grain !== 'any' && Math.abs(place?.matrix[own[part.grain] + row] ?? 0) > 0.5;
  const way = runs ? 'along' : 'across';
  const E = crossBandedModulus({
    plies: birchPlies(part.thickness),
    veneerModulus: birchVeneer.modulus.value,
    span: way,
  });
  return bendingStrength(E, part.thickness, way);
}

/**
 * The top as a beam from side to side, as wide as the plate is long, resting on the sides; the plate spreads the load over
 * its own breadth and bends with the top. The moment at its edge, F (L − c)/4, meets the top alone; in the middle,
 * F (2 L − c)/8, both together.
 */
function topHolds(build: Build): number {
  const [plate, top] = [spanOf(build, 'F11'), spanOf(build, 'F3')];
  const span = spanOf(build, 'F2R').x[0] - spanOf(build, 'F2L').x[1];
  const [broad, wide] = [widthOf(plate.x), widthOf(plate.z)];
  const [alone, both] = [widthOf(top.y), plate.y[1] - top.y[0]];
  const strength = strengthOf(build, 'F3', 'x');
  const atEdge = (4 * sectionModulus(wide, alone) * strength) / Math.max(ROUNDING, span - broad);
  const inMiddle = (8 * sectionModulus(wide, both) * strength) / (2 * span - broad);
  return Math.min(atEdge, inMiddle);
}

/** Sides of the fingers of the top, as long as the ply of its neighbours is thick, mm². */
function flanksOf(build: Build): number {
  const [plate] = platesIn(partOf(build, 'F3'));
  if (plate === undefined) return 0;
  const [side, panel] = [spanOf(build, 'F2L').x, spanOf(build, 'F1').z].map(widthOf) as [number, number];
  const thick = plate.high - plate.low;
  const lengths = plate.outline.map((from, i) => {
    const to = plate.outline[(i + 1) % plate.outline.length] as typeof from;
    return Math.sqrt((to.x - from.x) ** 2 + (to.y - from.y) ** 2);
  });
  const flanks = lengths.filter((one) => [side, panel].some((ply) => Math.abs(one - ply) < FLANK));
  return flanks.reduce((sum, one) => sum + one * thick, 0);
}

/** The side of a finger is as long as the neighbour's ply within so much, mm. */
const FLANK = 0.3;

export const handleChecks = [handleRoom, handleBalance, handleStrength];
