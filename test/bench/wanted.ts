import { parseArgs } from 'node:util';

export interface BenchOptions {
  /** Time for an instance, s. */
  readonly seconds: number;
  readonly seeds: number;
  readonly turns: boolean;
  readonly json: boolean;
  /** Where to write what was found. */
  readonly layouts: string | undefined;
}

export interface Wanted {
  readonly kind: string | undefined;
  readonly file: string | undefined;
  readonly options: BenchOptions;
}

/** What was asked for on the command line of the bench. */
export function wanted(words: readonly string[]): Wanted {
  const { positionals, values } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      seconds: { type: 'string', default: '1' },
      seeds: { type: 'string', default: '1' },
      turns: { type: 'boolean', default: false },
      json: { type: 'boolean', default: false },
      layouts: { type: 'string' },
    },
  });
  const [kind, file] = positionals;
  const { turns, json, layouts } = values;
  return {
    kind,
    file,
    options: { seconds: Number(values.seconds), seeds: Number(values.seeds), turns, json, layouts },
  };
}
