import { statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type BuiltCamera, loadCompare } from '../index.js';
import { readDesignFile, readTextFile } from './read-design-file.js';
import { EXIT, Stop } from './stop.js';

/** A whole plan has some hundred kilobytes, the shapes of its parts some more. */
const LARGEST_RECORD = 16 * 1024 * 1024;

/** A camera by the folder that a build wrote, by its plan.json, or by a design file as it would be built today. */
export async function readCamera(path: string): Promise<BuiltCamera> {
  const { readBuilt, recordOfDesign } = await loadCompare();
  const isFolder = statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
  const plan = isFolder ? join(path, 'plan.json') : path;
  if (!plan.endsWith('.json')) return recordOfDesign(readDesignFile(path));
  const shapes = join(dirname(plan), 'parts.json');
  if (isFolder && statSync(plan, { throwIfNoEntry: false }) === undefined)
    throw new Stop(
      EXIT.wrongCall,
      `${path}: no camera was built into this folder, it has no plan.json. Name a folder that tailboard build wrote, its plan.json, or a design file.`,
    );
  const text = (file: string, noun: string) => readTextFile(file, { noun, largest: LARGEST_RECORD }).text;
  const beside = statSync(shapes, { throwIfNoEntry: false })?.isFile() === true;
  const read = readBuilt(text(plan, 'plan of a camera'), beside ? text(shapes, 'list of parts') : null);
  if ('what' in read) throw new Stop(EXIT.wrongCall, `${path}: ${read.what} ${read.accepted}`);
  return read;
}
