/** What changed from one camera to another, as `compare --json` prints it. Lengths in mm. */
export interface CompareDocument {
  readonly schema: 1;
  /** Figures by their names in `plan --json`; null where a camera has none. */
  readonly changed: readonly ChangedFigure[];
  /** Parts of the later camera that the earlier one does not have: other shape, other thickness, new, or more of them. */
  readonly recut: readonly string[];
  /** Of `recut`, those that are the same but for a wider opening: where one is glued in, it is sawn out instead. */
  readonly sawn: readonly string[];
  /** Parts of the later camera that the earlier one has. */
  readonly keeps: readonly string[];
  /** What the earlier camera could and the later one cannot; and what it cannot in the boxes as they are. */
  readonly lost: readonly Loss[];
  /** Why each of `recut` is cut again. */
  readonly why: Readonly<Record<string, string>>;
  /** Of `keeps`, those that had another mark, and which: holders that stand in another order. */
  readonly renamed: Readonly<Record<string, string>>;
  /** Of `keeps`, those whose scale, lines or words are engraved otherwise. */
  readonly engraved: readonly string[];
  /** Of `keeps`, those that are glued to one that is cut again: of a camera that is glued up they are lost with it. */
  readonly glued: readonly string[];
  /** Parts of the earlier camera that the later one has no use for. */
  readonly left: readonly string[];
  /** Each holder of the later camera, its lens before it, in the boxes of the earlier camera. */
  readonly inOldBoxes: readonly HolderInOldBoxes[];
}

export interface ChangedFigure {
  readonly figure: string;
  readonly before: Shown;
  readonly after: Shown;
}

type Shown = number | string | boolean | null;

export interface Loss {
  readonly what: string;
  readonly why: string;
}

export interface HolderInOldBoxes {
  readonly holder: string;
  /** Whether there is any distance at which it is sharp. */
  readonly focuses: boolean;
  /** Magnifications between which the slide takes it: 0 is infinity. */
  readonly farthest: number;
  readonly nearest: number;
  /** What the ground glass, or the holder, then stands on. */
  readonly spacer: {
    readonly under: 'glass' | 'holder' | 'none';
    readonly thickness: number;
    readonly plies: readonly number[];
    readonly shims: readonly number[];
    /** Thickness less plies and shims, signed; of one that was measured, what it should be less what it is. */
    readonly remainder: number;
    /** Only where it was measured, glued; and the shims that mend it. */
    readonly measured?: number;
    readonly add?: readonly number[];
    readonly takeOut?: readonly number[];
  };
}
