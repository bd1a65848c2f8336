import { type ChildProcess, fork } from 'node:child_process';
import type { Stage } from './kept.js';
import type { Fate } from './look.js';

export interface Asked {
  readonly stage: Stage;
  readonly seed: number;
  readonly number: number;
}

export type Seen = { readonly fate: Fate } | { readonly fault: string };

/** A design that takes longer hangs, s: most are planned in 5 ms and checked in 10 s. */
const LONGEST: Readonly<Record<Stage, number>> = { plan: 20, check: 600 };

/** Looks at designs one after the other, in a process of its own: what hangs there, or ends it, is told of the design. */
export class Looker {
  private readonly seed: number;
  private child: ChildProcess | null = null;

  constructor(seed: number) {
    this.seed = seed;
  }

  see(stage: Stage, number: number): Promise<Seen> {
    const child = this.child ?? this.started();
    return new Promise((resolve) => {
      const settle = (seen: Seen) => {
        clearTimeout(timer);
        child.off('message', settle);
        child.off('exit', died);
        resolve(seen);
      };
      const died = (code: number | null, signal: string | null) => {
        this.child = null;
        settle({ fault: `the process ended with ${code ?? signal}` });
      };
      const timer = setTimeout(() => {
        this.end();
        settle({ fault: `not done after ${LONGEST[stage]} s` });
      }, 1000 * LONGEST[stage]);
      child.on('message', settle);
      child.on('exit', died);
      child.send({ stage, seed: this.seed, number } satisfies Asked);
    });
  }

  end(): void {
    this.child?.kill('SIGKILL');
    this.child = null;
  }

  private started(): ChildProcess {
    this.child = fork(new URL('./look-process.ts', import.meta.url), { execArgv: ['--import', 'tsx'] });
    return this.child;
  }
}
