import type { LensSurveyed, SurveyDocument, SurveyPair } from '../model/survey.js';
import { plainNumber } from '../units/print.js';
import { documentNumber } from './document-number.js';

type Cell = string | number | null;

/** A line break of RFC 4180. */
const END = '\r\n';

/** What a spreadsheet takes for the beginning of a formula, and what it drops before looking. */
const FORMULA = /^[\s\p{Cc}]*[=+\-@]/u;

const columns: Readonly<Record<string, (pair: SurveyPair, lens: LensSurveyed | undefined) => Cell>> = {
  lens: ({ lens }) => asText(lens),
  format: ({ format }) => asText(format),
  focal_length_mm: (_, lens) => lens?.focalLength ?? null,
  flange_distance_mm: (_, lens) => lens?.flangeDistance ?? null,
  max_aperture_f_number: (_, lens) => lens?.maxAperture ?? null,
  image_circle_at_infinity_mm: (_, lens) => lens?.imageCircle ?? null,
  state: ({ state }) => state,
  covers_from_magnification: ({ coversFrom }) => coversFrom,
  asked_magnification: ({ asked }) => asked,
  reachable_magnification: ({ reachable }) => reachable,
  nearest_magnification: ({ nearest }) => nearest,
  nearest_subject_distance_mm: ({ subjectDistance }) => subjectDistance,
  use_from_magnification: ({ use }) => use?.from ?? null,
  use_to_magnification: ({ use }) => use?.to ?? null,
  mount_by: ({ mount }) => mount.by,
  mount_side: ({ mount }) => mount.side,
  travel_mm: ({ camera }) => camera?.travel ?? null,
  width_mm: ({ camera }) => camera?.width ?? null,
  height_mm: ({ camera }) => camera?.height ?? null,
  depth_closed_mm: ({ camera }) => camera?.depthClosed ?? null,
  depth_open_mm: ({ camera }) => camera?.depthOpen ?? null,
  mass_kg: ({ camera }) => camera?.mass ?? null,
  plywood_area_mm2: ({ camera }) => camera?.plywoodArea ?? null,
  sheets_at_least: ({ camera }) => camera?.sheets ?? null,
  parts_larger_than_sheet: ({ camera }) => camera && asText(camera.largerThanSheet.join(' ')),
  rules_broken: ({ camera }) => camera?.broken?.join(' ') ?? null,
  rules_broken_as_assumed: ({ camera }) => camera?.brokenAsAssumed?.join(' ') ?? null,
  holders: ({ holders }) => asText(holders.join('; ')),
  assumed: ({ assumed }) => assumed.join(' '),
};

/**
 * The survey as a table of RFC 4180, one line for a pair. An empty field is what there is not. A text that a spreadsheet
 * would take for a formula gets an apostrophe before it, which spreadsheets take for the sign of a text.
 */
export function surveyCsv({ lenses, pairs }: SurveyDocument): string {
  const known = new Map(lenses.map((lens) => [lens.name, lens]));
  const makers = Object.values(columns);
  const rows = pairs.map((pair) => makers.map((make) => field(make(pair, known.get(pair.lens)))).join(','));
  return [Object.keys(columns).join(','), ...rows, ''].join(END);
}

const asText = (text: string): string => (FORMULA.test(text) ? `'${text}` : text);

function field(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return plainNumber(documentNumber(cell), 9);
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
