import { FILM_REBATE, formatNamed } from '../standards/formats.js';
import { mm } from '../units/print.js';
import type { Format } from './design.js';
import type { Written } from './schema.js';

/** A format stands upright: its short side is the width. */
export function completeFormat(format: Written['format']): Format {
  if (typeof format === 'string') {
    const known = formatNamed(format);
    if (known === undefined) throw new Error(`the schema let the format ${format} pass`);
    const [width, height] = known.nominal.value;
    const [short, long] = known.image.value;
    return { name: known.name, width, height, image: { short, long } };
  }
  const [width, height] = [Math.min(format.width, format.height), Math.max(format.width, format.height)];
  const image = format.image ?? [width - FILM_REBATE, height - FILM_REBATE];
  return {
    name: `${mm(width)} x ${mm(height)}`,
    width,
    height,
    image: { short: Math.min(...image), long: Math.max(...image) },
  };
}
