/** One reason why a length must be at least so long. */
export interface Claim {
  readonly because: string;
  readonly value: number;
}

/** A length that more than one object shares: the largest of its claims, and whose it is. */
export interface Claimed extends Claim {
  readonly claims: readonly Claim[];
}

/** The largest claim governs; of equals the first one named. */
export function widest(claims: readonly [Claim, ...Claim[]]): Claimed {
  const governing = claims.reduce((most, claim) => (claim.value > most.value ? claim : most));
  return { ...governing, claims };
}

/** The smallest claim governs, where something must come so near. */
export function narrowest(claims: readonly [Claim, ...Claim[]]): Claimed {
  const governing = claims.reduce((least, claim) => (claim.value < least.value ? claim : least));
  return { ...governing, claims };
}

/** A length that follows from others already on the rod. */
export const derived = (because: string, value: number): Claimed => widest([{ because, value }]);
