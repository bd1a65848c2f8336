import { randomBytes } from 'node:crypto';
import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { onInterrupt } from './interrupt.js';
import { machineStop, systemCode } from './machine-error.js';
import { EXIT, Stop } from './stop.js';

/**
 * Writes a drawing into a file that the user names, whole or not at all. A file that is there is only replaced where it
 * is a drawing of the same kind.
 *
 * @param mark stands in every drawing of that kind
 */
export function writeDrawing(file: string, svg: string, mark: string): void {
  const staging = join(dirname(file), `.tailboard-${randomBytes(6).toString('hex')}.tmp`);
  const clear = () => rmSync(staging, { force: true });
  const release = onInterrupt(clear);
  try {
    refuseOthers(file, mark);
    writeFileSync(staging, svg, { flag: 'wx', flush: true });
    renameSync(staging, file);
  } catch (error) {
    clear();
    throw machineStop(file, error);
  } finally {
    release();
  }
}

/** Ends the command where something else stands at the place of a drawing. */
export function refuseOthers(file: string, mark: string): void {
  if (!file.endsWith('.svg'))
    throw new Stop(EXIT.wrongCall, `${file}: a drawing is an SVG. Give a name that ends in .svg.`);
  let there = '';
  try {
    there = readFileSync(file, 'utf8');
  } catch (error) {
    const code = systemCode(error);
    if (code === 'ENOENT') return;
    throw machineStop(file, error);
  }
  if (!there.includes(mark))
    throw new Stop(EXIT.wrongCall, `${file}: is something else, and is left alone. Give another name.`);
}
