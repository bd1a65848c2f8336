import { availableParallelism } from 'node:os';
import {
  byFocalLength,
  loadSurvey,
  loadSurveyFiles,
  nearestWord,
  printProblem,
  type Sorting,
  type Survey,
  type SurveyGiven,
  type SurveyPair,
  sorted,
  sortings,
} from '../index.js';
import { withProgress } from './progress.js';
import { readTextFile } from './read-design-file.js';
import { EXIT, Stop } from './stop.js';
import { surveyOnThreads } from './survey-threads.js';
import type { Terminal } from './terminal.js';
import { refuseOthers, writeDrawing } from './write-drawing.js';

export interface SurveyOptions {
  readonly format: readonly string[];
  readonly sort?: string;
  readonly json?: boolean;
  readonly csv?: boolean;
  readonly chart?: string;
}

/** Fewer are done before a second thread is ready. */
const WORTH_THREADS = 200;

/** Stands in every chart. */
const CHART_MARK = 'What the lenses could become';

/** Reckons what camera each lens of some lists could become for each format, and prints it. */
export async function survey(
  files: readonly string[],
  { format, sort, json = false, csv = false, chart }: SurveyOptions,
  terminal: Terminal,
): Promise<number> {
  if (json && csv) throw new Stop(EXIT.wrongCall, 'Give --json or --csv, not both.');
  const by = sort === undefined ? null : sortingOf(sort);
  if (chart !== undefined) refuseOthers(chart, CHART_MARK);
  const { lensesFile, readLenses, formatsAsked, prepareSurvey } = await loadSurvey();
  const read = readLenses(files.map((file) => ({ file, text: readTextFile(file, lensesFile).text })));
  if ('problems' in read) throw new Stop(EXIT.wrongCall, read.problems.map(printProblem).join('\n\n'));
  const { drawers } = read;
  const asked = formatsAsked(drawers, format);
  if ('what' in asked) throw new Stop(EXIT.wrongCall, `--format ${asked.what} ${asked.accepted}`);
  const given: SurveyGiven = { drawers, formats: asked.formats };
  const prepared = prepareSurvey(given);
  const pairs = await withProgress(terminal, (show) =>
    surveyed(given, prepared, (done) =>
      show({ stage: `surveying ${Math.round(done * prepared.count)} of ${prepared.count} cameras`, done }),
    ),
  );
  const inLists = prepared.document(pairs);
  const document = { ...inLists, pairs: by === null ? pairs : sorted(pairs, by) };
  const { surveyJson, surveyCsv, surveyPage, surveyCharts } = await loadSurveyFiles();
  if (chart !== undefined) {
    const drawn = surveyCharts(by === null ? { ...inLists, pairs: byFocalLength(inLists) } : document);
    const names = drawn.map((_, i) => (drawn.length === 1 ? chart : chart.replace(/\.svg$/, `-${i + 1}.svg`)));
    for (const name of names) refuseOthers(name, CHART_MARK);
    for (const [i, name] of names.entries()) writeDrawing(name, drawn[i] ?? '', CHART_MARK);
    await terminal.err(`Wrote ${names.length === 1 ? chart : `${names[0]} to ${names.at(-1)}`}.\n`);
  }
  await terminal.out(
    json
      ? surveyJson(document)
      : csv
        ? surveyCsv(document)
        : surveyPage(document, { ...terminal, acrossLenses: by !== null }),
  );
  return EXIT.done;
}

async function surveyed(
  given: SurveyGiven,
  { count, pairs }: Survey,
  onProgress: (done: number) => void,
): Promise<readonly SurveyPair[]> {
  const threads = availableParallelism();
  if (count < WORTH_THREADS || threads < 2) return pairs(0, count);
  return surveyOnThreads(given, { count, threads, onProgress });
}

function sortingOf(word: string): Sorting {
  const known = Object.keys(sortings);
  if (Object.hasOwn(sortings, word)) return word as Sorting; // a key of theirs: seen on the line itself
  const meant = nearestWord(word, known);
  throw new Stop(
    EXIT.wrongCall,
    `--sort "${word}" is not known. ${meant === undefined ? `Write ${known.join(', ')}.` : `Did you mean ${meant}?`}`,
  );
}
