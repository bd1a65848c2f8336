import type { Build } from '../../assembly/build.js';
import { around, type Extent } from '../../assembly/extent.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { boxOf, holeRound, outlineOf, partOf, plateOf, type StandingPlate } from '../../assembly/measure.js';
import { stands } from '../../assembly/setups.js';
import { airBetween, spanOf, spansOf } from '../../assembly/span-of.js';
import type { Box } from '../../geometry/path.js';
import type { Finding } from '../../model/finding.js';
import type { Part } from '../../model/part.js';
import { type Drop, dropTimes, evenness } from '../../optics/drop-shutter.js';
import { nearestMark } from '../../standards/dial.js';
import { slotInDiameters } from '../../standards/drop-shutter.js';
import { shutterTimes } from '../../standards/shutter-times.js';
import { exposureTime, mm, plainNumber, stops, tenth } from '../../units/print.js';
import { lightAcross } from '../light-ahead.js';
import type { PlacedShutter } from './parts.js';
import { fallWith } from './size.js';

/** What a shut slide laps over the opening of its guide, and its plate over the ring; common practice, no source. */
const COVER = 10;
/** Difference that an eye sees between the head and the foot of a picture, in stops; common practice, no source. */
const UNEVEN = 1 / 3;
/** A time that is off by more is another one, in stops; common practice, no source. */
const OFF = 1 / 3;
/** Air round a slide that falls; common practice, no source. */
const FALLS_FREE = 3;

/** Upright box round the opening on the axis; a plate of the shutter without one is a mistake of ours. */
function openingOf(plate: StandingPlate): Box {
  const hole = holeRound(plate);
  if (!hole) throw new Error(`${plate.part.id} has no opening`);
  return boxOf(hole);
}

const lifted = ({ left, right, bottom, top }: Box, by: number): Box => ({
  left,
  right,
  bottom: bottom + by,
  top: top + by,
});

/** A slide as it hangs on the peg, and how far it falls from there until its bar meets the felt. */
function slideOf(build: Build, id: string, barId: string) {
  const plate = plateOf(build, id);
  const [wood, bar] = [boxOf(plate.outline), boxOf(outlineOf(build, barId).outline)];
  const [slot] = plate.holes;
  if (!slot) throw new Error(`${id} has no slot`);
  const up = spanOf(build, 'shutter-peg').y[1] - wood.bottom;
  const fall = bar.bottom + up - spanOf(build, 'stop-felt').y[1];
  return { wood: lifted(wood, up), slot: lifted(boxOf(slot), up), fall, z: [plate.low, plate.high] as const };
}

/** How far a blind, the slide less its slot, laps over an opening at the least of its sides. */
function coverOf(opening: Box, wood: Box, slot: Box): number {
  const sides = Math.min(opening.left - wood.left, wood.right - opening.right);
  const above = Math.min(slot.bottom - opening.top, opening.bottom - wood.bottom);
  const below = Math.min(opening.bottom - slot.top, wood.top - opening.top);
  return Math.min(sides, Math.max(above, below));
}

/** shutter-dark: shut, before the fall and after it, each slide laps over the opening; and so does the plate over the ring. */
export function shutterDark({ restsOn }: PlacedShutter, build: Build): readonly Finding[] {
  const opening = openingOf(plateOf(build, 'D3'));
  const [slide, byHand] = [slideOf(build, 'D4', 'D6'), slideOf(build, 'D5', 'D7')];
  const [plate, ring] = [boxOf(outlineOf(build, 'D1').outline), openingOf(plateOf(build, restsOn))];
  const land = Math.min(
    ring.left - plate.left,
    plate.right - ring.right,
    ring.bottom - plate.bottom,
    plate.top - ring.top,
  );
  const fallen = ({ wood, slot, fall }: typeof slide) => coverOf(opening, lifted(wood, -fall), lifted(slot, -fall));
  const places = [
    {
      what: 'the slide D4, cocked,',
      over: 'the opening of its guide',
      value: coverOf(opening, slide.wood, slide.slot),
    },
    { what: 'the slide D4, when it has fallen,', over: 'the opening of its guide', value: fallen(slide) },
    { what: 'the slide D5, let down,', over: 'the opening of its guide', value: fallen(byHand) },
    { what: 'the rail plate D1', over: `the opening of ${restsOn}`, value: land },
  ];
  const worst = places.reduce((least, one) => (one.value < least.value ? one : least));
  return unless(worst.value >= COVER - ROUNDING, {
    rule: 'shutter-dark',
    level: 'error',
    value: worst.value,
    limit: COVER,
    unit: 'mm',
    message: `Fog while the shutter is shut: ${worst.what} laps over ${worst.over} by ${mm(tenth(worst.value))}, and daylight gets round less than ${mm(COVER)}.`,
    hint: `Make it ${mm(tenth(COVER - worst.value))} wider or longer on that side.`,
  });
}

