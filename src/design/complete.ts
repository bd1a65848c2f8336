import { emulsionDepth, filmSlot, publishedHolderFor, sheetFilm } from '../standards/holders.js';
import { madeHolder } from '../standards/made-holder.js';
import { fNumber, mm } from '../units/print.js';
import { completeFormat } from './complete-format.js';
import { completeMask } from './complete-mask.js';
import { completeStops } from './complete-stops.js';
import { magnificationAt } from './consistency.js';
import type {
  Barrel,
  Board,
  Design,
  FocusAsked,
  Format,
  Holder,
  Lens,
  SheetSize,
  ShutterAsked,
  Workshop,
} from './design.js';
import { madeSizes } from './made-holder.js';
import { materialName } from './material-name.js';
import { slugOf } from './names.js';
import type { Written, WrittenHolder } from './schema.js';
import { completeStock, type RemnantFiles } from './stock.js';
import { tankSizes } from './tank-sizes.js';

/**
 * Glass of about 2500 kg/m³ and brass of 8500, with air between them. A choice of ours: the two lenses of the demo designs
 * come out at 3500 and 3700.
 */
const LENS_DENSITY = 3600;

/** The dark slide of a home-made holder is 1 mm thick and runs ahead of the film. */
const SLIDE = 1;

/** Cubic millimetres to cubic metres. */
const CUBIC_METRE = 1e-9;

/** Fills in the defaults that depend on other keys. The checks of consistency have passed. */
export function completeDesign(written: Written, defaulted: readonly string[], files: RemnantFiles): Design {
  const { name, focus, plywood, laser, groundGlass, shims, workshop, book, sitting = {} } = written;
  const { filterHolder, shutter } = written;
  const thickness = Math.max(...plywood.thickness);
  const sheet = sizeOf(plywood.sheet);
  const lens = completeLens(written.lens);
  const { builtFor } = written;
  const format = completeFormat(written.format);
  const given: HolderGiven = { format, plywood: thickness, workshop, refractiveIndex: groundGlass.refractiveIndex };
  const holders = written.holders?.map((holder) => completeHolder(holder, given)) ?? publishedHolder(given);
  return {
    name,
    slug: slugOf(name),
    format,
    lens,
    focus: completeFocus(focus, lens),
    ...(builtFor
      ? { builtFor: { lens: completeLens(builtFor.lens), focus: completeFocus(builtFor.focus, builtFor.lens) } }
      : {}),
    plywood: { thickness, readings: plywood.thickness, sheet, material: materialName(plywood.material, thickness) },
    stock: completeStock(written, sheet, files),
    boards: {
      channel: boardOf(workshop.boards.channel),
      lip: boardOf(workshop.boards.lip),
      slide: boardOf(workshop.boards.slide),
    },
    laser,
    groundGlass: { ...groundGlass, depth: groundGlass.depth ?? holders[0]?.filmDepth ?? 0 },
    holders,
    shims,
    ...(written.boxes === 3 ? { boxes: 3 } : {}),
    ...(written.baffle ? { baffle: true } : {}),
    ...(written.handle ? { handle: true } : {}),
    ...(filterHolder ? { filterHolder: { filters: filterHolder.filters, side: filterHolder.side ?? null } } : {}),
    ...(shutter ? { shutter: completeShutter(shutter) } : {}),
    ...(written.hood ? { hood: { depth: written.hood.depth ?? null } } : {}),
    ...(written.cap ? { cap: true } : {}),
    ...(written.stops ? { stops: completeStops(written.stops, lens) } : {}),
    ...(written.masks?.length
      ? { masks: written.masks.map((mask) => completeMask(mask, holders[0]?.name ?? '')) }
      : {}),
    workshop,
    book,
    sitting,
    defaulted,
  };
}

const completeFocus = (focus: Written['focus'], { focalLength }: Pick<Lens, 'focalLength'>): FocusAsked => ({
  nearest: magnificationAt(focus.nearest, focalLength),
  farthest: magnificationAt(focus.farthest, focalLength),
  pastInfinity: focus.pastInfinity,
  pastNearest: focus.pastNearest ?? null,
});

const boardOf = (thickness: number): Board => ({ material: materialName('board', thickness), thickness });

const sizeOf = ([width, height]: readonly [number, number]): SheetSize => ({ width, height });

/** What a drop shutter is made for where nothing is said: as long as a sitter holds still. Common practice, no source. */
const USUAL_TIME = 1 / 30;

const completeShutter = ({ time, slot, elastic }: NonNullable<Written['shutter']>): ShutterAsked => ({
  by: slot === undefined ? { time: time ?? USUAL_TIME } : { slot },
  elastic: elastic ? { pullKg: elastic.pull, over: elastic.over ?? null } : null,
});

function completeLens(lens: Written['lens']): Lens {
  const { focalLength, flangeDistance, uncertainty, maxAperture, coverage, pupilMagnification, flange, mount, barrel } =
    lens;
  return {
    name: lens.name ?? `${mm(focalLength)} ${fNumber(maxAperture)} lens`,
    focalLength,
    flangeDistance,
    uncertainty: uncertainty ? { ...uncertainty, readings: uncertainty.readings ?? null } : null,
    maxAperture,
    coverage: coverage ?? null,
    pupilMagnification,
    barrel: completeBarrel(barrel ?? standIn(focalLength / maxAperture)),
    flange: flange ?? null,
    mount: { ...mount, screws: mount.screws ?? (mount.by === 'flange' ? (flange?.screws ?? 4) : 4) },
  };
}

