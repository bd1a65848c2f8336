import { type Facing, matrixOf } from '../../geometry/facing.js';
import { area, type ClosedPath, polygon, type Vertex } from '../../geometry/path.js';
import { across, compose, frame, type Matrix4, shift } from '../../geometry/placement.js';
import { box, boxAt, circle, hexagon, rectangle, type Step, stepped } from '../../geometry/shapes.js';
import { boughtPlate, boughtRod, joined, type Ply, plate } from '../../joinery/plate.js';
import type { Hardware, Join, Part, Placement } from '../../model/part.js';
import { plainNumber } from '../../units/print.js';
import { type DarkSlide, darkSlideParts, velvetHardware } from '../dark-slide.js';
import { inStances } from '../loose.js';
import { asWeighed } from '../weighed.js';
import { grown, type Opening, type Screw, type Tank } from './size.js';

const GLASS_DENSITY = 2500e-9;
/** Of foam rubber with closed cells, and of paper, kg/mm³. */
const FOAM_DENSITY = 150e-9;
const PAPER_DENSITY = 1000e-9;
const SHIM_DENSITY = 1400e-9;
/** Of an M4 screw, for each mm of it, and of its nut; kg. */
const SCREW_KG = 0.00008;
const NUT_KG = 0.0008;
/** A fitted screw is drawn a hair narrower than its hole. */
const HAIR = 0.02;
/** The cord lies so far from the edge of the pocket. */
const CORD_FROM_EDGE = 1;

/** Ids of the parts of one tank: flat ones are short, for they are engraved. */
export const tankIds = (n: number) =>
  ({
    face: `KF${n}`,
    channel: `KV${n}`,
    ring: `KR${n}`,
    slide: `KY${n}`,
    label: `KU${n}`,
    velvet: { ahead: `tank-velvet-face-${n}`, beside: `tank-velvet-side-${n}`, behind: `tank-velvet-rear-${n}` },
    window: `KW${n}`,
    chamber: `KC${n}`,
    otherPly: `KX${n}`,
    endWall: `KE${n}`,
    otherEndWall: `KJ${n}`,
    packing: `KA${n}`,
    thinPacking: `KB${n}`,
    lip: `KL${n}`,
    nutPly: `KN${n}`,
    rim: `KP${n}`,
    stop: `KS${n}`,
    thinStop: `KT${n}`,
    cover: `KD${n}`,
    plug: `KG${n}`,
    glass: `tank-glass-${n}`,
    pad: `tank-pad-${n}`,
    cord: `tank-cord-${n}`,
    screw: `tank-screw-${n}`,
    nut: `tank-nut-${n}`,
    sheet: `tank-sheet-${n}`,
  }) as const;

/** One layer of the tank, or several that are cut alike and lie one on the other. */
interface Layer {
  readonly id: string;
  readonly what: string;
  /** The sheet that it is cut from; null: a shim, cut with a knife. */
  readonly ply: Ply | null;
  readonly thickness: number;
  readonly outline: ClosedPath;
  readonly holes: readonly ClosedPath[];
  /** Depths at which each begins. */
  readonly at: readonly number[];
  /** Where the face looks that is engraved: to the rear where left out. */
  readonly facing?: Facing;
}

export function tankParts(own: Tank): readonly Part[] {
  const { face, body } = bodyOf(own);
  const lid = lidOf(own);
  const ids = tankIds(own.number);
  const parts = [
    layerPart(own, face, [...joined('rest', own.on), ...joined('glue', ids.channel)], 'holder'),
    ...darkSlideParts(slideOf(own)),
    ...body.map((layer, i) => layerPart(own, layer, glued(layer, body[i + 1]))),
    ...endWalls(own).map((layer, i, all) =>
      layerPart(own, layer, [
        ...glued(layer, all[i + 1]),
        ...(i === 0 ? joined('glue', ids.window) : []),
        ...(i === all.length - 1 ? joined('glue', behindChamber(own)) : []),
      ]),
    ),
    ...lid.map((layer, i) =>
      layerPart(own, layer, [...glued(layer, lid[i + 1]), ...(i === 0 ? joined('screw', ids.thinStop) : [])]),
    ),
    ...bought(own),
  ];
  return asWeighed(parts, own.weighedKg, own.stance.upright[0]);
}

