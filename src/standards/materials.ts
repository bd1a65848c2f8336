import type { Cited } from './cited.js';

/** A range that sources agree on no better than this. */
export interface Band {
  readonly least: number;
  readonly most: number;
}

const BIRCH_SHEET =
  'birch plywood data sheet, vdocuments.site/birch-plywood-datasheet-l-birch-plywood-datasheetl-average-lower-limit-upper.html';
const FINNISH = 'from memory: Handbook of Finnish Plywood; not read';

/** Mean density of birch plywood where the sheet's own is not known, kg/m³. */
export const birchDensity: Cited<number> = { value: 680, source: `${FINNISH}, mean for birch` };

/** Birch plywood as one mill sells it: the measured sheet is never the nominal one. */
export interface SheetGrade {
  /** mm */
  readonly nominal: number;
  readonly plies: Cited<number>;
  /** Mean thickness, mm. */
  readonly mean: Cited<number>;
  /** Limits of the thickness, mm. */
  readonly limits: Cited<Band>;
  /** kg/m³ */
  readonly density: Cited<number>;
}

const grade = (
  nominal: number,
  plies: number,
  mean: number,
  least: number,
  most: number,
  density: number,
): SheetGrade => ({
  nominal,
  plies: { value: plies, source: BIRCH_SHEET },
  mean: { value: mean, source: BIRCH_SHEET },
  limits: { value: { least, most }, source: BIRCH_SHEET },
  density: { value: density, source: BIRCH_SHEET },
});

export const birchGrades: readonly SheetGrade[] = [
  grade(4, 3, 3.8, 3.5, 4.1, 660),
  grade(6.5, 5, 6.4, 6.1, 6.9, 670),
  grade(9, 7, 9.2, 8.8, 9.5, 710),
  grade(12, 9, 12, 11.5, 12.5, 695),
];

/** Mass of a sheet, kg, from mm and kg/m³. */
export const sheetMassKg = (width: number, height: number, thickness: number, density: number): number =>
  (width * height * thickness * density) / 1e9;

/** Birch veneer before it is laid up. */
export const birchVeneer: {
  readonly ply: Cited<number>;
  readonly sandedFace: Cited<number>;
  readonly modulus: Cited<number>;
  readonly bendingStrength: Cited<number>;
} = {
  /** mm */
  ply: { value: 1.4, source: BIRCH_SHEET },
  /** mm: what sanding leaves of a face. */
  sandedFace: { value: 1.1, source: FINNISH },
  /** Along the grain, N/mm². */
  modulus: { value: 17500, source: FINNISH },
  /** Characteristic, along the grain, N/mm². */
  bendingStrength: { value: 70, source: FINNISH },
};

/**
 * Plies of a birch sheet from face to face, mm: three below 5 mm, two more for each 2.8; veneers as they are laid up, the
 * faces taking what is left.
 */
export function birchPlies(thickness: number): readonly number[] {
  const veneer = birchVeneer.ply.value;
  const count = Math.max(3, 2 * Math.round((thickness - 2 * birchVeneer.sandedFace.value) / (2 * veneer) + 0.5) + 1);
  const face = (thickness - (count - 2) * veneer) / 2;
  const inner = Array.from({ length: count - 2 }, () => veneer);
  return face > 0 ? [face, ...inner, face] : Array.from({ length: count }, () => thickness / count);
}

/**
 * Characteristic bending strength of a birch sheet, N/mm²: that of the veneer, in the share of its modulus that the
 * sheet has. Across the face grain the sanded faces carry nothing and the outermost fibre that does is nearer the middle.
 * Source: from memory, Handbook of Finnish Plywood, whose table the formula gives again.
 *
 * @param modulus of the sheet in the direction of the span
 * @param thickness of the sheet, mm
 */
export function bendingStrength(modulus: number, thickness: number, span: 'along' | 'across'): number {
  const share = (birchVeneer.bendingStrength.value * modulus) / birchVeneer.modulus.value;
  return span === 'along' ? share : (share * thickness) / (thickness - 2 * birchVeneer.sandedFace.value);
}

const TABLE = 'friction table, howwhy.nfshost.com/new/book1/motion/coefficients.html';
const THREAD = 'thread on testing wood friction, eng-tips.com/viewthread.cfm?qid=218777';

/**
 * Coefficients of friction. Sources differ: take the high end where something may bind, the low end where something
 * must hold.
 */
export const friction: Readonly<Record<'woodOnWood' | 'woodOnWoodMoving' | 'metalOnWood', Cited<Band>>> = {
  woodOnWood: {
    value: { least: 0.25, most: 0.5 },
    source: `0.5: ${TABLE}; 0.45: ${THREAD}; 0.25 to 0.5: landscapefacilities.com/OutdoorTablesFAQ/56960.html`,
  },
  woodOnWoodMoving: { value: { least: 0.3, most: 0.3 }, source: TABLE },
  metalOnWood: {
    value: { least: 0.2, most: 0.6 },
    source: `0.5 at rest, 0.3 moving: ${TABLE}; 0.2 to 0.6: seaintarchive.org/mailarchive/2002a/msg01132.html`,
  },
};
