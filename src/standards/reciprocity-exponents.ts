import type { Cited } from './cited.js';

/** Least and greatest exponent p of t^p that one maker publishes for eleven black and white films. */
export const publishedExponents: Cited<readonly [number, number]> = {
  value: [1.25, 1.43],
  source: "film maker's factors quoted at snowinsummer.co.uk/blogs/faq-tips/film-reciprocity",
};