/** What the plies of the chamber end at. */
const behindChamber = (own: Tank): string =>
  chamberLayers(own).find(({ packs }) => packs)?.id ?? tankIds(own.number).lip;

const glued = ({ id, at }: Layer, next: Layer | undefined): readonly Join[] => [
  ...(next ? joined('glue', next.id) : []),
  ...(at.length > 1 ? joined('glue', id) : []),
];

/** The slide between face and window: no liquid comes there. */
export function slideOf(own: Tank): DarkSlide {
  const { channel, ring, slide, label, velvet, face, window } = tankIds(own.number);
  return {
    name: own.name,
    ids: { channel, behind: ring, slide, label, velvet },
    between: { ahead: face, behind: window },
    words: { behind: 'ring before the window', velvet: 'before the window' },
    boards: own.boards,
    seat: own.seat,
    depth: own.depth.channel,
    width: own.width,
    closedExtent: own.closedExtent,
    openExtent: own.openExtent,
    image: { width: own.image.short, height: own.image.long },
    slide: own.slide,
    pinHoles: own.depth.channel >= own.pinProud ? [] : own.pinHoles,
    stance: own.stance,
    pile: own.pile,
  };
}

/** What stays together when the lid is off, from the face backwards. */
function bodyOf(own: Tank): { readonly face: Layer; readonly body: readonly Layer[] } {
  const { depth, wood, boards, image, pane, chamber, pocket, number, windowPlies, nutPlies, screws } = own;
  const ids = tankIds(number);
  const outline = rectangle(outer(own));
  const imageOpening = opening({ width: image.short, height: image.long });
  const bored = screws.at.map(({ x, y }) => circle(x, y, screws.hole));
  const of = (ply: Ply) => ({ ply, thickness: ply.thickness, outline });
  const t = wood.ply.thickness;
  const face = {
    ...of(wood.ply),
    id: ids.face,
    what: 'face',
    holes: [imageOpening, ...own.pinHoles.map((p) => circle(p.x, p.y, p.diameter + 0.2))],
    at: [0],
  };
  const body = [
    {
      ...of(wood.ply),
      id: ids.window,
      what: 'frame of the window',
      holes: [opening(pane.opening)],
      at: stacked(depth.window, windowPlies, t),
    },
    // screws reach through what packs the chamber, and not into its plies; spout and vent stand in the plies alone
    ...chamberLayers(own).map((layer) =>
      layer.packs
        ? { ...layer, outline, holes: [opening(chamber), ...bored] }
        : { ...layer, outline: openEnded(own), holes: [] },
    ),
    { ...of(boards.lip), id: ids.lip, what: 'lip', holes: [imageOpening, ...bored], at: [depth.lip] },
    {
      ...of(wood.ply),
      outline: slotted(own),
      id: ids.nutPly,
      what: 'rim with the nuts',
      holes: [opening(pocket)],
      at: stacked(depth.sheet, nutPlies, t),
    },
    {
      ...of(wood.ply),
      id: ids.rim,
      what: 'rim under the gasket',
      holes: [opening(pocket), ...bored],
      at: [depth.rim],
    },
    { ...of(boards.channel), id: ids.stop, what: 'stop beside the gasket', holes: [notched(own)], at: [depth.stop] },
    {
      ...of(boards.lip),
      id: ids.thinStop,
      what: 'stop beside the gasket, thin board',
      holes: [notched(own)],
      at: [depth.stop + boards.channel.thickness],
    },
  ];
  return { face, body };
}

/** What comes off: the cover, and the plug under it. */
function lidOf(own: Tank): readonly Layer[] {
  const { depth, wood, plug, number, screws } = own;
  const ids = tankIds(number);
  const { ply } = wood;
  const t = ply.thickness;
  return [
    {
      ply,
      thickness: t,
      id: ids.cover,
      what: 'lid',
      facing: 'front',
      outline: rectangle(outer(own)),
      holes: screws.at.map(({ x, y }) => circle(x, y, screws.hole)),
      at: [depth.cover],
    },
    {
      ply,
      thickness: t,
      id: ids.plug,
      what: 'plug of the lid',
      outline: opening(plug),
      holes: [],
      at: stacked(depth.cover - plug.plies * t, plug.plies, t),
    },
  ];
}

