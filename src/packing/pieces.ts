import { ROUNDING } from './rooms.js';
import type { Blank } from './shapes.js';
import { type Stance, sameCover, stancesOf } from './stance.js';

/** A piece to be placed: one of a blank. */
export interface Piece {
  readonly blank: number;
  readonly stances: readonly Stance[];
  /** Pieces of one kind lie in the same ways and have the same windows: changed over they change nothing. */
  readonly kind: number;
  /** Of the rectangle round it. */
  readonly area: number;
  /** Whether some window takes it. */
  readonly nests: boolean;
}

/** Every piece that is wanted, those of one blank one after the other. */
export function piecesOf(blanks: readonly Blank[], spacing: number): readonly Piece[] {
  const wanted = blanks.flatMap((blank, n) => (blank.count > 0 ? [{ blank, n }] : []));
  if (wanted.length === 0) return [];
  const stances = stancesOf(
    wanted.map(({ blank }) => blank),
    spacing,
  );
  const kinds: (readonly Stance[])[] = [];
  const kindOf = stances.map((own) => {
    const known = kinds.findIndex((other) => sameStances(own, other));
    return known < 0 ? kinds.push(own) - 1 : known;
  });
  const nests = kinds.map((own) =>
    mayNest(
      own,
      kinds.filter((other) => other !== own),
    ),
  );
  return wanted.flatMap(({ blank, n }, i) => {
    const own = stances[i] as readonly Stance[];
    const kind = kindOf[i] as number;
    const { width, height } = own[0] as Stance;
    const piece: Piece = { blank: n, stances: own, kind, area: width * height, nests: nests[kind] as boolean };
    return Array.from({ length: blank.count }, () => piece);
  });
}

const sameStances = (a: readonly Stance[], b: readonly Stance[]): boolean =>
  a.length === b.length &&
  a.every((stance, i) => {
    const other = b[i] as Stance;
    return (
      sameCover(stance.cover, other.cover) &&
      stance.windows.length === other.windows.length &&
      stance.windows.every(({ window, rooms }, k) => {
        const same = other.windows[k] as (typeof other.windows)[number];
        return window === same.window && sameCover(rooms, same.rooms);
      })
    );
  });

/** Whether a window of another kind of piece has room for a piece that lies in one of these ways. */
const mayNest = (stances: readonly Stance[], others: readonly (readonly Stance[])[]): boolean =>
  others.some((host) =>
    host.some(({ windows }) => windows.some(({ rooms }) => stances.some((stance) => hasRoom(rooms, stance)))),
  );

function hasRoom(rooms: Float64Array, { width, height }: Stance): boolean {
  for (let i = 0; i < rooms.length; i += 4) {
    const wide = (rooms[i + 2] as number) - (rooms[i] as number);
    const high = (rooms[i + 3] as number) - (rooms[i + 1] as number);
    if (width <= wide + ROUNDING && height <= high + ROUNDING) return true;
  }
  return false;
}
