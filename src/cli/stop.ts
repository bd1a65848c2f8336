/** How a command may end, as scripts see it. */
export const EXIT = { done: 0, ruleBroken: 1, wrongCall: 2, machineFailed: 3, interrupted: 130 } as const;

/** Ends a command early: what to tell the user, and the exit code. The message may be empty where all was said already. */
export class Stop extends Error {
  readonly exitCode: number;

  constructor(exitCode: number, message: string) {
    super(message);
    this.name = 'Stop';
    this.exitCode = exitCode;
  }
}