const opening = ({ width, height }: Opening): ClosedPath => rectangle(boxAt(0, 0, width, height));

export const outer = ({ width, closedExtent, openExtent }: Tank) =>
  box(-width / 2, -closedExtent, width / 2, openExtent);

const stacked = (from: number, count: number, ply: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => from + i * ply);

/** Where something of the tank lies, drawn at its depth, in every set-up in which the tank is in. */
const lying = ({ name, seat, stance }: Tank, depth: number, matrix: Matrix4 = across(0, 0, 0)): readonly Placement[] =>
  inStances({ holder: name }, compose(shift(0, 0, seat + depth), matrix), [stance]);

function layerPart(own: Tank, layer: Layer, joins: readonly Join[], role?: 'holder'): Part {
  const { id, what, ply, thickness, outline, holes, at, facing = 'rear' } = layer;
  const common = { id, name: `${own.name}, ${what}`, outline, holes, joins };
  const places = at.flatMap((depth) => lying(own, depth, matrixOf(facing, 0, thickness)));
  if (ply === null) {
    const massKg = Math.abs(area(outline)) * 0.25 * thickness * SHIM_DENSITY;
    return boughtPlate({ ...common, thickness, placements: places, massKg });
  }
  return plate({
    ...common,
    ply,
    facing,
    low: 0,
    group: { holder: own.name },
    grain: 'any',
    places,
    ...(role ? { role } : {}),
  });
}

type ChamberLayer = Omit<Layer, 'outline' | 'holes'> & { readonly packs: boolean };

/** Walls of the chamber: plies of the camera's sheet, one of another sheet where that is cheaper, boards and shims. */
function chamberLayers({ number, wood, depth, stack, stock, boards }: Tank): readonly ChamberLayer[] {
  const ids = tankIds(number);
  const cutFrom = (thickness: number, packs: boolean): Pick<ChamberLayer, 'id' | 'what' | 'ply'> => {
    if (!packs && thickness === wood.ply.thickness)
      return { id: ids.chamber, what: 'wall of the chamber', ply: wood.ply };
    const ply = [...(packs ? [boards.channel, boards.lip] : []), ...stock].find((one) => one.thickness === thickness);
    if (ply === undefined)
      return { id: `tank-shim-${number}-${Math.round(thickness * 1000)}`, what: `shim of ${thickness} mm`, ply: null };
    if (!packs) return { id: ids.otherPly, what: 'wall of the chamber, of another sheet', ply };
    return { id: ply === boards.channel ? ids.packing : ids.thinPacking, what: 'packing of the chamber', ply };
  };
  const all = [
    ...stack.plies.map((thickness) => ({ thickness, packs: false })),
    ...stack.shims.map((thickness) => ({ thickness, packs: true })),
  ];
  let from = depth.chamber;
  const layers = new Map<string, ChamberLayer>();
  for (const { thickness, packs } of all) {
    const one = cutFrom(thickness, packs);
    layers.set(one.id, { ...one, thickness, packs, at: [...(layers.get(one.id)?.at ?? []), from] });
    from += thickness;
  }
  return [...layers.values()];
}

/** A ply of the chamber: its wall at the open end is cut away at both corners, and what is left of it between them is a part by itself. */
function openEnded(own: Tank): ClosedPath {
  const { chamber, notches } = own;
  const { left, right, bottom, top } = outer(own);
  const [x, y] = [chamber.width / 2, chamber.height / 2];
  const outerOf = (at: -1 | 1) => at * Math.max(...notches.map((notch) => at * (at < 0 ? notch.left : notch.right)));
  const [vent, spout] = [outerOf(-1), outerOf(1)];
  return polygon([
    [left, bottom],
    [right, bottom],
    [right, top],
    [spout, top],
    [spout, y],
    [x, y],
    [x, -y],
    [-x, -y],
    [-x, y],
    [vent, y],
    [vent, top],
    [left, top],
  ]);
}

