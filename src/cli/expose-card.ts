import { join } from 'node:path';
import { type Design, loadCard, slugOf } from '../index.js';
import { cardLetters } from './letters.js';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';
import { refuseForeign, writeFolder } from './write-folder.js';

/**
 * The card of a camera, written into a folder.
 *
 * @param asked the folder; `true` where none was named
 * @param typed what differs from the design's `sitting`, by its keys
 */
export async function writeCard(
  design: Design,
  asked: string | true,
  typed: Readonly<Record<string, string | readonly string[]>>,
  terminal: Terminal,
): Promise<number> {
  const folder = asked === true ? join('output', `${slugOf(design.name)}-card`) : asked;
  refuseForeign(folder);
  const { cardFiles } = await loadCard();
  const outcome = cardFiles(design, typed, cardLetters());
  if ('refused' in outcome) throw new Stop(EXIT.wrongCall, outcome.refused);
  await writeFolder(folder, outcome.files);
  await terminal.out(`Wrote ${outcome.files.map(({ path }) => path).join(' and ')} into ${folder}.\n`);
  return EXIT.done;
}
