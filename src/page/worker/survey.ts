import {
  byFocalLength,
  formats as formatTable,
  loadSurvey,
  loadSurveyFiles,
  printProblem,
  type SurveyDocument,
  type SurveyGiven,
  sorted,
} from '../../index.js';
import type { Given } from './questions.js';
import type { SurveyAsked, SurveyDone, SurveyPrepared, SurveyShown } from './survey-asked.js';

/** What there is to survey: quick, so that a mistake in a list is told while it is typed. */
export async function surveyLists(asked: SurveyAsked): Promise<SurveyPrepared> {
  const given = await surveyGiven(asked);
  if ('problems' in given) return given;
  const { formatName, prepareSurvey } = await loadSurvey();
  const own = given.drawers.flatMap(({ formats = [] }) => formats.map(formatName));
  const names = [...new Set([...formatTable.map(({ name }) => name), ...own])];
  return { count: prepareSurvey(given).count, formats: names };
}

/** Reads the lists of a survey; every thread that has a share of it does. */
export async function surveyGiven({
  lists,
  formats,
}: SurveyAsked): Promise<SurveyGiven | { readonly problems: readonly string[] }> {
  const { readLenses, formatsAsked } = await loadSurvey();
  const read = readLenses(lists);
  if ('problems' in read) return { problems: read.problems.map(printProblem) };
  const asked = formatsAsked(read.drawers, formats);
  if ('what' in asked) return { problems: [`${asked.what} ${asked.accepted}`] };
  return { drawers: read.drawers, formats: asked.formats };
}

export async function surveyShown(done: SurveyDone): Promise<SurveyShown | null> {
  const document = await documentOf(done);
  if (document === null) return null;
  const { surveyWords, surveyChart } = await loadSurveyFiles();
  return {
    words: surveyWords(document),
    pairs: document.pairs,
    lenses: document.lenses.map(({ name }) => name),
    charts: surveyChart(inOrderOfChart(document, done)),
  };
}

/** The files that the command line would print or write: one, or a chart on several pages. */
export async function surveyFile({ as, ...done }: Given<'survey-file'>): Promise<readonly string[]> {
  const document = await documentOf(done);
  if (document === null) return [];
  const { surveyCsv, surveyJson, surveyCharts } = await loadSurveyFiles();
  if (as === 'csv') return [surveyCsv(document)];
  return as === 'json' ? [surveyJson(document)] : surveyCharts(inOrderOfChart(document, done));
}

/** A design for one pair; null where its list cannot be carried into one. */
export async function surveyDesign({ pair, ...asked }: Given<'survey-design'>): Promise<string | null> {
  const given = await surveyGiven(asked);
  if ('problems' in given) return null;
  const { pairDesign } = await loadSurvey();
  return pairDesign(asked.lists, given, pair);
}

async function documentOf({ pairs, sort, ...asked }: SurveyDone): Promise<SurveyDocument | null> {
  const given = await surveyGiven(asked);
  if ('problems' in given) return null;
  const { prepareSurvey } = await loadSurvey();
  const inLists = prepareSurvey(given).document(pairs);
  return sort === null ? inLists : { ...inLists, pairs: sorted(pairs, sort) };
}

/** Where no order is asked for, the shortest lens stands first. */
const inOrderOfChart = (document: SurveyDocument, { sort }: SurveyDone): SurveyDocument =>
  sort === null ? { ...document, pairs: byFocalLength(document) } : document;
