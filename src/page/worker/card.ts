import { loadCard } from '../../index.js';
import { readKept } from './kept.js';
import { lettersKept } from './letters.js';
import type { Given } from './questions.js';
import type { CardAnswer } from './sitting-asked.js';

export async function card({ design: given, typed }: Given<'card'>): Promise<CardAnswer> {
  const read = readKept(given);
  if ('problems' in read) return { refused: 'The design cannot be read as it stands.' };
  const [{ cardFiles }, letters] = await Promise.all([loadCard(), lettersKept()]);
  const outcome = cardFiles(read.design, typed, letters);
  if ('refused' in outcome) return outcome;
  const [svg, pdf] = outcome.files;
  if (svg === undefined || pdf === undefined) throw new Error('a card is a picture and a page');
  return { svg: new TextDecoder().decode(svg.bytes), pdf: new Uint8Array(pdf.bytes) };
}
