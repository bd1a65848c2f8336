import type { Finding } from './finding.js';

/**
 * A run of kits, all of one camera: what is cut, printed and bought for all of them, what it costs, and what goes into
 * which box. What kits.json holds. Lengths in mm, masses in kg.
 */
export interface KitsDocument {
  readonly schema: 1;
  readonly name: string;
  readonly revision: string;
  readonly copies: number;
  readonly sheets: readonly KitSheets[];
  readonly laser: KitLaser;
  readonly prints: readonly KitPrint[];
  readonly hardware: readonly KitHardware[];
  /** What the camera is built round, which no list of hardware has: lens and holders. */
  readonly around: readonly KitAround[];
  readonly cost: KitCost;
  readonly kits: readonly Kit[];
  readonly findings: readonly Finding[];
  /** Rules of level error that are broken and that were waived. */
  readonly despite: readonly string[];
}

/** Sheets of one material and size, for all kits. */
export interface KitSheets {
  readonly material: string;
  readonly width: number;
  readonly height: number;
  readonly sheets: number;
  /** Of them, those that are there already: remnants and what was counted. */
  readonly atHand: number;
  readonly buy: number;
}

export interface KitLaser {
  /** Whole minutes of each sheet, added up. */
  readonly minutes: number;
  /** m of cuts. */
  readonly metres: number;
}

/** A printed part. */
export interface KitPrint {
  readonly id: string;
  readonly name: string;
  readonly material: string;
  /** Where its files are, without the ending. */
  readonly file: string;
  readonly each: number;
  readonly wanted: number;
  /** Of one, printed solid. */
  readonly mass: number;
}

export interface KitThing {
  readonly name: string;
  /** In one kit. */
  readonly each: number;
  /** In all kits. */
  readonly wanted: number;
}

/** A lens or a holder. */
export interface KitAround extends KitThing {
  /** What it is sold with, and does not stand on any list: its retaining ring. */
  readonly with: string | null;
}

/** A line of the shopping list. */
export interface KitHardware extends KitThing {
  readonly size: string;
  readonly for: string;
  readonly spares: number;
  /** Wanted and spares. */
  readonly total: number;
}

export interface KitCost {
  /** Null where there is no price file: then nothing is priced. */
  readonly currency: string | null;
  readonly lines: readonly CostLine[];
  /** Of the lines; each amount is rounded to hundredths before they are added. */
  readonly total: number;
  readonly perKit: number;
  /** What is needed and has no price. */
  readonly notPriced: readonly string[];
  /** Entries of the price file that nothing of the run goes by. */
  readonly notUsed: readonly string[];
}

export interface CostLine {
  readonly what: string;
  readonly quantity: number;
  readonly unit: string;
  /** Of one unit. */
  readonly price: number;
  readonly amount: number;
}

export interface Kit {
  readonly kit: number;
  readonly parts: readonly KitPart[];
  /** Those that its parts lie on, in the order in which they are cut. */
  readonly sheets: readonly string[];
}

/** The pieces of one part that go into a kit. */
export interface KitPart {
  readonly id: string;
  readonly name: string;
  readonly pieces: readonly { readonly instance: number; readonly sheet: string }[];
}
