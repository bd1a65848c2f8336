import { matrixOf } from '../../geometry/facing.js';
import { type ClosedPath, polygon } from '../../geometry/path.js';
import { across, compose, frame, type Matrix4, quarterTurn } from '../../geometry/placement.js';
import { box, boxAt, circle, clipped, rectangle } from '../../geometry/shapes.js';
import { boughtPlate, boughtRod, joined, plate, standing } from '../../joinery/plate.js';
import type { Hardware, Part, Placement } from '../../model/part.js';
import { plainNumber } from '../../units/print.js';
import { type Back, type BackPlaces, CORNER_CLIP, PAST_CLOSED_END, PIN_PROUD } from './size.js';

const HOOK = { width: 16, height: 30, tab: 8 };
/** Where the cord is hooked in, from the seat: nearer to it than the back of the thinnest frame, or nothing presses that down. */
const NOTCH = { from: 4, to: 8, deep: 8 };
/** The hook's tab stays so far inside the plate: it must never stand proud in front. */
const SHY = 0.05;

/** A thing that turns with the back, upright and lengthwise; `only` narrows it to some set-ups. */
export function turning(
  group: Placement['group'],
  matrix: Matrix4,
  places: BackPlaces,
  only?: readonly string[],
): readonly Placement[] {
  const among = (names: readonly string[]) => (only ? names.filter((name) => only.includes(name)) : names);
  return [
    standing(group, matrix, among(places.upright)),
    standing(group, compose(quarterTurn, matrix), among(places.lengthwise)),
  ].filter((place) => place.when && place.when.length > 0);
}

export function backParts(own: Back): readonly Part[] {
  const { wood, seat, opening, ringOutside, places, pins } = own;
  const { ply } = wood;
  const t = ply.thickness;
  const window = rectangle(boxAt(0, 0, opening.width, opening.height));
  const place = (matrix: Matrix4) => turning('back', matrix, places);
  const hookSlots = hookPlaces(own).map(({ x, y }) => rectangle(boxAt(x, y, HOOK.tab, t + wood.fits.glueSlip)));
  const grooves = own.grooves.map(({ from, to }) =>
    rectangle(box(-own.holderWidth / 2, from, own.holderWidth / 2, to)),
  );
  return [
    plate({
      id: 'B1',
      name: 'back plate',
      ply,
      facing: 'front',
      low: seat - t,
      group: 'back',
      grain: 'any',
      outline: plateOutline(own),
      holes: [window, ...hookSlots, ...grooves, ...pins.map((p) => circle(p.x, p.y, p.diameter))],
      places: place(matrixOf('front', seat - t, t)),
      joins: [...joined('glue', 'B2'), ...joined('rest', 'R3')],
    }),
    plate({
      id: 'B2',
      name: 'turning ring',
      ply,
      facing: 'rear',
      low: seat - 2 * t,
      group: 'back',
      grain: 'any',
      outline: rectangle(boxAt(0, 0, ringOutside, ringOutside)),
      holes: [window],
      places: place(across(0, 0, seat - 2 * t)),
      joins: joined('slide', 'R3'),
    }),
    ...fences(own),
    ...pins
      .flatMap((pin) => [
        boughtRod({
          id: `seat-pin-${pin.diameter}`,
          name: `seat pin, dowel ${pin.diameter} mm`,
          diameter: pin.diameter,
          length: t + PIN_PROUD,
          placements: turning('back', across(pin.x, pin.y, seat - t), places, places.pinned),
          joins: joined('press', 'B1'),
          massKg: 0.0002,
        }),
      ])
      .filter((pin) => pin.placements.length > 0),
  ];
}

/** Square, corners clipped; with a tongue under the open end where the holder overhangs. */
function plateOutline({ side, tongue, holderWidth, wellPlay, fenceWidth }: Back): ClosedPath {
  const half = side / 2;
  if (tongue === null) return clipped(boxAt(0, 0, side, side), CORNER_CLIP);
  const wide = holderWidth / 2 + wellPlay + fenceWidth;
  return polygon([
    [-half + CORNER_CLIP, -half],
    [half - CORNER_CLIP, -half],
    [half, -half + CORNER_CLIP],
    [half, half - CORNER_CLIP],
    ...tongueCorner(half, wide, tongue),
    ...[...tongueCorner(half, wide, tongue)].reverse().map(([x, y]): [number, number] => [-x, y]),
    [-half, half - CORNER_CLIP],
    [-half, -half + CORNER_CLIP],
  ]);
}

