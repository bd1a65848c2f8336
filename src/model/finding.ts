/** What a check found: data, never an exception. */
export interface Finding {
  /** Stable, in kebab-case. */
  readonly rule: string;
  readonly level: 'error' | 'warning' | 'note';
  /** What the builder meets, in the builder's words. */
  readonly message: string;
  readonly value?: number;
  readonly limit?: number;
  readonly unit?: string;
  /** The cheapest cure. */
  readonly hint?: string;
  /** Path of the design key that would cure it. */
  readonly about?: string;
}
