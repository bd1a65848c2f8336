import { type Design, isResultFlag, loadSitting, printProblem } from '../../index.js';
import { readKept } from './kept.js';
import type { Given } from './questions.js';
import type { LogGiven, SittingAnswer, SittingExposure, Typed } from './sitting-asked.js';

/** The exposure of one sitting: what the design says of it, and what differs today; of the next sheet where a log is given. */
export async function sitting({ design: given, typed, log }: Given<'sitting'>): Promise<SittingAnswer> {
  const read = readKept(given);
  if ('problems' in read) return { filterSets: [], refused: 'The design cannot be read as it stands.', exposure: null };
  const { design } = read;
  const outcome = log === null ? await plain(design, typed) : await logged(design, typed, log);
  const filterSets = (design.sitting.filterSets ?? []).map(({ name }) => name);
  return typeof outcome === 'string'
    ? { filterSets, refused: outcome, exposure: null }
    : { filterSets, refused: null, exposure: outcome };
}

/** Speak of a log alone, and are no keys of a sitting. */
const OF_LOG = ['batch', 'strip', 'steps'];

async function plain(design: Design, typed: Typed): Promise<SittingExposure | string> {
  const { expose, exposureWords } = await loadSitting();
  const outcome = expose(
    design,
    only(typed, (key) => !OF_LOG.includes(key) && !isResultFlag(key)),
  );
  if ('refused' in outcome) return outcome.refused;
  return { words: exposureWords(outcome.sitting), dialling: null, append: '' };
}

async function logged(design: Design, typed: Typed, log: LogGiven): Promise<SittingExposure | string> {
  const { exposeLogged, exposureWords, diallingWords } = await loadSitting();
  const outcome = exposeLogged(
    design,
    only(typed, (key) => !OF_LOG.includes(key) && !isResultFlag(key)),
    log,
    { result: only(typed, isResultFlag), ...texted(only(typed, (key) => OF_LOG.includes(key))) },
  );
  if ('problems' in outcome) return outcome.problems.map(printProblem).join('\n\n');
  if ('refused' in outcome) return outcome.refused;
  const { sitting: exposed, dialling, append } = outcome;
  return { words: exposureWords(exposed), dialling: diallingWords(dialling), append };
}

const only = (typed: Typed, wanted: (key: string) => boolean): Typed =>
  Object.fromEntries(Object.entries(typed).filter(([key]) => wanted(key)));

const texted = (values: Typed): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.entries(values).filter((entry): entry is [string, string] => typeof entry[1] === 'string'));
