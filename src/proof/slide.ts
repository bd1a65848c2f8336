import type { Build } from '../assembly/build.js';
import { deepestOf, depthGain } from '../assembly/depth-gain.js';
import { ROUNDING, unless } from '../assembly/limit.js';
import type { PlacedPart } from '../assembly/placed-parts.js';
import { spanOf } from '../assembly/span-of.js';
import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';
import { filmPlane } from '../optics/conjugates.js';
import { magnification, mm, tenth } from '../units/print.js';
import { type Boxes, boxesIn, holderSeat, lensSeat, travelOf, typedGlassDepth } from './landmarks.js';
import type { PieceRule, ProofRule } from './proof-rule.js';

/** The three inequalities of the slide, and both ends of the focus, on the boxes as they stand. */

/** Kept free behind what stands behind the panel, and between standard and front box; round what passes inside. Common practice, no source. */
const PANEL_GAP = 2;
const BACK_GAP = 2;
const FREE_AIR = 3;

/** box-meets-panel: the rear box behind what it cannot pass around, at the closest place; and whether there is room for boxes. */
const boxMeetsPanel = (
  { builtFor, lens }: Design,
  build: Build,
  boxes: Boxes,
  pieces: readonly PlacedPart[],
): readonly Finding[] => {
  const { rear: box, middle } = boxes;
  const panel = spanOf(build, 'F1').z[1];
  const { inside } = box;
  const [across, up] = [box.width / 2, box.height / 2];
  // ahead of the walls: neither outside them nor small enough to pass inside them
  const behindPanel = pieces.flatMap(({ part, boxes: places }) =>
    places.flatMap(({ placement, extent: { x, y, z } }) => {
      if (placement.group !== 'front' || placement.drawnFrom !== undefined || z[1] <= panel + ROUNDING) return [];
      const outside = x[0] >= across || x[1] <= -across || y[0] >= up || y[1] <= -up;
      const passes =
        x[0] >= inside.left + FREE_AIR - ROUNDING &&
        x[1] <= inside.right - FREE_AIR + ROUNDING &&
        y[0] >= inside.bottom + FREE_AIR - ROUNDING &&
        y[1] <= inside.top - FREE_AIR + ROUNDING;
      return outside || passes ? [] : [{ name: part.name, depth: z[1] - panel }];
    }),
  );
  const deepest = behindPanel.reduce((most, one) => (one.depth > most.depth ? one : most), { name: '', depth: 0 });
  const taken = deepest.depth + PANEL_GAP;
  const air = Math.min(box.front.least, middle?.front.least ?? Infinity) - panel;
  const room = spanOf(build, 'R3').z[0] - panel - taken;
  const least = Math.max(...boxes.overlaps.map(({ needed }) => needed));
  return [
    ...unless(air >= taken - ROUNDING, {
      rule: 'box-meets-panel',
      level: 'error',
      value: air,
      limit: taken,
      unit: 'mm',
      about: 'focus.pastInfinity',
      message: `At the closest position the ${middle !== null && middle.front.least < box.front.least ? 'middle' : 'rear'} box stands ${mm(tenth(Math.abs(air)))} ${air < 0 ? 'ahead of' : 'behind'} the panel, where ${deepest.name === '' ? 'the gap' : `the ${deepest.name} and a gap`} take ${mm(tenth(taken))}.`,
      hint: builtFor
        ? `Mount the lens by a narrower flange or ring that the ${middle === null ? 'rear box' : 'boxes'} can pass around${lens.mount.side === 'inside' ? ', or from the front where the opening of the panel is wide enough for that' : ''}.`
        : `Take ${mm(tenth(taken - air))} off pastInfinity.`,
    }),
    ...unless(room >= least - ROUNDING, {
      rule: 'box-meets-panel',
      level: 'error',
      value: room,
      limit: least,
      unit: 'mm',
      about: 'lens.flangeDistance',
      message: `The lens stands so near to the film that a box can be ${mm(tenth(Math.max(0, room)))} long between panel and standard; two boxes must overlap by ${mm(tenth(least))}.`,
      hint: `Gain ${mm(tenth(least - room))}: a shallower holder, thinner sheet, the other side of the board, or a longer lens.`,
    }),
  ];
};

