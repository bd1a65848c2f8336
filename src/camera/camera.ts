import type { Build } from '../assembly/build.js';
import { sharesOf } from '../assembly/mass.js';
import { placedParts } from '../assembly/placed-parts.js';
import { ON_THE_ROAD, setupsOf } from '../assembly/setups.js';
import { type Board, type Design, filmStands, type Holder } from '../design/design.js';
import type { Box } from '../geometry/path.js';
import { across } from '../geometry/placement.js';
import type { Ply } from '../joinery/plate.js';
import type { Hardware, Part } from '../model/part.js';
import { standardGravity } from '../standards/gravity.js';
import { tank as tankPractice } from '../standards/tank.js';
import { frontRing } from './accessory-frame/parts.js';
import { type AccessoryFrame, sizeAccessoryFrame } from './accessory-frame/size.js';
import { alsoIn, type MoreSetup, type OnRails, onRails, withMore } from './ahead-setups.js';
import { CORNER_CLIP, extentsOf, ownPins, PIN_PROUD, sizeBack } from './back/size.js';
import { sizeBaffle } from './baffle/size.js';
import { type Balance, balanceOf } from './balance.js';
import type { CameraObjects } from './camera-objects.js';
import { sizeCap } from './cap/size.js';
import { claim, widest } from './claim.js';
import type { Cords } from './cords/size.js';
import { channelEnd } from './dark-slide.js';
import { sizeDropShutter } from './drop-shutter/size.js';
import { constant, type Figure, formula, keyed, measured, PRACTICE, reckoned, told } from './figure.js';
import { gelCard, sizeFilterHolder } from './filter-holder/size.js';
import { type FocusScale, sizeFocusScale } from './focus-scale/size.js';
import { footSlots } from './front-box/parts.js';
import { sizeFrontBox } from './front-box/size.js';
import { closedExtentOf, type GivenFigures, givenFigures, lensOnBoard, widestHolder } from './given-figures.js';
import { clipsLie, effectiveDepth, glazing, rearOfFrame, sizeGroundGlassFrame } from './ground-glass-frame/size.js';
import { sizeHandle } from './handle/size.js';
import type { HeldHolder } from './holder/size.js';
import { sizeHood } from './hood/size.js';
import { type MountedLens, opening } from './lens/size.js';
import { CARD, THUMB } from './lens-board/parts.js';
import {
  type LensBoard,
  type LensBoardGiven,
  type SizedLensBoard,
  type StandingPanel,
  sizeLensBoard,
  widestOpening,
} from './lens-board/size.js';
import { screwPlaces, sizeLensClamp } from './lens-clamp/size.js';
import type { LightAhead } from './light-ahead.js';
import { type LightInBox, leftOpen } from './light-in-box.js';
import { lightThrough } from './light-through.js';
import { sizeMasks, thicknessOfMasks } from './masks/size.js';
import { sizeMiddleBox } from './middle-box/size.js';
import { cutOut, hardwareOf } from './objects.js';
import { type Optics, solveOptics } from './optics.js';
import { lidOf as lidId } from './paper-holder/parts.js';
import { type PaperHolder, sizePaperHolder, thicknessOf } from './paper-holder/size.js';
import { feltFor, sizeRearBox } from './rear-box/size.js';
import { ribPlace, sizeRearStandard } from './rear-standard/size.js';
import { type Sag, sagOf } from './sag.js';
import {
  BATTEN,
  END_STOP,
  FELT_WIDTH,
  railWidth,
  type SettingOut,
  SOLE_BEHIND,
  setOut,
  TAILBOARD_START,
  WELL_PLAY,
} from './setting-out.js';
import { asMade, type PlacedSpacer, type Spacer, sizeSpacer, topLayer } from './spacer/size.js';
import { backPlaces, inSetups, stanceOf } from './stances.js';
import { sizeStops } from './stops/size.js';
import { keeperWidth, sizeTailboard } from './tailboard/size.js';
import { tankIds } from './tank/parts.js';
import { sizeTank, type Tank } from './tank/size.js';
import type { TankFittingsGiven } from './tank-fittings/given.js';
import type { FittedTank } from './tank-fittings/parts.js';
import { notchFor } from './tank-fittings/place.js';
import { sizeTankFittings } from './tank-fittings/size.js';
import type { Wood } from './wood.js';

