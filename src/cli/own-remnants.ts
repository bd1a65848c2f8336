import { isAbsolute, relative, resolve } from 'node:path';
import type { Design } from '../index.js';
import { remnantPath } from './read-design-file.js';
import { EXIT, Stop } from './stop.js';

/** A remnant in the folder that is replaced would be gone with the build that cuts it, and the next one could not be the same. */
export function refuseOwnRemnants(file: string, { stock }: Design, folder: string): void {
  for (const { remnant } of stock)
    if (remnant !== null) refuseInside(folder, remnant.file, remnantPath(file, remnant.file));
}

/** The same of a file that was named on the command line, at its path. */
export function refuseInside(folder: string, name: string, path: string): void {
  const inside = relative(resolve(folder), resolve(path));
  if (inside.startsWith('..') || isAbsolute(inside)) return;
  throw new Stop(
    EXIT.wrongCall,
    `${folder}: the remnant ${name} lies in this folder, which the build replaces. Move the file elsewhere and name it there, or build into another folder with -o.`,
  );
}

/** One file is one piece, by whatever path it is named. */
export function refuseTwice(remnants: readonly string[]): void {
  const paths = remnants.map((path) => resolve(path));
  for (const [i, path] of paths.entries()) {
    const earlier = remnants[paths.indexOf(path)];
    if (paths.indexOf(path) < i)
      throw new Stop(
        EXIT.wrongCall,
        `--remnant: ${remnants[i]} is ${earlier === remnants[i] ? 'named twice' : `the file that ${earlier} names already`}. One file is one piece: name each of them once.`,
      );
  }
}
