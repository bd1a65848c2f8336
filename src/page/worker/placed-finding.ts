import type { Finding } from '../../index.js';

/** A finding, and where on the camera it is. */
export interface PlacedFinding extends Finding {
  /** Ids of the parts that it is about; none where it is about a figure or a key alone. */
  readonly parts: readonly string[];
  /** The set-up that it tells of, and how far the slide is drawn there, mm; null where it holds in all of them. */
  readonly setup: string | null;
  readonly rear: number | null;
}
