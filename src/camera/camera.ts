import type { Build } from '../assembly/build.js';
import { sharesOf } from '../assembly/mass.js';
import { placedParts } from '../assembly/placed-parts.js';
import { ON_THE_ROAD, setupsOf } from '../assembly/setups.js';
import type { Design } from '../design/design.js';
import type { Ply } from '../joinery/plate.js';
import type { Hardware, Part } from '../model/part.js';
import { standardGravity } from '../standards/gravity.js';
import { CORNER_CLIP, extentsOf, ownPins, sizeBack } from './back/size.js';
import { type Balance, balanceOf } from './balance.js';
import type { CameraObjects } from './camera-objects.js';
import { claim, widest } from './claim.js';
import type { Cords } from './cords/size.js';
import { constant, type Figure, formula, measured, PRACTICE, reckoned, told } from './figure.js';
import { type FocusScale, sizeFocusScale } from './focus-scale/size.js';
import { footSlots } from './front-box/parts.js';
import { sizeFrontBox } from './front-box/size.js';
import { closedExtentOf, type GivenFigures, givenFigures, lensOnBoard, widestHolder } from './given-figures.js';
import { clipsLie, effectiveDepth, glazing, rearOfFrame, sizeGroundGlassFrame } from './ground-glass-frame/size.js';
import type { HeldHolder } from './holder/size.js';
import { type MountedLens, opening } from './lens/size.js';
import { type LensBoardGiven, sizeLensBoard } from './lens-board/size.js';
import { screwPlaces, sizeLensClamp } from './lens-clamp/size.js';
import { lightThrough } from './light-through.js';
import { cutOut, hardwareOf } from './objects.js';
import { type Optics, solveOptics } from './optics.js';
import { sizeRearBox } from './rear-box/size.js';
import { sizeRearStandard } from './rear-standard/size.js';
import { type Sag, sagOf } from './sag.js';
import {
  END_STOP,
  FELT_WIDTH,
  railWidth,
  type SettingOut,
  SOLE_AHEAD,
  SOLE_BEHIND,
  setOut,
  WELL_PLAY,
} from './setting-out.js';
import { asMade, type PlacedSpacer, type Spacer, sizeSpacer, topLayer } from './spacer/size.js';
import { backPlaces, stanceOf } from './stances.js';
import { keeperWidth, sizeTailboard } from './tailboard/size.js';
import type { Wood } from './wood.js';

/** The camera in figures: the rod, and each object sized from it. */
export interface Camera {
  readonly optics: Optics;
  readonly settingOut: SettingOut;
  readonly holders: readonly { readonly name: string; readonly filmDepth: number; readonly effectiveDepth: number }[];
  readonly spacers: readonly Spacer[];
  readonly focusScale: FocusScale;
  readonly objects: CameraObjects;
  /** Of all objects, placed: cut out already, for the tailboard is sized by what the others weigh. */
  readonly parts: readonly Part[];
  readonly balance: Balance;
  /** Of the tailboard's overhang behind the doubler, open and loaded. */
  readonly sag: Sag;
  readonly hardware: readonly Hardware[];
  readonly figures: CameraFigures;
}

/** What the plan shows beside the rod, as figures that can be explained. */
export interface CameraFigures {
  readonly given: GivenFigures;
  readonly seat: Figure;
  readonly diagonal: Figure;
  readonly tolerance: Figure;
  readonly filmAtInfinity: Figure;
  readonly filmAtNearest: Figure;
  readonly glassDepth: Figure;
  /** T* of each holder. */
  readonly depths: readonly Figure[];
  readonly packing: Figure;
  /** Thickness of each holder's spacer. */
  readonly spacers: readonly Figure[];
}

/** What the first two acts come to: what lies on the bench, and the rod. */
export type SetOutCamera = ReturnType<typeof setOutCamera>;

/**
 * The first two acts of `sizeCamera`: enough to know how near a camera could focus, and a twentieth of the work of all
 * three.
 */
