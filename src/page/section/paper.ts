import type { ShownSection } from '../../model/shown.js';

/** How the section lies on the screen: user units of the drawing are mm of the camera, z to the right and y down. */
export interface Paper {
  readonly width: number;
  readonly height: number;
  /** mm of the camera to a pixel. */
  readonly px: number;
  readonly left: number;
  readonly top: number;
  /** What the camera takes of it, at both ends of the slide and in every set-up. */
  readonly bounds: Bounds;
  /** Names of the films stand at its right; below it where there is no room. */
  readonly namesAside: boolean;
}

export interface Bounds {
  readonly left: number;
  readonly right: number;
  /** y up. */
  readonly bottom: number;
  readonly top: number;
}

/** From row to row of dimensions, and to the first; px. */
export const ROW = 19;
export const FIRST_ROW = 8;
export const SCALE_ROW = 38;
/** A name of a film, aside of two lines, below of one; and under those aside the words on what limits, of five lines; px. */
export const ASIDE = { from: 12, width: 178, apart: 40, limit: 95 } as const;
export const BELOW = 18;
const EDGE = 10;

/** Narrower than this the names go below, px. */
const ROOM_ASIDE = 470;

export function boundsOf({ faces }: ShownSection, travel: number): Bounds {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { loops, slides, over } of faces)
    for (const loop of over === undefined ? loops : [])
      for (let i = 0; i < loop.length; i += 2) {
        const [x, y] = [loop[i], loop[i + 1]] as [number, number];
        if (x < left) left = x;
        if (x + (slides ? travel : 0) > right) right = x + (slides ? travel : 0);
        if (y < bottom) bottom = y;
        if (y > top) top = y;
      }
  return { left, right, bottom, top };
}

/** Of dimensions above the camera. */
export const ROWS = 2;

/**
 * @param size of the drawing on the screen, px
 * @param names how many planes of film are to be named
 * @param widest of these names, px
 */
export function paperFor(
  size: { readonly width: number; readonly height: number },
  bounds: Bounds,
  names: number,
  widest: number,
): Paper {
  const namesAside = size.width >= ROOM_ASIDE;
  const above = FIRST_ROW + ROWS * ROW + SCALE_ROW;
  const below = EDGE + (namesAside ? 0 : names * BELOW);
  const aside = namesAside ? Math.max(ASIDE.width, ASIDE.from + widest) : EDGE;
  const wide = bounds.right - bounds.left;
  const high = bounds.top - bounds.bottom;
  const px = Math.max(wide / Math.max(1, size.width - EDGE - aside), high / Math.max(1, size.height - above - below));
  const spare = size.width - EDGE - aside - wide / px;
  return {
    ...size,
    px,
    left: bounds.left - (EDGE + spare / 2) * px,
    top: -bounds.top - above * px,
    bounds,
    namesAside,
  };
}
