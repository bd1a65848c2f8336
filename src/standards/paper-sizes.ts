import type { Cited } from './cited.js';

/** Width and height of a sheet of paper that stands upright, mm. */
export const paperSizes: { readonly [name in 'A4' | 'Letter']: Cited<readonly [number, number]> } = {
  A4: { value: [210, 297], source: 'ISO 216, from memory' },
  Letter: { value: [8.5 * 25.4, 11 * 25.4], source: 'ANSI/ASME Y14.1, size A, from memory' },
};

/** Of what is carried along and laid beside the trays. */
export const cardSize: Cited<readonly [number, number]> = {
  value: [148, 210],
  source: 'ISO 216, size A5, from memory',
};
