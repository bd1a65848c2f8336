import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';

/** A design on which the program failed, or told what cannot be. */
export interface Fault {
  readonly stage: Stage | 'judge' | 'kill';
  readonly number: number;
  readonly what: string;
}

export type Stage = 'plan' | 'check';

interface StageKept {
  /** First numbers of the runs of designs that were looked at. */
  done: number[];
  /** How many ended how. */
  fates: Record<string, number>;
}

/** What a soak has found so far, so that it can be left and gone on with. */
export interface Kept {
  readonly plan: StageKept;
  readonly check: StageKept;
  /** Numbers of the designs against which the check had nothing to say. */
  readonly sound: number[];
  readonly judged: number[];
  /** How many builds were killed. */
  killed: number;
  readonly faults: Fault[];
}

export function kept(file: string): Kept {
  if (existsSync(file)) return JSON.parse(readFileSync(file, 'utf8'));
  const nothing = () => ({ done: [], fates: {} });
  return { plan: nothing(), check: nothing(), sound: [], judged: [], killed: 0, faults: [] };
}

/** All of it or none: a soak may be stopped at any moment. */
export function keep(file: string, state: Kept): void {
  writeFileSync(`${file}.tmp`, JSON.stringify(state));
  renameSync(`${file}.tmp`, file);
}
