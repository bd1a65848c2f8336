import { BREAK } from '../design/fields.js';
import { flagOf } from '../design/read-today.js';
import { pathText } from '../design/yaml.js';
import type { ResultEntry } from '../model/sitting-log.js';
import { resultOf } from './read-sitting-log.js';
import { keysOfResultFlags, type ResultFlags } from './result-flags.js';
import { entryFaults, resultSchema } from './sitting-log.js';

/** `--best-strip` for the key `strip`. */
const flagOfKey = (key: string): string | undefined =>
  Object.entries(keysOfResultFlags).flatMap(([flag, its]) => (its === key ? [flagOf(flag)] : []))[0];

/** A result by its flags, read by the schema of the log, so that a flag takes what its key takes. */
export function readResultFlags(
  typed: ResultFlags,
  sheet: number,
): { readonly result: ResultEntry } | { readonly refused: string } {
  const outcome = resultSchema.safeParse(
    {
      sheet,
      looks: typed.result,
      by: numberOf(typed.by),
      strip: numberOf(typed.bestStrip),
      density: typed.readDensity,
      densities: typed.stripDensity,
      wanted: typed.wanted,
      cast: typed.cast,
      castBy: typed.castBy,
      gave: { energy: typed.gaveEnergy, time: typed.gaveTime },
      bath: { start: typed.bathStart, end: typed.bathEnd },
      note: typed.note,
    },
    { jitless: true },
  );
  if (!outcome.success) {
    const [issue] = outcome.error.issues;
    return { refused: refusalOf(issue?.path ?? [], issue?.message ?? '') };
  }
  const [fault] = entryFaults({ result: outcome.data });
  if (fault !== undefined) return { refused: refusalOf(fault.path.slice(1), `${fault.what} ${fault.accepted}`) };
  return { result: resultOf(outcome.data) };
}

/** What is wrong with a key, said of its flag. */
export function refusalOf(path: readonly PropertyKey[], said: string): string {
  const flag = flagOfKey(pathText(path)) ?? flagOfKey(String(path[0])) ?? '--result';
  const inFlags = said
    .replaceAll(BREAK, ' ')
    .replace(
      /\b([Ww]rite) (looks|by|strip|density|cast): /g,
      (_, write: string, key: string) => `${write} ${flagOfKey(key)} `,
    );
  return `${flag}: ${inFlags}`;
}

/** The file has numbers where a command line has texts. */
const numberOf = (text: string | readonly string[] | undefined) =>
  typeof text === 'string' && /^\d+(?:\.\d+)?$/.test(text) ? Number(text) : text;
