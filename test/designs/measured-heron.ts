import { readFileSync } from 'node:fs';
import { changed } from '../design/reading.js';

const kept = readFileSync(new URL('../../designs/heron.yaml', import.meta.url), 'utf8');

/** A caliper reads through the air where the film looks through the window: 24.3 and 3 (1 − 1/1.52). */
const READ_AS_24_3 = '25.32631578947 mm';

interface Readings {
  readonly glass?: string | null;
  readonly paper?: string;
  readonly processing?: string;
  readonly spacer?: string | null;
}

/** The text of Heron, both holders of which are made, with what was measured once it stood. */
export function measuredHeron({
  glass = '5.7 mm',
  paper = '5.6 mm',
  processing = READ_AS_24_3,
  spacer = null,
}: Readings): string {
  const glued = spacer === null ? '' : `, spacer: { measured: ${spacer} }`;
  const read: readonly (readonly [drawn: string, measured: string])[] = [
    ['depth: 5.8 mm,', glass === null ? 'depth: 5.8 mm,' : `depth: 5.8 mm, measured: ${glass},`],
    ['filmDepth: 5.8 mm,', `filmDepth: 5.8 mm, measured: ${paper},`],
    ['filmDepth: 24 mm,', `filmDepth: 24 mm, measured: ${processing}${glued},`],
  ];
  return read.reduce((text, [drawn, measured]) => changed(text, drawn, measured), kept);
}
