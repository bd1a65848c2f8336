import { parentPort, workerData } from 'node:worker_threads';
import { loadSurvey, type SurveyGiven } from '../index.js';
import type { Batch, Surveyed } from './survey-threads.js';

const survey = (await loadSurvey()).prepareSurvey(workerData as SurveyGiven); // what survey-threads.ts hands over

parentPort?.on('message', ({ from, to }: Batch) => {
  const done: Surveyed = { from, pairs: survey.pairs(from, to) };
  parentPort?.postMessage(done);
});
