import { compose, type Matrix4 } from '../../geometry/placement.js';
import { circle } from '../../geometry/shapes.js';
import { boughtPlate, joined } from '../../joinery/plate.js';
import type { Hardware, Part, PrintedPart } from '../../model/part.js';
import { BESIDE_CAMERA } from '../beside-camera.js';
import { inStances, type Stance } from '../loose.js';
import type { TankFittingsGiven } from './given.js';
import { placeCap, placeFunnel, placeGasket, placeInsert } from './place.js';
import { capRecipe, funnelRecipe, insertRecipe } from './recipe.js';
import type { TankFittings } from './size.js';

/** The fittings on a tank in the camera. */
export interface FittedTank {
  /** The holder's number, with which the ids of its fittings end. */
  readonly number: number;
  /** The holder's name, by which its set-ups are known. */
  readonly name: string;
  readonly given: TankFittingsGiven;
  readonly fittings: TankFittings;
  /** From the holder's frame to the camera's, upright, at the closest station. */
  readonly place: Matrix4;
  readonly stance: Stance;
  /** Ids of the plies that the inserts are glued to. */
  readonly into: readonly string[];
}

const MATERIAL = 'PETG';
/** kg/mm³: 1.27 g/cm³; M8.08 [verified: R64, R65, R66], 1.25 to 1.29. */
const DENSITY = 1.27e-6;
/** kg/mm³ of closed-cell foam; common practice, no source. */
const FOAM = 0.1e-6;

/** Ids of the fittings of a holder. */
export const fittingIds = (number: number) => ({
  spout: `tank-spout-${number}`,
  vent: `tank-vent-${number}`,
  cap: `tank-cap-${number}`,
  gasket: `tank-seal-${number}`,
  funnel: `tank-funnel-${number}`,
});

/** Spout and vent in the wall, each with its cap on; the funnel, which is used away from the camera, stands nowhere in it. */
export function tankFittingParts({ number, name, given, fittings, place, stance, into }: FittedTank): readonly Part[] {
  const { spout, vent, cap, funnel } = fittings;
  const ids = fittingIds(number);
  const at = (...places: readonly Matrix4[]) =>
    places.flatMap((one) => inStances({ holder: name }, compose(place, one), [stance]));
  const onBoth = (within: (insert: typeof spout) => Matrix4) =>
    at(...[spout, vent].map((insert) => compose(placeInsert(given, insert), within(insert))));
  const print = (
    part: Pick<PrintedPart, 'id' | 'name' | 'solid' | 'size' | 'placements' | 'joins' | 'usedOn'>,
    volume: number,
  ) => ({ kind: 'printed', material: MATERIAL, massKg: volume * DENSITY, ...part }) as const;
  const insert = (what: 'spout' | 'vent') => {
    const own = fittings[what];
    return print(
      {
        id: ids[what],
        name: `${what} of the ${name}`,
        solid: insertRecipe(own),
        size: own.size,
        placements: at(placeInsert(given, own)),
        joins: joined('glue', ...into),
      },
      own.volume,
    );
  };
  const area = (Math.PI / 4) * cap.gasket.diameter ** 2;
  return [
    insert('spout'),
    insert('vent'),
    print(
      {
        id: ids.cap,
        name: `cap of spout and vent of the ${name}`,
        solid: capRecipe(cap),
        size: cap.size,
        placements: onBoth((one) => placeCap(one, cap)),
        joins: joined('press', ids.spout, ids.vent),
      },
      cap.volume,
    ),
    boughtPlate({
      id: ids.gasket,
      name: 'gasket of foam in a cap',
      thickness: cap.gasket.pressed,
      outline: circle(0, 0, cap.gasket.diameter),
      holes: [],
      placements: onBoth(placeGasket),
      joins: joined('press', ids.cap),
      massKg: area * cap.gasket.thickness * FOAM,
    }),
    print(
      {
        id: ids.funnel,
        name: `funnel for the ${name}`,
        solid: funnelRecipe(funnel),
        size: funnel.size,
        placements: [],
        joins: [],
        usedOn: { part: ids.spout, matrix: placeFunnel(spout, funnel) },
      },
      funnel.volume,
    ),
  ];
}

export const tankFittingHardware = ({ name, number, fittings }: FittedTank): readonly Hardware[] => [
  {
    name: 'funnel, printed',
    size: `${BESIDE_CAMERA}/${fittingIds(number).funnel}.stl`,
    count: 1,
    for: `pouring baths into the ${name}`,
  },
  {
    name: 'closed-cell foam, resistant to the baths',
    size: `${fittings.cap.gasket.thickness} × 15 × 15`,
    count: 2,
    for: `gaskets in the caps of the ${name}`,
  },
];
