import { type Bundle, bundleHalfWidth } from '../optics/light-cone.js';

/** How far light reaches from the axis, along the short side of the picture and along its long side. */
export interface HalfWidths {
  readonly short: number;
  readonly long: number;
}

/** A round thing that light comes out of: the rear rim of the barrel, the exit pupil. */
interface Source {
  readonly z: number;
  readonly radius: number;
}

/** What lets light in, and what it falls on, at the closest station. */
export interface LightInBox {
  readonly rim: Source;
  readonly pupil: Source;
  /** z of the film in each holder, and of the ground glass. */
  readonly films: readonly number[];
  readonly image: HalfWidths;
  /** The opening of the back at the holder seat. */
  readonly gate: HalfWidths & { readonly z: number };
  /** How far film and gate slide, the reserve included. */
  readonly travel: number;
}

/** Round the light to the film, for a back that sits askew; common practice, no source. */
const ROOM = 2;

/**
 * What a plate that slides with the film must leave open, by half: 2 mm round the light from the rear rim to the film, and
 * no less than the straight lines from rim and exit pupil to the edge of the gate, at both ends of the travel.
 *
 * @param z of a face of the plate at the closest station
 */
export function leftOpen({ rim, pupil, films, image, gate, travel }: LightInBox, z: number): HalfWidths {
  const along = (side: keyof HalfWidths) =>
    Math.max(
      ...[0, travel].flatMap((rear) => [
        ...films.map((film) => ROOM + at({ rim, film: { z: film + rear, half: image[side] } }, z + rear)),
        ...[rim, pupil].map((source) => at({ rim: source, film: { z: gate.z + rear, half: gate[side] } }, z + rear)),
      ]),
    );
  return { short: along('short'), long: along('long') };
}

/** Ahead of its source light is as wide as that. */
const at = (bundle: Bundle, z: number): number => (z <= bundle.rim.z ? bundle.rim.radius : bundleHalfWidth(bundle, z));
