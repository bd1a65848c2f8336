import { across, frame } from '../../geometry/placement.js';
import { box, boxAt, type Edges, rectangle, stepped } from '../../geometry/shapes.js';
import { ownerNotches, partnerFingers } from '../../joinery/finger-joint.js';
import { joined, plate, standing } from '../../joinery/plate.js';
import { slotsAlongX, slotsAlongY, tabSteps } from '../../joinery/tab-and-slot.js';
import type { Part } from '../../model/part.js';
import { type FrontBox, STRIP } from './size.js';

/**
 * Corner cells: the panel owns its edges, then the sides, then the top; the floor reaches no corner.
 *
 *        F3 top            y up, seen from behind; F1 lies across, ahead of all
 *      F2 |   | F2
 *        F4 floor          its tabs pass through F1 and F2
 *      F2 |   | F2         legs, down to the tailboard
 */
export function frontBoxParts(own: FrontBox): readonly Part[] {
  const { wood, inside, outside, length, axisHeight, opening, rows, tabs } = own;
  const { ply } = wood;
  const t = ply.thickness;
  const fit = wood.fits.glueSlip;
  const half = outside / 2;
  const floorMiddle = -inside / 2 - t / 2;
  const sideOutline = stepped(box(0, -axisHeight, length, half), {
    left: partnerFingers(rows.panelToSide, t, fit),
    top: ownerNotches(rows.sideToTop, t),
    bottom: tabSteps(tabs.sideFoot, t, fit),
  });
  const side = (id: string, name: string, facing: 'left' | 'right', low: number) =>
    plate({
      id,
      name,
      ply,
      facing,
      low,
      group: 'front',
      grain: 'y',
      outline: sideOutline,
      holes: slotsAlongX(tabs.floorToSide, floorMiddle, t, fit),
      joins: [...joined('finger', 'F3'), ...joined('glue', 'T1U')],
    });
  const floorEdges: Edges = {
    bottom: tabSteps(tabs.floorToPanel, t, fit),
    left: tabSteps(tabs.floorToSide, t, fit),
    right: tabSteps(tabs.floorToSide, t, fit),
  };
  const strip = inside / 2 - STRIP / 2;
  const stripBox = rectangle(boxAt(0, 0, STRIP, inside - 16));
  return [
    plate({
      id: 'F1',
      name: 'front panel',
      ply,
      facing: 'rear',
      low: -t,
      group: 'front',
      grain: 'y',
      outline: stepped(box(-half, -axisHeight, half, half), {
        left: ownerNotches(rows.panelToSide, t),
        right: ownerNotches(rows.panelToSide, t),
        top: ownerNotches(rows.panelToTop, t),
        bottom: tabSteps(tabs.panelFoot, t, fit),
      }),
      holes: [rectangle(boxAt(0, 0, opening, opening)), ...slotsAlongX(tabs.floorToPanel, floorMiddle, t, fit)],
      joins: [...joined('finger', 'F2L', 'F2R', 'F3'), ...joined('glue', 'T1U')],
    }),
    side('F2L', 'front box side, left', 'right', -half),
    side('F2R', 'front box side, right', 'left', half - t),
    plate({
      id: 'F3',
      name: 'front box top',
      ply,
      facing: 'down',
      low: half - t,
      group: 'front',
      grain: own.carries ? 'x' : 'any',
      outline: stepped(box(-half + t, 0, half - t, length), {
        bottom: partnerFingers(rows.panelToTop, t, fit),
        left: partnerFingers(rows.sideToTop, t, fit),
        right: partnerFingers(rows.sideToTop, t, fit),
      }),
    }),
    plate({
      id: 'F4',
      name: 'front box floor',
      ply,
      facing: 'up',
      low: -inside / 2 - t,
      group: 'front',
      grain: 'any',
      outline: stepped(box(-inside / 2, 0, inside / 2, length), floorEdges),
      joins: joined('finger', 'F1', 'F2L', 'F2R'),
    }),
    plate({
      id: 'F5',
      name: 'corner strip',
      ply,
      facing: 'rear',
      low: 0,
      group: 'front',
      grain: 'y',
      outline: stripBox,
      places: [
        standing('front', across(strip, 0, 0)),
        standing('front', across(-strip, 0, 0)),
        standing('front', frame([0, 1, 0], [-1, 0, 0], [0, 0, 1], [0, strip, 0])),
        standing('front', frame([0, 1, 0], [-1, 0, 0], [0, 0, 1], [0, -strip, 0])),
      ],
      joins: joined('glue', 'F1'),
    }),
  ];
}

/** Slots in the tailboard's upper ply for the panel's and the sides' tenons, in (x, z). */
export function footSlots(own: FrontBox) {
  const { wood, outside, tabs } = own;
  const t = wood.ply.thickness;
  const fit = wood.fits.glueSlip;
  const leg = outside / 2 - t / 2;
  return [
    ...slotsAlongX(tabs.panelFoot, -t / 2, t, fit),
    ...slotsAlongY(tabs.sideFoot, leg, t, fit),
    ...slotsAlongY(tabs.sideFoot, -leg, t, fit),
  ];
}
