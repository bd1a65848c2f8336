import * as z from 'zod';
import { acceptedLength, hasLengthUnit, parseLength } from '../units/length.js';
import { quoted } from '../units/quantity.js';
import { parseMagnification } from '../units/ratio.js';
import { BREAK, section, type Told } from './fields.js';

/** Where the camera focuses: as written, since a distance becomes a magnification only with the focal length. */
export type Focus = { readonly magnification: number } | { readonly subjectDistance: number };

const ACCEPTED = 'Write a magnification such as 1:3 or infinity, or a subject distance with its unit such as 0.9 m.';

/** Above it no camera of this kind works, and a bare number is a distance whose unit was forgotten. */
const LARGEST_MAGNIFICATION = 20;

/** Subjects farther away than this are at infinity for every lens that a camera can carry. */
const FARTHEST_SUBJECT = 1e7;

function readFocus(input: unknown): Focus | string {
  if (typeof input === 'string' && !input.includes(':') && hasLengthUnit(input)) {
    const distance = parseLength(input);
    if (!('value' in distance))
      return `${distance.reason}${BREAK}${distance.accepted === acceptedLength('4.05 mm') ? ACCEPTED : distance.accepted}`;
    if (distance.value > FARTHEST_SUBJECT) return `${quoted(input)} is as good as infinity.${BREAK}Write infinity.`;
    return { subjectDistance: distance.value };
  }
  const reading = parseMagnification(input);
  if (!('value' in reading)) return `${reading.reason}${BREAK}${reading.accepted.replace(/^Write 1:3.*/, ACCEPTED)}`;
  if (reading.value > LARGEST_MAGNIFICATION)
    return `${quoted(input)} is more than life size twenty times over; a subject distance needs its unit.${BREAK}${ACCEPTED}`;
  return { magnification: reading.value };
}

export const focusField = (about: Told) =>
  z
    .union([z.number(), z.string()], { error: (issue) => String(readFocus(issue.input)) })
    .transform((input, context): Focus => {
      const focus = readFocus(input);
      if (typeof focus !== 'string') return focus;
      context.issues.push({ code: 'custom', message: focus, input });
      return z.NEVER;
    })
    .meta(section(about));
