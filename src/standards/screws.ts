import type { Cited } from './cited.js';

/** Metric coarse threads that the camera is screwed together with. */
export type MetricThread = 'M3' | 'M4' | 'M5' | 'M6';

/** How closely a hole lets its screw pass. ISO 273 calls these series fine (H12), medium (H13) and coarse (H14). */
type Closeness = 'fine' | 'medium' | 'coarse';

const ISO_273 = 'ISO 273, clearance holes: engineeringhardware.com/?p=50';
const ISO_4032 =
  'ISO 4032: trojansf.co.uk/standards/iso-4032; second table labbook.skippy.org.uk/projects/kicad/nuts/start';
const ISO_7089 =
  'ISO 7089: designparams.com/parts/washers/flat-washer/; second table ' +
  'engineeringhardware.com/guide/standard/iso-7089-cad-svg-086-washer/';
const ISO_4762 = 'ISO 4762: codecupboard.com/2019/07/capscrews.html; second table engineeringhardware.com/?p=12';
const ISO_4762_KNURLED = 'ISO 4762, knurled head: geartoolkit.com/standard/iso/iso-4762/';
const ISO_7380 = 'ISO 7380-1: scribd.com/doc/270233937/ISO-7380';
const COARSE_PITCH = 'thread sizes reference: utilitiesbunker.com/kb/thread-sizes-reference';

/** One column of a table, every value with the table's source. */
const column = <K extends string>(source: string, values: Readonly<Record<K, number>>) =>
  Object.fromEntries(Object.entries(values).map(([key, value]) => [key, { value, source }])) as {
    readonly [Key in K]: Cited<number>; // fromEntries forgets its keys
  };

/** Diameter of the hole that a screw passes through, mm. */
export const clearanceHole: Readonly<Record<MetricThread | 'M8', Readonly<Record<Closeness, Cited<number>>>>> = {
  M3: column(ISO_273, { fine: 3.2, medium: 3.4, coarse: 3.6 }),
  M4: column(ISO_273, { fine: 4.3, medium: 4.5, coarse: 4.8 }),
  M5: column(ISO_273, { fine: 5.3, medium: 5.5, coarse: 5.8 }),
  M6: column(ISO_273, { fine: 6.4, medium: 6.6, coarse: 7 }),
  M8: column(ISO_273, { fine: 8.4, medium: 9, coarse: 10 }),
};

/**
 * Hexagon nuts, mm. A captive pocket must take the largest nut of the standard, so `acrossFlats` and `height` are its
 * upper limits; `height` of M5 and M6 is above the 4.0 and 5.0 of the older DIN 934, which some tables still print.
 * `acrossCorners` is the least that a nut may measure over its rounded corners, never the size of a pocket's corners
 * (`sharpCorners`).
 */
export const nuts = {
  M3: column(ISO_4032, {
    acrossFlats: 5.5,
    acrossFlatsLeast: 5.32,
    height: 2.4,
    heightLeast: 2.15,
    acrossCorners: 6.01,
  }),
  M4: column(ISO_4032, { acrossFlats: 7, acrossFlatsLeast: 6.78, height: 3.2, heightLeast: 2.9, acrossCorners: 7.66 }),
  M5: column(ISO_4032, { acrossFlats: 8, acrossFlatsLeast: 7.78, height: 4.7, heightLeast: 4.4, acrossCorners: 8.79 }),
  M6: column(ISO_4032, {
    acrossFlats: 10,
    acrossFlatsLeast: 9.78,
    height: 5.2,
    heightLeast: 4.9,
    acrossCorners: 11.05,
  }),
} as const;

/** Over the corners of a hexagon whose corners are sharp, as a cut or printed pocket has them: 2s/√3, plane geometry. */
export const sharpCorners = (acrossFlats: number): number => (2 * acrossFlats) / Math.sqrt(3);

/** Plain washers, mm. */
export const washers = {
  M3: column(ISO_7089, { hole: 3.2, outside: 7, thickness: 0.5 }),
  M4: column(ISO_7089, { hole: 4.3, outside: 9, thickness: 0.8 }),
  M5: column(ISO_7089, { hole: 5.3, outside: 10, thickness: 1 }),
  M6: column(ISO_7089, { hole: 6.4, outside: 12, thickness: 1.6 }),
} as const;

