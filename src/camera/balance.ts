import type { Setup } from '../assembly/build.js';
import { type PlacedLoad, slid, together } from '../assembly/mass.js';
import { setupsOf, stands } from '../assembly/setups.js';
import type { Holder } from '../design/design.js';
import type { Placement } from '../model/part.js';

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
}

/** z of the centre of gravity closed as for the road, and open with the heaviest holder; that of what slides; their masses. */
export function balanceOf(loads: readonly PlacedLoad[], holders: readonly Holder[], travel: number): Balance {
  const heaviest = holders.reduce((most, h) => (h.massKg > most.massKg ? h : most));
  const setups = setupsOf(holders.map((h) => h.name));
  const loadIn = (setup: Setup | undefined, rear: number, which: (p: Placement) => boolean) =>
    together(loads.filter(({ placement: p }) => setup && stands(p, setup) && which(p)).map((load) => slid(load, rear)));
  const exposing = setups.find((s) => s.holder === heaviest.name && !s.focusing);
  const road = loadIn(setups.at(-1), 0, () => true);
  const loaded = loadIn(exposing, travel, () => true);
  const sliding = loadIn(exposing, travel, (p) => p.group !== 'front');
  return {
    closest: road.at.z,
    farthest: loaded.at.z,
    massKg: road.massKg,
    loadedKg: loaded.massKg,
    sliding: sliding.at.z,
    slidingKg: sliding.massKg,
  };
}
