/** From the lower to the upper limit, mm. */
type Range = readonly [low: number, high: number];

/**
 * How far the ground glass and the film of a holder may stand apart along the axis, and by whose fault, mm: above 0 where
 * the glass stands behind the film.
 */
export interface RegisterBudget extends RegisterSpread {
  readonly holder: string;
  /** In the middle of the picture, or at the corner where yaw and tilt reach most. */
  readonly at: 'centre' | 'edge';
  /** As it is drawn, nothing straying. */
  readonly nominal: number;
  /** Allowed either way: a quarter of the depth of focus at infinity; at the edge half of it at the nearest. */
  readonly tolerance: number;
  /** The same after what was glued has been measured, and shimmed to the holder. */
  readonly measured: RegisterSpread;
  /** Which one or two measurements halve the interval, and how far it then reaches. */
  readonly toHalve: string;
}

/** How far it goes: cut and glued, nothing measured, where nothing else is said. */
export interface RegisterSpread {
  /** Where everything strays the same way. */
  readonly worst: Range;
  /** In 19 of 20 cameras. */
  readonly interval95: Range;
  /** What strays, the largest share of the variance first. */
  readonly contributors: readonly RegisterContributor[];
}

export interface RegisterContributor {
  readonly name: string;
  /** In the worst case, all its pieces together. */
  readonly half: number;
  /** From 0 to 1. */
  readonly share: { readonly variance: number; readonly worst: number };
  /** What to measure or to do, to make it smaller. */
  readonly measure: string;
}
