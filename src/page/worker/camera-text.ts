import { type BuiltCamera, loadCompare, printProblem, readDesign } from '../../index.js';
import type { CameraText } from './camera-asked.js';
import { remnantsIn } from './kept.js';

type ReadCamera = BuiltCamera | { readonly refused: string };

/** What was read last: the design is edited, and the camera that it is held against stays. */
const last: { kept: { readonly of: string; readonly read: ReadCamera } | null } = { kept: null };

/** A camera from its file, or why it is none, in the words of the command line. */
export async function cameraOf(given: CameraText): Promise<ReadCamera> {
  const of = JSON.stringify(given);
  const kept = last.kept?.of === of ? last.kept : { of, read: await readCamera(given) };
  last.kept = kept;
  return kept.read;
}

async function readCamera(given: CameraText): Promise<ReadCamera> {
  const { readBuilt, recordOfDesign } = await loadCompare();
  const { file, text, beside } = given;
  if (!file.endsWith('.json')) {
    const design = readDesign(text, file, remnantsIn(given));
    return 'problems' in design
      ? { refused: design.problems.map(printProblem).join('\n\n') }
      : recordOfDesign(design.design);
  }
  const read = readBuilt(text, beside['parts.json'] ?? null);
  return 'what' in read ? { refused: `${file}: ${read.what} ${read.accepted}` } : read;
}
