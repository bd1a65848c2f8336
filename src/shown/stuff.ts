import { stuffOf } from '../drawings/hatch.js';
import type { Part } from '../model/part.js';
import type { Stuff } from '../model/shown.js';

/** What a part looks to be made of: as drawings tell it, a dowel as wood, and elastic cord, black and woven, as felt. */
export function stuffShown(part: Part): Stuff {
  const stuff = stuffOf(part);
  return stuff === 'dowel' ? 'wood' : stuff === 'cord' ? 'felt' : stuff;
}
