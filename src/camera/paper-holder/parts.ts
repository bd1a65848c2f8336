import { matrixOf } from '../../geometry/facing.js';
import { type Box, polygon } from '../../geometry/path.js';
import { across, compose, frame, shift } from '../../geometry/placement.js';
import { box, boxAt, circle, clipped, rectangle, slotAlongY } from '../../geometry/shapes.js';
import { boughtPlate, boughtRod, joined, type PlateGiven, plate } from '../../joinery/plate.js';
import type { Hardware, Part, Placement } from '../../model/part.js';
import { plainNumber } from '../../units/print.js';
import { type DarkSlide, darkSlideParts, velvetHardware } from '../dark-slide.js';
import { inStances, type Stance } from '../loose.js';
import { asWeighed } from '../weighed.js';
import { LID_BACK, PAD_PLAY, type PaperHolder } from './size.js';

/** Legs of the blocks in the corners of the lid, and air between a block and the lid. */
export const BLOCK = 15;
const BLOCK_AIR = 0.4;
/** The screw of a turn-button stands as far from all three sides of its block. */
const PIVOT = BLOCK * (1 - Math.SQRT1_2);
/** A wood screw of 2.5: what stands for it in the wood, and the hole that a button turns on. */
const SCREW = { pilot: 2, hole: 2.7 };
/** From the pivot to the end of a button's arm. */
const ARM = 20;
/** The felt is smaller than its boards, each side. */
const FELT_BACK = 2;
/** An insert drops into lip and pocket with so much air, each side. */
const INSERT_AIR = 0.3;
const DENSITY = { felt: 200e-9, sheet: 1000e-9, shim: 1400e-9 };

/** Face, channel, lip and pocket glued up; the dark slide in its velvet; the lid with its pad, and what turns over it. */
export function paperHolderParts(own: PaperHolder): readonly Part[] {
  const parts = [...shell(own), ...lidParts(own), ...loaded(own), ...insertParts(own)];
  return asWeighed(parts, own.weighedKg, own.plain.upright[0]);
}

/** Depths behind the seat at which the layers begin. */
export function depthsOf({ front, boards, filmDepth, wood, lid }: PaperHolder) {
  const { channel, lip, slide } = boards;
  const channelFrom = filmDepth - lip.thickness - channel.thickness;
  // the velvet on the face lifts it to the lip
  const slideFrom = channelFrom + channel.thickness - slide.thickness;
  return {
    packing: front.face.thickness,
    channel: channelFrom,
    slide: slideFrom,
    slideRear: slideFrom + slide.thickness,
    lip: filmDepth - lip.thickness,
    film: filmDepth,
    lid: filmDepth + wood.ply.thickness,
    pad: filmDepth + lid.felt,
    rear: filmDepth + 2 * wood.ply.thickness,
  };
}

/** Ids of one holder's parts. */
const ids = ({ mark }: PaperHolder) => ({
  face: `HF${mark}`,
  packing: `HG${mark}`,
  channel: `HC${mark}`,
  lip: `HL${mark}`,
  pocket: `HP${mark}`,
  block: `HB${mark}`,
  slide: `HS${mark}`,
  label: `HU${mark}`,
  lid: `HD${mark}`,
  pad: `HQ${mark}`,
  button: `HT${mark}`,
  mask: `HM${mark}`,
  frame: `HR${mark}`,
});

export const lidOf = (own: PaperHolder): string => ids(own).lid;

const outer = ({ width, closedExtent, openExtent }: PaperHolder): Box =>
  box(-width / 2, -closedExtent, width / 2, openExtent);

const group = ({ name }: PaperHolder) => ({ holder: name });

/** So far behind the seat, as drawn or shifted along the slide's way. */
const at = (own: PaperHolder, depth: number, stance: Stance = own.stance, y = 0): readonly Placement[] =>
  inStances(group(own), across(0, y, own.seat + depth), [stance]);

interface Layer extends Omit<PlateGiven, 'facing' | 'low' | 'group' | 'grain'> {
  readonly places: readonly Placement[];
}

/** A layer whose engraved face looks to the rear. */
const layer = (own: PaperHolder, given: Layer): Part =>
  plate({ ...given, facing: 'rear', low: 0, group: group(own), grain: 'any' });

const windowOf = ({ width, height }: { readonly width: number; readonly height: number }) =>
  rectangle(boxAt(0, 0, width, height));

