import { loadSurvey, type Survey } from '../../index.js';
import { surveyGiven } from './survey.js';
import type { FromSurveyor, SurveyAsked, ToSurveyor } from './survey-asked.js';
import { thread } from './thread.js';

/** One of the threads of a survey: it is told what is surveyed, and then reckons the pairs that it is given. */
const page = thread<ToSurveyor, FromSurveyor>();
const has: { survey: Promise<Survey> | null } = { survey: null };

page.onmessage = async ({ data }) => {
  try {
    if (data.kind === 'begin') {
      has.survey = prepare(data.asked);
      await has.survey;
      return;
    }
    if (has.survey === null) throw new Error('a batch came before it was said what is surveyed');
    const { from, to } = data;
    page.postMessage({ kind: 'pairs', from, pairs: (await has.survey).pairs(from, to) });
  } catch (error) {
    // a promise that is rejected here raises no error over there
    page.postMessage({ kind: 'mistake', words: error instanceof Error ? error.message : String(error) });
  }
};

async function prepare(asked: SurveyAsked): Promise<Survey> {
  const given = await surveyGiven(asked);
  if ('problems' in given) throw new Error('lists that cannot be read were to be surveyed');
  const { prepareSurvey } = await loadSurvey();
  return prepareSurvey(given);
}
