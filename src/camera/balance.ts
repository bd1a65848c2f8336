import type { Setup } from '../assembly/build.js';
import { slidBy } from '../assembly/extent.js';
import type { Share } from '../assembly/mass.js';
import { setupsOf, stands } from '../assembly/setups.js';
import type { Holder } from '../design/design.js';
import type { Placement } from '../model/part.js';
import { type Figure, type Formula, formula, measured, told } from './figure.js';
import { inSetups } from './stances.js';

/** Centres of gravity along z, and masses in kg. */
export interface Balance {
  /** Closed, glass and protector in. */
  readonly closest: number;
  /** Open, the heaviest holder in. */
  readonly farthest: number;
  readonly massKg: number;
  readonly loadedKg: number;
  /** Of what slides, open and loaded. */
  readonly sliding: number;
  readonly slidingKg: number;
  readonly figures: BalanceFigures;
}

interface BalanceFigures {
  readonly closest: Figure;
  readonly farthest: Figure;
  readonly mass: Figure;
  readonly sliding: Figure;
  readonly slidingMass: Figure;
}

/** What stands in the camera, and how far the moving groups are slid. */
interface Standing {
  readonly shares: readonly Share[];
  readonly rear: number;
  /** Told from the others by it in symbols. */
  readonly mark: string;
}

/** Mass and centre of gravity along the axis. */
function weighed({ shares, rear }: Standing): { readonly massKg: number; readonly z: number } {
  let massKg = 0;
  let moment = 0;
  for (const share of shares) {
    massKg += share.massKg;
    moment += share.moment + share.massKg * slidBy(share.placement, rear);
  }
  return { massKg, z: moment / massKg };
}

/** z of the centre of gravity closed as for the road, and open with the heaviest holder; that of what slides; their masses. */
export function balanceOf(shares: readonly Share[], holders: readonly Holder[], travel: number): Balance {
  const heaviest = holders.reduce((most, h) => (h.massKg > most.massKg ? h : most));
  const setups = setupsOf(holders.map(inSetups));
  const standing = (setup: Setup | undefined, which: (p: Placement) => boolean) =>
    shares.filter(({ placement: p }) => setup && stands(p, setup) && which(p));
  const exposing = setups.find((s) => s.holder === heaviest.name && !s.focusing);
  const onTheRoad: Standing = { shares: standing(setups.at(-1), () => true), rear: 0, mark: '1' };
  const open: Standing = { shares: standing(exposing, () => true), rear: travel, mark: '2' };
  const moving: Standing = { shares: standing(exposing, (p) => p.group !== 'front'), rear: travel, mark: 's' };
  const [road, loaded, sliding] = [weighed(onTheRoad), weighed(open), weighed(moving)];
  const empty = 'closed, the glass in and no holder';
  const full = `open, the ${heaviest.name} in`;
  const kilograms = { unit: 'kg', source: WEIGHED } as const;
  const middle = { unit: 'mm', source: WEIGHED } as const;
  return {
    closest: road.z,
    farthest: loaded.z,
    massKg: road.massKg,
    loadedKg: loaded.massKg,
    sliding: sliding.z,
    slidingKg: sliding.massKg,
    figures: {
      closest: told('z_1', `z of the centre of gravity, ${empty}`, road.z, () => meanOf(onTheRoad), middle),
      farthest: told('z_2', `z of the centre of gravity, ${full}`, loaded.z, () => meanOf(open), middle),
      mass: told('M', 'mass with the glass and the lens, no holder', road.massKg, () => sumOf(onTheRoad), kilograms),
      sliding: told(
        'z_s',
        `z of the centre of gravity of what slides, ${full}`,
        sliding.z,
        () => meanOf(moving),
        middle,
      ),
      slidingMass: told('M_s', `mass of what slides, ${full}`, sliding.massKg, () => sumOf(moving), kilograms),
    },
  };
}

const WEIGHED = 'weighed from the parts: their volume and density, bought things as weighed';
const OWN = 'weighed from its parts';

const GROUPS = [
  { mark: 'f', what: 'the front group, with the lens' },
  { mark: 'r', what: 'the rear group' },
  { mark: 'b', what: 'the back' },
  { mark: 'g', what: 'what is loose: the glass in its frame, spacer, pins' },
  { mark: 'h', what: 'the holder' },
] as const;

/** Mass and centre of gravity of each group that there is. */
function groupsOf({ shares, rear, mark }: Standing) {
  const [front, sliding, back, loose, held] = GROUPS;
  const homes = { front, rear: sliding, back, loose };
  const groupOf = ({ placement: { group } }: Share) => (typeof group === 'string' ? homes[group] : held);
  return GROUPS.flatMap((group) => {
    const own = shares.filter((share) => groupOf(share) === group);
    if (own.length === 0) return [];
    const { massKg, z } = weighed({ shares: own, rear, mark });
    return [
      {
        mass: measured(`M_${group.mark}${mark}`, `mass of ${group.what}`, massKg, OWN, 'kg'),
        z: measured(`z_${group.mark}${mark}`, 'z of its centre of gravity', z, OWN),
      },
    ];
  });
}

function sumOf(all: Standing): Formula {
  const masses = groupsOf(all).map(({ mass }) => mass);
  return formula(['', ...masses.slice(1).map(() => ' + '), ''], ...masses);
}

/** Moments over masses. */
function meanOf(all: Standing): Formula {
  const groups = groupsOf(all);
  const between = groups.slice(1);
  return formula(
    ['(', ' ', ...between.flatMap(() => [' + ', ' ']), ') / (', ...between.map(() => ' + '), ')'],
    ...groups.flatMap(({ mass, z }) => [mass, z]),
    ...groups.map(({ mass }) => mass),
  );
}
