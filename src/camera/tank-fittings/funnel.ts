import type { TankFittingsGiven } from './given.js';
import type { Insert } from './insert.js';
import { boreArea } from './neck.js';
import { SLIDE_AIR, wallsOf } from './printing.js';

/** The funnel, printed with its mouth on the bed; it sits on the lip of a neck. */
export interface Funnel {
  readonly mouth: number;
  readonly throat: number;
  readonly wall: { readonly upright: number; readonly sloping: number };
  readonly brim: number;
  /** Heights from the bed: where cone, stem and socket begin, and the end. */
  readonly cone: number;
  readonly stem: number;
  readonly socket: number;
  readonly height: number;
  /** Radius of the socket at its shoulder and at its mouth, and so much wider or narrower it may be printed and still sits. */
  readonly seat: { readonly narrow: number; readonly wide: number; readonly depth: number; readonly play: number };
  readonly size: readonly [number, number, number];
  readonly volume: number;
}

const MOUTH = 60;
const BRIM = 3;
/** The socket tapers by this much a side over its depth, evenly about the lip. Common practice, no source. */
const SEAT = { taper: 0.8, depth: 4 };

export function sizeFunnel(
  { chamber, openEnd, notch, slide }: TankFittingsGiven,
  spout: Insert,
  nozzle: number,
): Funnel {
  const { neck, height, lean } = spout;
  const { inner: upright, sloping } = wallsOf(nozzle);
  const throat = Math.sqrt(boreArea(neck) / Math.PI);
  const seat = {
    narrow: neck.lip.radius - SEAT.taper / 2,
    wide: neck.lip.radius + SEAT.taper / 2,
    depth: SEAT.depth,
    play: SEAT.taper / 2,
  };
  const flare = seat.wide + upright - throat - sloping;
  // the cone stays behind the slide's channel until it is past the handle
  const free = (notch.from + notch.to) / 2 + lean - slide.back - SLIDE_AIR;
  const needed = openEnd + slide.handle + SLIDE_AIR - chamber.end - height.high - neck.rim - seat.depth / 2;
  const cone = BRIM;
  const stem = cone + MOUTH / 2 - throat - sloping;
  const socket = stem + Math.max(flare, needed - Math.max(0, free - throat - sloping));
  return {
    mouth: MOUTH / 2,
    throat,
    wall: { upright, sloping },
    brim: BRIM,
    cone,
    stem,
    socket,
    height: socket + seat.depth,
    seat,
    size: [MOUTH, MOUTH, socket + seat.depth],
    volume: volumeOfFunnel(),
  };

  function volumeOfFunnel(): number {
    const ring = (outer: number, inner: number) => Math.PI * (outer * outer - inner * inner);
    const middle = (MOUTH / 2 + throat) / 2;
    return (
      ring(MOUTH / 2, MOUTH / 2 - sloping) * BRIM +
      2 * Math.PI * middle * sloping * (stem - cone) +
      ring(throat + sloping, throat) * (socket - stem) +
      ring(seat.wide + upright, neck.lip.radius) * (seat.depth + flare / 2)
    );
  }
}
