import type { SurveyDocument } from '../model/survey.js';
import { documentNumber } from './document-number.js';

/** The survey as other programs read it; ends with a line break. */
export const surveyJson = (survey: SurveyDocument): string =>
  `${JSON.stringify(survey, (_, value: unknown) => (typeof value === 'number' ? documentNumber(value) : value), 2)}\n`;
