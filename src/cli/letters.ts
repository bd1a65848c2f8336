import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);

const face = (name: string): Uint8Array => readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));

/** The letters by which the width of words is reckoned. */
export const bookLetters = () => ({ regular: face('DejaVuSans'), bold: face('DejaVuSans-Bold') });

/** The condensed faces, in which the tables of a card are a tenth narrower. */
export const cardLetters = () => ({ regular: face('DejaVuSansCondensed'), bold: face('DejaVuSansCondensed-Bold') });
