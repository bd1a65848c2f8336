import { ROUNDING, unless } from '../assembly/limit.js';
import { type FingerRow, LEAST_FINGER } from '../joinery/finger-joint.js';
import type { Finding } from '../model/finding.js';
import { mm } from '../units/print.js';

/** Fingers 2 to 5 thicknesses wide, at least 8 mm, an odd number of three or more; common practice, no source. */
const NARROWEST = 2;
const WIDEST = 5;
const FEWEST = 3;

/** finger-rule: the edges of a box, each under the name of the panels that meet there. */
export const fingerRule = (box: string, rows: Readonly<Record<string, FingerRow>>, ply: number): readonly Finding[] =>
  Object.entries(rows).flatMap(([edge, row]) => {
    const least = Math.max(LEAST_FINGER, NARROWEST * ply);
    const narrow = row.width < least - ROUNDING;
    const odd = row.count >= FEWEST && row.count % 2 === 1;
    return unless(!narrow && odd && row.width <= WIDEST * ply + ROUNDING, {
      rule: 'finger-rule',
      level: 'error',
      value: odd ? row.width : row.count,
      limit: odd ? (narrow ? least : WIDEST * ply) : FEWEST,
      unit: odd ? 'mm' : 'fingers',
      about: 'plywood.thickness',
      message: `${box}, ${words(edge)}: ${row.count} fingers of ${mm(Math.round(row.width * 10) / 10)} on ${mm(Math.round((row.to - row.from) * 10) / 10)} ${narrow ? 'crumble' : 'do not hold'}.`,
      hint: narrow
        ? thinner(row.to - row.from)
        : `Use sheet of ${mm(Math.ceil((row.width * 10) / WIDEST) / 10)} or more.`,
    });
  });

const thinner = (edge: number): string =>
  edge < FEWEST * LEAST_FINGER
    ? `The box must be ${mm(FEWEST * LEAST_FINGER)} or more along this edge.`
    : `Use sheet of ${mm(Math.floor((edge * 10) / FEWEST / NARROWEST) / 10)} or less, or make the box longer.`;

/** panelToSide is read as panel to side. */
const words = (key: string): string => key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
