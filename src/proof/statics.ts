import type { Build, Setup } from '../assembly/build.js';
import { spanOf, spansOf } from '../assembly/span-of.js';
import {
  angleOfRepose,
  crossBandedModulus,
  overhangBend,
  ownWeightSag,
  plateSag,
  plateStiffness,
  pushNeeded,
  rackingRatio,
  rootStress,
  secondMoment,
  sectionModulus,
  spanSag,
  supportLoads,
  tippingAngle,
  tippingLine,
  tippingPush,
} from '../assembly/statics.js';
import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';
import { bendingStrength, birchPlies, birchVeneer, friction } from '../standards/materials.js';
import { nutFactor, preload } from '../standards/screws.js';
import { birchCrushing, withdrawal } from '../standards/wood-strength.js';
import { type CordHold, cordHold, cordHolds } from './cords.js';
import { farthestRear, guideOf, newtons, overhangOf, slides, weighed } from './loads.js';

/** Pull on a dark slide, N: what pins and tripod must take. Common practice, no source: 5 to 10. */
const SLIDE_PULL = 10;
/** A tripod as they stand: its feet's circle, and the tailboard's height above the floor, mm. Common practice, no source. */
const TRIPOD = { feet: 400, height: 1300 };
/** A hand that rests on the box, N; common practice, no source. */
const HAND = 20;
/** A knob turned by hand, N·mm, and the thread under it, mm. Common practice, no source. */
const KNOB = { torque: 500, diameter: 6 };

/** How the camera stands and gives way with one thing in the back. */
export interface LoadedStatics {
  readonly setup: Setup;
  readonly massKg: number;
  /** z of the centre of gravity at the ends of the travel: between them it runs evenly from one to the other. */
  readonly closest: number;
  readonly farthest: number;
  /** Its greatest moment about the tripod's nut, N·mm. */
  readonly momentNmm: number;
  /** At full draw: the overhang behind the doubler, and what it does. rad */
  readonly overhang: number;
  readonly sag: number;
  readonly tilt: number;
  /** By the board's own weight, with a doubler that bends as the board does, and with a second support at the rear end. */
  readonly ownSag: number;
  readonly sagIfDoublerBends: number;
  readonly sagSupported: number;
  /** N/mm², at the doubler's edge. */
  readonly stress: number;
  /** On front and rear edge of the sole, N, at full draw with the dark slide pulled up; below 0 the keepers hold it. */
  readonly sole: readonly [front: number, rear: number];
  /** rad: slope on which it tips over the nearest line between two feet. */
  readonly tipsAt: number;
  /** Level push at the optical axis that tips it, N. */
  readonly tippedBy: number;
}

/** What something must hold, and what it does hold, N. */
export interface Hold {
  readonly name: string;
  readonly loadN: number;
  readonly holdsN: number;
  /** Where the strength comes from. */
  readonly source: string;
}

export interface StaticsTable {
  /** z of the tripod's nut. */
  readonly nut: number;
  readonly loaded: readonly LoadedStatics[];
  /** Modulus as it was typed, and what a birch sheet of so many plies has, N/mm²; strength along the grain. */
  readonly sheet: {
    readonly typed: number;
    readonly along: number;
    readonly across: number;
    readonly strength: number;
  };
  /** The sole pushed at one edge of the standard: lengths of the jamming one, its drag and the push, N. */
  readonly racking: { readonly ratio: number; readonly dragN: number; readonly pushN: number };
  /** rad: slope on which what slides begins to slide by itself, the lock open. */
  readonly slidesAt: number;
  /** How far a hand on the top of the front box bows it, mm. */
  readonly topBow: number;
  readonly cords: readonly CordHold[];
  readonly holds: readonly Hold[];
}

/** The statics of the camera in figures, from its placed parts. */
export function staticsTable(design: Design, build: Build): StaticsTable {
  const loaded = build.setups
    .filter(({ orientation }) => orientation === 'upright')
    .map((setup) => loadedIn(design, build, setup));
  const heaviest = loaded.reduce((most, one) => (one.massKg > most.massKg ? one : most));
  return {
    nut: nutOf(build).z,
    loaded,
    sheet: sheetOf(design),
    racking: rackingOf(design, build, heaviest.setup),
    slidesAt: angleOfRepose(design.workshop.friction),
    topBow: topBowOf(design, build),
    cords: cordHolds(build),
    holds: holdsOf(design, build, heaviest),
  };
}

function nutOf(build: Build): { readonly z: number; readonly bottom: number } {
  const { y, z } = spanOf(build, 'tripod-barrel');
  return { z: (z[0] + z[1]) / 2, bottom: y[0] };
}

