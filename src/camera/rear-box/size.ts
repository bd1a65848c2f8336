import { type FingerRow, fingerRow } from '../../joinery/finger-joint.js';
import type { Wood } from '../wood.js';

export interface RearBox {
  readonly wood: Wood;
  readonly inside: number;
  readonly outside: number;
  readonly length: number;
  /** z of the front edge and of the rear edge (the standard's front face), at the closest station. */
  readonly front: number;
  readonly rear: number;
  readonly clearance: number;
  /** Free thickness of the felt. */
  readonly felt: number;
  readonly feltWidth: number;
  readonly overlapRequired: number;
  /** The box in which it slides. */
  readonly slidesIn: 'front box' | 'middle box';
  /** z of the front edges of the two felt bands. */
  readonly bands: readonly [number, number];
  readonly rows: { readonly long: FingerRow; readonly standard: FingerRow };
}

export interface RearBoxGiven {
  readonly wood: Wood;
  readonly inside: number;
  readonly outside: number;
  readonly length: number;
  readonly rear: number;
  readonly clearance: number;
  readonly overlapRequired: number;
  readonly feltWidth: number;
  readonly slidesIn: RearBox['slidesIn'];
}

/** Free thickness of the felt that suits a gap: 1.3 times, in the half millimetres that felt is sold in (common practice, no source). */
export const feltFor = (gap: number): number => Math.ceil(2 * 1.3 * gap - 1e-9) / 2;

export function sizeRearBox(given: RearBoxGiven): RearBox {
  const { wood, inside, length, rear, clearance, overlapRequired, feltWidth } = given;
  const front = rear - length;
  // both bands stay inside the front box at full draw; the first stands back from the edge so that it is not rubbed off
  const last = front + Math.min(overlapRequired, length) - feltWidth - 1;
  return {
    ...given,
    front,
    felt: feltFor(clearance),
    bands: [front + 1, last],
    rows: {
      long: fingerRow(front, rear, wood.ply.thickness),
      standard: fingerRow(-inside / 2, inside / 2, wood.ply.thickness),
    },
  };
}
