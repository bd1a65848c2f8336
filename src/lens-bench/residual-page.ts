import type { Point } from '../geometry/path.js';
import type { LensDocument } from '../model/lens-bench.js';
import type { Mark, Page, Stroke } from '../model/page.js';
import { mm, plainNumber, scale } from '../units/print.js';

/** A5, lying. */
const WIDTH = 210;
const HEIGHT = 148;

const INK = '#1a1a1a';
const FAINT = '#8a8a8a';
const BAND = '#dfe8f2';
const LINE = '#1f5a96';
const FAR = '#b3261e';
const SMALL = 3;

/** Finer than this nobody reads, so a scale shows no less, mm. */
const LEAST_SHOWN = 0.01;

/** A frame on the paper, and the figures that its sides stand for. */
interface Panel {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: Scale;
  readonly y: Scale;
}

interface Scale {
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

/**
 * What the readings leave over against the magnification, with the band in which the line itself lies in 95 of 100 cases,
 * and under it the line. Where dots bend one way the lens was not focused alike, or distorts.
 *
 * @param bandAt half of the band's width at a magnification
 */
export function residualPage(lens: LensDocument, bandAt: (m: number) => number): Page {
  const { residuals, predictions, outliers } = lens;
  const ratios = [...residuals, ...predictions].map((one) => one.magnification);
  const x = scaleFor(0, Math.max(...ratios) * 1.04, 8);
  const largest = Math.max(
    LEAST_SHOWN,
    bandAt(x.least),
    bandAt(x.most),
    ...residuals.map(({ residual }) => Math.abs(residual)),
  );
  const off = scaleFor(-largest * 1.1, largest * 1.1, 6);
  const place = (m: number) => lens.flangeDistance + lens.focalLength * m;
  const upper: Panel = { left: 24, right: WIDTH - 8, top: 22, bottom: 79, x, y: off };
  const lower: Panel = {
    left: 24,
    right: WIDTH - 8,
    top: 90,
    bottom: 132,
    x,
    y: scaleFor(place(x.least), place(x.most), 4),
  };
  const steps = Array.from({ length: 41 }, (_, i) => x.least + ((x.most - x.least) * i) / 40);
  const dots = residuals.flatMap((one): readonly Mark[] => [
    dot(at(upper, one.magnification, one.residual), outliers.includes(one.row)),
    label(at(upper, one.magnification, one.residual), String(one.row), outliers.includes(one.row)),
    dot(at(lower, one.magnification, one.distance), outliers.includes(one.row)),
  ]);
  const name = lens.name ?? 'Lens on the bench';
  return {
    title: `${name}: readings less the line`,
    description: `Residuals of ${lens.readings} readings against the magnification with the 95 % band of the line, and the line of ${figures(lens)}.`,
    width: WIDTH,
    height: HEIGHT,
    marks: [
      words({ x: 8, y: 9 }, name, { size: 4.5, bold: true }),
      words({ x: 8, y: 15 }, figures(lens), { size: SMALL }),
      {
        kind: 'line',
        closed: true,
        fill: BAND,
        points: [
          ...steps.map((m) => at(upper, m, bandAt(m))),
          ...steps.toReversed().map((m) => at(upper, m, -bandAt(m))),
        ],
      },
      ...axes(upper, 'reading less line, mm; band: the line, 95 of 100'),
      { kind: 'line', points: [at(upper, x.least, 0), at(upper, x.most, 0)], stroke: { colour: LINE, width: 0.4 } },
      ...axes(lower, 'lens seat to film, mm'),
      ...xWords(lower),
      {
        kind: 'line',
        points: [at(lower, x.least, place(x.least)), at(lower, x.most, place(x.most))],
        stroke: { colour: LINE, width: 0.4 },
      },
      ...predictions.flatMap((one) => predictionMarks(one, [upper, lower])),
      ...dots,
    ],
  };
}

const figures = ({ focalLength, flangeDistance, intervals }: LensDocument): string =>
  `f = ${plainNumber(focalLength, 2)} ± ${plainNumber(intervals.focalLength, 2)} mm, flange distance = ${plainNumber(flangeDistance, 2)} ± ${plainNumber(intervals.flangeDistance, 2)} mm (95 of 100)`;

const at = ({ left, right, top, bottom, x, y }: Panel, m: number, value: number): Point => ({
  x: left + ((m - x.least) / (x.most - x.least)) * (right - left),
  y: bottom - ((value - y.least) / (y.most - y.least)) * (bottom - top),
});

/** Round figures round a range, in at most so many steps. */
function scaleFor(least: number, most: number, steps: number): Scale {
  const wide = Math.max(most - least, 1e-6);
  const decade = 10 ** Math.floor(Math.log10(wide / steps));
  const step = [1, 2, 5, 10].map((n) => n * decade).find((one) => wide / one <= steps) ?? 10 * decade;
  return { least: Math.floor(least / step + 1e-9) * step, most: Math.ceil(most / step - 1e-9) * step, step };
}

const ticksOf = ({ least, most, step }: Scale): readonly number[] =>
  Array.from({ length: Math.round((most - least) / step) + 1 }, (_, i) => least + i * step);

function axes(panel: Panel, title: string): readonly Mark[] {
  const { left, right, top, bottom, x, y } = panel;
  const thin: Stroke = { colour: FAINT, width: 0.1 };
  return [
    ...ticksOf(x).map(
      (m): Mark => ({ kind: 'line', points: [at(panel, m, y.least), at(panel, m, y.most)], stroke: thin }),
    ),
    ...ticksOf(y).flatMap((value): readonly Mark[] => [
      { kind: 'line', points: [at(panel, x.least, value), at(panel, x.most, value)], stroke: thin },
      words({ x: left - 2, y: at(panel, x.least, value).y + 1 }, plainNumber(value, 4), { size: SMALL, anchor: 'end' }),
    ]),
    {
      kind: 'line',
      closed: true,
      points: [
        { x: left, y: top },
        { x: right, y: top },
        { x: right, y: bottom },
        { x: left, y: bottom },
      ],
      stroke: { colour: INK, width: 0.25 },
    },
    {
      kind: 'words',
      at: { x: 7, y: (top + bottom) / 2 },
      text: title,
      size: 2.6,
      anchor: 'middle',
      colour: INK,
      turned: Math.PI / 2,
    },
  ];
}

const xWords = (panel: Panel): readonly Mark[] => [
  ...ticksOf(panel.x).map((m) =>
    words({ x: at(panel, m, panel.y.least).x, y: panel.bottom + 4.5 }, plainNumber(m, 4), {
      size: SMALL,
      anchor: 'middle',
    }),
  ),
  words(
    { x: (panel.left + panel.right) / 2, y: panel.bottom + 10 },
    'magnification, image over object (0 is infinity)',
    {
      size: SMALL,
      anchor: 'middle',
    },
  ),
];

/** Where a distance was asked for: a broken line, its ratio above and its distance below. */
function predictionMarks(
  { magnification: m, distance }: LensDocument['predictions'][number],
  [upper, lower]: readonly [Panel, Panel],
): readonly Mark[] {
  const broken: Stroke = { colour: INK, width: 0.25, dash: [1.5, 1] };
  const line = (panel: Panel): Mark => ({
    kind: 'line',
    points: [at(panel, m, panel.y.least), at(panel, m, panel.y.most)],
    stroke: broken,
  });
  const top = at(upper, m, upper.y.most);
  return [
    line(upper),
    line(lower),
    words({ x: top.x, y: top.y - 1 }, `${scale(m)}: ${mm(Math.round(distance * 100) / 100)}`, {
      size: SMALL,
      anchor: 'middle',
    }),
  ];
}

const dot = (centre: Point, far: boolean): Mark => ({ kind: 'circle', centre, radius: 1, fill: far ? FAR : INK });

const label = ({ x, y }: Point, text: string, far: boolean): Mark => ({
  kind: 'words',
  at: { x: x + 1.6, y: y - 1 },
  text,
  size: 2.6,
  anchor: 'start',
  colour: far ? FAR : INK,
});

interface WordStyle {
  readonly size: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: true;
}

const words = (place: Point, text: string, { size, anchor = 'start', bold }: WordStyle): Mark => ({
  kind: 'words',
  at: place,
  text,
  size,
  anchor,
  colour: INK,
  ...(bold ? { bold } : {}),
});
