import { loadProcess, loadProcessCard, printProblem } from '../../index.js';
import { lettersKept } from './letters.js';
import type { ProcessAnswer, ProcessCardAnswer } from './process-asked.js';
import type { Given } from './questions.js';

export async function processSteps(given: Given<'process'>): Promise<ProcessAnswer> {
  const { processSheet, processWords } = await loadProcess();
  const outcome = processSheet({ ...given, typed: {} });
  if ('problems' in outcome) return { problems: outcome.problems.map(printProblem) };
  if ('refused' in outcome) throw new Error('nothing was typed that could be refused');
  return { sheet: outcome.sheet, words: processWords(outcome.sheet) };
}

export async function processCard(given: Given<'process-card'>): Promise<ProcessCardAnswer> {
  const answer = await processSteps(given);
  if ('problems' in answer) return { refused: 'The process cannot be read as it stands.' };
  const [{ processCardFiles }, letters] = await Promise.all([loadProcessCard(), lettersKept()]);
  const outcome = processCardFiles(answer.sheet, 'A5', letters);
  if ('refused' in outcome) return outcome;
  const [svg, pdf] = outcome.files;
  if (svg === undefined || pdf === undefined) throw new Error('a card is a picture and a page');
  return { svg: new TextDecoder().decode(svg.bytes), pdf: new Uint8Array(pdf.bytes) };
}
