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
  /** Titles of the chapters that begin here, for the contents of a document; `level` 0 is a chapter, 1 a part of one. */
  readonly bookmarks?: readonly { readonly title: string; readonly level: number }[];
}

/** A drawing of the camera: a page no larger than itself, that is written as a file and stands in the book. */
export interface Drawing extends Page {
  /** What its file is called, without the ending. */
  readonly name: string;
  /** Lengths on paper over true lengths; null where nothing may be measured on it. */
  readonly scale: number | null;
}

/**
 * What a mark of a technical drawing is: `outline` what is seen, `added` of what a step brings, `there` what stood there
 * before, `hidden` what is behind, `cut` the edge of a cut face, `hatch` on it, `way` along which something comes, `axis`
 * centre lines, `light` bundles of light, `film` where the picture is made, `dimension` lines and figures, `leader` from
 * a number to its part, `number` of a part, `note` words, `frame` round them.
 */
export type MarkRole =
  | 'outline'
  | 'added'
  | 'there'
  | 'hidden'
  | 'cut'
  | 'hatch'
  | 'way'
  | 'axis'
  | 'light'
  | 'film'
  | 'dimension'
  | 'leader'
  | 'number'
  | 'note'
  | 'frame';

interface AnyMark {
  /** Becomes the class of the mark in an SVG. */
  readonly role?: MarkRole;
  /** A name that is the mark's own in its drawing, so that it can be found and measured. */
  readonly id?: string;
}

export type Mark = AnyMark & Shape;

type Shape =
  | {
      readonly kind: 'line';
      readonly points: readonly Point[];
      readonly closed?: true;
      /** #rrggbb; none where left out. */
      readonly fill?: string;
      readonly stroke?: Stroke;
    }
  | {
      /** Many lines of one kind: thousands of them make a view. */
      readonly kind: 'strokes';
      readonly paths: readonly (readonly Point[])[];
      readonly stroke: Stroke;
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