export function setOutCamera(design: Design) {
  const { lens, plywood, format, groundGlass, focus, workshop, shims } = design;
  const t = plywood.thickness;
  const wood: Wood = { ply: plyOf(plywood.material, t, workshop.density), fits: workshop.fits };
  const stock = design.stock
    .filter((s) => s.material !== plywood.material)
    .map((s) => plyOf(s.material, s.thickness, workshop.density));

  // 1. What the user owns decides: lens, holders, glass, sheet.
  const clampOn = (side: 'inside' | 'front') =>
    lens.mount.by === 'clamp'
      ? sizeLensClamp({
          barrelDiameter: lens.barrel.diameter,
          grip: lens.barrel.grip,
          boreAllowance: workshop.boreAllowance,
          screws: lens.mount.screws,
          side,
          lensMassKg: lens.barrel.massKg,
          ply: t,
        })
      : null;
  const figures = givenFigures(design);
  const glassFigure = glassDepthOf(figures, effectiveDepth(groundGlass), groundGlass.frosted);
  const glassDepth = glassFigure.value;
  const fieldTangent = Math.sqrt(format.image.short ** 2 + format.image.long ** 2) / 2 / lens.focalLength;
  const boardOn = (side: 'inside' | 'front') => {
    const clamp = clampOn(side);
    const given: LensBoardGiven = {
      wood,
      figures: lensOnBoard(design, figures.ply, clamp),
      by: lens.mount.by,
      side,
      barrel: lens.barrel,
      flange: lens.flange,
      clamp: clamp && {
        flangeDiameter: clamp.flangeDiameter,
        radius: clamp.greatestRadius,
        length: clamp.length,
        bore: clamp.bore,
        screwPlaces: screwPlaces(clamp),
      },
      fieldTangent,
      light: lightThrough(design, glassDepth),
    };
    return sizeLensBoard(given);
  };
  const { side } = lens.mount;
  const clamp = clampOn(side);
  const lensBoard = boardOn(side);
  const optics = solveOptics({ lens, focus, format, seat: lensBoard.seat });
  const spacers = design.holders.map((h, i) =>
    sizeSpacer({
      id: `SP${i + 1}`,
      holder: h.name,
      filmDepth: h.filmDepth,
      glassDepth,
      ply: t,
      shims,
      stock: stock.map((s) => s.thickness),
      tolerance: optics.registerTolerance,
    }),
  );
  const depths = figures.holders.map(({ name, filmDepth }, i) =>
    widest(`T*_${i + 1}`, `effective depth of the ${name}`, [
      claim('its film', formula`${filmDepth}`),
      claim('the ground glass: a shallower holder stands on a spacer', formula`${glassFigure}`),
    ]),
  );
  const holders = design.holders.map((h, i) => ({
    name: h.name,
    filmDepth: h.filmDepth,
    effectiveDepth: depths[i]?.value ?? h.filmDepth,
  }));
  const extents = design.holders.map((h) => ({ holder: h, ...extentsOf(h, format.image.long) }));
  const closedClaim = closedExtentOf(figures, extents);
  const closedExtent = closedClaim.value;

  // 2. The rod: everything that two objects share.
  const rod = setOut({
    ply: figures.ply,
    clearance: figures.clearance,
    railPlay: figures.railPlay,
    focalLength: figures.focalLength,
    flangeDistance: figures.flangeDistance,
    nearest: figures.nearest,
    farthestFocus: figures.farthest,
    pastInfinity: figures.pastInfinity,
    pastNearest: figures.pastNearest,
    lens: lensBoard.figures,
    otherSide: boardOn(side === 'inside' ? 'front' : 'inside').figures,
    imageLong: figures.imageLong,
    depths: depths.map((depth, i) => ({ of: holders[i]?.name ?? '', depth })),
    glassDepth: glassFigure,
    holderWidth: widestHolder(figures),
    closedExtent: closedClaim,
  });
  return {
    wood,
    stock,
    figures,
    glassFigure,
    clamp,
    lensBoard,
    optics,
    spacers,
    depths,
    holders,
    extents,
    closedExtent,
    rod,
  };
}

/**
 * Sizes a camera in three acts; each line can use only names above it.
 *
 * The order is knowledge. Spacers come before the slide: a shallow holder stands on one, so its film lies T* behind the
 * seat. The back claims before it is sized: its side comes from the rod, its depth goes into it. The tailboard comes
 * last: its nut stands where everything above it balances, so the other parts are cut out and weighed first.
 */
export const sizeCamera = (design: Design): Camera => markOut(design, setOutCamera(design));