/** Pins that stand so far out reach into what lies behind the face as well where that is thinner. */
const pinHolesIn = ({ pinHoles, pinProud }: PaperHolder, depth: number) =>
  depth >= pinProud ? [] : pinHoles.map(({ x, y, diameter }) => circle(x, y, diameter + 0.2));

function shell(own: PaperHolder): readonly Part[] {
  const { name, front, image, pocket, wood } = own;
  const id = ids(own);
  const depth = depthsOf(own);
  const outline = rectangle(outer(own));
  const packing = packingOf(own);
  return [
    layer(own, {
      id: id.face,
      name: `${name}, face`,
      role: 'holder',
      ply: front.face,
      outline,
      holes: [windowOf(image), ...pinHolesIn(own, 0)],
      places: at(own, 0),
      joins: [...joined('rest', own.on), ...joined('glue', packing[0]?.id ?? id.channel)],
    }),
    ...packing,
    ...darkSlideParts(slideOf(own)),
    layer(own, {
      id: id.pocket,
      name: `${name}, pocket`,
      ply: wood.ply,
      outline,
      holes: [windowOf(pocket), ...pivots(own).map(({ x, y }) => circle(x, y, SCREW.pilot))],
      places: at(own, depth.film),
    }),
  ];
}

/** Between face and channel where a greater depth is asked for: plies that are glued and measured, then shims. */
function packingOf(own: PaperHolder): readonly Part[] {
  const { name, front, wood, image, mark, width, closedExtent, openExtent } = own;
  const id = ids(own);
  const outline = rectangle(outer(own));
  const shims = [...new Set(front.packing.shims)];
  const starts = [...front.packing.plies, ...front.packing.shims].map(
    (_, i, all) => front.face.thickness + all.slice(0, i).reduce((sum, thickness) => sum + thickness, 0),
  );
  const { plies } = front.packing;
  const shimId = (thickness: number) => `shim-${mark}-${Math.round(thickness * 1000)}`;
  const kinds = [...(plies.length > 0 ? [id.packing] : []), ...shims.map(shimId)];
  const after = (one: string) => kinds[kinds.indexOf(one) + 1] ?? id.channel;
  return [
    ...(plies.length === 0
      ? []
      : [
          layer(own, {
            id: id.packing,
            name: `${name}, packing behind the face`,
            ply: wood.ply,
            outline,
            holes: [windowOf(image), ...pinHolesIn(own, front.face.thickness)],
            places: plies.flatMap((_, i) => at(own, starts[i] as number)),
            joins: [...joined('glue', after(id.packing)), ...(plies.length > 1 ? joined('glue', id.packing) : [])],
          }),
        ]),
    ...shims.map((thickness) => {
      const places = front.packing.shims.flatMap((one, i) =>
        one === thickness ? at(own, starts[plies.length + i] as number) : [],
      );
      const several = front.packing.shims.filter((one) => one === thickness).length > 1;
      return boughtPlate({
        id: shimId(thickness),
        name: `shim ${plainNumber(thickness)} mm in the ${name}`,
        thickness,
        outline,
        holes: [windowOf(image)],
        placements: places,
        joins: [...joined('glue', after(shimId(thickness))), ...(several ? joined('glue', shimId(thickness)) : [])],
        massKg: (width * (closedExtent + openExtent) - image.width * image.height) * thickness * DENSITY.shim,
      });
    }),
  ];
}

/** Where the turn-buttons turn, beside the corners of the pocket. */
const pivots = (own: PaperHolder) => corners(own).map(({ sx, sy, x, y }) => ({ x: x - sx * PIVOT, y: y - sy * PIVOT }));

function corners(own: PaperHolder) {
  const { left, right, bottom, top } = outer(own);
  return ([-1, 1] as const).flatMap((sx) =>
    ([-1, 1] as const).map((sy) => ({ sx, sy, x: sx > 0 ? right : left, y: sy > 0 ? top : bottom })),
  );
}

/** What is drawn for the upper right corner, from that corner; in the others it is turned over or half round. */
const inCorners = (own: PaperHolder, depth: number, thickness: number): readonly Placement[] =>
  corners(own).flatMap(({ sx, sy, x, y }) => {
    const turnedOver = sx * sy < 0;
    const turn = frame([sx, 0, 0], [0, sy, 0], [0, 0, sx * sy], [0, 0, turnedOver ? thickness : 0]);
    return inStances(group(own), compose(shift(x, y, own.seat + depth), turn), [own.stance]);
  });

