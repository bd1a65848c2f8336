import type { Cited } from './cited.js';

const PRACTICE = 'common practice, no source';

/** What a holder in which the print is processed is built to, mm. */
export const tank = {
  /** Chamber wider than the sheet in it, both sides together: liquid runs round its edges. */
  chamberMore: { value: 6, source: PRACTICE },
  /** The glass wider than the chamber, both sides together: half of it lies on the ledge. */
  glassMore: { value: 8, source: PRACTICE },
  /** Silicone round the glass, both sides together. */
  silicone: { value: 1, source: PRACTICE },
  /** Wood round the glass, each side. */
  rim: { value: 7.5, source: PRACTICE },
  /** Least depth of the chamber: twice the layer that covers the sheet, and room for the labyrinths of spout and vent. */
  leastChamber: { value: 12, source: PRACTICE },
  /** Room over a nut in its ply. */
  nutRoom: { value: 0.1, source: PRACTICE },
  /** What the gasket of the lid lies on, across. */
  gasketLand: { value: 6, source: PRACTICE },
  /** Wood between a hole and an edge. */
  web: { value: 3, source: PRACTICE },
  /** From screw to screw of the lid along its rim. */
  screwSpacing: { value: 60, source: PRACTICE },
  /** Liquid over the sheet while the tank lies on its lid. */
  layer: { value: 5, source: PRACTICE },
  /** Least areas of the passages, mm². */
  passage: { value: { spout: 60, vent: 15 }, source: PRACTICE },
  /** Over the spout's mouth while a bath is poured. */
  fillingHead: { value: 30, source: PRACTICE },
} as const satisfies Readonly<Record<string, Cited<unknown>>>;
