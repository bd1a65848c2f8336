import { BREAK } from '../design/fields.js';
import { flagOf } from '../design/read-today.js';
import { pathText } from '../design/yaml.js';
import type { ResultEntry, SettingEntry } from '../model/sitting-log.js';
import { resultOf } from './read-sitting-log.js';
import { keysOfResultFlags, type ResultFlags } from './result-flags.js';
import { entryFaults, resultSchema } from './sitting-log.js';

/** `--best-strip` for the key `strip`. */
const flagOfKey = (key: string): string | undefined =>
  Object.entries(keysOfResultFlags).flatMap(([flag, its]) => (its === key ? [flagOf(flag)] : []))[0];

/** A result by its flags, read by the schema of the log, so that a flag takes what its key takes. */
export function readResultFlags(
  typed: ResultFlags,
  { sheet, strips }: SettingEntry,
): { readonly result: ResultEntry } | { readonly refused: string } {
  const outcome = resultSchema.safeParse(
    {
      sheet,
      looks: looksOf(typed),
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
    if (issue?.path[0] === 'strip' && strips.length > 0)
      return {
        refused: `--best-strip: Sheet ${sheet} has ${strips.length} strips. Write a whole number from 1 to ${strips.length}.`,
      };
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
    .replace(/\b([Ww]rite|or) gave: \{ (energy|time): ([^}]+) \}/g, '$1 --gave-$2 $3')
    .replace(
      /\b([Ww]rite) (looks|by|strip|density|wanted|cast): /g,
      (_, write: string, key: string) => `${write} ${flagOfKey(key)} `,
    )
    .replace(/\bDelete the key\b|\bdelete it\b/g, (words) => `${words.charAt(0) === 'D' ? 'Leave' : 'leave'} it out`)
    .replace('Keep strip or densities.', 'Give --best-strip or --strip-density.')
    // what has a blank in it must be typed in quotes, or without the blank
    .replace(/(?<!")\btoo (?:dark|light)\b(?=[,.;]| or |$)/g, '"$&"')
    .replace(/(\d) (C|kJ|J|s|min)\b/g, '$1$2');
  return `${flag}: ${inFlags}`;
}

/** Ways to type a look without a blank. */
const SHORT_LOOKS: Readonly<Record<string, string>> = {
  dark: 'too dark',
  light: 'too light',
  'too-dark': 'too dark',
  'too-light': 'too light',
};

/** Who names the best strip says with it that this strip is right. */
function looksOf({ result, bestStrip, readDensity }: ResultFlags): string | readonly string[] | undefined {
  if (result === undefined) return bestStrip !== undefined && readDensity === undefined ? 'right' : undefined;
  return typeof result === 'string' ? (SHORT_LOOKS[result] ?? result) : result;
}

/** The file has numbers where a command line has texts. */
const numberOf = (text: string | readonly string[] | undefined) =>
  typeof text === 'string' && /^\d+(?:\.\d+)?$/.test(text) ? Number(text) : text;
