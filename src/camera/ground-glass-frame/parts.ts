import { matrixOf } from '../../geometry/facing.js';
import { across } from '../../geometry/placement.js';
import { box, boxAt, circle, clipped, rectangle, type Step, stepped } from '../../geometry/shapes.js';
import { boughtPlate, joined, type Ply, plate } from '../../joinery/plate.js';
import type { Hardware, Part } from '../../model/part.js';
import { plainNumber } from '../../units/print.js';
import { inStances } from '../loose.js';
import { CLIP, clipsLie, type GroundGlassFrame } from './size.js';

/** From a clip's end to the frame's edge. */
const SHORT_OF_EDGE = 0.5;
/** Play of the protector round a clip. */
const AROUND_CLIP = 1;
const GLASS_DENSITY = 2500e-9;
const SHIM_DENSITY = 1400e-9;

/** Thinner than paper no card is laid. */
export const NO_PAD = 0.05;

/** Card between a clip and the glass. */
export const padThickness = ({ pocket, wood, glass }: GroundGlassFrame): number =>
  pocket.plies * wood.ply.thickness - glass.thickness;

/** Front, packing, pocket with the glass in it, clips over card, and the protector for the road. */
export function groundGlassFrameParts(own: GroundGlassFrame): readonly Part[] {
  const { wood, opening, pocket, pins, stances, seat, glass } = own;
  const t = wood.ply.thickness;
  const outline = rectangle(outer(own));
  const window = rectangle(boxAt(0, 0, opening.width, opening.height));
  const pinHoles = pins.map((p) => circle(p.x, p.y, p.diameter + 0.2));
  const layers = packingLayers(own, outline, [window]);
  const pocketZ = seat + t + layers.thickness;
  const below = layers.top ?? 'G1';
  const loose = (z: number) => inStances('loose', across(0, 0, z), stances);
  const faceDown = (z: number) => inStances('loose', matrixOf('front', z, t), stances);
  const clips = clipPlaces(own);
  const pad = padThickness(own);
  return [
    plate({
      id: 'G1',
      name: 'glass frame, front',
      ply: wood.ply,
      facing: 'rear',
      low: seat,
      group: 'loose',
      grain: 'any',
      outline,
      holes: [window, ...pinHoles],
      places: loose(seat),
      joins: [...joined('rest', ...own.restsOn), ...joined('glue', layers.first ?? 'G2')],
    }),
    ...layers.parts,
    plate({
      id: 'G2',
      name: 'glass frame, pocket',
      ply: wood.ply,
      facing: 'front',
      low: 0,
      group: 'loose',
      grain: 'any',
      outline,
      holes: [rectangle(boxAt(0, 0, pocket.width, pocket.height))],
      places: Array.from({ length: pocket.plies }, (_, k) => faceDown(pocketZ + k * t)).flat(),
      joins: [...(layers.top ? joined('glue', layers.top) : []), ...(pocket.plies > 1 ? joined('glue', 'G2') : [])],
    }),
    boughtPlate({
      id: 'ground-glass',
      name: 'ground glass',
      thickness: glass.thickness,
      role: 'ground-glass',
      outline: clipped(boxAt(0, 0, glass.width, glass.height), glass.corner),
      placements: loose(pocketZ),
      joins: joined('rest', below),
      massKg: glass.width * glass.height * glass.thickness * GLASS_DENSITY,
    }),
    ...(pad > NO_PAD
      ? [
          boughtPlate({
            id: 'glass-pad',
            name: 'card under the glass clips',
            thickness: pad,
            outline: rectangle(boxAt(0, 0, CLIP.width, CLIP.over)),
            placements: clips.flatMap(({ x, inner, sign }) =>
              inStances('loose', across(x, sign * (inner + CLIP.over / 2), pocketZ + glass.thickness), stances),
            ),
            joins: joined('glue', 'glass-clip'),
            massKg: 0.0002,
          }),
        ]
      : []),
    boughtPlate({
      id: 'glass-clip',
      name: 'glass clip',
      thickness: CLIP.thickness,
      outline: rectangle(boxAt(0, 0, CLIP.width, clips[0]?.length ?? 0)),
      placements: clips.flatMap(({ x, y, sign }) =>
        inStances('loose', across(x, sign * y, pocketZ + pocket.plies * t), stances),
      ),
      joins: joined('screw', 'G2'),
      massKg: 0.002,
    }),
    protector(own, pocketZ + pocket.plies * t, clips),
  ];
}

const outer = ({ width, extent }: GroundGlassFrame) => box(-width / 2, -extent.closed, width / 2, extent.open);

