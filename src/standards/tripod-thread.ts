import type { Cited } from './cited.js';

/** A screw of a tripod, mm. */
export interface TripodThread {
  readonly major: Cited<number>;
  readonly pitch: Cited<number>;
  readonly tapDrill: Cited<number>;
  /** Hole that the screw passes through, easily. */
  readonly clearance: { readonly close: Cited<number>; readonly free: Cited<number> };
}

const INCH = 25.4;

const PITCH_REFERENCE = 'thread pitch reference, noxmetals.co/resources/thread-pitch-reference';
const CHART = 'drill and tap chart, docslib.org/doc/4942776/thread-screw';

/** The two unified threads of ISO 1222, which is known here by its title only; a 1/4 in BSW screw fits the first. */
export const tripodThreads: Readonly<Record<'1/4-20' | '3/8-16', TripodThread>> = {
  '1/4-20': {
    major: { value: INCH / 4, source: PITCH_REFERENCE },
    pitch: { value: INCH / 20, source: PITCH_REFERENCE },
    tapDrill: { value: 0.201 * INCH, source: `no. 7: ${CHART}` },
    clearance: { close: { value: 0.257 * INCH, source: CHART }, free: { value: 0.266 * INCH, source: CHART } },
  },
  '3/8-16': {
    major: { value: (3 / 8) * INCH, source: PITCH_REFERENCE },
    pitch: { value: INCH / 16, source: PITCH_REFERENCE },
    tapDrill: { value: (5 / 16) * INCH, source: `5/16 in: ${CHART}` },
    clearance: { close: { value: 0.386 * INCH, source: CHART }, free: { value: 0.397 * INCH, source: CHART } },
  },
};

/**
 * How far the screw stands proud of the tripod's plate, mm, for both threads. The hole above must be deeper than the
 * longest, or the screw bottoms and the camera turns on it.
 */
export const tripodScrew: { readonly proud: Cited<number>; readonly tolerance: Cited<number> } = {
  proud: { value: 4.5, source: 'photo-cafeteria.com/tripod-screw, quoting the international standard' },
  tolerance: { value: 0.2, source: 'photo-cafeteria.com/tripod-screw, quoting the international standard' },
};

/**
 * Turns that hold the camera, of a thread that begins a recess behind the camera's face. Below one turn the mount is
 * to be refused: let the threaded insert reach the face, or cut the wood away.
 */
export const engagedTurns = ({ pitch }: Pick<TripodThread, 'pitch'>, recess = 0): number =>
  Math.max(0, tripodScrew.proud.value - recess) / pitch.value;

/** Diameters between the crests and the roots of a thread, mm. */
interface ThreadDiameters {
  readonly pitch: number;
  /** Bore of a nut. */
  readonly minorInternal: number;
  /** Root of a screw. */
  readonly minorExternal: number;
}

/**
 * The other diameters of a thread with 60° flanks. Tables print one of the two minor ones without saying which. Source:
 * thread pitch reference, as `tripodThreads`; the bore's factor from memory, ISO 68-1.
 */
export function threadDiameters({ major, pitch }: Pick<TripodThread, 'major' | 'pitch'>): ThreadDiameters {
  const [D, P] = [major.value, pitch.value];
  return { pitch: D - 0.649519 * P, minorInternal: D - 1.082532 * P, minorExternal: D - 1.226869 * P };
}