/** Right-hand outline from the clipped corner up to the tongue's corner; a wide tongue starts on the clip itself. */
const tongueCorner = (half: number, wide: number, tongue: number): [number, number][] =>
  wide < half - CORNER_CLIP
    ? [
        [half - CORNER_CLIP, half],
        [wide, half],
        [wide, tongue],
      ]
    : [
        [wide, half - CORNER_CLIP + (half - wide)],
        [wide, tongue],
      ];

function fences(own: Back): readonly Part[] {
  const { wood, seat, holderWidth, wellPlay: play, closedExtent, openExtent, fenceWidth, openFence, places } = own;
  const { ply } = wood;
  const t = ply.thickness;
  const inner = holderWidth / 2 + play;
  const place = (matrix: Matrix4) => turning('back', matrix, places);
  const length = closedExtent + PAST_CLOSED_END + openExtent + play;
  const middle = (openExtent + play - closedExtent - PAST_CLOSED_END) / 2;
  return [
    plate({
      id: 'B3',
      name: 'well fence, long',
      ply,
      facing: 'front',
      low: seat,
      group: 'back',
      grain: 'y',
      outline: rectangle(boxAt(0, 0, fenceWidth, length)),
      places: [inner + fenceWidth / 2, -inner - fenceWidth / 2].flatMap((x) =>
        place(compose(across(x, middle, 0), matrixOf('front', seat, t))),
      ),
      joins: joined('glue', 'B1'),
    }),
    plate({
      id: 'B4',
      name: 'well fence, closed end',
      ply,
      facing: 'front',
      low: seat,
      group: 'back',
      grain: 'x',
      outline: rectangle(boxAt(0, 0, 2 * inner, 10)),
      places: place(compose(across(0, -closedExtent - play - 5, 0), matrixOf('front', seat, t))),
      joins: joined('glue', 'B1'),
    }),
    ...(openFence.height > 0
      ? [
          boughtPlate({
            id: 'fence-open',
            name: 'well fence, open end',
            thickness: openFence.height,
            outline: rectangle(boxAt(0, 0, 2 * (inner + fenceWidth), openFence.depth)),
            placements: place(across(0, openExtent + play + openFence.depth / 2, seat)),
            joins: joined('glue', 'B1'),
            massKg: 0.004,
          }),
        ]
      : []),
    hook(own),
  ];
}

/** Where the cords' hooks stand: outside the fences, over the standard's land. */
const hookPlaces = ({ hookX, hookY }: Back) => [
  { x: hookX, y: hookY },
  { x: hookX, y: -hookY },
  { x: -hookX, y: hookY },
  { x: -hookX, y: -hookY },
];

/** A small plate on edge, its face up; the notch for the cord opens outwards. */
function hook(own: Back): Part {
  const { wood, seat, places } = own;
  const t = wood.ply.thickness;
  const w = HOOK.width / 2;
  const tab = (HOOK.tab - wood.fits.glueSlip) / 2;
  // own x: outwards from the axis; own y: to the rear, 0 at the plate's rear face
  const outline = polygon([
    [-w, 0],
    [-tab, 0],
    [-tab, -t + SHY],
    [tab, -t + SHY],
    [tab, 0],
    [w, 0],
    [w, NOTCH.from],
    [w - NOTCH.deep, NOTCH.from],
    [w - NOTCH.deep, NOTCH.to],
    [w, NOTCH.to],
    [w, HOOK.height - t],
    [-w, HOOK.height - t],
  ]);
  const matrix = (x: number, y: number): Matrix4 =>
    x > 0
      ? frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [x, y + t / 2, seat])
      : frame([-1, 0, 0], [0, 0, 1], [0, 1, 0], [x, y - t / 2, seat]);
  return plate({
    id: 'B5',
    name: 'cord hook',
    ply: wood.ply,
    facing: 'rear',
    low: 0,
    group: 'back',
    grain: 'y',
    outline,
    places: hookPlaces(own).flatMap(({ x, y }) => turning('back', matrix(x, y), places)),
    joins: joined('finger', 'B1'),
  });
}

export const backHardware = (own: Back): readonly Hardware[] => [
  ...(own.places.pinned.length > 0 ? own.pins : []).map(({ x, diameter }) => ({
    name: 'dowel',
    size: `${diameter} × ${Math.ceil(own.wood.ply.thickness + PIN_PROUD)}`,
    count: 1,
    for: `seat pin, ${x < 0 ? 'left' : 'right'}, cut to ${plainNumber(own.wood.ply.thickness + PIN_PROUD, 2)}`,
  })),
  {
    name: 'channel board',
    size: `1.25 thick, ${Math.ceil(own.holderWidth + 0.8 + 2 * own.fenceWidth)} × ${Math.ceil(own.openFence.depth)}`,
    count: own.openFence.layers,
    for: 'fence at the open end',
  },
];
