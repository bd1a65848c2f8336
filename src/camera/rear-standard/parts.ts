import { polygon } from '../../geometry/path.js';
import { across, frame } from '../../geometry/placement.js';
import { box, boxAt, circle, hexagon, rectangle, stepped } from '../../geometry/shapes.js';
import { boughtPlate, boughtRod, fourCorners, joined, plate, standing } from '../../joinery/plate.js';
import { slotsAlongX, slotsAlongY, tabSteps } from '../../joinery/tab-and-slot.js';
import { tubeOpening } from '../../joinery/tube.js';
import type { Hardware, Part } from '../../model/part.js';
import { carriageBolt } from '../../standards/screws.js';
import { ABOVE_TAILBOARD, type RearStandard } from './size.js';

export const CARD = 0.2;
/** A screw stands so much narrower in its hole that drawn chords do not meet. */
const M4 = { hole: 4.5, screw: 4.48, nut: 7, nutHeight: 5 };
/** Wood screws of 3 mm, their heads let into the lower ply: it slides. */
const WOOD_SCREW = { hole: 3.2, head: 6.5 };
const HEAD = { diameter: 16, hole: carriageBolt.headHole.value, height: 3.3 };

export function rearStandardParts(own: RearStandard): readonly Part[] {
  return [standardPlate(own), ...sole(own), ...ribs(own), ...buttons(own), ...lock(own)];
}

function standardPlate(own: RearStandard): Part {
  const { wood, side, axisHeight, soleThickness, notchFrom, notchTop, ribX, ribTab, foot, front } = own;
  const t = wood.ply.thickness;
  const fit = wood.fits.glueSlip;
  const half = side / 2;
  const soleTop = -axisHeight + soleThickness;
  const tenon = soleThickness - ABOVE_TAILBOARD;
  const corners: [number, number][] = [
    [-half, notchTop],
    [-notchFrom, notchTop],
    [-notchFrom, soleTop],
  ];
  for (const { from, to } of tabSteps(foot, tenon, fit))
    corners.push([from, soleTop], [from, soleTop - tenon], [to, soleTop - tenon], [to, soleTop]);
  corners.push([notchFrom, soleTop], [notchFrom, notchTop], [half, notchTop], [half, half], [-half, half]);
  const pivot = half - own.button.pivot;
  const ribMiddle = soleTop + own.ribHeight / 2;
  return plate({
    id: 'R3',
    name: 'rear standard',
    ply: wood.ply,
    facing: 'rear',
    low: front,
    group: 'rear',
    grain: 'y',
    outline: polygon(corners),
    holes: [
      tubeOpening({ inside: own.opening, row: own.row, ply: wood.ply, fit }),
      ...fourCorners(pivot, pivot).map(({ x, y }) => circle(x, y, M4.hole)),
      ...[ribX, -ribX].map((x) => rectangle(boxAt(x, ribMiddle, t + fit, ribTab))),
    ],
    joins: joined('finger', 'R4U', 'R4L', 'R5'),
  });
}

function sole(own: RearStandard): readonly Part[] {
  const { wood, axisHeight, soleWidth, soleFront, soleRear, front, foot, ribX, ribFoot, bolt } = own;
  const t = wood.ply.thickness;
  const fit = wood.fits.glueSlip;
  const outline = rectangle(box(-soleWidth / 2, soleFront, soleWidth / 2, soleRear));
  const slots = [
    ...slotsAlongX(foot, front + t / 2, t, fit),
    ...slotsAlongY(ribFoot, ribX, t, fit),
    ...slotsAlongY(ribFoot, -ribX, t, fit),
  ];
  return [
    plate({
      id: 'R4L',
      name: 'sole, lower ply',
      ply: wood.ply,
      facing: 'up',
      low: -axisHeight,
      group: 'rear',
      grain: 'any',
      outline,
      holes: [
        ...slots,
        rectangle(boxAt(0, bolt, 6.2, 6.2)),
        ...own.screws.map(({ x, y }) => circle(x, y, WOOD_SCREW.head)),
      ],
      joins: [...joined('glue', 'R4U'), ...joined('slide', 'T1U', 'T2')],
    }),
    plate({
      id: 'R4U',
      name: 'sole, upper ply',
      ply: wood.ply,
      facing: 'up',
      low: -axisHeight + t,
      group: 'rear',
      grain: 'any',
      outline,
      holes: [...slots, circle(0, bolt, HEAD.hole), ...own.screws.map(({ x, y }) => circle(x, y, WOOD_SCREW.hole))],
      strokes: own.indexStrokes,
      marks: own.indexMarks,
      joins: joined('slide', 'T2', 'T3', 'T3S'),
    }),
  ];
}

function ribs(own: RearStandard): readonly Part[] {
  const { wood, axisHeight, soleThickness, front, ribLength, ribHeight, ribTab, ribFoot, ribX } = own;
  const t = wood.ply.thickness;
  const fit = wood.fits.glueSlip;
  const soleTop = -axisHeight + soleThickness;
  const middle = soleTop + ribHeight / 2;
  const outline = stepped(box(front - ribLength, soleTop, front, soleTop + ribHeight), {
    right: [{ from: middle - (ribTab - fit) / 2, to: middle + (ribTab - fit) / 2, depth: t }],
    bottom: tabSteps(ribFoot, soleThickness - ABOVE_TAILBOARD, fit),
  });
  const matrix = (x: number) => standing('rear', frame([0, 0, 1], [0, 1, 0], [-1, 0, 0], [x + t / 2, 0, 0]));
  return [
    plate({
      id: 'R5',
      name: 'rib',
      ply: wood.ply,
      facing: 'left',
      low: 0,
      group: 'rear',
      grain: 'z',
      outline,
      places: [matrix(ribX), matrix(-ribX)],
      joins: joined('finger', 'R4U', 'R4L'),
    }),
  ];
}