/** Two clips at the top and two at the bottom: x of the pair, middle and length in y, and which way is out. */
function clipPlaces({ glass, pocket, extent }: GroundGlassFrame) {
  const x = glass.width / 4;
  const { from: inner, to } = clipsLie({ glass, pocket });
  const outer = Math.min(to, Math.min(extent.closed, extent.open) - SHORT_OF_EDGE);
  const along = { y: (inner + outer) / 2, length: outer - inner, inner };
  return [1, -1].flatMap((sign) => [-x, x].map((at) => ({ ...along, x: at, sign })));
}

/** Notched over the clips, which come too near to the edge for windows. */
function protector(own: GroundGlassFrame, z: number, clips: ReturnType<typeof clipPlaces>): Part {
  const { wood, covered } = own;
  const whole = outer(own);
  const notches = (side: number) =>
    clips
      .filter(({ sign }) => sign === side)
      .map(
        ({ x, inner }): Step => ({
          from: x - CLIP.width / 2 - AROUND_CLIP,
          to: x + CLIP.width / 2 + AROUND_CLIP,
          depth: inner - AROUND_CLIP - (side > 0 ? whole.top : -whole.bottom),
        }),
      );
  return plate({
    id: 'G3',
    name: 'glass protector',
    ply: wood.ply,
    facing: 'front',
    low: z,
    group: 'loose',
    grain: 'any',
    outline: stepped(whole, { top: notches(1), bottom: notches(-1) }),
    places: inStances('loose', matrixOf('front', z, wood.ply.thickness), [covered]),
    joins: joined('rest', 'G2'),
  });
}

/** Packing between front and pocket, from the front outwards: plies that are glued and measured, then the shims that make up the rest. */
function packingLayers(
  own: GroundGlassFrame,
  outline: ReturnType<typeof rectangle>,
  holes: readonly ReturnType<typeof rectangle>[],
) {
  const { wood, packing, extra, stances, seat } = own;
  const layers: { id: string; name: string; ply: Ply | null; thickness: number }[] = [
    ...packing.plies.map((s) => {
      const other = extra.find((e) => e.thickness === s && s !== wood.ply.thickness);
      return { id: other ? 'GQ' : 'GP', name: 'glass frame, packing', ply: other ?? wood.ply, thickness: s };
    }),
    ...packing.shims.map((s) => ({
      id: `glass-shim-${Math.round(s * 1000)}`,
      name: `shim ${s} mm in the glass frame`,
      ply: null,
      thickness: s,
    })),
  ];
  const places = new Map<string, ReturnType<typeof inStances>[number][]>();
  let z = seat + wood.ply.thickness;
  for (const layer of layers) {
    places.set(layer.id, [...(places.get(layer.id) ?? []), ...inStances('loose', across(0, 0, z), stances)]);
    z += layer.thickness;
  }
  const ids = [...places.keys()];
  const parts = ids.map((id, i): Part => {
    const layer = layers.find((l) => l.id === id) as (typeof layers)[number];
    const next = ids[i + 1];
    const joins = [
      ...(next ? joined('glue', next) : []),
      ...(layers.filter((l) => l.id === id).length > 1 ? joined('glue', id) : []),
    ];
    const own = { id, name: layer.name, outline, holes, joins };
    return layer.ply
      ? plate({
          ...own,
          ply: layer.ply,
          facing: 'rear',
          low: 0,
          group: 'loose',
          grain: 'any',
          places: places.get(id) ?? [],
        })
      : boughtPlate({
          ...own,
          thickness: layer.thickness,
          placements: places.get(id) ?? [],
          massKg: 8000 * layer.thickness * SHIM_DENSITY,
        });
  });
  return { parts, first: ids[0], top: ids.at(-1), thickness: z - seat - wood.ply.thickness };
}

export const groundGlassFrameHardware = (own: GroundGlassFrame): readonly Hardware[] => [
  {
    name: 'ground glass',
    size: `${own.glass.width.toFixed(1)} × ${own.glass.height.toFixed(1)} × ${own.glass.thickness}, corners cut ${own.glass.corner}, edges ground`,
    count: 1,
    for: `glass frame, frosted side to the ${own.frosted}`,
  },
  {
    name: 'glass clip',
    size: `16 × 14, with card of ${plainNumber(Math.max(0, own.pocket.plies * own.wood.ply.thickness - own.glass.thickness), 2)} under it`,
    count: 4,
    for: 'glass frame',
  },
  { name: 'wood screw', size: '2.5 × 6', count: 4, for: 'glass clips, into the pocket ply; drill 1.5 first' },
  ...own.packing.shims
    .filter((s, i, all) => all.indexOf(s) === i)
    .map((s) => ({
      name: 'shim',
      size: `${s} thick, ${own.width.toFixed(0)} × ${(own.extent.closed + own.extent.open).toFixed(0)} frame`,
      count: own.packing.shims.filter((x) => x === s).length,
      for: 'glass frame packing',
    })),
];
