import type { WhatIfInput, WhatIfPoint } from '../../../model/what-if.js';

/** What the page keeps for this tray. */
export interface WhatIfState {
  /** Mark of the design that is tried; null before the first. */
  readonly of: string | null;
  readonly inputs: readonly WhatIfInput[];
  /** Path of the input that is tried; null before any is known. */
  readonly path: string | null;
  /** What is known, by the value as it would be written; the present one under NOW. */
  readonly points: Readonly<Record<string, WhatIfPoint>>;
  /** The value that is read out, as it would be written, or NOW. */
  readonly at: string;
  /** Whether points are being asked for. */
  readonly asking: boolean;
}

/** Stands for the present value among those that would be written. */
export const NOW = 'now';

export const firstWhatIf: WhatIfState = { of: null, inputs: [], path: null, points: {}, at: NOW, asking: false };

/** A value that may be read out. */
export interface Stop {
  readonly key: string;
  readonly value: number;
  /** null for the present one. */
  readonly written: string | null;
}

/** All values of the input that is tried, in order, the present one among them. */
export function stopsOf({ inputs, path }: WhatIfState): readonly Stop[] {
  const input = inputs.find((one) => one.path === path);
  if (input === undefined) return [];
  const now: Stop = { key: NOW, value: input.value, written: null };
  return [now, ...input.tries.map(({ value, written }) => ({ key: written, value, written }))].sort(
    (a, b) => a.value - b.value,
  );
}
