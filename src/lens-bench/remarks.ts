import type { BenchReadings, LensRemark } from '../model/lens-bench.js';
import { subjectDistance } from '../optics/conjugates.js';
import { chiSquareShare } from '../statistics/chi-square.js';
import { reachOf95 } from '../statistics/line-doubt.js';
import { lineAt } from '../statistics/line-fit.js';
import { mm, plainNumber, scale, tenth } from '../units/print.js';
import type { BenchLine } from './bench-line.js';
import { focalSlip } from './focal-slip.js';
import type { Outliers } from './outliers.js';
import { frontEnlargement } from './pupils.js';
import type { Repeated } from './repeated.js';

interface Found {
  readonly line: BenchLine;
  readonly outliers: Outliers;
  /** Magnifications that were asked for. */
  readonly at: readonly number[];
  readonly pupils: Repeated | null;
}

type Remark = (bench: BenchReadings, found: Found) => readonly LensRemark[];

const warning = (message: string, hint: string): LensRemark => ({ level: 'warning', message, hint });
const note = (message: string, hint = ''): LensRemark => ({ level: 'note', message, hint });

const hundredth = (value: number): string => mm(Math.round(value * 100) / 100);

/** Readings that the test points at, with the likeliest slip. */
const outlying: Remark = (_, { outliers, line: { doubts } }) =>
  outliers.found.map(({ row, residual, studentised, critical, turnedOver }) =>
    warning(
      `Reading ${row} is ${hundredth(Math.abs(residual))} ${residual > 0 ? 'farther from' : 'nearer to'} the lens than the line, ${plainNumber(Math.abs(studentised), 1)} standard errors by the others, of which ${plainNumber(critical, 1)} are allowed. It was not left out.`,
      outlierCure(turnedOver, Math.abs(residual) / (doubts?.[row - 1] ?? 0)),
    ),
  );

/** Of either tail: 5 % together. */
const TAIL = 0.025;

/** So many of its own standard uncertainties any reading may be off. */
const EXPECTED = 2;

/** @param stated how many of the uncertainties that were stated of it; infinite where none was */
function outlierCure(turnedOver: boolean, stated: number): string {
  if (turnedOver) return 'It lies on the line with its ratio turned over: write image over object.';
  return stated < EXPECTED
    ? `It is only ${plainNumber(stated, 1)} of its own stated uncertainties off: the others agree better than they were said to, and by chance it may be no slip at all.`
    : 'Read it again; if it was a slip, set it aside with # before it, and say why.';
}

/** Whether the scatter is what was stated, by the chi-square test, both ways at 5 % together. */
const statedAgainstScatter: Remark = (_, { line: { fit, doubts } }) => {
  if (doubts === null) return [];
  const sum = doubts.reduce((total, u, i) => total + ((fit.residuals[i] ?? 0) / u) ** 2, 0);
  const share = chiSquareShare(sum, fit.freedom);
  const times = plainNumber(Math.sqrt(sum / fit.freedom), 1);
  if (share > 1 - TAIL)
    return [
      warning(
        `The readings scatter ${times} times as much as the uncertainties that you stated (chi-square test, 5 %). The errors given here come from the scatter.`,
        'Something else moved: focus with a magnifier, the glass square to the axis, image and object measured large and in the middle.',
      ),
    ];
  if (share < TAIL)
    return [
      note(
        `The readings scatter only ${times} times as much as the uncertainties that you stated (chi-square test, 5 %). The errors given here come from the scatter.`,
        'Where all readings share an error, such as a rule that is too short or a wrong lens seat, scatter does not show it: then trust what you stated.',
      ),
    ];
  return [];
};

/** Past the readings by more than half of what they span, the line is no longer carried by them. */
const FAR_OUTSIDE = 0.5;

const extrapolated: Remark = ({ readings }, { line: { fit }, at }) => {
  const ratios = readings.map((reading) => reading.magnification);
  const [least, most] = [Math.min(...ratios), Math.max(...ratios)];
  const beyond = FAR_OUTSIDE * (most - least);
  const within = (m: number) => m <= most + beyond && m >= least - beyond;
  const outside = at.filter((m) => !within(m));
  const asked = outside.map((m) =>
    warning(
      `${scale(m)} lies far outside the readings, which go from ${scale(least)} to ${scale(most)}: the interval there holds only if nothing but f and the flange distance is at work.`,
      m > most && within(1 / m)
        ? `Was ${scale(1 / m)} meant? ${plainNumber(m)} is an image ${plainNumber(m)} times as long as the object.`
        : `Take a reading near ${scale(m)}.`,
    ),
  );
  const { standardError } = lineAt(fit, 0);
  const infinity = least - beyond > 0 && !outside.includes(0);
  return infinity
    ? [
        ...asked,
        warning(
          `The flange distance is the line carried from ${scale(least)} on to infinity; its standard error is ${hundredth(standardError)}.`,
          'Take a reading of something far away.',
        ),
      ]
    : asked;
};