/** back-meets-box: the standard behind the front box's rear edge at the closest place. */
const backMeetsBox = (build: Build, { front, middle }: Boxes): readonly Finding[] => {
  const standard = spanOf(build, 'R3').z[0];
  // of three boxes the frame of the middle one stands between: the smaller of two gaps counts
  const gap = middle ? Math.min(standard - middle.frame.z[1], middle.frame.z[0] - front.most) : standard - front.most;
  return unless(gap >= BACK_GAP - ROUNDING, {
    rule: 'back-meets-box',
    level: 'error',
    value: gap,
    limit: BACK_GAP,
    unit: 'mm',
    about: 'focus.pastInfinity',
    message: `The standard ${gap < 0 ? `would run ${mm(tenth(-gap))} into` : `comes within ${mm(tenth(gap))} of`} the ${middle ? 'frame of the middle box, or that of the front box,' : 'front box'} and stops the slide short of infinity; ${mm(BACK_GAP)} are needed.`,
    hint: `Take ${mm(tenth(BACK_GAP - gap))} off pastInfinity, or shorten the front box by as much.`,
  });
};

/** overlap-far: each box over the one in it at the farthest seat, the reserve left out; three boxes at their stops. */
const overlapFar = (design: Design, { overlaps }: Boxes): readonly Finding[] => {
  const { focus, lens, builtFor } = design;
  // beyond the end of a slide that stands no seat comes: reach-near says so
  if (builtFor && (focus.pastNearest ?? 0) < 0) return [];
  return overlaps.flatMap(({ of, value: overlap, needed: least, because }) => {
    // what the overlap lacks is asked of the slide: it draws out by f for each unit of magnification
    const within = focus.nearest - (least - overlap) / lens.focalLength;
    return unless(overlap >= least - ROUNDING, {
      rule: 'overlap-far',
      level: 'error',
      value: overlap,
      limit: least,
      unit: 'mm',
      about: 'focus.nearest',
      message: `At full draw ${of} ${overlap < 0 ? `are ${mm(tenth(-overlap))} apart` : `overlap by ${mm(tenth(overlap))}`}, and light gets in; ${mm(tenth(least))} of overlap are needed (${because}).`,
      hint: builtFor
        ? `Write nearest: ${magnification(Math.max(focus.farthest, within))}.`
        : within > 0
          ? `Write nearest: ${magnification(within)}. Or gain ${mm(tenth(least - overlap))}: ${depthGain(deepestOf(design.holders, typedGlassDepth(design)), design.boxes ?? 2, least - overlap)}.`
          : `Gain ${mm(tenth(least - overlap))}: shallower holders, thinner sheet, the other side of the board, or a lens with a longer flange distance.`,
    });
  });
};

/** reach-infinity and reach-near: the holder seat at both ends of the slide, against where each film and the glass want it. */
export const bothEnds: ProofRule = (design, build) => {
  const { focus, lens, holders } = design;
  const placed = { ...lens, seat: lensSeat(design, build) };
  const [far, near] = [filmPlane(placed, focus.farthest), filmPlane(placed, focus.nearest)];
  const seat = holderSeat(build);
  const closest = seat + focus.pastInfinity;
  const farthest = seat + travelOf(build);
  const glass = typedGlassDepth(design);
  // T*: a shallow holder stands on a spacer, and its film where the glass is
  const depths = [
    ...holders.map(({ name, filmDepth }) => ({ name, depth: Math.max(filmDepth, glass) })),
    { name: 'the bare ground glass', depth: glass },
  ];
  return depths.flatMap(({ name, depth }) => [
    ...unless(closest <= far - depth + ROUNDING, {
      rule: 'reach-infinity',
      level: 'error',
      value: closest,
      limit: far - depth,
      unit: 'mm',
      about: 'focus.pastInfinity',
      message: `Hills stay soft: with ${name} the slide stops ${mm(tenth(closest - far + depth))} short of ${magnification(focus.farthest)}.`,
      hint: `Write pastInfinity: ${mm(tenth(focus.pastInfinity + closest - far + depth))}, so that the slide runs closer to the lens.`,
    }),
    ...unless(farthest >= near - depth - ROUNDING, {
      rule: 'reach-near',
      level: 'error',
      value: farthest,
      limit: near - depth,
      unit: 'mm',
      about: 'focus.nearest',
      message: `Portraits stay soft: with ${name} the slide stops ${mm(tenth(near - depth - farthest))} short of ${magnification(focus.nearest)}.`,
      hint: `Write nearest: ${magnification(Math.max(focus.farthest, focus.nearest - (near - depth - farthest) / lens.focalLength))}.`,
    }),
  ]);
};

/** The boxes are measured once for all of their rules. */
export const inequalities: PieceRule = (design, build, pieces) => {
  const boxes = boxesIn(build);
  return [...boxMeetsPanel(design, build, boxes, pieces), ...backMeetsBox(build, boxes), ...overlapFar(design, boxes)];
};