/** The slide between the face and the lip. */
function slideOf(own: PaperHolder): DarkSlide {
  const { name, front, boards, image, slide, seat, width, closedExtent, openExtent, stance, pile, mark } = own;
  const id = ids(own);
  const { channel } = depthsOf(own);
  return {
    name,
    ids: {
      channel: id.channel,
      behind: id.lip,
      slide: id.slide,
      label: id.label,
      velvet: { ahead: `velvet-face-${mark}`, beside: `velvet-side-${mark}`, behind: `velvet-lip-${mark}` },
    },
    between: {
      ahead: front.packing.plies.length + front.packing.shims.length > 0 ? (packingOf(own).at(-1)?.id ?? '') : id.face,
      behind: id.pocket,
    },
    words: { behind: 'lip', velvet: 'on its pocket' },
    boards,
    seat,
    depth: channel,
    width,
    closedExtent,
    openExtent,
    image,
    slide,
    pinHoles: channel >= own.pinProud ? [] : own.pinHoles,
    stance,
    pile,
  };
}

function lidParts(own: PaperHolder): readonly Part[] {
  const { name, wood, boards, pocket, lid, mark } = own;
  const id = ids(own);
  const t = wood.ply.thickness;
  const depth = depthsOf(own);
  const { left, right, bottom, top } = outer(own);
  const pad = { width: pocket.width - 2 * PAD_PLAY, height: pocket.height - 2 * PAD_PLAY };
  return [
    layer(own, {
      id: id.block,
      name: `${name}, block in a corner of the lid`,
      ply: wood.ply,
      outline: polygon([
        [0, 0],
        [-BLOCK, 0],
        [0, -BLOCK],
      ]),
      holes: [circle(-PIVOT, -PIVOT, SCREW.pilot)],
      places: inCorners(own, depth.lid, t),
      joins: joined('glue', id.pocket),
    }),
    plate({
      id: id.lid,
      name: `${name}, lid`,
      ply: wood.ply,
      facing: 'front',
      low: 0,
      group: group(own),
      grain: 'any',
      outline: clipped(
        box(left + LID_BACK, bottom + LID_BACK, right - LID_BACK, top - LID_BACK),
        BLOCK + BLOCK_AIR * Math.SQRT2 - 2 * LID_BACK,
      ),
      places: inStances(group(own), matrixOf('front', own.seat + depth.lid, t), [own.stance]),
      joins: joined('rest', id.pocket),
    }),
    ...(lid.boards === 0
      ? []
      : [
          layer(own, {
            id: id.pad,
            name: `${name}, pad of the lid`,
            ply: boards.channel,
            outline: windowOf(pad),
            places: Array.from({ length: lid.boards }, (_, i) =>
              at(own, depth.lid - (i + 1) * boards.channel.thickness),
            ).flat(),
            joins: [...joined('glue', id.lid), ...(lid.boards > 1 ? joined('glue', id.pad) : [])],
          }),
        ]),
    ...pressedFelts(own, pad),
    layer(own, {
      id: id.button,
      name: `${name}, turn-button of the lid`,
      ply: wood.ply,
      // flush with the holder's end and side
      outline: slotAlongY(-PIVOT, -(ARM + PIVOT) / 2, 2 * PIVOT, ARM + PIVOT),
      holes: [circle(-PIVOT, -PIVOT, SCREW.hole)],
      places: inCorners(own, depth.rear, t),
      joins: joined('rest', id.block, id.lid),
    }),
    boughtRod({
      id: `lid-screw-${mark}`,
      name: `wood screw 2.5 mm in a turn-button of the ${name}`,
      diameter: SCREW.pilot,
      length: lid.screw,
      head: 'end',
      placements: pivots(own).flatMap(({ x, y }) =>
        inStances(group(own), across(x, y, own.seat + depth.rear + t - lid.screw), [own.stance]),
      ),
      joins: joined('screw', id.button, id.block, id.pocket),
      massKg: 0.0005,
    }),
  ];
}

