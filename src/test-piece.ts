import type { TestPieceGiven } from './book/test-piece.js';
import { STRIPS } from './coupon/comb.js';
import { type CouponAnswers, couponQuestions, readingsForm } from './coupon/form.js';
import type { CouponGiven } from './coupon/given.js';
import { COMBS_AGREE, type CouponResult, judgeReadings } from './coupon/judge.js';
import { fitNames } from './coupon/ladder.js';
import { type Coupon, drawCoupon } from './coupon/piece.js';
import type { CouponQuestion, CutAs } from './coupon/readings.js';
import { couponSheet } from './coupon/sheet.js';
import type { Design } from './design/design.js';
import { type ChangedKey, type DesignChange, editDesign } from './design/edit.js';
import { plausibility } from './design/plausibility.js';
import type { Problem } from './design/problem.js';
import { readDesign } from './design/read.js';
import { readReadings } from './design/read-readings.js';
import type { FindRemnant } from './design/stock.js';
import type { Finding } from './model/finding.js';
import { mm, plainNumber } from './units/print.js';

/** Half the thickness at least stays between two cuts, as on the sheets of the camera. */
export const couponGiven = ({ plywood, laser, workshop }: Design): CouponGiven => ({
  material: plywood.material,
  thickness: plywood.thickness,
  density: workshop.density,
  kerf: laser.kerf,
  fits: workshop.fits,
  spacing: Math.max(workshop.spacing, plywood.thickness / 2),
});

const cutAs = (design: Design, { combSum }: Coupon): CutAs => ({
  kerf: design.laser.kerf,
  thickness: design.plywood.thickness,
  fits: design.workshop.fits,
  combSum,
});

/** What is asked about the piece that the design draws now, and the answers as a file of readings. */
export function couponForm(design: Design): {
  readonly questions: readonly CouponQuestion[];
  readonly filled: (answers: CouponAnswers) => string;
} {
  const coupon = drawCoupon(couponGiven(design));
  const cut = cutAs(design, coupon);
  const title = { name: design.name, material: design.plywood.material };
  return {
    questions: couponQuestions(cut, coupon.slots),
    filled: (answers) => readingsForm(title, cut, coupon.slots, answers),
  };
}

interface TextFile {
  readonly file: string;
  readonly text: string;
}

export interface ReadingsTaken {
  /** The design file with the readings in it. */
  readonly text: string;
  readonly changed: readonly ChangedKey[];
  readonly result: CouponResult;
  readonly summary: readonly string[];
  /** What the design's own rules say of the new figures. */
  readonly findings: readonly Finding[];
}

/** Takes what was measured on a test piece into the design file; or tells why it cannot be true, and changes nothing. */
export function takeReadings(
  designFile: TextFile & { readonly find: FindRemnant },
  readingsFile: TextFile,
): ReadingsTaken | { readonly problems: readonly Problem[] } {
  const read = readDesign(designFile.text, designFile.file, designFile.find);
  if ('problems' in read) return read;
  const written = readReadings(readingsFile.text, readingsFile.file);
  if ('problems' in written) return written;
  const { design } = read;
  const { comb } = written.readings;
  const now = couponGiven(design);
  const cut = written.readings.cut ?? cutAs(design, drawCoupon(now));
  const { slots } = drawCoupon({ ...now, ...cut });
  const judged = judgeReadings({ ...written.readings, cut }, { fits: design.workshop.fits, marks: slots });
  if ('findings' in judged)
    return {
      problems: judged.findings.map(({ rule, message, hint = '', about = '' }) =>
        written.locate({ path: about, what: `${message} [${rule}]`, accepted: hint }),
      ),
    };
  const { result } = judged;
  const pieces = Math.max(comb.x.length, comb.y.length);
  const strays = strayWritten(result.kerfUncertainty, design.laser.kerfUncertainty, pieces);
  const edited = editDesign(designFile.text, designFile.file, changesOf(result, strays), designFile.find);
  if ('problems' in edited) return edited;
  const after = readDesign(edited.text, designFile.file, designFile.find);
  if ('problems' in after) return after;
  return {
    ...edited,
    result,
    summary: summaryOf(result, cut, pieces),
    findings: plausibility(after.design).filter(({ about = '' }) => MEASURED.some((key) => about.startsWith(key))),
  };
}

/** Keys that a test piece answers for. */
const MEASURED = ['laser.kerf', 'plywood.thickness', 'workshop.fits'];

/** One piece tells of one place of the bed: it may show that a cut strays further than the design says, never that it does not. */
const strayWritten = (found: number, now: number, pieces: number): number | null =>
  pieces > 1 || found > now ? found : null;

const changesOf = ({ kerf, thickness, fits }: CouponResult, strays: number | null): readonly DesignChange[] => [
  { path: 'laser.kerf', value: kerf },
  ...(strays === null ? [] : [{ path: 'laser.kerfUncertainty', value: strays }]),
  ...(thickness.length === 0 ? [] : [{ path: 'plywood.thickness', value: thickness }]),
  ...fitNames.flatMap((name) => {
    const value = fits[name];
    return value === undefined ? [] : [{ path: `workshop.fits.${name}`, value }];
  }),
];

/** Beyond this the marks of the finger ladder mislead the hand that feels them, mm: half of the press fits' step. */
const OFF_MARK = 0.02;

function summaryOf(result: CouponResult, cut: CutAs, pieces: number): readonly string[] {
  const { x, y, kerf, interval, standardUncertainty, kerfUncertainty, fits, thickness } = result;
  const off = 2 * (kerf - cut.kerf);
  return [
    `Kerf ${mm(kerf)}: ${mm(x)} from comb X, ${mm(y)} from comb Y.`,
    `With a caliper good to 0.02 mm the mean is right within ${mm(interval)} in at least 95 cases of 100 (standard uncertainty ${plainNumber(standardUncertainty, 4)} mm).`,
    pieces > 1
      ? `Over the places where pieces were cut, a cut strays by ${mm(kerfUncertainty)} each way.`
      : `Between the two directions a cut strays by ${mm(kerfUncertainty)} each way. That was one place of the bed, so laser.kerfUncertainty is never lowered for it: cut the piece in other corners, too, and list its readings.`,
    ...(Math.abs(off) > OFF_MARK
      ? [
          `The piece was drawn for ${mm(cut.kerf)}: its notches were ${mm(Math.abs(off))} ${off > 0 ? 'looser' : 'tighter'} than marked, which is allowed for. Cut it once more with the new kerf to feel the fits as marked.`,
        ]
      : []),
    ...(thickness.length === 0 ? ['The sheet was not measured; its thickness stays.'] : []),
    ...(fitNames.some((name) => fits[name] === undefined) ? ['Fits that were not read stay as they are.'] : []),
  ];
}

/** What the book tells of the piece that the design draws now. */
export function testPieceGiven(design: Design): TestPieceGiven {
  const given = couponGiven(design);
  const coupon = drawCoupon(given);
  const { plywood, laser, workshop } = design;
  return {
    material: plywood.material,
    kerf: laser.kerf,
    thickness: plywood.thickness,
    readings: plywood.readings,
    fits: workshop.fits,
    strips: STRIPS,
    combSum: coupon.combSum,
    combsAgree: COMBS_AGREE,
    feltKerf: OFF_MARK / 2,
    sheet: couponSheet(coupon, { ...given, margin: workshop.margin }),
  };
}
