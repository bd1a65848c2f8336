import type { ClosedPath, Path } from '../geometry/path.js';
import type { Matrix4 } from '../geometry/placement.js';
import type { SolidRecipe } from '../geometry/solid.js';

/** What moves together: the front stands on the tailboard, the rear slides, the back slides and turns, loose things are taken out. */
export type Group = 'front' | 'rear' | 'back' | 'loose' | { readonly holder: string };

export interface Placement {
  readonly group: Group;
  /** From the part's own frame (x, y in the sheet, material from 0 to +thickness in z) to the camera's frame at the closest station. */
  readonly matrix: Matrix4;
  /** Of a middle box, in group front: it stays there until the rear has slid so far, and is then drawn along by its stop. */
  readonly drawnFrom?: number;
  /** Names of the set-ups in which the part stands here; left out where it always does. */
  readonly when?: readonly string[];
}

export interface Join {
  readonly to: string;
  readonly by: 'finger' | 'glue' | 'slide' | 'screw' | 'press' | 'rest';
}

interface AnyPart {
  /** Short mark without points or spaces: F1, R3, lens-clamp. */
  readonly id: string;
  readonly name: string;
  readonly placements: readonly Placement[];
  readonly joins: readonly Join[];
}

/** Words engraved on a piece in a single-line letter: the lower left corner of the line, cap height, turn anticlockwise in rad. */
export interface Mark {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly turn: number;
}

/** A FINISHED piece of sheet, seen on the face that the laser sees; material from 0 to +thickness in z. */
export interface FlatPart extends AnyPart {
  readonly kind: 'flat';
  /** Material with its thickness, such as plywood-4.05: the name of the sheets that it is cut from. */
  readonly material: string;
  readonly thickness: number;
  /** Along which of the part's own axes the face grain must lie. */
  readonly grain: 'x' | 'y' | 'any';
  /** Anticlockwise. */
  readonly outline: ClosedPath;
  /** Clockwise. */
  readonly holes: readonly ClosedPath[];
  /** Scales, arrows, index lines. */
  readonly engraving: readonly Path[];
  /** Words, still to be turned into strokes. */
  readonly marks: readonly Mark[];
  /** It is only kept here, and does its work elsewhere: it may lie in its place in any way. */
  readonly kept?: true;
  /** The face of a holder that is made: what bears on the camera. All else of the holder is in its group. */
  readonly role?: 'holder';
  readonly massKg: number;
}

/** A printed piece, lying on the bed as it is printed. */
export interface PrintedPart extends AnyPart {
  readonly kind: 'printed';
  readonly material: string;
  readonly solid: SolidRecipe;
  /** Width, depth and height on the bed. */
  readonly size: readonly [number, number, number];
  /** Of what is used away from the camera and has no place in it: the part that it is set on, and its place in that part's frame. */
  readonly usedOn?: { readonly part: string; readonly matrix: Matrix4 };
  readonly massKg: number;
}

/** A bought thing, as a simple stand-in of the size that it has when fitted. */
export interface BoughtPart extends AnyPart {
  readonly kind: 'bought';
  /** A sheet: the film or paper in a holder that is made. */
  readonly role?: 'lens' | 'ground-glass' | 'holder' | 'sheet' | 'window';
  readonly shape:
    | {
        readonly form: 'plate';
        readonly thickness: number;
        readonly outline: ClosedPath;
        readonly holes: readonly ClosedPath[];
      }
    | {
        readonly form: 'cylinder';
        readonly diameter: number;
        readonly length: number;
        /** Of a screw or bolt, at which end of its own z it has its head: it is driven from there, tip first. */
        readonly head?: 'start' | 'end';
      };
  /** Mass of one piece. */
  readonly massKg: number;
}

export type Part = FlatPart | PrintedPart | BoughtPart;

/** A line of the shopping list. */
export interface Hardware {
  readonly name: string;
  readonly size: string;
  readonly count: number;
  readonly for: string;
}