/** The third act: each object marked from the rod. */
export function markOut(design: Design, bench: SetOutCamera): Camera {
  const { lens, plywood, format, groundGlass, focus, workshop, shims } = design;
  const {
    wood,
    stock,
    figures,
    glassFigure,
    clamp,
    lensBoard,
    optics,
    spacers,
    depths,
    holders,
    extents,
    closedExtent,
    rod,
  } = bench;
  const { side } = lens.mount;
  const t = plywood.thickness;
  const standardFront = rod.closest.value - rod.stackBehindBoxes.value;
  const axisHeight = rod.axisHeight.value;
  const backSide = rod.backSide.value;
  const rearInside = rod.rearInside.value;
  const soleWidth = rod.soleWidth.value;
  const railLength = rod.tailboardLength.value + rod.tailboardStart - END_STOP;

  // 3. Each object, marked from the rod.
  const frontBox = sizeFrontBox({
    wood,
    inside: rod.frontInside.value,
    outside: rod.frontOutside.value,
    length: rod.frontLength.value,
    axisHeight,
    opening: lensBoard.opening,
  });
  const rearBox = sizeRearBox({
    wood,
    inside: rearInside,
    outside: rod.rearOutside.value,
    length: rod.rearLength.value,
    rear: standardFront,
    clearance: rod.clearance,
    overlapRequired: rod.overlapRequired.value,
    feltWidth: FELT_WIDTH,
  });
  const focusScale = sizeFocusScale({
    focalLength: lens.focalLength,
    pupilMagnification: lens.pupilMagnification,
    filmAtInfinity: optics.filmAtInfinity,
    farthest: focus.farthest,
    nearest: focus.nearest,
    reserve: rod.reserve,
    holders,
    closest: rod.closest.value,
    ply: t,
    keeperEdge: soleWidth / 2 + workshop.railPlay + railWidth(t) - keeperWidth(railWidth(t)),
    keeperWidth: keeperWidth(railWidth(t)),
    screwLine: keeperWidth(railWidth(t)) - railWidth(t) / 2,
    railLength,
  });
  const rearStandard = sizeRearStandard({
    wood,
    side: backSide,
    opening: rearInside,
    axisHeight,
    soleThickness: rod.soleThickness,
    soleWidth,
    soleAhead: SOLE_AHEAD,
    soleBehind: SOLE_BEHIND,
    front: standardFront,
    tailboardThickness: 2 * t,
    floorBottom: -rod.frontOutside.value / 2,
    cornerClip: CORNER_CLIP,
    friction: workshop.friction,
    focus: { ...focus, focalLength: lens.focalLength },
    indexStrokes: focusScale.sole,
    indexMarks: focusScale.soleMarks,
  });
  const places = backPlaces(design.holders);
  const back = sizeBack({
    wood,
    side: backSide,
    seat: rod.closest.value,
    imageShort: format.image.short,
    imageLong: format.image.long,
    openingMargin: rod.openingMargin,
    standardOpening: rearInside,
    ringSlip: rod.ringSlip,
    wellPlay: WELL_PLAY,
    holders: extents.map(({ holder: h, ...extent }, i) => ({
      ...extent,
      width: h.width,
      slideDepth: h.slideDepth + underHolder(spacers[i] as Spacer),
      pins: h.locating === 'pins',
      rib: h.rib,
    })),
    raisedJoint: Math.max(0, ...spacers.filter(({ made }) => made.plies.length === 0).map(asMade)),
    places,
    clips: clipsLie(glazing(format.image.long)),
  });
  // raised by shims alone the frame shows the light a slit above the low fence of the open end: there it reaches that fence
  const slit = spacers.some(
    (s) => s.under === 'glass' && s.thickness < t && s.thickness > back.openFence.height - SLIT,
  );
  const frameExtent = { closed: closedExtent, open: slit ? back.openExtent : Math.min(closedExtent, back.openExtent) };
  const spacerPins = ownPins(back);
  const placedSpacers = spacers
    .filter((s) => s.under !== 'none')
    .map(
      (spacer): PlacedSpacer => ({
        spacer,
        wood,
        seat: rod.closest.value,
        width: back.holderWidth,
        extent: frameExtent,
        opening: back.opening,
        seatPins: back.pins,
        ownPins: spacerPins,
        extra: stock,
        stance: stanceOf(
          0,
          spacer.holder,
          spacer.under === 'glass',
          spacer.under === 'glass' && spacer.holder === design.holders[0]?.name,
        ),
      }),
    );
  const allPins = placedSpacers.some((s) => s.spacer.made.plies.length > 0) ? [...back.pins, ...spacerPins] : back.pins;
  const first = spacers[0] as Spacer;
  const groundGlassFrame = sizeGroundGlassFrame({
    wood,
    seat: rod.closest.value,
    holderWidth: back.holderWidth,
    extent: frameExtent,
    imageShort: format.image.short,
    imageLong: format.image.long,
    openingMargin: rod.openingMargin,
    ...groundGlass,
    shims,
    within: optics.registerTolerance / 2,
    stock,
    pins: allPins,
    stances: spacers.map((s) => stanceOf(underGlass(s), s.holder, true, s === first)),
    covered: { behindSeat: underGlass(first), upright: [ON_THE_ROAD], lengthwise: [] },
    restsOn: ['B1', ...placedSpacers.filter((s) => s.spacer.under === 'glass').map((s) => topLayer(s.spacer))],
  });
  const heldHolders = extents.map(({ holder: h, ...extent }, i): HeldHolder => {
    const spacer = spacers[i] as Spacer;
    const raised = spacer.under === 'holder';
    return {
      id: `holder-${i + 1}`,
      name: h.name,
      seat: rod.closest.value,
      width: h.width,
      thickness: h.thickness,
      ...extent,
      filmDepth: h.filmDepth,
      massKg: h.massKg,
      pinHoles: h.locating === 'pins' || raised ? allPins : [],
      stance: stanceOf(raised ? asMade(spacer) : 0, h.name, false, false),
      on: raised ? topLayer(spacer) : 'B1',
    };
  });
  const frameRear = rearOfFrame(groundGlassFrame);
  const cords: Cords = {
    seat: rod.closest.value,
    hookY: back.hookY,
    across: Math.min(back.narrowest, groundGlassFrame.width),
    backSide,
    stances: [
      ...spacers.map((s) => stanceOf(underGlass(s) + frameRear, s.holder, true, false)),
      ...heldHolders.map((h) => ({ ...h.stance, behindSeat: h.stance.behindSeat + h.thickness })),
      { behindSeat: underGlass(first) + frameRear + t, upright: [ON_THE_ROAD], lengthwise: [] },
    ],
    over: ['G2', 'G3', ...heldHolders.map((h) => h.id)],
  };
  const mounted: MountedLens = {
    name: lens.name,
    seat: lensBoard.seat,
    barrel: lens.barrel,
    by: lens.mount.by,
    side,
    flange: lens.flange,
    boardThickness: 2 * t,
  };
  const above = {
    lensBoard,
    lens: mounted,
    ...(clamp ? { lensClamp: { clamp, seat: lensBoard.seat } } : {}),
    frontBox,
    rearBox,
    rearStandard,
    back,
    groundGlassFrame,
    spacers: placedSpacers,
    holders: heldHolders,
    cords,
  };
  const bolt = told(
    'z_b',
    'z of the lock bolt',
    rearStandard.bolt,
    () => formula`${rod.closest} - ${rod.stackBehindBoxes} + 28`,
    { source: PRACTICE },
  );
  const tailboardOn = (balance: Figure, loadedKg: number) =>
    sizeTailboard({
      wood,
      width: backSide,
      start: rod.tailboardStart,
      length: rod.tailboardLength.value,
      axisHeight,
      soleWidth,
      railWidth: railWidth(t),
      railPlay: workshop.railPlay,
      endStop: END_STOP,
      bolt,
      travel: rod.figures.travel,
      reserve: rod.figures.reserve,
      knobRadius: rearStandard.knob.diameter / 2,
      balance,
      loadedKg,
      footSlots: footSlots(frontBox),
      keeperScrews: focusScale.keeperScrews,
      scale: focusScale,
    });
  // a first tailboard to be weighed with the rest; moving its nut and doubler moves the balance by less than a millimetre
  const partsAbove = cutOut(above);
  const sharesAbove = sharesOf(partsAbove);
  const weigh = (rest: readonly Part[]) => balanceOf([...sharesAbove, ...sharesOf(rest)], design.holders, rod.travel);
  const draft = weigh(
    cutOut({ tailboard: tailboardOn(reckoned('z_0', 'a first guess', formula`${rod.closest} / 2`), 0) }),
  );
  const mean = reckoned(
    'z_m',
    'mean of the two centres of gravity, weighed with a first tailboard',
    formula`(${draft.figures.closest} + ${draft.figures.farthest}) / 2`,
    { source: PRACTICE },
  );
  const tailboard = tailboardOn(mean, draft.loadedKg);
  const tailboardParts = cutOut({ tailboard });
  const balance = weigh(tailboardParts);
  const objects: CameraObjects = { ...above, tailboard };
  return {
    optics,
    settingOut: rod,
    holders,
    spacers,
    focusScale,
    objects,
    parts: [...partsAbove, ...tailboardParts],
    balance,
    sag: sagOf({
      loadN: balance.slidingKg * standardGravity.value,
      overhang: Math.max(0, balance.sliding - tailboard.tripod - tailboard.doubler.side / 2),
      width: tailboard.width,
      thickness: 2 * t,
      modulus: workshop.modulus,
    }),
    hardware: hardwareOf(objects),
    figures: {
      given: figures,
      ...lightFigures(figures, optics, lensBoard.figures.seat),
      glassDepth: glassFigure,
      depths,
      packing: packingOf(figures, groundGlassFrame.packing.thickness, groundGlass.frosted),
      spacers: spacers.map((spacer, i) => spacerThickness(spacer, figures, glassFigure, i)),
    },
  };
}

