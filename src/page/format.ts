import { plainNumber } from '../units/print.js';
import type { State } from './state.js';

/** The format as the design has it; of one that has no name, its image. */
export function formatOf({ reading, shown }: State): string {
  const node = reading?.form?.nodes.find(({ path }) => path === 'format');
  const word = node?.kind === 'group' ? node.word : node?.kind === 'field' ? node.value : null;
  if (word !== null && word !== undefined) return word;
  const image = shown?.section?.image;
  return image === undefined ? '' : `${plainNumber(image.width, 1)} × ${plainNumber(image.height, 1)} mm`;
}