/** The camera in figures: the rod, and each object sized from it. */
export interface Camera {
  readonly optics: Optics;
  readonly settingOut: SettingOut;
  readonly holders: readonly HolderInCamera[];
  readonly spacers: readonly Spacer[];
  readonly focusScale: FocusScale;
  readonly objects: CameraObjects;
  /** Of all objects, placed: cut out already, for the tailboard is sized by what the others weigh. */
  readonly parts: readonly Part[];
  /** Beside those that its holders come to. */
  readonly moreSetups: readonly MoreSetup[];
  readonly balance: Balance;
  /** Of the tailboard's overhang behind the doubler, open and loaded. */
  readonly sag: Sag;
  readonly hardware: readonly Hardware[];
  readonly figures: CameraFigures;
}

interface HolderInCamera {
  readonly name: string;
  readonly filmDepth: number;
  readonly effectiveDepth: number;
  /** The smaller size that can be put into it. */
  readonly insert?: string;
}

/** What the plan shows beside the rod, as figures that can be explained. */
export interface CameraFigures {
  readonly given: GivenFigures;
  readonly seat: Figure;
  readonly diagonal: Figure;
  readonly tolerance: Figure;
  readonly filmAtInfinity: Figure;
  /** Only where no infinity is asked for. */
  readonly filmAtFarthest?: Figure;
  readonly filmAtNearest: Figure;
  readonly glassDepth: Figure;
  /** T* of each holder. */
  readonly depths: readonly Figure[];
  readonly packing: Figure;
  /** Thickness of each holder's spacer. */
  readonly spacers: readonly Figure[];
}

/** Of a camera that stands, what another lens before it does not change. */
export interface Standing extends Pick<Camera, 'objects' | 'focusScale'> {
  readonly settingOut: Pick<SettingOut, 'rearInside' | 'panelDead'>;
  readonly optics: Pick<Optics, 'registerTolerance'>;
  /** z of the holder seat at the end of the slide. */
  readonly end: number;
}

/** What the first two acts come to: what lies on the bench, and the rod. */
export type SetOutCamera = ReturnType<typeof setOutCamera>;

/**
 * The first two acts of `sizeCamera`: enough to know how near a camera could focus, and a twentieth of the work of all
 * three.
 *
 * @param stands the camera that the lens is put before; its slide is that of `design.focus`
 */
