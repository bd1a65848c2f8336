/** A number of the design that could have been another one, with the values that are tried for it. */
export interface WhatIfInput {
  /** holders[0].filmDepth */
  readonly path: string;
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  /** What a builder tries first, what else the file says, and what is left to its default. */
  readonly rank: 'first' | 'written' | 'default';
  /** In order, the present one not among them; each as it would be written. */
  readonly tries: readonly WhatIfTry[];
}

export interface WhatIfTry {
  readonly value: number;
  readonly written: string;
}

/** What becomes of the camera at one value. */
export type WhatIfPoint = WhatIfCamera | WhatIfNone;

export interface WhatIfCamera {
  readonly kind: 'camera';
  readonly value: number;
  /** Nearest focus that the boxes could reach, as a magnification. */
  readonly reach: number;
  /** kg, without a holder. */
  readonly mass: number;
  /** In the first layout that is found; null where it was not asked for. */
  readonly sheets: number | null;
  /** Rules of level error that are broken, of the proof none, and what the builder would meet. */
  readonly broken: readonly { readonly rule: string; readonly protects: string }[];
}

/** No such camera, and why. */
export interface WhatIfNone {
  readonly kind: 'none';
  readonly value: number;
  readonly why: string;
}
