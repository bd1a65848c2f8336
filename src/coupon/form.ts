import { mm, plainNumber } from '../units/print.js';
import { STRIPS } from './comb.js';
import { fitNames, fitSamples } from './ladder.js';
import type { CouponQuestion, CutAs } from './readings.js';

/** What is asked of whoever has the cut piece in the hand, in the order in which it is best done. */
export function couponQuestions(cut: CutAs, slots: readonly number[]): readonly CouponQuestion[] {
  const sum = (letter: string) =>
    `Comb ${letter}: all ${STRIPS} strips ${letter} pushed together, flat and free of soot, measured across (drawn ${mm(cut.combSum)})`;
  const notch = (feels: string) => `Finger ladder: the mark of the notch that is ${feels}`;
  const marks = fitSamples(cut.fits);
  return [
    { key: 'comb.x', ask: sum('X'), needed: true },
    { key: 'comb.y', ask: sum('Y'), needed: true },
    { key: 'thickness', ask: 'Thickness of the sheet with the caliper, in several places', needed: false },
    {
      key: 'slot',
      ask: "The mark of the narrowest slot that the sheet's edge enters without force",
      needed: false,
      marks: slots,
    },
    { key: 'fits.press', ask: notch('a press fit: tapped in, stays put'), needed: false, marks },
    { key: 'fits.glueSlip', ask: notch('a glue slip: goes in by hand, without play'), needed: false, marks },
    { key: 'fits.slide', ask: notch('a slide: runs freely, does not rattle'), needed: false, marks },
    { key: 'fits.dropIn', ask: notch('a drop-in: falls in by itself'), needed: false, marks },
  ];
}

/** What was answered, as it would be written after its key. */
export type CouponAnswers = Readonly<Partial<Record<CouponQuestion['key'], string>>>;

/** The readings as a file, to be filled in or filled in already; what was not answered stays empty. */
export function readingsForm(
  { name, material }: { readonly name: string; readonly material: string },
  cut: CutAs,
  slots: readonly number[],
  answers: CouponAnswers = {},
): string {
  const questions = couponQuestions(cut, slots);
  const entry = (key: CouponQuestion['key'], indent: string): string => {
    const question = questions.find((one) => one.key === key);
    if (question === undefined) throw new Error(`nothing is asked for ${key}`);
    const marked = question.marks === undefined || indent !== '' ? [] : [`One of ${marksText(question.marks)}`];
    const lines = [question.ask, ...marked].map((line) => `${indent}# ${line}.`);
    const answer = answers[key];
    return [...lines, `${indent}${key.replace(/^.*\./, '')}:${answer === undefined ? '' : ` ${answer}`}`].join('\n');
  };
  const fits = fitNames.map((fit) => `${fit}: ${mm(cut.fits[fit])}`).join(', ');
  return `# Readings of the test piece of ${material}, drawn for ${name}. Fill them in behind the colons, then:
#
#     tailboard coupon <design file> --readings <this file>
#
# Lengths in mm, the decimal mark a point. The combs must be given; what else is left empty stays in the design as it is.

# How the piece was drawn: leave this alone.
cut:
  kerf: ${mm(cut.kerf)}
  thickness: ${mm(cut.thickness)}
  fits: { ${fits} }
  combSum: ${mm(cut.combSum)}

# Pieces cut in other corners of the bed tell how far the cut strays: a list of their readings, such as [78.5 mm, 78.46 mm].
comb:
${entry('comb.x', '  ')}
${entry('comb.y', '  ')}

# One length, or a list such as [4.02 mm, 4.05 mm, 4.08 mm].
${entry('thickness', '')}

${entry('slot', '')}

# The mark of the notch, as it stands on the piece: what the true kerf makes of it is reckoned from the combs.
# One of ${marksText(fitSamples(cut.fits))}.
fits:
${fitNames.map((fit) => entry(`fits.${fit}`, '  ')).join('\n')}
`;
}

const marksText = (marks: readonly number[]): string => marks.map((mark) => plainNumber(mark)).join(', ');