export function setOutCamera(design: Design, stands: Standing | null = null) {
  const { lens, plywood, format, groundGlass, focus, workshop, shims } = design;
  const t = plywood.thickness;
  const wood: Wood = { ply: plyOf(plywood.material, t, workshop.density), fits: workshop.fits };
  const boards = {
    channel: boardPly(design.boards.channel),
    lip: boardPly(design.boards.lip),
    slide: boardPly(design.boards.slide),
  };
  // no spacer is made of what holders and stops are
  const isBoard = (material: string) =>
    material === design.stops?.board.material ||
    (design.holders.some(({ make }) => make !== undefined) &&
      Object.values(design.boards).some((board) => board.material === material));
  const stock = design.stock
    .filter((s) => s.material !== plywood.material && !isBoard(s.material))
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
  const panel = panelOf(design, stands);
  const glassFigure = glassDepthOf(figures, effectiveDepth(groundGlass), groundGlass.frosted);
  const glassDepth = glassFigure.value;
  const fieldTangent = Math.sqrt(format.image.short ** 2 + format.image.long ** 2) / 2 / lens.focalLength;
  const boardOn = (side: 'inside' | 'front', frame: AccessoryFrame | null) => {
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
      frame: frame && measured('w_a', 'side of the accessory frame', frame.outside, 'its rings, sized round the lens'),
      panel,
    };
    return sizeLensBoard(given);
  };
  // the frame is sized round what stands in front of a board, and the board then for the frame
  const frontOn = (side: 'inside' | 'front') => {
    const bare = boardOn(side, null);
    const accessoryFrame = frameOn(design, wood, bare, fieldTangent);
    return { lensBoard: accessoryFrame ? boardOn(side, accessoryFrame) : bare, accessoryFrame };
  };
  const { side } = lens.mount;
  const clamp = clampOn(side);
  const { lensBoard: sized, accessoryFrame } = frontOn(side);
  const { lensBoard: otherSide } = frontOn(side === 'inside' ? 'front' : 'inside');
  const lensBoard: LensBoard = { ...sized, otherSideNeeds: otherSide.needs };
  const optics = solveOptics({ lens, focus, format, seat: lensBoard.seat });
  // layers that were glued for the old lens are left as they are, as long as they do for the new one
  const within = Math.min(optics.registerTolerance, stands?.optics.registerTolerance ?? Number.POSITIVE_INFINITY) / 2;
  const spacers = design.holders.map((h, i) =>
    sizeSpacer({
      id: `SP${i + 1}`,
      holder: h.name,
      filmDepth: h.filmDepth,
      glassDepth,
      ply: t,
      shims,
      stock: stock.map((s) => s.thickness),
      within,
      tolerance: optics.registerTolerance,
      measured: h.spacer?.measured ?? null,
      filmStands: filmStands(h, groundGlass),
      glassStands: effectiveDepth({ ...groundGlass, depth: groundGlass.measured ?? groundGlass.depth }),
      later: h.later ?? false,
    }),
  );
  const depths = figures.holders.map(({ name, filmDepth }, i) =>
    widest(`T*_${i + 1}`, `effective depth of the ${name}`, [
      claim('its film', formula`${filmDepth}`),
      claim('the ground glass: a shallower holder stands on a spacer', formula`${glassFigure}`),
    ]),
  );
  const holders = design.holders.map(
    (h, i): HolderInCamera => ({
      ...inSetups(h),
      filmDepth: h.filmDepth,
      effectiveDepth: depths[i]?.value ?? h.filmDepth,
    }),
  );
  const extents = design.holders.map((h) => ({ holder: h, ...extentsOf(h, format.image.long) }));
  const closedClaim = closedExtentOf(figures, extents);
  const closedExtent = closedClaim.value;

  // 2. The rod: everything that two objects share.
  const rod = setOut({
    boxes: design.boxes,
    ply: figures.ply,
    clearance: figures.clearance,
    railPlay: figures.railPlay,
    focalLength: figures.focalLength,
    flangeDistance: figures.flangeDistance,
    nearest: figures.nearest,
    farthestFocus: figures.farthest,
    pastInfinity: figures.pastInfinity,
    pastNearest: figures.pastNearest,
    asBuilt: stands
      ? {
          rearInside: measured('W_ri', 'rear box, inside', stands.settingOut.rearInside.value, AS_BUILT),
          panelDead: measured(
            'd_f',
            'depth kept free behind the front panel',
            stands.settingOut.panelDead.value,
            AS_BUILT,
          ),
          end: measured('s_end', 'z of the holder seat at the end of the slide', stands.end, AS_BUILT),
        }
      : undefined,
    lens: lensBoard.figures,
    otherSide: otherSide.figures,
    imageLong: figures.imageLong,
    depths: depths.map((depth, i) => ({ of: holders[i]?.name ?? '', depth })),
    glassDepth: glassFigure,
    holderWidth: widestHolder(figures),
    closedExtent: closedClaim,
  });
  return {
    wood,
    stock,
    boards,
    figures,
    glassFigure,
    clamp,
    lensBoard,
    accessoryFrame,
    optics,
    within,
    spacers,
    depths,
    holders,
    extents,
    closedExtent,
    rod,
  };
}

const AS_BUILT = 'the camera as it was built';

/** The panel that is there already, with its opening: as somebody wrote it, or that of the camera that stands. */
function panelOf({ lens }: Design, stands: Standing | null): StandingPanel | null {
  const what = 'side of the opening for the lens board';
  const { opening: written } = lens.mount;
  const built = stands?.objects.lensBoard.opening ?? null;
  const side = stands?.objects.frontBox.outside ?? null;
  const most = side === null ? Number.POSITIVE_INFINITY : widestOpening(side);
  if (written !== undefined) return { asked: keyed('w_o', what, 'lens.mount.opening', written), built, most, side };
  return built === null ? null : { asked: measured('w_o', what, built, AS_BUILT), built, most, side };
}

