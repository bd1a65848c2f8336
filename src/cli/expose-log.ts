import { isResultFlag, loadSitting, printProblem } from '../index.js';
import { type ExposeOptions, typed } from './expose.js';
import { appendToLog, readLogText } from './log-file.js';
import { readDesignFile } from './read-design-file.js';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';

/** Flags that speak of a log, beside those of a result: no keys of the design's `sitting`. */
const LOG_FLAGS = ['log', 'batch', 'strip', 'steps'];

/** Whether a log is spoken of. */
export const asksForLog = (options: ExposeOptions): boolean =>
  Object.keys(options).some((key) => LOG_FLAGS.includes(key) || isResultFlag(key));

/** The next sheet of a sitting log: takes in what came of the last one, and adds the setting for the next. */
export async function exposeLog(
  file: string,
  { json = false, card, ...options }: ExposeOptions,
  terminal: Terminal,
): Promise<number> {
  const { log, batch, strip, steps, ...flags } = options;
  if (typeof log !== 'string')
    throw new Stop(
      EXIT.wrongCall,
      'What came of a sheet, batches and strips belong in a log: name its file with --log sitting.yaml.',
    );
  if (card !== undefined)
    throw new Stop(
      EXIT.wrongCall,
      '--card writes files for all distances and --log gives out one setting. Give one of them.',
    );
  const texts = Object.entries(typed(flags));
  const design = readDesignFile(file);
  const sittings = await loadSitting();
  const outcome = sittings.exposeLogged(
    design,
    Object.fromEntries(texts.filter(([key]) => !isResultFlag(key))),
    { file: log, text: readLogText(log), at: localTime(new Date()) },
    { result: Object.fromEntries(texts.filter(([key]) => isResultFlag(key))), ...texted({ batch, strip, steps }) },
  );
  if ('problems' in outcome) throw refused(log, outcome.problems.map(printProblem).join('\n\n'));
  if ('refused' in outcome) throw refused(log, outcome.refused);
  const { sitting, dialling, append } = outcome;
  // first into the log: a setting that is shown and not written would be exposed and forgotten
  if (append !== '') appendToLog(log, append);
  await terminal.out(
    json
      ? sittings.exposureJson({ ...sitting, dialling })
      : `${sittings.diallingPage(dialling, terminal)}${sittings.exposurePage(design.name, sitting, terminal)}`,
  );
  return EXIT.done;
}

const refused = (log: string, why: string): Stop => new Stop(EXIT.wrongCall, `${why}\nNothing was added to ${log}.`);

/** Without what was not given. */
const texted = (flags: Readonly<Record<string, unknown>>): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.entries(flags).filter((flag): flag is [string, string] => typeof flag[1] === 'string'));

/** `2026-11-29 14:03` */
function localTime(now: Date): string {
  const two = (count: number) => String(count).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())} ${two(now.getHours())}:${two(now.getMinutes())}`;
}
