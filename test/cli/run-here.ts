import { run } from '../../src/cli/run.js';
import { colours } from '../../src/cli/terminal.js';
import type { Ended } from './scratch.js';

/** One command line inside this process, as quick as a call; nobody sits at its terminal. */
export async function runHere(...words: readonly string[]): Promise<Ended> {
  let out = '';
  let err = '';
  const code = await run(words, {
    out: async (text) => {
      out += text;
    },
    err: async (text) => {
      err += text;
    },
    colour: colours(false),
    width: 100,
    interactive: false,
    showsProgress: false,
  });
  return { code, out, err };
}
