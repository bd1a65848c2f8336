/** A sitting that cannot be reckoned: what is wrong, and what would be taken. */
export interface SittingRefused {
  readonly refused: { readonly what: string; readonly accepted: string };
}

export const refuse = (what: string, accepted: string): SittingRefused => ({ refused: { what, accepted } });