const lightFigures = (given: GivenFigures, optics: Optics, seat: Figure) => {
  const { imageShort, imageLong, flangeDistance: V, focalLength: f, nearest: m, maxAperture: N } = given;
  const diagonal = told(
    'i_d',
    'diagonal of the image',
    optics.diagonal,
    () => formula`sqrt(${imageShort}^2 + ${imageLong}^2)`,
  );
  return {
    seat,
    diagonal,
    tolerance: told(
      'd_t',
      'how far the register may be out: a quarter of the depth of focus at infinity',
      optics.registerTolerance,
      () => {
        const circles = constant('k_c', 'circles of confusion in the diagonal', 1500, PRACTICE, 'count');
        const confusion = reckoned('c_oc', 'circle of confusion', formula`${diagonal} / ${circles}`, {
          source: PRACTICE,
        });
        return formula`${N} ${confusion} / 4`;
      },
      { source: `depth of focus N·c; a quarter of it ${PRACTICE}` },
    ),
    filmAtInfinity: told('z_inf', 'z of the film at infinity', optics.filmAtInfinity, () => formula`${seat} + ${V}`),
    filmAtNearest: told(
      'z_near',
      'z of the film at the nearest',
      optics.filmAtNearest,
      () => formula`${seat} + ${V} + ${f} ${m}`,
    ),
  };
};

