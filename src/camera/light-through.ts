import type { Design } from '../design/design.js';
import type { LightThrough } from './lens-board/size.js';
import { OPENING_MARGIN } from './setting-out.js';

/** From the rear rim and the exit pupil to the corners of the back's opening, at the closest position. */
export function lightThrough({ lens, focus, format, holders }: Design, glassDepth: number): LightThrough {
  const { focalLength: f, flangeDistance: V, pupilMagnification: P, maxAperture: N, barrel } = lens;
  const { short, long } = format.image;
  return {
    sources: [
      { behindSeat: barrel.grip + barrel.rear, radius: barrel.rearDiameter / 2 },
      { behindSeat: V - P * f, radius: (P * f) / N / 2 },
    ],
    gate: {
      behindSeat:
        V + f * focus.farthest - focus.pastInfinity - Math.max(glassDepth, ...holders.map((h) => h.filmDepth)),
      radius: Math.sqrt((short + 2 * OPENING_MARGIN) ** 2 + (long + 2 * OPENING_MARGIN) ** 2) / 2,
    },
  };
}