/** The wall at the open end between spout and vent. */
function endWalls(own: Tank): readonly Layer[] {
  const { chamber, notches, number } = own;
  const ids = tankIds(number);
  const [vent, spout] = notches;
  if (vent === undefined || spout === undefined) return [];
  const outline = rectangle(box(vent.right, chamber.height / 2, spout.left, own.openExtent));
  return chamberLayers(own)
    .filter(({ packs }) => !packs)
    .map((layer) => ({
      ...layer,
      id: layer.id === ids.chamber ? ids.endWall : ids.otherEndWall,
      what: 'wall between spout and vent',
      outline,
      holes: [],
    }));
}

/** What is bought, or cut with a knife. */
function bought(own: Tank): readonly Part[] {
  const { depth, glass, pane, plug, pad, cord, pocket, screws, sheet, number, chamber } = own;
  const ids = tankIds(number);
  const inner = grown(pocket, 2 * CORD_FROM_EDGE);
  const ring = grown(inner, 2 * cord.width);
  const sheetArea = sheet.width * sheet.height;
  return [
    boughtPlate({
      id: ids.glass,
      name: `${own.name}, window`,
      role: 'window',
      thickness: glass.thickness,
      outline: opening(pane),
      placements: lying(own, depth.chamber - glass.thickness),
      joins: joined('glue', ids.chamber),
      massKg: pane.width * pane.height * glass.thickness * GLASS_DENSITY,
    }),
    boughtPlate({
      id: ids.sheet,
      name: `sheet in the ${own.name}`,
      role: 'sheet',
      thickness: sheet.thickness,
      outline: opening(sheet),
      placements: lying(own, depth.sheet),
      joins: joined('press', ids.lip),
      massKg: sheetArea * sheet.thickness * PAPER_DENSITY,
    }),
    boughtPlate({
      id: ids.pad,
      name: `${own.name}, foam in its lid`,
      thickness: pad.pressed,
      outline: opening(plug),
      placements: lying(own, depth.sheet + sheet.thickness),
      joins: joined('glue', ids.plug),
      massKg: plug.width * plug.height * pad.pressed * FOAM_DENSITY,
    }),
    boughtPlate({
      id: ids.cord,
      name: `${own.name}, gasket of foam`,
      thickness: cord.height,
      outline: opening(ring),
      holes: [opening(inner)],
      placements: lying(own, depth.stop),
      joins: joined('press', ids.rim, ids.cover),
      massKg: 2 * (chamber.width + chamber.height) * cord.width * cord.height * FOAM_DENSITY,
    }),
    boughtRod({
      id: ids.screw,
      name: `${own.name}, M4 screw of its lid`,
      diameter: screws.hole - HAIR,
      length: screws.length,
      head: 'start',
      placements: screws.at.flatMap(({ x, y }) =>
        lying(own, depth.back, frame([-1, 0, 0], [0, 1, 0], [0, 0, -1], [x, y, 0])),
      ),
      joins: joined('screw', ids.cover, ids.thinStop, ids.rim),
      massKg: screws.length * SCREW_KG,
    }),
    boughtPlate({
      id: ids.nut,
      name: `${own.name}, M4 nut of its lid`,
      thickness: screws.nut.height,
      outline: hexagon(0, 0, screws.nut.flats),
      holes: [circle(0, 0, screws.hole)],
      placements: screws.at.flatMap(({ x, y, edge }) =>
        lying(own, depth.rim - screws.nut.height, nutTurned(x, y, edge)),
      ),
      joins: joined('screw', ids.rim, ids.screw),
      massKg: NUT_KG,
    }),
  ];
}

/** Its flats along the walls of its slot, so that it cannot turn. */
const nutTurned = (x: number, y: number, edge: Screw['edge']): Matrix4 =>
  edge === 'left' || edge === 'right' ? across(x, y, 0) : frame([0, 1, 0], [-1, 0, 0], [0, 0, 1], [x, y, 0]);

