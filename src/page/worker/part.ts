import {
  type Design,
  loadSpares,
  type PartsWanted,
  readRemnant,
  readSheetThickness,
  type SheetRemnant,
} from '../../index.js';
import { archiveOf } from './archive.js';
import type { PartMade, PartSaid } from './camera-asked.js';
import { cameraOf } from './camera-text.js';
import { kernelKept, readKept } from './kept.js';
import type { Given } from './questions.js';

/** What changes where a part is cut alone: quick, as often as something is typed. */
export async function partSaid(given: Given<'part-said'>): Promise<PartSaid> {
  const asked = await askedOf(given, []);
  if ('refused' in asked) return asked;
  const spares = await loadSpares();
  const found = spares.asked(asked.design, asked.wanted);
  return 'refused' in found ? found : { findings: found.findings };
}

/** The files of a part, as the command line writes them. */
export async function partFiles({ despite, ...given }: Given<'part-files'>): Promise<PartMade> {
  const asked = await askedOf(given, despite);
  if ('refused' in asked) return asked;
  const spares = await loadSpares(kernelKept);
  const made = await spares.parts(asked.design, asked.wanted);
  if ('refused' in made) return made;
  const { findings, summary, files } = made;
  if (findings.some(({ level, rule }) => level === 'error' && !despite.includes(rule)))
    return { findings, summary, archive: null };
  const { archive } = await archiveOf(`${asked.design.slug}-${given.id}`, files);
  return { findings, summary, archive };
}

async function askedOf(
  { of, id, thickness, remnants, since }: Given<'part-said'>,
  despite: readonly string[],
): Promise<{ readonly design: Design; readonly wanted: PartsWanted } | { readonly refused: string }> {
  const read = readKept(of);
  if ('problems' in read) throw new Error(`${of.file} is no design`);
  const length = thickness.trim() === '' ? null : readSheetThickness(thickness);
  if (length !== null && 'reason' in length) return { refused: `${length.reason} ${length.accepted}` };
  const pieces: SheetRemnant[] = [];
  for (const { name, text } of remnants) {
    const piece = readRemnant(text);
    if ('what' in piece) return { refused: `${name}: ${piece.what} ${piece.accepted}` };
    pieces.push({ ...piece, file: name });
  }
  const standing = since === null ? null : await cameraOf(since);
  if (standing !== null && 'refused' in standing) return standing;
  return {
    design: read.design,
    wanted: {
      ids: [id],
      remnants: pieces,
      despite,
      ...(length === null ? {} : { thickness: length.value }),
      ...(standing === null ? {} : { since: standing }),
    },
  };
}
