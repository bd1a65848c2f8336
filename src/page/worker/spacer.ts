import { loadSpacer, newHolderTrouble, readFilmDepth, readSheetThickness, slugOf } from '../../index.js';
import { archiveOf } from './archive.js';
import type { PartMade } from './camera-asked.js';
import { readKept } from './kept.js';
import type { Given } from './questions.js';

/** The spacer of a holder that the design does not know, and its files as the command line writes them. */
export async function spacer({ of, depth, name, thickness }: Given<'spacer'>): Promise<PartMade> {
  const read = readKept(of);
  if ('problems' in read) throw new Error(`${of.file} is no design`);
  const film = readFilmDepth(depth);
  if ('reason' in film) return refused(film);
  const sheet = thickness.trim() === '' ? null : readSheetThickness(thickness);
  if (sheet !== null && 'reason' in sheet) return refused(sheet);
  const called = name.trim() === '' ? 'holder' : name.trim();
  const trouble = newHolderTrouble(read.design, called);
  if (trouble !== null) return { refused: `${trouble.what} ${trouble.accepted}` };
  const { spacerAlone } = await loadSpacer();
  const { files, findings, summary } = spacerAlone(read.design, {
    name: called,
    filmDepth: film.value,
    ...(sheet === null ? {} : { thickness: sheet.value }),
  });
  const isBroken = findings.some(({ level }) => level === 'error');
  if (isBroken || files.length === 0) return { findings, summary: isBroken ? [] : summary, archive: null };
  const { archive } = await archiveOf(`${read.design.slug}-spacer-${slugOf(called)}`, files);
  return { findings, summary, archive };
}

const refused = ({ reason, accepted }: { readonly reason: string; readonly accepted: string }): PartMade => ({
  refused: `${reason} ${accepted}`,
});