/** The rim that nuts lie in, with a slot in to each from the edge. */
function slotted(own: Tank): ClosedPath {
  const { screws } = own;
  const { width, depth } = screws.slot;
  const on = (edge: Screw['edge']): readonly Step[] =>
    screws.at
      .filter((screw) => screw.edge === edge)
      .map(({ x, y }) => {
        const along = edge === 'left' || edge === 'right' ? y : x;
        return { from: along - width / 2, to: along + width / 2, depth: -depth };
      });
  return stepped(outer(own), { left: on('left'), right: on('right'), bottom: on('bottom'), top: on('top') });
}

/** Inner edge of the stop: it runs along the middles of the screws and gives way to each. */
function notched(own: Tank): ClosedPath {
  const { screws } = own;
  const whole = outer(own);
  const { left, right, bottom, top } = box(
    whole.left + screws.inset,
    whole.bottom + screws.inset,
    whole.right - screws.inset,
    whole.top - screws.inset,
  );
  const r = screws.hole / 2;
  const corners: Vertex[] = [];
  const go = (x: number, y: number, bulge = 0) => corners.push({ x, y, bulge });
  const on = (edge: Screw['edge']) => screws.at.filter((screw) => screw.edge === edge);
  go(left, bottom);
  for (const { x } of on('bottom').toSorted((a, b) => a.x - b.x)) {
    go(x - r, bottom, 1);
    go(x + r, bottom);
  }
  go(right, bottom);
  for (const { y } of on('right').toSorted((a, b) => a.y - b.y)) {
    go(right, y - r, 1);
    go(right, y + r);
  }
  go(right, top);
  for (const { x } of on('top').toSorted((a, b) => b.x - a.x)) {
    go(x + r, top, 1);
    go(x - r, top);
  }
  go(left, top);
  for (const { y } of on('left').toSorted((a, b) => b.y - a.y)) {
    go(left, y + r, 1);
    go(left, y - r);
  }
  return corners;
}

export function tankHardware(own: Tank): readonly Hardware[] {
  const { name, glass, pane, cord, pad, plug, screws, stack, boards, pocket, width, closedExtent, openExtent } = own;
  const shims = stack.shims.filter((one) => one !== boards.channel.thickness && one !== boards.lip.thickness);
  const length = 2 * (pocket.width + pocket.height) + 8 * cord.width;
  return [
    {
      name: 'glass',
      size: `${plainNumber(pane.width, 1)} × ${plainNumber(pane.height, 1)} × ${plainNumber(glass.thickness)}, clear, edges ground`,
      count: 1,
      for: `window of the ${name}`,
    },
    { name: 'silicone', size: 'free of acid, 1 cartridge', count: 1, for: `window of the ${name}` },
    { name: 'epoxy', size: 'thin, for coating, 100 g', count: 1, for: `inside of the ${name}, two coats` },
    {
      name: 'foam cord, closed cells',
      size: `${plainNumber(cord.diameter)} thick, ${Math.ceil(length / 10) * 10} long`,
      count: 1,
      for: `gasket of the ${name}`,
    },
    {
      name: 'foam sheet, closed cells',
      size: `${plainNumber(pad.bought)} thick, ${plug.width.toFixed(0)} × ${plug.height.toFixed(0)}`,
      count: 1,
      for: `pad in the lid of the ${name}`,
    },
    {
      name: 'countersunk screw, stainless',
      size: `M4 × ${screws.bought}${screws.length < screws.bought ? `, cut to ${plainNumber(screws.length, 1)}` : ''}, hexagon socket`,
      count: screws.at.length,
      for: `lid of the ${name}`,
    },
    velvetHardware(slideOf(own)),
    { name: 'nut, stainless', size: 'M4', count: screws.at.length, for: `lid of the ${name}` },
    ...[...new Set(shims)].map((thickness) => ({
      name: 'shim',
      size: `${thickness} thick, ${width.toFixed(0)} × ${(closedExtent + openExtent).toFixed(0)} frame`,
      count: shims.filter((one) => one === thickness).length,
      for: `packing of the ${name}`,
    })),
  ];
}
