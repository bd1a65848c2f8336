import { FILM_REBATE } from '../standards/formats.js';
import { mm } from '../units/print.js';
import type { Fault } from './explain.js';
import type { Written } from './schema.js';

const fault = (path: Fault['path'], what: string, accepted: string): Fault => ({ path, at: 'value', what, accepted });

export function imageFits({ format }: Pick<Written, 'format'>): readonly Fault[] {
  if (typeof format === 'string') return [];
  if (format.image === undefined && Math.min(format.width, format.height) <= FILM_REBATE)
    return [
      fault(
        ['format'],
        `A format ${mm(format.width)} by ${mm(format.height)} is hidden by its holder whole.`,
        'Write the unit if inches were meant, such as { width: 5 in, height: 7 in }.',
      ),
    ];
  if (format.image === undefined) return [];
  const [short, long] = [Math.min(...format.image), Math.max(...format.image)];
  const [width, height] = [Math.min(format.width, format.height), Math.max(format.width, format.height)];
  if (short <= width && long <= height) return [];
  return [
    fault(
      ['format', 'image'],
      `The image, ${mm(short)} by ${mm(long)}, is larger than the format.`,
      `Write what the film receives, at most [${mm(width)}, ${mm(height)}].`,
    ),
  ];
}