/** Cap heads with a hexagon socket, mm. A counterbore must take the knurled head; `socket` is the size of the key. */
export const capHeads = {
  M3: { ...column(ISO_4762, { plain: 5.5, height: 3, socket: 2.5 }), ...column(ISO_4762_KNURLED, { knurled: 5.68 }) },
  M4: { ...column(ISO_4762, { plain: 7, height: 4, socket: 3 }), ...column(ISO_4762_KNURLED, { knurled: 7.22 }) },
  M5: { ...column(ISO_4762, { plain: 8.5, height: 5, socket: 4 }), ...column(ISO_4762_KNURLED, { knurled: 8.72 }) },
  M6: { ...column(ISO_4762, { plain: 10, height: 6, socket: 5 }), ...column(ISO_4762_KNURLED, { knurled: 10.22 }) },
} as const;

/** Button heads with a hexagon socket, mm. */
export const buttonHeads = {
  M3: column(ISO_7380, { diameter: 5.7, height: 1.65, socket: 2 }),
  M4: column(ISO_7380, { diameter: 7.6, height: 2.2, socket: 2.5 }),
  M5: column(ISO_7380, { diameter: 9.5, height: 2.75, socket: 3 }),
  M6: column(ISO_7380, { diameter: 10.5, height: 3.3, socket: 4 }),
} as const;

const CARRIAGE_BOLT = 'from memory: DIN 603, cup head square neck bolts; not read';

/**
 * Carriage bolt M6 of the lock, mm: the head's greatest diameter and height, the square neck that keeps it from turning,
 * and the hole that takes the head.
 */
export const carriageBolt = {
  ...column(CARRIAGE_BOLT, { headDiameter: 16.55, headHeight: 3.88, squareNeck: 6.48, neckLength: 4.6 }),
  headHole: { value: 16.5, source: 'common practice, no source: heads are made near 16 and drop in' },
} as const;

/** Pitch of the coarse thread, mm. */
export const coarsePitch = column(COARSE_PITCH, { M3: 0.5, M4: 0.7, M5: 0.8, M6: 1 });

/** Diameter of a thread without its letter, mm. */
export const nominalDiameter = (thread: MetricThread): number => Number(thread.slice(1));

/** Drill for cutting the coarse thread: diameter less pitch, mm, as the drill tables round it (M4: 3.3). */
export const tapDrill = (thread: MetricThread): number => nominalDiameter(thread) - coarsePitch[thread].value;

/**
 * Area that carries a bolt's tension, mm²: (π/4)((d2 + d3)/2)², d2 = d − 0.649519 P, d3 = d − 1.226869 P.
 * Source of the formula: from memory, ISO 898-1; its tables were read (usefastener.com/knowledge/404).
 */
export function stressArea(thread: MetricThread): number {
  const d = nominalDiameter(thread);
  const P = coarsePitch[thread].value;
  const mean = (d - 0.649519 * P + (d - 1.226869 * P)) / 2;
  return (Math.PI / 4) * mean * mean;
}

const NUT_FACTORS = '"Bolt preload and clamp force fundamentals", partcalc.com/blog/bolt-preload; ±25 % in practice';

/** Nut factor K of `preload`, by what lies between the threads. Scatters by a quarter either way in practice. */
export const nutFactor = column(NUT_FACTORS, {
  drySteel: 0.2,
  lightOil: 0.15,
  waxed: 0.1,
  zincDipped: 0.25,
  cadmium: 0.12,
});

/**
 * Pull of a bolt tightened by hand: F = T/(K d), N.
 *
 * @param torque N·mm
 * @param factor nut factor, see `nutFactor`
 * @param diameter nominal, mm
 * Source: the worked example of an M12 bolt (70 % of proof stress, K 0.2, 82 N m) and the table of nut factors.
 */
export const preload = (torque: number, factor: number, diameter: number): number => torque / (factor * diameter);

/** Torque that gives a bolt its pull, N·mm: T = K d F, the inverse of `preload`. */
export const tighteningTorque = (force: number, factor: number, diameter: number): number => force * factor * diameter;