/** Buttons closed: the arms point at the axis, over the clipped corners of the back. */
function buttons(own: RearStandard): readonly Part[] {
  const { wood, side, front, button, buttonScrew } = own;
  const t = wood.ply.thickness;
  const pivot = side / 2 - button.pivot;
  const at = (z: number) => fourCorners(pivot, pivot).map(({ x, y }) => standing('rear', across(x, y, z)));
  const seat = front + 2 * t;
  const turned = fourCorners(pivot, pivot).map(({ x, y }) => {
    const turn = Math.atan2(-y, -x);
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    // the engraved face lies on the back
    return standing('rear', frame([cos, sin, 0], [sin, -cos, 0], [0, 0, -1], [x, y, seat + CARD + t]));
  });
  const tail = button.length - button.arm;
  return [
    plate({
      id: 'R6',
      name: 'turn-button',
      ply: wood.ply,
      facing: 'rear',
      low: 0,
      group: 'rear',
      grain: 'x',
      outline: rectangle(box(-tail, -button.width / 2, button.arm, button.width / 2)),
      holes: [circle(0, 0, M4.hole)],
      places: turned,
      joins: [...joined('screw', 'R7'), ...joined('slide', 'B1')],
    }),
    plate({
      id: 'R7',
      name: 'turn-button packing',
      ply: wood.ply,
      facing: 'rear',
      low: 0,
      group: 'rear',
      grain: 'any',
      outline: circle(0, 0, 16),
      holes: [circle(0, 0, M4.hole)],
      places: at(front + t + CARD),
      joins: joined('glue', 'button-card'),
    }),
    boughtPlate({
      id: 'button-card',
      name: 'card under the turn-button packing',
      thickness: CARD,
      outline: circle(0, 0, 16),
      holes: [circle(0, 0, M4.hole)],
      placements: at(front + t),
      joins: joined('glue', 'R3'),
      massKg: 0.00003,
    }),
    boughtRod({
      id: 'button-screw',
      name: `M4 × ${buttonScrew} countersunk`,
      diameter: M4.screw,
      length: buttonScrew,
      head: 'start',
      placements: at(front),
      joins: joined('screw', 'R3', 'R6', 'R7'),
      massKg: 0.0022,
    }),
    boughtPlate({
      id: 'button-nut',
      name: 'M4 lock nut',
      thickness: M4.nutHeight,
      outline: hexagon(0, 0, M4.nut),
      holes: [circle(0, 0, M4.hole)],
      placements: at(seat + CARD + t),
      joins: joined('screw', 'button-screw', 'R6'),
      massKg: 0.001,
    }),
  ];
}

/** Carriage bolt down through the sole and the slot in the tailboard, washer and knob below. */
function lock(own: RearStandard): readonly Part[] {
  const { wood, axisHeight, bolt, boltLength, knob, tailboardBottom } = own;
  const t = wood.ply.thickness;
  const down = (y: number) => standing('rear', frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [0, y, bolt]));
  const neck = -axisHeight + t;
  const headHeight = Math.min(HEAD.height, t);
  return [
    boughtRod({
      id: 'lock-head',
      name: 'head of the carriage bolt',
      diameter: HEAD.diameter,
      length: headHeight,
      placements: [down(neck + headHeight)],
      joins: [...joined('rest', 'R4L'), ...joined('press', 'lock-bolt')],
      massKg: 0.004,
    }),
    boughtRod({
      id: 'lock-bolt',
      name: `carriage bolt M6 × ${boltLength}`,
      diameter: 6,
      length: boltLength,
      head: 'start',
      placements: [down(neck)],
      joins: [...joined('press', 'R4L'), ...joined('screw', 'lock-knob')],
      massKg: 0.0000002 * boltLength * 1000,
    }),
    boughtPlate({
      id: 'lock-washer',
      name: 'washer M6',
      thickness: 1.6,
      outline: circle(0, 0, 18),
      holes: [circle(0, 0, 6.4)],
      placements: [down(tailboardBottom)],
      joins: [...joined('slide', 'T1L'), ...joined('rest', 'lock-knob')],
      massKg: 0.003,
    }),
    boughtPlate({
      id: 'lock-knob',
      name: 'knob M6',
      thickness: knob.height,
      outline: circle(0, 0, knob.diameter),
      holes: [circle(0, 0, 6)],
      placements: [down(tailboardBottom - 1.6)],
      massKg: 0.018,
    }),
  ];
}

export const rearStandardHardware = (own: RearStandard): readonly Hardware[] => [
  { name: 'carriage bolt', size: `M6 × ${own.boltLength}`, count: 1, for: 'lock, head let into the sole' },
  { name: 'wide washer', size: 'M6, 18 across', count: 1, for: 'lock, under the tailboard' },
  { name: 'knob', size: `M6, ${own.knob.diameter} across, thread right through`, count: 1, for: 'lock' },
  { name: 'countersunk screw', size: `M4 × ${own.buttonScrew}`, count: 4, for: 'turn-buttons' },
  { name: 'lock nut', size: 'M4', count: 4, for: 'turn-buttons' },
  {
    name: 'card strip',
    size: '0.2 thick, a sheet of A5',
    count: 1,
    for: 'under retainers’ packing and turn-button packing',
  },
];
