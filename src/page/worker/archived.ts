import { loadArchive } from '../../index.js';
import type { PickedFile } from '../files.js';
import type { Given } from './questions.js';

/** What a build writes of a camera, in the folder that the archive holds. */
const RECORD = /^([^/]*\/)?(plan|parts)\.json$/;

export async function archived({ bytes }: Given<'archived'>): Promise<readonly PickedFile[]> {
  const { unzip } = await loadArchive();
  const entries = unzip(bytes, (path) => RECORD.test(path)) ?? [];
  const records = entries.map((entry) => ({
    name: entry.path.replace(/^.*\//, ''),
    text: new TextDecoder().decode(entry.bytes),
  }));
  return records.some(({ name }) => name === 'plan.json') ? records : [];
}