/** As long as it is wide, half of it ahead of the seat: a lens of which only the widest stop is known. */
const standIn = (across: number) => ({
  diameter: across,
  grip: across / 4,
  front: across / 2,
  rear: across / 4,
  frontDiameter: across,
  rearDiameter: across,
});

type WrittenBarrel = NonNullable<Written['lens']['barrel']>;

function completeBarrel({ mass, ...sizes }: WrittenBarrel): Barrel {
  const { diameter, grip, front, rear, frontDiameter, rearDiameter } = sizes;
  const cylinder = (across: number, length: number) => (Math.PI / 4) * across * across * length;
  const volume = cylinder(frontDiameter, front) + cylinder(diameter, grip) + cylinder(rearDiameter, rear);
  return { ...sizes, massKg: mass ?? volume * CUBIC_METRE * LENS_DENSITY };
}

/** A depth that agrees with the published one to the hundredth was looked up and not measured. */
const LOOKED_UP = 0.02;

/** The tolerance of a bought holder whose depth to the back of the slot is that of its standard; null where it was measured. */
function publishedTolerance(format: string, slotDepth: number): number | null {
  const slot = publishedHolderFor(format)?.slotDepth.value;
  if (slot === undefined) return null;
  return Math.abs(slotDepth - slot.value) <= LOOKED_UP ? slot.tolerance : null;
}

const floatOf = (sheetThickness: number): number => Math.max(0, filmSlot.value - sheetThickness);

interface HolderGiven {
  readonly format: Format;
  /** Its thickness. */
  readonly plywood: number;
  readonly workshop: Workshop;
  /** Of glass that the picture passes. */
  readonly refractiveIndex: number;
}

function completeHolder(written: WrittenHolder, given: HolderGiven): Holder {
  if (written.make === true) return completeMade(written, given);
  const { format, plywood, workshop } = given;
  const { name, width, length, thickness, closedEnd, slideDepth, locating, rib, window, mass } = written;
  const { sheetThickness, tolerance, filmDepth: depth } = written;
  if (width === undefined || length === undefined || thickness === undefined || depth === undefined)
    throw new Error(`the checks let the holder ${name} pass without its sizes`);
  const slot = written.depthTo === 'slot' && sheetThickness !== undefined;
  const filmDepth = slot ? emulsionDepth(depth, sheetThickness) : depth;
  return {
    name,
    filmDepth,
    tolerance: tolerance ?? publishedTolerance(format.name, filmDepth + (slot ? sheetThickness : sheetFilm.value)),
    filmFloat: slot ? floatOf(sheetThickness) : 0,
    width,
    length,
    thickness,
    closedEnd: closedEnd ?? null,
    slideDepth: slideDepth ?? Math.max(0, Math.min(plywood, filmDepth - SLIDE)),
    locating: locating ?? (rib === undefined ? 'pins' : 'rib'),
    rib: rib ?? null,
    window: window ?? null,
    massKg: mass ?? width * length * thickness * CUBIC_METRE * workshop.density,
    ...(written.spacer ? { spacer: written.spacer } : {}),
  };
}

/** A holder that is cut from the sheet: what nobody wrote comes from its construction. */
function completeMade(written: WrittenHolder, given: HolderGiven): Holder {
  const { format, plywood, workshop, refractiveIndex } = given;
  const { name, tolerance, sheetThickness, insert, window, mass, measured } = written;
  const asked = {
    ...written,
    ply: plywood,
    boards: workshop.boards,
    sheetWidth: format.width,
    imageLong: format.image.long,
  };
  const { filmDepth, slideDepth, width, length, thickness, closedEnd } =
    window === undefined ? madeSizes(asked) : tankSizes({ ...asked, window, refractiveIndex });
  return {
    name,
    filmDepth,
    slideDepth,
    width,
    length,
    thickness,
    closedEnd,
    tolerance: tolerance ?? null,
    filmFloat: 0,
    locating: 'pins',
    rib: null,
    window: window ?? null,
    massKg: mass ?? width * length * thickness * CUBIC_METRE * workshop.density,
    ...(measured === undefined ? {} : { measured }),
    ...(written.spacer ? { spacer: written.spacer } : {}),
    make: {
      sheet: {
        width: format.width,
        height: format.height,
        thickness: sheetThickness ?? madeHolder.sheetThickness.value,
      },
      insert: insert === undefined ? null : completeFormat(insert),
      weighedKg: mass ?? null,
    },
  };
}

/** The film holder that the table of formats has, loaded with sheet film. */
function publishedHolder({ format: { name: format }, workshop: { density } }: HolderGiven): readonly Holder[] {
  const published = publishedHolderFor(format);
  if (published === undefined) throw new Error(`no holder is published for ${format}, and the checks let it pass`);
  const [width, length, thickness] = published.outside.value;
  return [
    {
      name: `${format} film holder`,
      filmDepth: emulsionDepth(published.slotDepth.value.value, sheetFilm.value),
      tolerance: published.slotDepth.value.tolerance,
      filmFloat: floatOf(sheetFilm.value),
      width,
      length,
      thickness,
      closedEnd: null,
      slideDepth: published.slideDepth.value,
      locating: 'well',
      rib: null,
      window: null,
      massKg: width * length * thickness * CUBIC_METRE * density,
    },
  ];
}
