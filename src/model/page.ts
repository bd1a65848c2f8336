import type { Point } from '../geometry/path.js';

/**
 * A drawing on paper for people: what the writers of SVG and PDF turn into files. mm, from the upper left corner, y down.
 * Nothing here is cut: sheets for the laser have records of their own.
 */
export interface Page {
  readonly title: string;
  /** What it shows, in a sentence, for who cannot see it. */
  readonly description: string;
  readonly width: number;
  readonly height: number;
  /** The later ones over the earlier. */
  readonly marks: readonly Mark[];
}

export type Mark =
  | {
      readonly kind: 'line';
      readonly points: readonly Point[];
      readonly closed?: true;
      /** #rrggbb; none where left out. */
      readonly fill?: string;
      readonly stroke?: Stroke;
    }
  | {
      readonly kind: 'circle';
      readonly centre: Point;
      readonly radius: number;
      readonly fill?: string;
      readonly stroke?: Stroke;
    }
  | {
      readonly kind: 'words';
      /** On the base line. */
      readonly at: Point;
      readonly text: string;
      /** Of the letters: the size of the font, mm. */
      readonly size: number;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly colour: string;
      readonly bold?: true;
      /** Anticlockwise round `at`, rad. */
      readonly turned?: number;
    };

export interface Stroke {
  /** #rrggbb */
  readonly colour: string;
  readonly width: number;
  /** Lengths of dash and gap; a whole line where left out. */
  readonly dash?: readonly [number, number];
}
