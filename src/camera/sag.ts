import { cantileverSag, cantileverTilt, secondMoment } from '../assembly/statics.js';
import { standardGravity } from '../standards/gravity.js';
import { claim, widest } from './claim.js';
import { constant, type Figure, formula, reckoned, told } from './figure.js';

export interface SagGiven {
  readonly loadN: number;
  /** From the doubler's rear edge to the load. */
  readonly overhang: number;
  readonly width: number;
  readonly thickness: number;
  /** N/mm² */
  readonly modulus: number;
}

/** How the tailboard gives way behind its doubler. */
export interface Sag {
  readonly sag: number;
  /** rad */
  readonly tilt: number;
}

/** The overhang as a cantilever with its load at the end; the doubler does not give. */
export function sagOf({ loadN, overhang, width, thickness, modulus }: SagGiven): Sag {
  const inertia = secondMoment(width, thickness);
  const tilt = cantileverTilt(loadN, overhang, modulus, inertia);
  return { sag: cantileverSag(loadN, overhang, modulus, inertia), tilt };
}

interface SagFigures {
  readonly slidingMass: Figure;
  readonly sliding: Figure;
  readonly tripod: Figure;
  readonly doubler: number;
  readonly width: Figure;
  readonly ply: Figure;
  readonly modulus: Figure;
}

const gravity = constant('G', 'standard gravity, m/s²', standardGravity.value, standardGravity.source, 'times');
const HANDBOOKS = 'handbooks of statics: a cantilever with its load at the end';

/** The same sag, from figures that can be followed. */
export function sagFigure(sag: number, given: SagFigures): Figure {
  const { slidingMass, sliding, tripod, doubler, width, ply, modulus } = given;
  return told(
    'w',
    'sag at the end of the tailboard, open and loaded',
    sag,
    () => {
      const side = constant('b_d', 'side of the doubler under the tailboard', doubler);
      const load = reckoned('F', 'weight of what slides', formula`${slidingMass} ${gravity}`, { unit: 'N' });
      const overhang = widest('a', 'overhang behind the doubler', [
        claim('where the load stands', formula`${sliding} - ${tripod} - ${side} / 2`),
        claim('a load over the doubler', formula`0`),
      ]);
      const inertia = reckoned('I', 'second moment of area', formula`${width} (2 ${ply})^3 / 12`, {
        unit: 'mm⁴',
        source: HANDBOOKS,
      });
      return formula`${load} ${overhang}^3 / (3 ${modulus} ${inertia})`;
    },
    { source: HANDBOOKS },
  );
}
