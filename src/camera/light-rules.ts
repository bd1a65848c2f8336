import { ROUNDING, unless } from '../assembly/limit.js';
import { yaw } from '../assembly/statics.js';
import { depthOfFocus } from '../optics/depth.js';
import { angleOffAxis, falloffStops } from '../optics/illumination.js';
import { circleAt, coversFrom, diagonal } from '../optics/image-circle.js';
import { bundleHalfWidth } from '../optics/light-cone.js';
import { formats } from '../standards/formats.js';
import { nearestText } from '../units/nearest-text.js';
import { magnification, mm, stops, tenth } from '../units/print.js';
import type { WholeRule } from './whole-rule.js';

/** What the lens throws on the film, and what stands in its way. */

/** lens-covers: the image circle against the diagonal, at the nearest and at the farthest focus. */
const lensCovers: WholeRule = ({ format, lens, focus }, { optics, settingOut: rod }) => {
  const { coverage, pupilMagnification: P } = lens;
  if (coverage === null) return [];
  const needed = optics.diagonal;
  const from = coversFrom(needed, circleAt(0, coverage, P), P);
  const [far, near] = [circleAt(focus.farthest, coverage, P), circleAt(focus.nearest, coverage, P)];
  const rule = { rule: 'lens-covers', limit: needed, unit: 'mm' } as const;
  if (near < needed - ROUNDING)
    return [
      {
        ...rule,
        level: 'error',
        value: near,
        about: 'format',
        message: `Dark corners at every focus: at ${magnification(focus.nearest)} the lens covers ${mm(tenth(near))}, and the diagonal of ${format.name} is ${mm(tenth(needed))}.`,
        hint: coverCure(from, rod.reachable, near),
      },
    ];
  return unless(far >= needed - ROUNDING, {
    ...rule,
    level: 'warning',
    value: far,
    about: 'lens.coverage',
    message: `Dark corners far away: at ${magnification(focus.farthest)} the lens covers ${mm(tenth(far))}, and the diagonal of ${format.name} is ${mm(tenth(needed))}. It covers from ${nearestText(from, 'up')} on.`,
    hint: `Keep it for subjects at ${nearestText(from, 'up')} and nearer, or mask the corners of the rest.`,
  });
};

function coverCure(from: number, reachable: number, circle: number): string {
  const on = nearestText(from, 'up');
  if (from <= reachable) return `It covers from ${on}, which the slide reaches: write nearest: ${on}.`;
  const smaller = formats
    .map(({ name, image }) => ({ name, across: diagonal({ width: image.value[0], height: image.value[1] }) }))
    .filter(({ across }) => across <= circle)
    .sort((a, b) => b.across - a.across)[0];
  const covers = `It covers from ${on}, beyond the slide's reach.`;
  return smaller
    ? `${covers} The largest format that it covers here is ${smaller.name}.`
    : `${covers} Take a smaller format.`;
}

/** A stop is where the eye begins to see it in a plain background; common practice, no source. */
const FALLOFF = 1;

/** corner-falloff: cos⁴ of half the field at the farthest focus, where it is widest. */
const cornerFalloff: WholeRule = ({ lens, focus }, { optics }) => {
  const lost = falloffStops(angleOffAxis(optics.diagonal / 2, lens.focalLength, focus.farthest));
  return unless(lost <= FALLOFF + ROUNDING, {
    rule: 'corner-falloff',
    level: 'note',
    value: lost,
    limit: FALLOFF,
    unit: 'stops',
    about: 'lens.focalLength',
    message: `At ${magnification(focus.farthest)} the corners get ${stops(lost)} less light than the middle.`,
    hint: 'A longer lens or a smaller format evens it out; on paper, hold back the middle of the print.',
  });
};

/** An opening that the light passes on its way to the film, by half its width in three directions. */
interface Gate {
  readonly name: string;
  readonly z: number;
  readonly half: readonly [across: number, along: number, diagonally: number];
}

