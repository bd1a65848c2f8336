import { joinedLess, type Region, sharedArea } from '../../geometry/clip.js';
import { type Box, boundsOfPoints, type Point } from '../../geometry/path.js';
import type { Matrix4 } from '../../geometry/placement.js';
import { sawnSolid } from '../../geometry/sawn-prism.js';
import { box, boxAt, rectangle } from '../../geometry/shapes.js';
import type { SolidRecipe } from '../../geometry/solid.js';
import type { Insert } from './insert.js';

/*
 * What an insert measures as it is printed. Of its sizes only where to look is taken: which planes, and round which place in
 * them. All of it holds in the block's own u, v and w.
 */

/** The passage from the neck to the chamber: its area at each place that could be its narrowest, mm². */
export interface Throats {
  readonly bore: number;
  readonly roof: number;
  readonly openings: readonly number[];
  readonly legs: readonly number[];
  readonly exit: number;
}

export function throatsOf(insert: Insert, solid: SolidRecipe): Throats {
  const { rooms, baffle, depth, wall, axis, neck, height } = insert;
  const air = (plane: Plane, window: Box) =>
    (window.right - window.left) * (window.top - window.bottom) -
    sharedArea([rectangle(window)], sectionOf(insert, solid, plane));
  const bore = boxAt(axis.u, axis.v, neck.bore.width, neck.bore.depth);
  const [exit] = rooms;
  return {
    bore: air({ across: 'w', at: height.high + neck.rim / 2 }, bore),
    roof: air({ across: 'w', at: height.high - wall / 2 }, bore),
    openings: rooms.slice(0, -1).map((room) => air(endOf(insert, room), windowAcross(insert, room))),
    legs: rooms
      .slice(1, -1)
      .map(({ from, to, roof }) =>
        air({ across: 'v', at: 0 }, box(from - baffle / 2, 0, to + baffle / 2, roof + wall / 2)),
      ),
    exit: air({ across: 'w', at: wall / 2 }, box(0, -depth / 2, exit.to + baffle / 2, depth / 2)),
  };
}

/** A baffle: the opening past its end, how far it overlaps that, and at which side the opening is. */
export interface Turn {
  readonly gap: number;
  readonly overlap: number;
  readonly side: number;
}

/** The baffles between two legs: light turns back on itself round each. */
export function turnsOf(insert: Insert, solid: SolidRecipe): readonly Turn[] {
  const { rooms } = insert;
  return [rooms[1], rooms[2]].map((room) => {
    const leg = airIn(insert, solid, { across: 'u', at: (room.from + room.to) / 2 }, room);
    const opening = airIn(insert, solid, endOf(insert, room), room);
    const gap = opening.right - opening.left;
    return {
      gap,
      overlap: leg.right - leg.left - gap,
      side: Math.sign(opening.left + opening.right - leg.left - leg.right),
    };
  });
}

/** The box round the air of a room or an opening, v to the right and w up. */
function airIn(insert: Insert, solid: SolidRecipe, plane: Plane, room: Insert['rooms'][0]): Box {
  return boundsOfPoints(
    joinedLess([[rectangle(windowAcross(insert, room))]], [sectionOf(insert, solid, plane)]).flat(),
  );
}

/** In the middle of the baffle at which a room ends. */
const endOf = ({ baffle }: Insert, { to }: Insert['rooms'][0]): Plane => ({ across: 'u', at: to + baffle / 2 });

/** The whole of the block across u, from its floor to within a room's roof. */
const windowAcross = ({ depth, wall }: Insert, { roof }: Insert['rooms'][0]): Box =>
  box(-depth / 2, wall / 2, depth / 2, roof + wall / 2);

/** A plane of the block across one of its axes. Sections have u, or else v, to the right, and w, or else v, up. */
interface Plane {
  readonly across: 'u' | 'v' | 'w';
  readonly at: number;
}

const sectionOf = ({ middle }: Insert, solid: SolidRecipe, { across, at }: Plane): Region =>
  sawnSolid(solid, ALONG[across](middle.u, middle.v, at));

/** From the print's own frame to one in which the plane is x = 0, to the right is z and up is y. */
const ALONG: Record<Plane['across'], (u: number, v: number, at: number) => Matrix4> = {
  u: (u, v, at) => [1, 0, 0, 0, 0, 0, 1, 0, 0, 1, 0, 0, u - at, 0, v, 1],
  v: (u, v, at) => [0, 0, 1, 0, 1, 0, 0, 0, 0, 1, 0, 0, v - at, 0, u, 1],
  w: (u, v, at) => [0, 0, 1, 0, 0, 1, 0, 0, 1, 0, 0, 0, -at, v, u, 1],
};

/** What stays in a tank that is poured out. */
export interface Left {
  /** In the insert, ml. */
  readonly inInsert: number;
  /** How high it stands in the chamber's corner, mm. */
  readonly inChamber: number;
}

/**
 * What stays behind when a tank is turned over: neck down, the chamber's corner lower than the block's other end by a tilt
 * (rad). The well runs empty, for the bore is as wide as its roof; out of each other room water runs over the near edge of
 * the opening that leads on, so that it stands as high as the highest of these edges from there to the well.
 */
export function leftIn(insert: Insert, solid: SolidRecipe, tilt: number): Left {
  const { rooms, baffle, wall } = insert;
  const [sin, cos] = [Math.sin(tilt), Math.cos(tilt)];
  const heightOf = (u: number, w: number) => u * sin - w * cos;
  let level = -Infinity;
  let left = 0;
  for (const room of rooms.slice(0, -1).reverse()) {
    const { from, to, roof } = room;
    const opening = airIn(insert, solid, endOf(insert, room), room);
    level = Math.max(level, heightOf(to + baffle, opening.top));
    const water = [lowerThan(level, sin, cos)];
    const airAt = (v: number, window: Box) =>
      joinedLess([[rectangle(window)]], [sectionOf(insert, solid, { across: 'v', at: v })]);
    const inRoom = airAt(0, box(from - baffle / 2, 0, to + baffle / 2, roof + wall / 2));
    const inOpening = airAt((opening.left + opening.right) / 2, box(to, 0, to + baffle, roof + wall / 2));
    const leg = airIn(insert, solid, { across: 'u', at: (from + to) / 2 }, room);
    left +=
      sharedArea(inRoom, water) * (leg.right - leg.left) +
      sharedArea(inOpening, water) * (opening.right - opening.left);
  }
  return { inInsert: left / 1000, inChamber: Math.max(0, level - heightOf(rooms[0].from, 0)) };
}

/** All of the plane of u and w that lies lower than a level, as far as any block goes. */
function lowerThan(level: number, sin: number, cos: number): readonly Point[] {
  const at = (along: number, deep: number): Point => ({
    x: level * sin + along * cos - deep * sin,
    y: -level * cos + along * sin + deep * cos,
  });
  return [at(-FAR, 0), at(FAR, 0), at(FAR, FAR), at(-FAR, FAR)];
}

const FAR = 1000;
