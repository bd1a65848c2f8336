import { loadForm, loadShown, type Problem } from '../../index.js';
import type { KeyEdit } from '../../model/design-form.js';
import { planKept, reader, readKept } from './kept.js';
import type { DesignText, Given, Reading } from './questions.js';

/** Changes the keys that are to be changed, and tells what becomes of the text then. */
export async function reading({ edits = [], ...given }: Given<'reading'>): Promise<Reading> {
  const [{ designForm, madeUpIn }, { text, refused }] = await Promise.all([loadForm(), edited(given, edits)]);
  const form = designForm(text, reader);
  const madeUp = madeUpIn(text, reader);
  const read = readKept({ ...given, text });
  const planned = await planKept({ ...given, text });
  if ('problems' in read || form === null || planned === null)
    return { text, refused, form, madeUp, problems: 'problems' in read ? read.problems : [] };
  const { planOf, endOfSlide } = await loadShown();
  const plan = planOf(planned);
  const { findings } = plan;
  const { drawable } = planned;
  return { text, refused, form, madeUp, problems: null, plan, findings, drawable, reached: endOfSlide(planned) };
}

/** One after the other, so that one that cannot be made does not lose the rest. */
async function edited(
  { text: given, file }: DesignText,
  edits: readonly KeyEdit[],
): Promise<{ readonly text: string; readonly refused: readonly Problem[] }> {
  const { writeKeys, madeUpIn } = await loadForm();
  /** A figure that somebody types is no longer made up, except where its mark is that of others, too. */
  const measuredIn = (before: string, after: string, { kind, path }: KeyEdit): string => {
    if (kind !== 'write' || !madeUpIn(before, reader).includes(path)) return after;
    const outcome = writeKeys(after, file, [{ kind: 'measured', path }], reader);
    return 'text' in outcome ? outcome.text : after;
  };
  let text = given;
  const refused: Problem[] = [];
  for (const edit of edits) {
    const outcome = writeKeys(text, file, [edit], reader);
    if ('text' in outcome) text = measuredIn(text, outcome.text, edit);
    else refused.push(...outcome.problems);
  }
  return { text, refused };
}