/** The drop as it is cut: lengths and mass from the parts, the law from optics. */
function dropOf({ shutter }: PlacedShutter, build: Build) {
  const { light, elastic, fieldAlongFall } = shutter;
  const opening = openingOf(plateOf(build, 'D3'));
  const { slot, fall, z } = slideOf(build, 'D4', 'D6');
  const bundle = light.focalLength / light.maxAperture;
  const massKg = partOf(build, 'D4').massKg + partOf(build, 'D6').massKg;
  const middle = (opening.top + opening.bottom) / 2;
  const drop: Drop = {
    fall: fallWith(elastic, massKg, fall),
    lead: slot.bottom - middle - bundle / 2,
    slot: slot.top - slot.bottom,
    bundle,
  };
  const away = Math.max(0, light.pupil - z[0]);
  return { drop, slot, away, front: z[0], offset: away * fieldAlongFall };
}

/** shutter-crosses: the slot is as wide as the light and no shorter than the bundle of a point, and lights all of the picture alike. */
export function shutterCrosses(own: PlacedShutter, build: Build): readonly Finding[] {
  const { drop, slot, front, offset, away } = dropOf(own, build);
  const across = lightAcross(own.shutter.light, front);
  const wide = slot.right - slot.left;
  const shortest = slotInDiameters.value.least * drop.bundle;
  const even = evenness({ ...drop, offset });
  const uneven = even?.stops ?? Infinity;
  return [
    ...unless(wide >= across - ROUNDING, {
      rule: 'shutter-crosses',
      level: 'warning',
      value: wide,
      limit: across,
      unit: 'mm',
      message: `Dark corners in every picture by the shutter: its slot is ${mm(tenth(wide))} wide, and the light that it crosses ${mm(tenth(across))}.`,
      hint: `Make the slot ${mm(Math.ceil(10 * (across - wide)) / 10)} wider.`,
    }),
    ...unless(drop.slot >= shortest - ROUNDING, {
      rule: 'shutter-crosses',
      level: 'warning',
      value: drop.slot,
      limit: shortest,
      unit: 'mm',
      about: 'shutter.slot',
      message: `The slot, ${mm(tenth(drop.slot))} high, is never as high as the light of one point, ${mm(tenth(shortest))}: it works as a smaller stop, and wastes light.`,
      hint: `Make it ${mm(Math.ceil(shortest))} or more, or stop the lens down.`,
    }),
    ...unless(even !== null && Math.abs(uneven) <= UNEVEN + ROUNDING, {
      rule: 'shutter-crosses',
      level: 'warning',
      ...(even === null ? {} : { value: uneven }),
      limit: UNEVEN,
      unit: 'stops',
      about: 'shutter',
      message:
        even === null
          ? 'Part of the picture is lit before the slide is let go: its slot hangs too low.'
          : `What is above in the picture gets ${stops(uneven)} more light than what is below: the slide falls ${mm(Math.round(away))} ahead of the lens seat, and grows faster on its way.`,
      hint: 'Use elastic: a slide that is fast from the beginning is more even. Or stop the lens down and expose by hand.',
    }),
  ];
}