/** cone-clear: room between the bundle and what it passes, over the short and the long side and the diagonal. */
const coneClear: WholeRule = ({ format }, { settingOut: rod, optics, holders, objects }) => {
  const { short, long } = format.image;
  const rim = optics.rearRim;
  const image = [short / 2, long / 2, optics.diagonal / 2] as const;
  const { width, height } = objects.back.opening;
  const oblong = [width / 2, height / 2, diagonal({ width, height }) / 2] as const;
  // the boxes are square, and the image may lie in them either way
  const square = [rod.rearInside.value / 2, rod.rearInside.value / 2, rod.rearInside.value / Math.SQRT2] as const;
  const rooms = [rod.closest.value, rod.farthest.value].flatMap((seat) => {
    const standard = seat - rod.stackBehindBoxes.value;
    const gates: readonly Gate[] = [
      { name: 'front edge of the rear box', z: standard - rod.rearLength.value, half: square },
      { name: 'standard', z: standard, half: square },
      { name: 'turning ring', z: standard, half: oblong },
    ];
    return holders.flatMap((holder) =>
      gates.flatMap((gate) =>
        // ahead of the rim the barrel itself is what has to pass, which is another rule's business
        gate.half.flatMap((half, way) => {
          if (gate.z < rim.z && gate.half === square) return [];
          const film = { z: seat + holder.effectiveDepth, half: image[way] ?? 0 };
          const light = gate.z <= rim.z ? rim.radius : bundleHalfWidth({ rim, film }, gate.z);
          return [{ room: half - light, gate: gate.name, holder: holder.name }];
        }),
      ),
    );
  });
  const tightest = rooms.reduce((least, one) => (one.room < least.room ? one : least));
  const { room } = tightest;
  const dark = room < -ROUNDING;
  return unless(room >= CONE_ROOM - ROUNDING, {
    rule: 'cone-clear',
    level: dark ? 'error' : 'warning',
    value: room,
    limit: dark ? 0 : CONE_ROOM,
    unit: 'mm',
    about: 'lens.barrel.rearDiameter',
    message: dark
      ? `Straight dark edges: with ${tightest.holder} the light from the rear of the lens is ${mm(tenth(-room))} wider than the opening of the ${tightest.gate}.`
      : `The ${tightest.gate} leaves the light from the rear of the lens ${mm(tenth(room))} with ${tightest.holder}: a back that sits askew cuts the edge of the picture.`,
    hint: `The rear of the lens is ${mm(2 * rim.radius)} wide for an image of ${mm(short)}: take the next larger format, or a lens that is narrower behind.`,
  });
};

/** Room that a back askew on its ring takes; common practice, no source. */
const CONE_ROOM = 2;

/** Glancing light on parallel walls veils pictures; common practice, no source. */
const WALL_ROOM = 6;

/** wall-flare: from the edge of the image to the wall of the box. */
const wallFlare: WholeRule = ({ format }, { settingOut: rod }) => {
  const value = (rod.rearInside.value - format.image.long) / 2;
  return unless(value >= WALL_ROOM - ROUNDING, {
    rule: 'wall-flare',
    level: 'warning',
    value,
    limit: WALL_ROOM,
    unit: 'mm',
    about: 'format.image',
    message: `The edge of the image runs ${mm(tenth(value))} from the walls of the box: light that glances off them veils the shadows.`,
    hint: `Write an image no longer than ${mm(tenth(rod.rearInside.value - 2 * WALL_ROOM))}, or line the walls with black velvet paper.`,
  });
};

/** yaw-register: the sole askew in its rails by their play swings the film's edge. */
const yawRegister: WholeRule = ({ workshop, format, focus, lens }, { optics, objects }) => {
  const { soleFront, soleRear } = objects.rearStandard;
  const value = (yaw(workshop.railPlay, soleRear - soleFront) * format.image.long) / 2;
  const limit = depthOfFocus(lens.maxAperture, optics.confusion, focus.nearest, lens.pupilMagnification) / 2;
  return unless(value <= limit + ROUNDING, {
    rule: 'yaw-register',
    level: 'warning',
    value,
    limit,
    unit: 'mm',
    about: 'workshop.railPlay',
    message: `One side of the picture soft: askew in its rails the back swings ${mm(round2(value))} at the picture's edge, and half the depth of focus is ${mm(round2(limit))}.`,
    hint: `Press the sole against one rail before you lock it, or fit the rails with ${mm(Math.floor((100 * workshop.railPlay * limit) / value) / 100)} of play.`,
  });
};

const round2 = (value: number): number => Math.round(value * 100) / 100;

export const lightRules: readonly WholeRule[] = [lensCovers, cornerFalloff, coneClear, wallFlare, yawRegister];
