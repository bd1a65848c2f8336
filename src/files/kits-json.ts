import type { KitsDocument } from '../model/kits.js';
import { documentNumber } from './document-number.js';

/** kits.json: what a run of kits is made of, what it costs, and what goes into which box. */
export const kitsJson = (run: KitsDocument): string =>
  `${JSON.stringify(run, (_, value: unknown) => (typeof value === 'number' ? documentNumber(value) : value), 2)}\n`;
