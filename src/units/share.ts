import { type QuantityKind, quoted, type Reading, readQuantity } from './quantity.js';

const PERCENT: QuantityKind = {
  noun: 'a percentage',
  units: new Map([['%', 1]]),
  bare: 1,
  accepted: 'Write 10 %, or 0 for none.',
};

/**
 * Reads a share in per cent, with its sign or without: `10 %`, `10`. Gives per cent. A bare fraction is not taken: 0.1 is
 * a tenth to one and a tenth of a per cent to another.
 */
export function parsePercent(input: unknown): Reading {
  const read = readQuantity(input, PERCENT, 'not-negative');
  if (!('value' in read) || read.value === 0 || read.value >= 1 || String(input).includes('%')) return read;
  return { reason: `${quoted(input)} has no unit.`, accepted: `Write 10 % for a tenth, or ${read.value} %.` };
}
