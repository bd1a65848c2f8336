import { explainAtOnce, figureMoves } from '../../index.js';
import { readKept } from './kept.js';
import type { Answer, Given } from './questions.js';

/** How a figure came about; null where the design has no such figure. */
export function explain({ of, figure }: Given<'explain'>): Answer<'explain'> {
  const read = readKept(of);
  return 'problems' in read ? null : explainAtOnce(of.text, read.design, figure);
}

/** What moves it: many cameras are planned for that. */
export function moves({ of, figure }: Given<'moves'>): Answer<'moves'> {
  const read = readKept(of);
  return 'problems' in read ? null : figureMoves(of.text, read.design, figure);
}
