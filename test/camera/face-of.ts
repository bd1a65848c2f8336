import { isHolderFace, isOfHolder } from '../../src/assembly/holders.js';
import type { Part } from '../../src/model/part.js';

/** What of a holder bears on the camera: the stand-in of a bought one, the face of one that is made. */
export function faceOf(parts: readonly Part[], holder: string): Part {
  const face = parts.find((part) => isHolderFace(part) && isOfHolder(part, holder));
  if (face === undefined) throw new Error(`nothing of the ${holder} bears on the camera`);
  return face;
}
