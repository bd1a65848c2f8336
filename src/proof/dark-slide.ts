import { type Extent, type PlacedBox, slidBox } from '../assembly/extent.js';
import { ROUNDING, unless } from '../assembly/limit.js';
import { stands } from '../assembly/setups.js';
import { spanOf } from '../assembly/span-of.js';
import type { Part } from '../model/part.js';
import { mm, tenth } from '../units/print.js';
import { asPlaced, asUpright, exposing, heldIn, travelOf, wholeHolder } from './landmarks.js';
import type { PieceRule, ProofRule } from './proof-rule.js';

/** A loaded holder in the positions in which it is used: over the keepers, and while its dark slide is drawn. */

/** A dark slide is so much wider than the image, and so thick: section 13 of the camera's description. */
const SLIDE = { wider: 12, thickness: 1 };

/** slide-path: nothing stands where the dark slide comes out, in the positions in which it is drawn. */
export const slidePath: PieceRule = ({ format, holders }, build, pieces) => {
  const half = (format.image.short + SLIDE.wider) / 2;
  const ends = [0, travelOf(build)];
  return holders.flatMap((holder, i) => {
    const whole = wholeHolder(build, holder);
    const own = new Set(whole?.all.map(({ part }) => part));
    return exposing(build, holder).flatMap((setup) => {
      const held = heldIn(whole, setup);
      if (held === undefined) return [];
      const [closedEnd, openEnd] = held.y;
      const needed = openEnd - closedEnd;
      const lane = asPlaced({ x: [-half, half], y: [openEnd, openEnd + needed], z: ANYWHERE }, setup);
      const beside: { readonly part: Part; readonly box: PlacedBox }[] = [];
      for (const { part, boxes } of pieces)
        for (const box of boxes)
          if (lap(lane, box.extent) && !own.has(part) && stands(box.placement, setup)) beside.push({ part, box });
      const face = held.z[0] + holder.slideDepth;
      const met = ends.flatMap((rear) => {
        const path: Extent = { ...lane, z: [face + rear, face + rear + SLIDE.thickness] };
        return beside
          .filter(({ box }) => lap(path, slidBox(box, rear)))
          .map(({ part, box }) => ({
            name: part.name,
            free: Math.max(0, asUpright(box.extent, setup).y[0] - openEnd),
          }));
      });
      const first = met.reduce((least, one) => (one.free < least.free ? one : least), { name: '', free: needed });
      return unless(first.free >= needed - ROUNDING, {
        rule: 'slide-path',
        level: 'error',
        value: first.free,
        limit: needed,
        unit: 'mm',
        about: `holders[${i}].slideDepth`,
        message: `${setup.name}: the dark slide can be drawn ${mm(tenth(first.free))} and is ${mm(tenth(needed))} long; then it meets the ${first.name}.`,
        hint: 'Measure slideDepth again: from the holder’s face to the slide.',
      });
    });
  });
};

/** Whether two upright boxes lap along all three axes. */
const lap = (a: Extent, b: Extent): boolean =>
  a.x[1] - b.x[0] > ROUNDING &&
  b.x[1] - a.x[0] > ROUNDING &&
  a.y[1] - b.y[0] > ROUNDING &&
  b.y[1] - a.y[0] > ROUNDING &&
  a.z[1] - b.z[0] > ROUNDING &&
  b.z[1] - a.z[0] > ROUNDING;

const ANYWHERE = [-Infinity, Infinity] as const;

/** Air under what hangs over the tailboard; common practice, no source. */
const OVER_KEEPERS = 3;

/** holder-clears: each holder in the positions in which it is used, over the keepers. */
export const holderClears: ProofRule = ({ holders }, build) => {
  const keepers = Math.max(...['T3', 'T3S'].map((id) => spanOf(build, id).y[1]));
  return holders.flatMap((holder, i) => {
    const whole = wholeHolder(build, holder);
    if (whole === undefined) return [];
    const value = Math.min(...whole.all.map(({ part }) => spanOf(build, part.id).y[0])) - keepers;
    return unless(value >= OVER_KEEPERS - ROUNDING, {
      rule: 'holder-clears',
      level: 'error',
      value,
      limit: OVER_KEEPERS,
      unit: 'mm',
      about: `holders[${i}].closedEnd`,
      message: `The ${holder.name} hangs ${mm(tenth(value))} above the keepers in one of the positions in which it is used: it fouls the tailboard.`,
      hint: `Shorten its closed end or its width by ${mm(tenth(OVER_KEEPERS - value))}.`,
    });
  });
};