function glassDepthOf({ glass }: GivenFigures, value: number, frosted: 'lens' | 'eye'): Figure {
  const { depth, thickness, index } = glass;
  const what = 'effective depth of the ground glass';
  return frosted === 'lens'
    ? told('T_g', what, value, () => formula`${depth}`)
    : told('T_g', what, value, () => formula`${depth} - ${thickness} (1 - 1 / ${index})`, {
        source: 'shift of a plane plate of glass: a book of optics',
      });
}

function packingOf({ glass, ply }: GivenFigures, value: number, frosted: 'lens' | 'eye'): Figure {
  const { depth, thickness } = glass;
  return told(
    'T_p',
    'packing between the front ply of its frame and the glass',
    value,
    frosted === 'lens' ? () => formula`${depth} - ${ply}` : () => formula`${depth} - ${thickness} - ${ply}`,
  );
}

function spacerThickness(
  { holder, under, thickness }: Spacer,
  { holders }: GivenFigures,
  glassDepth: Figure,
  i: number,
): Figure {
  const own = holders[i]?.filmDepth ?? glassDepth;
  const [symbol, what] = [`S_${i + 1}`, `thickness of the spacer of the ${holder}`];
  return under === 'none' && own.value !== glassDepth.value
    ? measured(symbol, what, thickness, 'none is made: the film lies as deep as the glass, to less than a hundredth')
    : told(symbol, what, thickness, () => formula`|${own} - ${glassDepth}|`);
}

/** The parts put together: stations, set-ups, gate and the lens's front. */
export function assemble({ settingOut: rod, objects, parts, holders }: Camera): Build {
  return {
    parts,
    placed: placedParts(parts),
    stations: [
      { name: 'closest', rear: 0 },
      { name: 'middle', rear: rod.travel / 2 },
      { name: 'farthest', rear: rod.travel },
    ],
    setups: setupsOf(holders.map((h) => h.name)),
    gate: { z: rod.closest.value, ...objects.back.opening },
    opening: opening(objects.lens),
  };
}

const plyOf = (material: string, thickness: number, density: number): Ply => ({
  material,
  thickness,
  density,
});

/** A loose joint opens by so much, and light slants through it. */
const SLIT = 0.6;

const underGlass = (spacer: Spacer): number => (spacer.under === 'glass' ? asMade(spacer) : 0);
const underHolder = (spacer: Spacer): number => (spacer.under === 'holder' ? asMade(spacer) : 0);

/**
 * The nearest focus of the camera as it is cut, at the end of its reserve, as a magnification. What two boxes *could*
 * reach is another thing: the slot of this tailboard ends before. The rod knows it, before anything is cut out.
 */
export function nearestFocus(design: Design): number {
  const { slack, reachable, reserve } = setOutCamera(design).rod;
  return slack < 0 ? reachable : design.focus.nearest + reserve / design.lens.focalLength;
}