/** One reading that the line follows wherever it goes is judged by nothing. */
const ALONE = 0.9;

const alone: Remark = (_, { line: { fit, weighted } }) =>
  fit.leverages.flatMap((leverage, i) => {
    if (leverage <= ALONE || fit.freedom <= 1) return [];
    return weighted
      ? [
          warning(
            `The line goes through reading ${i + 1} whatever it says, so sure was it stated to be, or so far does it stand from the others.`,
            'Look at the uncertainties again, and take a second reading near it.',
          ),
        ]
      : [
          warning(
            `Reading ${i + 1} stands alone at its end of the line, which goes through it whatever it says.`,
            'Take a second reading near it.',
          ),
        ];
  });

/** Beyond this an engraved figure is as good: the same 3 % that the reserve of a slide allows for. */
const LOOSE = 0.03;

const loose: Remark = (_, { line: { fit } }) => {
  const half = reachOf95(fit.freedom) * fit.slopeError;
  return half <= LOOSE * fit.slope
    ? []
    : [
        warning(
          `The focal length is known to ±${hundredth(half)} only, ${plainNumber((100 * half) / fit.slope, 1)} % of it: no better than a figure on a barrel.`,
          'Take more readings, farther apart, with the image and the object as long as you can measure.',
        ),
      ];
};

/** Finer than any rule is read: such readings were reckoned, or copied. */
const TOO_GOOD = 0.005;

const tooGood: Remark = (_, { line: { fit } }) =>
  fit.residuals.some((residual) => Math.abs(residual) > TOO_GOOD)
    ? []
    : [
        warning(
          `The readings lie on the line within ${mm(TOO_GOOD)}, finer than a rule is read.`,
          'Give readings as they were taken, each focused anew, not worked out or copied.',
        ),
      ];

const unitSlip: Remark = (_, { line: { fit } }) => {
  const slip = focalSlip(fit.slope);
  return slip === null ? [] : [warning(slip.message, slip.hint)];
};

/** Where the object stands tells the magnification once more, roughly: principal planes are not the lens seat. */
const FAR_OFF = 0.2;

const objectsElsewhere: Remark = ({ readings }, { line: { fit } }) =>
  readings.flatMap(({ objectDistance, magnification: m }, i) => {
    if (objectDistance === null || m === 0) return [];
    const reckoned = subjectDistance(fit.slope, m);
    return Math.abs(objectDistance - reckoned) <= FAR_OFF * reckoned
      ? []
      : [
          warning(
            `In reading ${i + 1} the object stands ${mm(tenth(objectDistance))} away; at ${scale(m)} it should be about ${mm(Math.round(reckoned))}.`,
            'Look at this magnification again: image and object as lengths of the same thing?',
          ),
        ];
  });

/** So much a measured enlargement may differ from the one that was given. */
const SAME_ENLARGEMENT = 0.03;

const aperture: Remark = (bench) => {
  const { hole, pupils } = bench;
  const measured = frontEnlargement(bench);
  if (hole === null) return [];
  if (measured === null && hole.enlargement === null)
    return [
      note(
        'The f-number is that of the bare hole: most front groups make it look larger, and then the lens is faster.',
        'Measure the bright disc from the front, with your eye some metres away, and write it as pupils.front.',
      ),
    ];
  if (measured === null || hole.enlargement === null) return [];
  return Math.abs(measured / hole.enlargement - 1) <= SAME_ENLARGEMENT
    ? []
    : [
        note(
          `Disc over hole is ${plainNumber(measured, 2)}, and you gave an enlargement of ${plainNumber(hole.enlargement, 2)}; the disc was used (${pupils.front.length} readings).`,
        ),
      ];
};

const assumed: Remark = ({ pupils, coverage, taken }, { pupils: P }) => [
  ...taken.map((words) => note(words)),
  ...(P === null && coverage.length > 0
    ? [note('The circle was brought to one magnification with a pupil magnification of 1.', 'Measure both pupils.')]
    : []),
  ...(P === null && pupils.front.length + pupils.rear.length > 0
    ? [note('One pupil alone tells no pupil magnification.', 'Measure the other one, too.')]
    : []),
  ...(P !== null && P.standardError === null
    ? [note('A pupil that was read once does not tell how well it is known.', 'Read each three times.')]
    : []),
];

const all: readonly Remark[] = [
  outlying,
  statedAgainstScatter,
  tooGood,
  unitSlip,
  loose,
  alone,
  extrapolated,
  objectsElsewhere,
  aperture,
  assumed,
];

/** What a person should know beside the figures, the most serious first. */
export const remarksOf: (...given: Parameters<Remark>) => readonly LensRemark[] = (bench, found) => {
  const remarks = all.flatMap((remark) => remark(bench, found));
  return [...remarks.filter(({ level }) => level === 'warning'), ...remarks.filter(({ level }) => level === 'note')];
};
