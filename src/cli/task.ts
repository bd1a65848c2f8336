import type {
  BuildResult,
  BuiltCamera,
  CheckResult,
  Design,
  KitRunResult,
  PartsResult,
  PartsWanted,
  Prices,
  Progress,
} from '../index.js';

/** Work that takes long enough to be worth breaking off. */
export type Task =
  | { readonly kind: 'check'; readonly design: Design }
  | {
      readonly kind: 'build';
      readonly design: Design;
      readonly despite: readonly string[];
      /** Of the packing; the usual one where it is left out. */
      readonly effort?: number;
      /** The camera that stands already. */
      readonly since?: BuiltCamera;
    }
  | {
      readonly kind: 'kits';
      readonly design: Design;
      readonly copies: number;
      /** Null where nobody says what things cost. */
      readonly prices: Prices | null;
      readonly despite: readonly string[];
      readonly effort?: number;
    }
  | { readonly kind: 'parts'; readonly design: Design; readonly wanted: PartsWanted };

/** What each kind of work comes to. */
export interface Outcome {
  readonly check: CheckResult;
  readonly build: BuildResult;
  readonly kits: KitRunResult;
  readonly parts: PartsResult | { readonly refused: string };
}

/** What the worker sends back: how far it is, and at the end what came of it. */
export type Message = { readonly progress: Progress } | { readonly outcome: Outcome[keyof Outcome] };
