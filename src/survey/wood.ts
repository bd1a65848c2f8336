import type { Build } from '../assembly/build.js';
import { countOf } from '../assembly/setups.js';
import type { Design } from '../design/design.js';
import { area, boundsOf } from '../geometry/path.js';
import type { FlatPart } from '../model/part.js';
import type { CameraSurveyed } from '../model/survey.js';

/** Sums of lengths that fit exactly must not be kept off by their last bits. */
const ROUNDING = 1e-6;

type Sheet = Pick<Design, 'plywood' | 'workshop'>;

/** What of the sheet a camera takes, its parts laid on it by area alone. */
export function woodOf(
  { parts, setups }: Build,
  { plywood, workshop }: Sheet,
): Pick<CameraSurveyed, 'plywoodArea' | 'sheets' | 'largerThanSheet'> {
  const width = plywood.sheet.width - 2 * workshop.margin;
  const height = plywood.sheet.height - 2 * workshop.margin;
  let plywoodArea = 0;
  const largerThanSheet: string[] = [];
  for (const part of parts) {
    if (part.kind !== 'flat' || part.material !== plywood.material) continue;
    plywoodArea += netArea(part) * countOf(part.placements, setups);
    if (!lies(part, width, height)) largerThanSheet.push(part.id);
  }
  return {
    plywoodArea,
    sheets: width > 0 && height > 0 ? Math.ceil(plywoodArea / (width * height) - ROUNDING) : 0,
    largerThanSheet,
  };
}

const netArea = ({ outline, holes }: FlatPart): number =>
  holes.reduce((left, hole) => left - Math.abs(area(hole)), Math.abs(area(outline)));

/** Whether a part fits on the sheet, its face grain along the sheet's first side. */
function lies({ outline, grain }: FlatPart, width: number, height: number): boolean {
  const { left, right, bottom, top } = boundsOf(outline);
  const fits = (across: number, up: number) => across <= width + ROUNDING && up <= height + ROUNDING;
  const [x, y] = [right - left, top - bottom];
  return (grain !== 'y' && fits(x, y)) || (grain !== 'x' && fits(y, x));
}