/** Air between tailboard and thumb screws and a slide that falls ahead of them; common practice, no source. */
const FALLS_FREE = 3;
/** Air between the thumb screws and a hood, which may be wider than the frame; a choice of ours. */
const BEFORE_SCREWS = 2;
/** Depth of a retaining ring that is tightened in front of the board; common practice, no source. */
const RING_IN_FRONT = 4;

/** What all that hangs ahead of the lens hangs on; null where a design asks for nothing of the kind. */
function frameOn(design: Design, wood: Wood, lensBoard: SizedLensBoard, fieldTangent: number): AccessoryFrame | null {
  const { filterHolder, shutter, hood, cap, lens } = design;
  const rails = shutter !== undefined || hood !== undefined || cap === true;
  if (filterHolder === undefined && !rails) return null;
  const { by, side, seat, screws } = lensBoard;
  const board = -2 * wood.ply.thickness;
  const thumbScrews = CARD + wood.ply.thickness + THUMB;
  const inFront = by === 'flange' ? (lens.flange?.thickness ?? 0) : by === 'ring' ? RING_IN_FRONT : board - seat;
  const light: LightAhead = {
    focalLength: lens.focalLength,
    maxAperture: lens.maxAperture,
    halfField: Math.atan(fieldTangent),
    alongLong: design.format.image.long / 2 / lens.focalLength,
    pupil: seat,
  };
  return sizeAccessoryFrame({
    wood,
    board,
    lensFront: Math.min(seat - lens.barrel.front, lensBoard.discInFront > 0 ? board - inFront : board),
    lensDiameter: lens.barrel.frontDiameter,
    discInFront: lensBoard.discInFront,
    heads: by === 'clamp' && side === 'inside' ? screws.places : [],
    light,
    gels: filterHolder ? { card: gelCard(filterHolder.filters), side: filterHolder.side } : null,
    rails,
    fallsAhead: shutter === undefined ? null : Math.min(TAILBOARD_START, board - thumbScrews) - FALLS_FREE,
    wideAhead: hood === undefined ? null : board - thumbScrews - BEFORE_SCREWS,
    cap: cap === true,
  });
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
export function markOut(design: Design, bench: SetOutCamera, stands: Standing | null = null): Camera {
  const { lens, plywood, format, groundGlass, focus, workshop, shims } = design;
  const {
    wood,
    stock,
    boards,
    figures,
    glassFigure,
    clamp,
    lensBoard,
    accessoryFrame,
    optics,
    within,
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
    carries: design.handle === true,
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
    slidesIn: rod.middle ? 'middle box' : 'front box',
  });
  const middleBox = rod.middle
    ? sizeMiddleBox({
        wood,
        inside: rod.middle.inside.value,
        outside: rod.middle.outside.value,
        length: rod.middle.length.value,
        front: rod.panelDead.value,
        clearance: rod.clearance,
        felt: feltFor(rod.clearance),
        feltWidth: FELT_WIDTH,
        overlapRequired: rod.middle.overlapRequired.value,
        ownRun: rod.middle.ownRun.value,
        rearRun: rod.middle.rearRun.value,
        around: { outside: rod.frontOutside.value, length: rod.frontLength.value },
        sole: { top: rod.soleThickness - axisHeight, ribX: ribPlace(soleWidth, t) },
        battenLength: BATTEN,
      })
    : null;
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
    screwed: stands?.focusScale.keeperScrews ?? null,
  });
  const rearStandard = sizeRearStandard({
    wood,
    side: backSide,
    opening: rearInside,
    axisHeight,
    soleThickness: rod.soleThickness,
    soleWidth,
    soleAhead: rod.soleAhead,
    soleBehind: SOLE_BEHIND,
    front: standardFront,
    tailboardThickness: 2 * t,
    floorBottom: -rod.frontOutside.value / 2,
    cornerClip: CORNER_CLIP,
    friction: workshop.friction,
    focus: { ...focus, focalLength: lens.focalLength },
    indexStrokes: focusScale.sole,
    indexMarks: focusScale.soleMarks,
    screws: middleBox?.batten.screws ?? [],
    pushed: middleBox ? 'middle box, with the rear box in it,' : 'rear box',
  });
  const places = backPlaces(design.holders);
  const holderNamed = (name: string): Holder => design.holders.find((h) => h.name === name) as Holder;
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
      ...(h.make === undefined ? {} : { channelEnd: channelEnd(format.image.long) }),
    })),
    raisedJoint: Math.max(0, ...spacers.filter(({ made }) => made.plies.length === 0).map(asMade)),
    places,
    clips: clipsLie(glazing(format.image.long)),
  });
  const lensRear = lensBoard.seat + lens.barrel.grip + lens.barrel.rear;
  const light: LightInBox = {
    rim: { z: lensRear, radius: lens.barrel.rearDiameter / 2 },
    pupil: { z: optics.pupil.z, radius: optics.pupil.diameter / 2 },
    films: holders.map((h, i) => rod.closest.value + underHolder(spacers[i] as Spacer) + h.filmDepth),
    image: { short: format.image.short / 2, long: format.image.long / 2 },
    gate: { z: rod.closest.value, short: back.opening.width / 2, long: back.opening.height / 2 },
    travel: rod.travel + rod.reserve,
  };
  const baffle = design.baffle
    ? (stands?.objects.baffle ??
      sizeBaffle({
        wood,
        inside: rearInside,
        boxFront: rearBox.front,
        lensRear,
        ringFront: back.seat - 2 * t,
        light: (z) => leftOpen(light, z),
      }))
    : null;
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
        stance: stanceOf({
          behindSeat: 0,
          holder: holderNamed(spacer.holder),
          focusing: spacer.under === 'glass',
          onTheRoad: spacer.under === 'glass' && spacer.holder === design.holders[0]?.name,
        }),
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
    within,
    stock,
    pins: allPins,
    stances: spacers.map((s) =>
      stanceOf({
        behindSeat: underGlass(s),
        holder: holderNamed(s.holder),
        focusing: true,
        onTheRoad: s === first,
      }),
    ),
    covered: { behindSeat: underGlass(first), upright: [ON_THE_ROAD], lengthwise: [] },
    restsOn: ['B1', ...placedSpacers.filter((s) => s.spacer.under === 'glass').map((s) => topLayer(s.spacer))],
    // what turned up later found the frame as it stands
    films: spacers.flatMap(({ under, holder }) => {
      const own = holderNamed(holder);
      return under !== 'none' || own.later
        ? []
        : [{ stands: filmStands(own, groundGlass), isMeasured: own.measured !== undefined }];
    }),
  });
  const lying = extents.map(({ holder, ...extent }, i) => {
    const spacer = spacers[i] as Spacer;
    const raised = spacer.under === 'holder';
    const behindSeat = raised ? asMade(spacer) : 0;
    const stance = (withInsert?: boolean) =>
      stanceOf({ behindSeat, holder, focusing: false, ...(withInsert === undefined ? {} : { withInsert }) });
    return {
      holder,
      mark: i + 1,
      stance,
      given: {
        name: holder.name,
        seat: rod.closest.value,
        width: holder.width,
        ...extent,
        pinHoles: holder.locating === 'pins' || raised ? allPins : [],
        stance: stance(),
        on: raised ? topLayer(spacer) : 'B1',
      },
    };
  });
  const heldHolders = lying.flatMap(({ holder: { make, thickness, filmDepth, massKg }, mark, given }): HeldHolder[] =>
    make === undefined ? [{ id: `holder-${mark}`, ...given, thickness, filmDepth, massKg }] : [],
  );
  const printed = { nozzle: workshop.nozzle, passage: tankPractice.passage.value };
  const tanks = lying.flatMap(({ holder: { make, window, filmDepth }, mark, given }): Tank[] =>
    make === undefined || window === null
      ? []
      : [
          sizeTank({
            ...given,
            number: mark,
            wood,
            boards,
            pile: workshop.boards.velvet,
            image: format.image,
            sheet: make.sheet,
            glass: { thickness: window.thickness, refractiveIndex: groundGlass.refractiveIndex },
            filmDepth,
            shims,
            stock,
            within,
            pinProud: PIN_PROUD,
            weighedKg: make.weighedKg,
            notchesFor: (wall) => notchesFor({ ...wall, ...printed }),
          }),
        ],
  );
  const tankFittings = tanks.map((own): FittedTank => {
    const ids = tankIds(own.number);
    const given = { ...own.endWall, ...printed };
    return {
      number: own.number,
      name: own.name,
      given,
      fittings: sizeTankFittings(given),
      place: across(0, 0, own.seat),
      stance: own.stance,
      into: [ids.chamber, ids.endWall],
    };
  });
  const paperHolders = lying.flatMap(({ holder: { make, window, filmDepth }, mark, given, stance }): PaperHolder[] =>
    make === undefined || window !== null
      ? []
      : [
          sizePaperHolder({
            ...given,
            mark,
            wood,
            boards,
            pile: workshop.boards.velvet,
            imageShort: format.image.short,
            imageLong: format.image.long,
            sheet: make.sheet,
            filmDepth,
            within,
            shims,
            stock,
            insert: make.insert && {
              name: make.insert.name,
              image: { width: make.insert.image.short, height: make.insert.image.long },
              sheet: make.insert,
            },
            pinProud: PIN_PROUD,
            plain: stance(false),
            inserted: stance(true),
            weighedKg: make.weighedKg,
          }),
        ],
  );
  const frameRear = rearOfFrame(groundGlassFrame);
  const overProtector = underGlass(first) + frameRear + t;
  const masks = design.masks
    ? sizeMasks({
        wood,
        seat: rod.closest.value,
        opening: back.opening,
        ringOutside: back.ringOutside,
        light: (z) => leftOpen(light, z),
        masks: design.masks.map((mask) => ({
          ...mask,
          optics: {
            filmDepth: holders.find(({ name }) => name === mask.holder)?.effectiveDepth ?? 0,
            farthest: optics.filmAtInfinity + lens.focalLength * focus.farthest - optics.pupil.z,
            nearest: optics.filmAtNearest - optics.pupil.z,
            pupil: optics.pupil.diameter,
            maxAperture: lens.maxAperture,
          },
        })),
        turns: { behindSeat: 0, upright: places.upright, lengthwise: places.lengthwise },
        packed: { behindSeat: overProtector, upright: [ON_THE_ROAD], lengthwise: [] },
        on: 'G3',
        standing: stands?.objects.masks ?? null,
      })
    : null;
  const stops = design.stops
    ? sizeStops({
        ...design.stops,
        wood,
        board: boardPly(design.stops.board),
        focalLength: lens.focalLength,
        face: rod.frontOutside.value / 2,
        boxLength: rod.frontLength.value,
      })
    : null;
  const cords: Cords = {
    seat: rod.closest.value,
    hookY: back.hookY,
    across: Math.min(back.narrowest, groundGlassFrame.width),
    backSide,
    stances: [
      ...spacers.map((s) =>
        stanceOf({ behindSeat: underGlass(s) + frameRear, holder: holderNamed(s.holder), focusing: true }),
      ),
      ...[
        ...heldHolders,
        ...paperHolders.map((h) => ({ ...h, thickness: thicknessOf(h) })),
        ...tanks.map((h) => ({ ...h, thickness: h.depth.back })),
      ].map((h) => ({
        ...h.stance,
        behindSeat: h.stance.behindSeat + h.thickness,
      })),
      {
        behindSeat: overProtector + (masks ? thicknessOfMasks(masks) : 0),
        upright: [ON_THE_ROAD],
        lengthwise: [],
      },
    ],
    over: [
      'G2',
      'G3',
      ...heldHolders.map((h) => h.id),
      ...paperHolders.map(lidId),
      ...tanks.map(({ number }) => tankIds(number).cover),
      ...(masks?.masks ?? []).map(({ id }) => id),
    ],
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
  const rails = onRails(design);
  const above = {
    lensBoard,
    lens: mounted,
    ...(clamp ? { lensClamp: { clamp, seat: lensBoard.seat, massReckoned: isReckoned(design) } } : {}),
    ...(accessoryFrame ? aheadOfLens(design, accessoryFrame, rails, lensBoard.seat) : {}),
    frontBox,
    ...(middleBox ? { middleBox } : {}),
    rearBox,
    ...(baffle ? { baffle } : {}),
    rearStandard,
    back,
    groundGlassFrame,
    spacers: placedSpacers.map((one) => ({ ...one, glassFirst: groundGlassFrame.stands?.isOff ?? false })),
    holders: heldHolders,
    ...(masks ? { masks } : {}),
    ...(stops ? { stops } : {}),
    paperHolders,
    tanks,
    tankFittings,
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
      standing: stands?.objects.tailboard ?? null,
    });
  // a first tailboard to be weighed with the rest; moving its nut and doubler moves the balance by less than a millimetre
  const partsAbove = cutOut(above);
  const sharesAbove = sharesOf(partsAbove);
  // on a tripod nobody has anything packed
  const sharesInUse = masks ? sharesOf(partsAbove.filter((part) => !isPacked(part))) : sharesAbove;
  const weigh = (rest: readonly Part[], shares = sharesInUse) =>
    balanceOf([...shares, ...sharesOf(rest)], design.holders, rod.travel);
  const draftBoard = cutOut({
    tailboard: tailboardOn(reckoned('z_0', 'a first guess', formula`${rod.closest} / 2`), 0),
  });
  const handle = design.handle
    ? (stands?.objects.handle ??
      sizeHandle({
        wood,
        top: rod.frontOutside.value / 2,
        boxLength: rod.frontLength.value,
        // it is carried with all that is packed
        balance: weigh(draftBoard, sharesAbove).closest,
      }))
    : null;
  const handleParts = handle ? cutOut({ handle }) : [];
  const draft = weigh([...draftBoard, ...handleParts]);
  const mean = reckoned(
    'z_m',
    'mean of the two centres of gravity, weighed with a first tailboard',
    formula`(${draft.figures.closest} + ${draft.figures.farthest}) / 2`,
    { source: PRACTICE },
  );
  const tailboard = tailboardOn(mean, draft.loadedKg);
  const tailboardParts = cutOut({ tailboard });
  const balance = weigh([...tailboardParts, ...handleParts]);
  const objects: CameraObjects = { ...above, tailboard, ...(handle ? { handle } : {}) };
  return {
    optics,
    settingOut: rod,
    holders,
    spacers,
    focusScale,
    objects,
    parts: alsoIn([...partsAbove, ...tailboardParts, ...handleParts], rails.more),
    moreSetups: rails.more,
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
      spacers: spacers.map((spacer, i) => spacerThickness(design, spacer, figures, glassFigure, i)),
    },
  };
}

