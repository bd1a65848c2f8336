import { type LoggedSheet, type Series, sameMaterial } from './logged-sheets.js';

const waits = ({ result }: LoggedSheet): boolean => result === null;

/**
 * The sheet that a result belongs to: it must be the only one that waits of its process, its paper and, where one is
 * named, its batch. Any other choice would be a guess, and a verdict in the wrong series teaches it nonsense.
 */
export function meantSheet(sheets: readonly LoggedSheet[], asked: Series): LoggedSheet | { readonly refused: string } {
  const meant = sheets.filter(
    (sheet) =>
      waits(sheet) &&
      sameMaterial(sheet.setting, asked) &&
      (asked.batch === null || asked.batch === sheet.setting.batch),
  );
  const [only, ...others] = meant;
  if (only === undefined) return { refused: noneWaits(sheets, asked) };
  return others.length > 0 ? { refused: severalWait(meant) } : only;
}

function noneWaits(sheets: readonly LoggedSheet[], asked: Series): string {
  const waiting = sheets.filter(waits);
  if (waiting.length === 0)
    return `${sheets.length === 0 ? 'No sheet was given out yet' : 'Every sheet of the log has its result'}, so no sheet waits for one. Let the log give out a setting first, without --result.`;
  return `No sheet of ${materialInWords(asked)} waits for its result. ${thatWait(waiting)}. Say which with --process, --paper and --batch; a sheet of another batch is given out in a call of its own, without --result.`;
}

function severalWait(meant: readonly LoggedSheet[]): string {
  const batches = new Set(meant.map(({ setting }) => setting.batch));
  const which =
    batches.size === meant.length && !batches.has(null)
      ? 'Say which with --batch.'
      : 'Write the result of one of them into the log by hand.';
  return `${thatWait(meant)}. ${which}`;
}

/** Sheets that wait beside the one that is given out, told so that none is forgotten. */
export function stillWaiting(sheets: readonly LoggedSheet[], given: number): readonly string[] {
  const others = sheets.filter((sheet) => waits(sheet) && sheet.setting.sheet !== given);
  return others.length === 0 ? [] : [`${thatWait(others)}, too.`];
}

/** More of them are only counted. */
const MOST_LISTED = 4;

/** `Sheet 1 (reversal, glossy paper, batch A) and sheet 3 (negative) wait for their results` */
function thatWait(waiting: readonly LoggedSheet[]): string {
  const listed = waiting
    .slice(-MOST_LISTED)
    .map(({ setting }) => `sheet ${setting.sheet} (${materialInWords(setting)})`);
  const left = waiting.length - listed.length;
  const all = left === 0 ? listed : [`${left} older ${left === 1 ? 'one' : 'ones'}`, ...listed];
  const text = all.length === 1 ? (all[0] ?? '') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;
  return `${text.charAt(0).toUpperCase()}${text.slice(1)} ${waiting.length === 1 ? 'waits for its result' : 'wait for their results'}`;
}

const materialInWords = ({ process, paper, batch }: Series): string =>
  [process, paper, batch === null ? null : `batch ${batch}`].filter((word) => word !== null).join(', ');