/** shutter-time: what the shutter does, beside what was asked of it. */
export function shutterTime(own: PlacedShutter, build: Build): readonly Finding[] {
  const { drop, offset } = dropOf(own, build);
  const { effective, open, efficiency } = dropTimes(drop);
  const { wanted } = own.shutter;
  const { mark, above } = nearestMark(effective, shutterTimes);
  const even = evenness({ ...drop, offset });
  const off = wanted === null ? 0 : Math.log2(effective / wanted);
  const asked = wanted === null ? '' : `, where ${exposureTime(wanted)} was asked`;
  const done = Math.abs(off) <= OFF + ROUNDING;
  const about = even === null ? '' : ` Above, the picture gets ${stops(even.stops)} more than below.`;
  return [
    {
      rule: 'shutter-time',
      level: done ? 'note' : 'warning',
      value: effective,
      ...(wanted === null ? {} : { limit: wanted }),
      unit: 's',
      about: own.shutter.wanted === null ? 'shutter.slot' : 'shutter.time',
      message: `The shutter exposes ${exposureTime(effective)}${asked}: ${stops(Math.abs(above))} ${above > 0 ? 'less' : 'more'} than the ${exposureTime(mark)} of a dial. Light comes in for ${plainNumber(1000 * open, 0)} ms, so ${plainNumber(100 * efficiency, 0)} % of it is used.${about}`,
      hint: done
        ? 'With the lens wide open. A tenth of gravity is taken to be lost in the guide: film a ruler beside the slide to know better.'
        : off > 0
          ? 'Use elastic, or stop the lens down and cut a shorter slot.'
          : 'Expose by hand with the second slide: so long a slot is a slide that nobody can lift.',
    },
  ];
}

/** What belongs to the shutter itself. */
const OWN = /^(?:D\d+|stop-felt|guide-card|carrier-card|shutter-peg)$/;

/** Whether two parts stand in the camera together in one set-up: a hood goes where the shutter was. */
const meets = ({ setups }: Build, a: Part, b: Part): boolean =>
  setups.some((setup) => [a, b].every(({ placements }) => placements.some((place) => stands(place, setup))));

/** shutter-falls: nothing stands in the way of the slide, from where it is cocked to where it lies. */
export function shutterFalls(_own: PlacedShutter, build: Build): readonly Finding[] {
  const { wood, fall } = slideOf(build, 'D4', 'D6');
  const [slide, bar] = [spanOf(build, 'D4'), spanOf(build, 'D6')];
  const way: Extent = { ...around([slide, bar]), y: [wood.bottom - fall, wood.top] };
  const near = build.parts
    .filter((part) => !OWN.test(part.id) && meets(build, part, partOf(build, 'D4')))
    .flatMap((part) => spansOf(build, part.id).map((span) => ({ part, air: airBetween(way, span) })))
    .sort((a, b) => a.air - b.air)[0];
  const ground = Math.min(...['T1L', 'T4'].flatMap((id) => spansOf(build, id)).map(({ y }) => y[0]));
  const below = ground - way.y[0];
  return [
    ...unless(near === undefined || near.air >= FALLS_FREE - ROUNDING, {
      rule: 'shutter-falls',
      level: 'error',
      value: near?.air ?? FALLS_FREE,
      limit: FALLS_FREE,
      unit: 'mm',
      message: `The slide of the shutter falls past ${near?.part.id} (${near?.part.name}) with ${mm(Math.max(0, tenth(near?.air ?? 0)))} of air: it hits that, or the camera shakes.`,
      hint: 'Lay rings A1 under the accessory frame until it falls free.',
    }),
    ...unless(below <= 0, {
      rule: 'shutter-falls',
      level: 'note',
      value: below,
      limit: 0,
      unit: 'mm',
      message: `When it has fallen the slide hangs ${mm(Math.round(below))} below the camera.`,
      hint: 'On a table let the front overhang the edge; on a tripod turn no leg to the front.',
    }),
  ];
}

export const dropShutterChecks = [shutterDark, shutterCrosses, shutterTime, shutterFalls];
