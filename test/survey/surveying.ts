import { printProblem } from '../../src/design/problem.js';
import { readLenses } from '../../src/forms/read-lenses.js';
import type { SurveyDocument, SurveyPair } from '../../src/model/survey.js';
import { prepareSurvey } from '../../src/survey/survey.js';

/** The survey of a list that must be right, every pair of it. */
export function surveyOf(...texts: readonly string[]): SurveyDocument {
  const read = readLenses(texts.map((text, i) => ({ file: `list-${i + 1}.yaml`, text })));
  if ('problems' in read) throw new Error(read.problems.map(printProblem).join('\n'));
  const survey = prepareSurvey({ drawers: read.drawers, formats: null });
  return survey.document(survey.pairs(0, survey.count));
}

/** The one pair of a list with one lens and one format. */
export function onlyPair(text: string): SurveyPair {
  const [pair, ...others] = surveyOf(text).pairs;
  if (pair === undefined || others.length > 0) throw new Error('there is not one pair');
  return pair;
}
