import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);

/** The letters by which the width of words is reckoned. */
export const bookLetters = () => ({
  regular: readFileSync(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf')),
  bold: readFileSync(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf')),
});

/** The condensed faces, in which the tables of a card are a tenth narrower. */
export const cardLetters = () => ({
  regular: readFileSync(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf')),
  bold: readFileSync(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf')),
});
