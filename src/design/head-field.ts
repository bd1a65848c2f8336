import * as z from 'zod';
import { acceptedLength, parseLength } from '../units/length.js';
import { mm, plainNumber } from '../units/print.js';
import { quoted } from '../units/quantity.js';
import { parseNumber } from '../units/ratio.js';
import { BEYOND_USE, BREAK, section, type Told } from './fields.js';

/** How tall a head stands on the ground glass: in mm, or as a share of the picture's height. */
export type Head = { readonly height: number } | { readonly share: number };

const ACCEPTED = 'Write its height on the ground glass, such as 90 mm, or its share of the picture, such as 60 %.';

/** An eye alone on the largest plate, and a head in a crowd on the smallest. */
const RANGE = { least: 0.5, most: 2000 };

/** A head of which three quarters lie outside the picture, and one that is lost in it, both in per cent. */
const SHARES = { least: 0.5, most: 400 };

function readHead(input: unknown): Head | string {
  const share = typeof input === 'string' ? /^(.*)%\s*$/s.exec(input)?.[1] : undefined;
  const reading = share === undefined ? parseLength(input) : parseNumber(share);
  if (!('value' in reading))
    return `${reading.reason}${BREAK}${reading.accepted === acceptedLength('4.05 mm') || share !== undefined ? ACCEPTED : reading.accepted}`;
  const { least, most } = share === undefined ? RANGE : SHARES;
  if (reading.value < least || reading.value > most) {
    const print = (value: number) => (share === undefined ? mm(value) : `${plainNumber(value)} %`);
    const side = reading.value < least ? 'less' : 'more';
    return `${quoted(input)} is ${side} ${BEYOND_USE}.${BREAK}Write a value from ${print(least)} to ${print(most)}.`;
  }
  return share === undefined ? { height: reading.value } : { share: reading.value / 100 };
}

export const headField = (about: Told) =>
  z
    .union([z.number(), z.string()], { error: (issue) => String(readHead(issue.input)) })
    .transform((input, context): Head => {
      const head = readHead(input);
      if (typeof head !== 'string') return head;
      context.issues.push({ code: 'custom', message: head, input });
      return z.NEVER;
    })
    .meta(section(about));
