import picocolors from 'picocolors';
import type { Colour } from '../index.js';
import { machineStop } from './machine-error.js';

/** Where a command speaks: data to `out`, everything else to `err`. */
export interface Terminal {
  readonly out: (text: string) => Promise<void>;
  readonly err: (text: string) => Promise<void>;
  readonly colour: Colour;
  /** Columns of a page. */
  readonly width: number;
  /** Whether somebody sits there to answer questions. */
  readonly interactive: boolean;
  /** Whether a bar may be drawn on `err`. */
  readonly showsProgress: boolean;
}

/** Wider lines are hard to read, and narrower tables fall apart. */
const WIDEST = 100;
const NARROWEST = 60;

export function processTerminal(): Terminal {
  const { stdin, stdout, stderr } = process;
  const columns = stdout.isTTY ? stdout.columns : WIDEST;
  return {
    out: (text) => write(stdout, text),
    err: (text) => write(stderr, text),
    colour: colours(stdout.isTTY === true && picocolors.isColorSupported),
    width: Math.max(NARROWEST, Math.min(columns, WIDEST)),
    interactive: stdin.isTTY === true && stderr.isTTY === true,
    showsProgress: stderr.isTTY === true,
  };
}

export function colours(enabled: boolean): Colour {
  const { bold, dim, red, yellow, cyan } = picocolors.createColors(enabled);
  return { heading: bold, faint: dim, error: red, warning: yellow, note: cyan };
}

/** Writes and waits. A reader that has gone away (as `head` does) is no failure; a full disk behind `>` is. */
function write(stream: NodeJS.WriteStream, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    stream.write(text, (error) => {
      if (error === null || error === undefined || ('code' in error && error.code === 'EPIPE')) resolve();
      else reject(machineStop('Output', error));
    });
  });
}