function loadedIn({ workshop: { modulus } }: Design, build: Build, setup: Setup): LoadedStatics {
  const rear = farthestRear(build);
  const nut = nutOf(build);
  const [closed, open] = [weighed(build, setup, { rear: 0 }), weighed(build, setup, { rear })];
  const { massKg } = open;
  const lean = Math.max(Math.abs(closed.at.z - nut.z), Math.abs(open.at.z - nut.z));
  const bent = overhangOf(build, setup, modulus);
  const { reach, loadN, width, thickness, sag, tilt } = bent;
  const I = secondMoment(width, thickness);
  const board = spanOf(build, 'T1L');
  const doubler = spanOf(build, 'T4').z;
  const behind = Math.max(0, board.z[1] - doubler[1]);
  const boardKg = weighed({ ...build, parts: build.parts.filter(({ id }) => /^T1[UL]$/.test(id)) }, setup, { rear });
  const toLine = Math.max(0, tippingLine(TRIPOD.feet) - lean);
  const height = TRIPOD.height + (open.at.y - nut.bottom);
  return {
    setup,
    massKg,
    closest: closed.at.z,
    farthest: open.at.z,
    momentNmm: newtons(massKg) * lean,
    overhang: reach,
    sag,
    tilt,
    ownSag: ownWeightSag(newtons(boardKg.massKg) / (board.z[1] - board.z[0]), behind, modulus, I),
    sagIfDoublerBends: overhangBend({ load: loadN, span: doubler[1] - doubler[0], overhang: reach, E: modulus, I }).tip,
    // the load in the middle between doubler and support: the worst place
    sagSupported: spanSag(loadN, behind, modulus, I),
    stress: rootStress(loadN, reach, sectionModulus(width, thickness)),
    sole: soleLoads(build, setup),
    tipsAt: tippingAngle(toLine, height),
    tippedBy: tippingPush(newtons(massKg), toLine, TRIPOD.height - nut.bottom),
  };
}

/** The weight of what slides, less a dark slide pulled up where the back stands. */
function soleLoads(build: Build, setup: Setup): readonly [number, number] {
  const sole = spanOf(build, 'R4L').z;
  const { massKg, at } = weighed(build, setup, { rear: 0, which: slides });
  const [front, rear] = supportLoads(newtons(massKg), sole[1] - sole[0], at.z - sole[0]);
  const pull = setup.focusing ? 0 : SLIDE_PULL;
  const [off, offRear] = supportLoads(pull, sole[1] - sole[0], spanOf(build, 'B1').z[1] - sole[0]);
  return [front - off, rear - offRear];
}

function sheetOf({ plywood: { thickness }, workshop: { modulus } }: Design): StaticsTable['sheet'] {
  const plies = birchPlies(thickness);
  const E = (span: 'along' | 'across') => crossBandedModulus({ plies, veneerModulus: birchVeneer.modulus.value, span });
  return {
    typed: modulus,
    along: E('along'),
    across: E('across'),
    strength: bendingStrength(E('along'), thickness, 'along'),
  };
}

function rackingOf({ workshop }: Design, build: Build, setup: Setup): StaticsTable['racking'] {
  const { length } = guideOf(build);
  const { x } = spanOf(build, 'R3');
  const edge = (x[1] - x[0]) / 2;
  const dragN = workshop.friction * newtons(weighed(build, setup, { rear: 0, which: slides }).massKg);
  return {
    ratio: rackingRatio(length, workshop.friction, edge),
    dragN,
    pushN: pushNeeded(dragN, length, workshop.friction, edge),
  };
}

/** Taken as square on its longer side, held but not clamped at its edges, the hand spread over it: the worst of it. */
function topBowOf({ plywood: { thickness }, workshop: { modulus } }: Design, build: Build): number {
  const { x, z } = spanOf(build, 'F3');
  const side = Math.max(x[1] - x[0], z[1] - z[0]);
  return plateSag(HAND / (side * side), side, plateStiffness(modulus, thickness), 'free');
}

function holdsOf({ plywood: { thickness: t } }: Design, build: Build, heaviest: LoadedStatics): readonly Hold[] {
  const { setup, massKg } = heaviest;
  const sliding = newtons(weighed(build, setup, { rear: 0, which: slides }).massKg);
  const nut = nutOf(build);
  const above = weighed(build, setup, { rear: 0 }).at.y - nut.bottom;
  const doubler = spanOf(build, 'T4').x;
  const flange = spanOf(build, 'tripod-flange').x;
  const barrel = spanOf(build, 'tripod-barrel').x;
  const ring = (Math.PI / 4) * ((flange[1] - flange[0]) ** 2 - (barrel[1] - barrel[0]) ** 2);
  const grip = preload(KNOB.torque, nutFactor.drySteel.value, KNOB.diameter);
  const screws = spansOf(build, 'keeper-screw').length;
  const diameter = Math.min(...spansOf(build, 'keeper-screw').map(({ x }) => x[1] - x[0]));
  const clampedBy = friction.woodOnWood.value.least;
  return [
    {
      name: 'tripod nut in its wood, the camera tipped on its side',
      loadN: (newtons(massKg) * above) / ((doubler[1] - doubler[0]) / 2),
      holdsN: ring * birchCrushing.value,
      source: birchCrushing.source,
    },
    {
      name: 'lock, the camera pointing straight up or down',
      loadN: sliding,
      holdsN: 2 * clampedBy * grip,
      source: `${nutFactor.drySteel.source}; ${friction.woodOnWood.source}`,
    },
    {
      name: 'keepers’ screws, one pair of them',
      loadN: Math.max(0, ...heaviest.sole.map((load) => -load), SLIDE_PULL),
      // in one ply of the rail at least
      holdsN: screws === 0 ? 0 : 2 * withdrawal(diameter, t),
      source: 'from memory: Wood Handbook, withdrawal of wood screws',
    },
  ];
}

/**
 * What the statics of the whole has to say beside balance, sag, racking and tripod-hold, which have rules of their own. That
 * a dark slide pulled sideways may tip any camera on its legs stands in the table: it is no fault of a design.
 */
export const staticsRules = (_design: Design, build: Build): readonly Finding[] => cordHold(build);
