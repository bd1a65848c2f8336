import type { Block } from '../paper/blocks.js';

/** A chapter of the book: it stands in the contents. */
export interface Chapter {
  readonly title: string;
  readonly blocks: readonly Block[];
}
