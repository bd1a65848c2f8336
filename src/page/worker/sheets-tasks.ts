import type { ShownSheets } from '../../model/shown-sheets.js';
import type { DesignText } from './questions.js';

/** To and from the worker that looks for a better layout. */
export type ToSheets = DesignText;
export type FromSheets =
  | { readonly kind: 'progress'; readonly done: number }
  /** null where there is no camera to cut. */
  | { readonly kind: 'sheets'; readonly sheets: ShownSheets | null }
  | { readonly kind: 'mistake'; readonly words: string };