/** The frame and what is pushed into it; the slide of the shutter is in while one exposes, the open one while one focuses. */
function aheadOfLens(design: Design, accessoryFrame: AccessoryFrame, rails: OnRails, seat: number) {
  const { filterHolder, shutter, hood, cap, lens, format, plywood, workshop } = design;
  const { wood, channel, plate, light, outside, peg } = accessoryFrame;
  const restsOn = frontRing(accessoryFrame);
  return {
    accessoryFrame,
    ...(filterHolder && channel
      ? {
          filterHolder: sizeFilterHolder({
            wood,
            gels: filterHolder.filters,
            gel: channel.gel,
            gelRoom: channel.gelRoom,
            channel,
            rings: outside,
            light,
          }),
        }
      : {}),
    ...(shutter && plate
      ? {
          dropShutter: {
            shutter: sizeDropShutter({
              wood,
              light,
              plate,
              halfLong: format.image.long / 2,
              ...shutter,
              longestPart: Math.max(plywood.sheet.width, plywood.sheet.height) - 2 * workshop.margin - 1,
            }),
            restsOn,
            ...rails.shutter,
          },
        }
      : {}),
    ...(hood && plate
      ? {
          hood: {
            hood: sizeHood({
              wood,
              light,
              plate,
              frame: outside,
              lens: { front: seat - lens.barrel.front, diameter: lens.barrel.frontDiameter },
              depth: hood.depth,
            }),
            restsOn,
            when: rails.hood,
          },
        }
      : {}),
    ...(cap && plate && peg
      ? {
          cap: {
            cap: sizeCap({ wood, plate, peg }),
            restsOn,
            when: rails.cap,
          },
        }
      : {}),
  };
}