/** The felt as the sheet presses it, and as an insert does. */
function pressedFelts(own: PaperHolder, pad: { readonly width: number; readonly height: number }): readonly Part[] {
  const { name, boards, lid, mark, sheet, insert } = own;
  const id = ids(own);
  const size = { width: pad.width - 2 * FELT_BACK, height: pad.height - 2 * FELT_BACK };
  const felt = (given: {
    readonly id: string;
    readonly name: string;
    readonly under: number;
    readonly stance: Stance;
  }) =>
    boughtPlate({
      id: given.id,
      name: given.name,
      thickness: lid.felt - given.under,
      outline: windowOf(size),
      placements: at(own, own.filmDepth + given.under, given.stance),
      joins: joined('glue', lid.boards > 0 ? id.pad : id.lid),
      massKg: size.width * size.height * lid.feltFree * DENSITY.felt,
    });
  return [
    felt({ id: `lid-felt-${mark}`, name: `felt in the lid of the ${name}`, under: sheet.thickness, stance: own.plain }),
    ...(insert === null
      ? []
      : [
          felt({
            id: `lid-felt-${mark}-pressed`,
            name: `felt in the lid of the ${name}, on its insert`,
            under: boards.lip.thickness,
            stance: own.inserted,
          }),
        ]),
  ];
}

/** What is loaded. */
const loaded = (own: PaperHolder): readonly Part[] => [
  sheetPart(own, {
    id: `sheet-${own.mark}`,
    name: `sheet in the ${own.name}`,
    size: own.sheet,
    stance: own.plain,
    on: ids(own).lip,
  }),
];

const sheetPart = (
  own: PaperHolder,
  given: {
    readonly id: string;
    readonly name: string;
    readonly size: { readonly width: number; readonly height: number };
    readonly stance: Stance;
    readonly on: string;
  },
): Part =>
  boughtPlate({
    id: given.id,
    name: given.name,
    role: 'sheet',
    thickness: own.sheet.thickness,
    outline: windowOf(given.size),
    placements: at(own, own.filmDepth, given.stance),
    joins: joined('rest', given.on),
    massKg: given.size.width * given.size.height * own.sheet.thickness * DENSITY.sheet,
  });

/** A smaller mask in the plane of the lip, and round the smaller sheet a frame that drops into the pocket. */
function insertParts(own: PaperHolder): readonly Part[] {
  const { insert, name, boards, image, pocket, mark } = own;
  if (insert === null) return [];
  const id = ids(own);
  const less = ({ width, height }: { readonly width: number; readonly height: number }) =>
    windowOf({ width: width - 2 * INSERT_AIR, height: height - 2 * INSERT_AIR });
  const depth = depthsOf(own);
  return [
    layer(own, {
      id: id.mask,
      name: `${name}, mask of its insert for ${insert.name}`,
      ply: boards.lip,
      outline: less(image),
      holes: [windowOf(insert.image)],
      places: at(own, depth.lip, own.inserted),
      joins: joined('glue', id.frame),
    }),
    layer(own, {
      id: id.frame,
      name: `${name}, frame of its insert for ${insert.name}`,
      ply: boards.lip,
      outline: less(pocket),
      holes: [windowOf(insert.pocket)],
      places: at(own, depth.film, own.inserted),
      joins: joined('rest', id.lip),
    }),
    sheetPart(own, {
      id: `insert-sheet-${mark}`,
      name: `sheet of ${insert.name} in the ${name}`,
      size: insert.sheet,
      stance: own.inserted,
      on: id.mask,
    }),
  ];
}

export const paperHolderHardware = (own: PaperHolder): readonly Hardware[] => {
  const { name, lid, pocket, front } = own;
  const pad = 2 * (PAD_PLAY + FELT_BACK);
  return [
    velvetHardware(own),
    {
      name: 'black felt or soft foam',
      size: `${lid.feltFree} thick, ${(pocket.width - pad).toFixed(0)} × ${(pocket.height - pad).toFixed(0)}`,
      count: 1,
      for: `pad of the lid, ${name}`,
    },
    { name: 'wood screw', size: `2.5 × ${lid.screw}, round head`, count: 4, for: `turn-buttons of the lid, ${name}` },
    ...[...new Set(front.packing.shims)].map((thickness) => ({
      name: 'shim',
      size: `${thickness} thick, ${own.width.toFixed(0)} × ${(own.closedExtent + own.openExtent).toFixed(0)} frame`,
      count: front.packing.shims.filter((one) => one === thickness).length,
      for: `packing of the ${name}`,
    })),
  ];
};
