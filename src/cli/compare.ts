import { loadCompare } from '../index.js';
import { readCamera } from './read-camera.js';
import { EXIT } from './stop.js';
import type { Terminal } from './terminal.js';

/** What changed from one camera to another, and what that asks of the one that stands. */
export async function compare(
  before: string,
  after: string,
  { json = false }: { readonly json?: boolean },
  terminal: Terminal,
): Promise<number> {
  const { compareCameras, compareJson, comparePage } = await loadCompare();
  const cameras = { before: await readCamera(before), after: await readCamera(after) };
  const document = compareCameras(cameras.before, cameras.after);
  await terminal.out(json ? compareJson(document) : comparePage(document, cameras, terminal));
  return EXIT.done;
}
