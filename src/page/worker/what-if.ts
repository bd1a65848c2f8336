import { loadForm, loadWhatIf, readDesign } from '../../index.js';
import { readKept, remnantsIn } from './kept.js';
import type { Answer, Given } from './questions.js';

/** What may be tried; nothing where the text is no design. */
export async function whatIfInputs(given: Given<'what-if-inputs'>): Promise<Answer<'what-if-inputs'>> {
  const whatIf = await loadWhatIf();
  const read = readKept(given);
  return 'problems' in read ? [] : whatIf.whatIfInputs(given.text, read.design);
}

/** The camera of the text that would be written: what is no design is told in the words in which it would be refused. */
export async function whatIfPoint({
  of,
  path,
  tried,
  sheets,
}: Given<'what-if-point'>): Promise<Answer<'what-if-point'>> {
  const { value, written } = tried;
  const [{ whatIfPoint: pointOf }, { writeKeys }] = await Promise.all([loadWhatIf(), loadForm()]);
  const text = written === null ? of : writeKeys(of.text, of.file, [{ kind: 'write', path, value: written }]);
  const read = 'problems' in text ? text : readDesign(text.text, of.file, remnantsIn(of));
  return 'problems' in read
    ? { kind: 'none', value, why: read.problems[0]?.what ?? '' }
    : pointOf(read.design, { value, sheets });
}
