import { type QuantityKind, quoted, type Reading, readQuantity } from './quantity.js';

const time: QuantityKind = {
  noun: 'a time',
  units: new Map([
    ['s', 1],
    ['ms', 0.001],
    ['min', 60],
  ]),
  bare: 1,
  accepted: 'Write 0.5 s or 500 ms.',
};

/** Reads a time that may be nothing; a bare number is in seconds. Gives s. */
export const parseSeconds = (input: unknown): Reading => readQuantity(input, time, 'not-negative');

/** Reads the time of an exposure as shutters and watches say it: `1/4s`, `90 s`, `2 min`. Gives s. */
export const parseExposureTime = (input: unknown): Reading =>
  readQuantity(input, { ...time, accepted: 'Write 1/4 s, 90 s or 2 min.' });

const bath: QuantityKind = {
  noun: 'a time',
  units: new Map([
    ['s', 1],
    ['m', 60],
    ['min', 60],
    ['h', 3600],
  ]),
  // minutes and seconds are both usual, and one taken for the other spoils a print
  bare: null,
  accepted: 'Write 1m30s, 90 s or 1.5 min.',
};

const PARTS = /^(?:(\d+)\s*h)?\s*(?:(\d+)\s*m(?:in)?)?\s*(?:(\d+(?:\.\d+)?)\s*s)?$/i;

/** Reads the time of a bath as it is said in the dark: `1m30s`, `90 s`, `2 min`; a bare number is refused. Gives s. */
export function parseBathTime(input: unknown): Reading {
  const parts = typeof input === 'string' ? (PARTS.exec(input.trim())?.slice(1) ?? []) : [];
  if (parts.filter((part) => part !== undefined).length < 2) return readQuantity(input, bath, 'not-negative');
  const [hours, minutes, seconds] = parts.map((part) => Number(part ?? 0)) as [number, number, number];
  if (seconds >= 60 || (parts[0] !== undefined && minutes >= 60))
    return { reason: `${quoted(input)} has 60 or more where the next unit begins.`, accepted: bath.accepted };
  return { value: (hours * 60 + minutes) * 60 + seconds };
}