const lightFigures = (given: GivenFigures, optics: Optics, seat: Figure) => {
  const { imageShort, imageLong, flangeDistance: V, focalLength: f, nearest: m, farthest: far, maxAperture: N } = given;
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
    ...(far.value > 0
      ? { filmAtFarthest: reckoned('z_far', 'z of the film at the farthest', formula`${seat} + ${V} + ${f} ${far}`) }
      : {}),
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

/** The same of the glass as it stands; as drawn where nobody measured it. */
export function glassStandsOf({ groundGlass }: Design, given: GivenFigures, drawn: Figure): Figure {
  const { measured: onFrame, frosted } = groundGlass;
  if (onFrame === undefined) return drawn;
  const { thickness, index } = given.glass;
  const physical = keyed('T_m', 'frosted face as measured on the frame', 'groundGlass.measured', onFrame);
  return frosted === 'lens'
    ? physical
    : reckoned(
        'T_g',
        'effective depth of the ground glass as it stands',
        formula`${physical} - ${thickness} (1 - 1 / ${index})`,
      );
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
  design: Design,
  { holder, under, thickness, glued }: Spacer,
  given: GivenFigures,
  glassDrawn: Figure,
  i: number,
): Figure {
  const drawn = given.holders[i]?.filmDepth ?? glassDrawn;
  // one that was measured is drawn as it was glued
  const own = glued === null ? (given.holders[i]?.filmStands ?? drawn) : drawn;
  const glassDepth = glued === null ? glassStandsOf(design, given, glassDrawn) : glassDrawn;
  const [symbol, what] = [`S_${i + 1}`, `thickness of the spacer of the ${holder}`];
  return under === 'none' && own.value !== glassDepth.value
    ? measured(
        symbol,
        what,
        thickness,
        'none is made: the film lies as deep as the glass is drawn, to less than a hundredth',
      )
    : told(symbol, what, thickness, () => formula`|${own} - ${glassDepth}|`);
}

/** The parts put together: stations, set-ups, gate and the lens's front. */
export function assemble({ settingOut: rod, objects, parts, holders, moreSetups }: Camera): Build {
  return {
    parts,
    placed: placedParts(parts),
    stations: [
      { name: 'closest', rear: 0 },
      { name: 'middle', rear: rod.travel / 2 },
      { name: 'farthest', rear: rod.travel },
    ],
    setups: withMore(setupsOf(holders), moreSetups),
    gate: { z: rod.closest.value, ...objects.back.opening },
    opening: opening(objects.lens),
  };
}

/** A mass that nobody gave stands among the defaulted, alone or with its whole barrel. */
const isReckoned = ({ defaulted }: Design): boolean =>
  ['lens.barrel', 'lens.barrel.mass'].some((path) => defaulted.includes(path));

/** Kept in the camera when it is packed, and taken out for use. */
const isPacked = (part: Part): boolean =>
  part.kind === 'flat' && part.kept === true && part.placements.every(({ group }) => group === 'loose');

const plyOf = (material: string, thickness: number, density: number): Ply => ({
  material,
  thickness,
  density,
});

/** Fibre sheet and hard card, kg/m³; common practice, no source. */
const BOARD_DENSITY = 1100;

const boardPly = ({ material, thickness }: Board): Ply => plyOf(material, thickness, BOARD_DENSITY);

/** Where the end wall of a tank is notched for its spout and vent. */
function notchesFor(given: TankFittingsGiven): readonly Box[] {
  const { spout, vent } = sizeTankFittings(given);
  return [vent, spout].map((insert) => notchFor(given, insert));
}

/** A loose joint opens by so much, and light slants through it. */
const SLIT = 0.6;

const underGlass = (spacer: Spacer): number => (spacer.under === 'glass' ? asMade(spacer) : 0);
const underHolder = (spacer: Spacer): number => (spacer.under === 'holder' ? asMade(spacer) : 0);

/** The nearest focus of a rod that is set out, at the end of its reserve, as a magnification. */
export const endOfSlide = (
  { focus, lens }: Design,
  { slack, reachable, reserve }: Pick<SettingOut, 'slack' | 'reachable' | 'reserve'>,
): number => (slack < 0 ? reachable : focus.nearest + reserve / lens.focalLength);
