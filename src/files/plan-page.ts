import type { Finding } from '../model/finding.js';
import type { PlanDocument, PlanGroundGlass, PlanPart, PlanSpacer } from '../model/plan.js';
import { coverage, exposureTime, fNumber, kg, magnification, mm, plainNumber, stops } from '../units/print.js';
import { type Column, table, wrap } from './text-layout.js';

/** How the page marks what matters; on paper or in a pipe each gives its text back as it is. */
export interface Colour {
  readonly heading: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly error: (text: string) => string;
  readonly warning: (text: string) => string;
  readonly note: (text: string) => string;
}

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

/** What a figure is called, and the figure with its unit. */
type Row = readonly [label: string, text: string];

/** The plan as a page for a person at a terminal, in the order in which a builder asks. Ends with a line break. */
export function planPage(plan: PlanDocument, page: Page): string {
  const sections = [
    figures('Lens and what it covers', lensRows(plan), page),
    figures('Focus', focusRows(plan), page),
    figures('Boxes and slide', slideRows(plan), page),
    holderTable(plan, page),
    figures('Ground glass and spacers', registerRows(plan), page),
    figures('Ahead of the lens', aheadRows(plan), page),
    figures('Tailboard, tripod, balance', tailboardRows(plan), page),
    figures('Size and mass', sizeRows(plan), page),
    partTable(plan.parts, page),
    hardwareTable(plan, page),
    findingList(plan.findings, page),
  ];
  const title = `${page.colour.heading(plan.name)}  ${page.colour.faint(`revision ${plan.revision}`)}`;
  return `${[[title], ...sections.filter((lines) => lines.length > 0)].map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** The findings alone, the most serious first; empty where there is none. */
export function findingsPage(findings: readonly Finding[], page: Page): string {
  const lines = findingList(findings, page);
  return lines.length > 0 ? `${lines.join('\n')}\n` : '';
}

function lensRows({ optics }: PlanDocument): readonly Row[] {
  const { imageCircle: circle } = optics;
  return [
    ['Focal length', `${length(optics.focalLength)}, ${fNumber(optics.maxAperture)} wide open`],
    ['Flange distance', `${length(optics.flangeDistance)} from the lens seat to the film at infinity`],
    ['Lens seat', `at z ${length(optics.seatZ)}, counted from the rear face of the front panel`],
    ['Exit pupil', `${length(optics.exitPupil.diameter)} across, at z ${length(optics.exitPupil.z)}`],
    ['Image', `${length(optics.imageDiagonal)} from corner to corner`],
    [
      'Image circle',
      circle.infinity === null || circle.nearest === null
        ? `not known; ${length(circle.required)} needed`
        : `${length(circle.infinity)} at infinity, ${length(circle.nearest)} at the nearest; ${length(circle.required)} needed`,
    ],
    ['Covers', coverage(optics.coversFrom, optics.imageCircle.infinity)],
  ];
}

function focusRows({ optics, slide }: PlanDocument): readonly Row[] {
  const { nearest, farthest, infinity } = optics;
  return [
    [
      'At infinity',
      `film ${length(infinity.filmDistance)} behind the lens seat${farthest ? '; not asked for, the slide ends before' : ''}`,
    ],
    ...(farthest
      ? [
          [
            'Farthest asked',
            `${magnification(farthest.magnification)}, film ${length(farthest.filmDistance)} behind the lens seat`,
          ] as const,
          ['Subject there', `${length(farthest.subjectDistance)} ahead of the lens (front principal plane)`] as const,
        ]
      : []),
    [
      'Nearest asked',
      `${magnification(nearest.magnification)}, film ${length(nearest.filmDistance)} behind the lens seat`,
    ],
    [
      'Subject there',
      nearest.subjectDistance === null
        ? 'at infinity'
        : `${length(nearest.subjectDistance)} ahead of the lens (front principal plane)`,
    ],
    [
      'Exposure there',
      `${plainNumber(nearest.extensionFactor, 2)} × the metered one (${stops(nearest.stops)}); wide open it works as ${fNumber(nearest.effectiveAperture)}`,
    ],
    [
      'Could reach',
      `${slide.reachableMagnification < 0 ? 'no focus, not even infinity' : magnification(slide.reachableMagnification)}, ${length(Math.abs(slide.slack))} of draw ${slide.slack < 0 ? 'short' : 'to spare'}; limited by ${slide.limitedBy}`,
    ],
    [
      'Other side of board',
      slide.reachableOtherSide === null || slide.reachableOtherSide < 0
        ? 'with the lens mounted there it would reach no focus'
        : `with the lens mounted there it could reach ${magnification(slide.reachableOtherSide)}`,
    ],
  ];
}

function slideRows({ slide }: PlanDocument): readonly Row[] {
  return [
    [
      'Front box',
      `${square(slide.frontBoxInside)} inside, ${square(slide.frontBoxOutside)} outside, ${length(slide.frontBoxLength)} long`,
    ],
    ...(slide.middleBox
      ? [
          [
            'Middle box',
            `${square(slide.middleBox.inside)} inside, ${square(slide.middleBox.outside)} outside, ${length(slide.middleBox.length)} long; drawn out of the front box ${length(slide.middleBox.ownRun)}, the rear box out of it ${length(slide.middleBox.rearRun)}`,
          ] as const,
        ]
      : []),
    [
      'Rear box',
      `${square(slide.rearBoxInside)} inside, ${square(slide.rearBoxOutside)} outside, ${length(slide.rearBoxLength)} long`,
    ],
    ['Gap between them', `${length(slide.clearance)} a side, felt in it`],
    [
      'Holder seat',
      `z ${length(slide.closest)} closed to ${length(slide.farthest)} drawn out: ${length(slide.travel)} of travel`,
    ],
    [
      'Overlap drawn out',
      slide.middleBox
        ? `front and middle box ${length(slide.middleBox.overlapInFront)}, ${length(slide.middleBox.overlapRequired)} needed; middle and rear box ${length(slide.middleBox.overlapOfRear)}, ${length(slide.overlapRequired)} needed`
        : `${length(slide.overlapFarthest)}; ${length(slide.overlapRequired)} needed`,
    ],
    [
      'Behind the panel',
      `${length(slide.panelDead)} kept free; the lens ${slide.passesInsideRearBox ? 'passes' : 'does not pass'} inside the rear box`,
    ],
    ['Seat to boxes', `${length(slide.stackBehindBoxes)} from the holder seat forward to the front of the standard`],
  ];
}

function holderTable({ holders, optics, tailboard }: PlanDocument, page: Page): readonly string[] {
  const far = optics.farthest ? 'farthest' : 'infinity';
  // seats are drawn, index lines go by what was measured: beside each other they need what was measured between them
  const measured = holders.some(({ standingDepth }) => standingDepth !== undefined);
  const columns: readonly Column[] = [
    { title: 'Holder', align: 'left' },
    { title: 'film depth', align: 'right' },
    { title: 'with spacer', align: 'right' },
    ...(measured ? [{ title: 'as it stands', align: 'right' } as const] : []),
    { title: `seat, ${far}`, align: 'right' },
    { title: 'seat, nearest', align: 'right' },
    { title: 'index line', align: 'right' },
  ];
  const rows = holders.map(({ name, filmDepth, effectiveDepth, standingDepth = effectiveDepth, seat }) => [
    name,
    mm(filmDepth),
    mm(effectiveDepth),
    ...(measured ? [mm(standingDepth)] : []),
    `z ${length(seat[far] ?? seat.infinity)}`,
    `z ${length(seat.nearest)}`,
    signed(tailboard.indexOffsets[name] ?? 0),
  ]);
  return tabled('Holders', columns, rows, page);
}

function registerRows({ groundGlass, spacers }: PlanDocument): readonly Row[] {
  return [
    ['Ground glass', glassText(groundGlass)],
    ['Packing before it', `${mm(groundGlass.packing)}: ${layersText(groundGlass)}`],
    ...spacers.map(
      (spacer): Row => [
        `Spacer, ${spacer.holder}`,
        groundGlass.wantedDepth === undefined || spacer.under === 'none'
          ? spacerText(spacer)
          : // shims that are named now would be wrong once the glass is mended
            `${spacerText({ ...spacer, add: [], takeOut: [] })}; mend the glass first, measure it again, then ask for the spacer again`,
      ],
    ),
  ];
}

function glassText({ effectiveDepth, standingDepth, wantedDepth, add = [], takeOut = [] }: PlanGroundGlass): string {
  const drawn = `frosted face ${mm(effectiveDepth)} behind the seat`;
  const stands = standingDepth === undefined ? drawn : `${drawn} as drawn, ${mm(standingDepth)} as measured`;
  return wantedDepth === undefined
    ? stands
    : `${stands}; the films ask for ${mm(wantedDepth)}${mendText({ add, takeOut })}`;
}

function spacerText(spacer: PlanSpacer): string {
  const { under, thickness, measured, remainder, tolerance } = spacer;
  if (under === 'none') return 'none needed';
  const place = under === 'glass' ? 'under the ground glass' : 'under the holder';
  // a spacer that was measured is drawn as it was glued, and lacks what glass and film as they stand ask for
  const [drawn, wanted] = [mm(thickness), mm(measured === undefined ? thickness : measured + remainder)];
  const size = wanted === drawn ? `${drawn} ${place}` : `${wanted} ${place}, ${drawn} as drawn`;
  return `${size}: ${layersText(spacer)}, ±${mm(tolerance)} allowed`;
}

/** Plies and shims as counts, and what they leave. */
export function layersText({
  plies,
  shims,
  remainder,
  measured,
  add = [],
  takeOut = [],
}: Pick<PlanSpacer, 'plies' | 'shims' | 'remainder' | 'measured' | 'add' | 'takeOut'>): string {
  if (measured !== undefined) {
    const off = remainder === 0 ? 'right' : `${mm(Math.abs(remainder))} too ${remainder > 0 ? 'thin' : 'thick'}`;
    return `${mm(measured)} as measured, ${off}${mendText({ add, takeOut })}`;
  }
  const stack = [
    ...counted(plies).map(([size, count]) => `${count} ${count === 1 ? 'ply' : 'plies'} of ${mm(size)}`),
    ...(shims.length > 0 ? [shimsText(shims)] : []),
  ];
  return `${stack.length > 0 ? stack.join(' + ') : 'nothing'}, ${signed(remainder)} left`;
}

/** What is done to a stack that was measured: often a thick shim goes out and a thinner one in. */
function mendText({ add, takeOut }: Required<Pick<PlanSpacer, 'add' | 'takeOut'>>): string {
  const deeds = [
    ...(takeOut.length > 0 ? [`take out ${shimsText(takeOut)}`] : []),
    ...(add.length > 0 ? [`add ${shimsText(add)}`] : []),
  ];
  return deeds.length > 0 ? `: ${deeds.join(', ')}` : '';
}

const shimsText = (shims: readonly number[]): string =>
  counted(shims)
    .map(([size, count]) => `${count} ${count === 1 ? 'shim' : 'shims'} of ${mm(size)}`)
    .join(' + ');

function counted(sizes: readonly number[]): readonly (readonly [number, number])[] {
  const counts = new Map<number, number>();
  for (const size of sizes) counts.set(size, (counts.get(size) ?? 0) + 1);
  return [...counts];
}

function aheadRows({ filterHolder, shutter, hood, cap }: PlanDocument): readonly Row[] {
  return [
    ...(filterHolder
      ? [
          [
            'Filter holder',
            `opening ${length(filterHolder.opening)}, gels ${length(filterHolder.gel)} square; the light is ${length(filterHolder.light)} across there`,
          ] as const,
        ]
      : []),
    ...(shutter ? shutterRows(shutter) : []),
    ...(hood
      ? [
          [
            'Lens hood',
            `mouth ${length(hood.mouth)} square, ${length(hood.depth)} ahead of the lens; the light is ${length(hood.light)} wide there`,
          ] as const,
          ['Shades', `the lens from ${plainNumber(hood.shade, 0)}° off the axis on`] as const,
        ]
      : []),
    ...(cap ? [['Cap', `laps ${length(cap.lap)} over the opening of the accessory frame`] as const] : []),
  ];
}

function shutterRows({ slot, fall, distance, ...does }: NonNullable<PlanDocument['shutter']>): readonly Row[] {
  const { time, open, fullyOpen, efficiency, dial, dialStops, uneven } = does;
  const ms = (s: number) => `${plainNumber(1000 * s, 1)} ms`;
  return [
    ['Drop shutter', `slot ${length(slot)}, falls ${length(fall)}, ${length(distance)} ahead of the lens seat`],
    [
      'Exposes',
      `${exposureTime(time)} with the lens wide open, ${stops(Math.abs(dialStops))} ${dialStops < 0 ? 'less' : 'more'} than the ${exposureTime(dial)} of a dial`,
    ],
    [
      'Light comes in',
      `for ${ms(open)}, for ${ms(fullyOpen)} unhindered: ${plainNumber(100 * efficiency, 0)} % is used`,
    ],
    [
      'Above and below',
      uneven === null ? 'lit before the slide falls' : `the picture gets ${stops(uneven)} more above than below`,
    ],
  ];
}

function tailboardRows({ tailboard }: PlanDocument): readonly Row[] {
  const { balance } = tailboard;
  return [
    [
      'Tailboard',
      `${length(tailboard.length)} × ${length(tailboard.width)}, optical axis ${length(tailboard.axisHeight)} above it`,
    ],
    ['Slot for the lock', `${length(tailboard.slot)} long`],
    ['Tripod nut', `at z ${length(tailboard.tripod)}`],
    [
      'Balance',
      `z ${length(balance.closest)} closed and empty, z ${length(balance.farthest)} drawn out with the heaviest holder`,
    ],
    ['Sag', `${length(tailboard.sag)} at the end, drawn out and loaded`],
  ];
}

function sizeRows({ camera }: PlanDocument): readonly Row[] {
  return [
    ['Width × height', `${length(camera.width)} × ${length(camera.height)}`],
    [
      'Depth',
      `${length(camera.depthClosed)} closed, ${length(camera.depthOpen)} drawn out, lens and accessories not counted`,
    ],
    ['Mass', `${kg(camera.mass)} without a holder`],
  ];
}

const GROUPS: Readonly<Record<string, string>> = {
  front: 'Front, fixed to the tailboard',
  middle: 'Middle box, drawn along when the rear is half out',
  rear: 'Rear, slides',
  back: 'Back, slides and turns',
  loose: 'Loose, taken out',
};

function partTable(all: readonly PlanPart[], page: Page): readonly string[] {
  if (all.length === 0) return [];
  const columns: readonly Column[] = [
    { title: 'Part', align: 'left' },
    { title: 'name', align: 'left' },
    { title: 'pieces', align: 'right' },
    { title: 'size', align: 'right' },
    { title: 'from', align: 'left' },
    { title: 'grain', align: 'left' },
  ];
  const rows = all.map((part) => [
    part.id,
    part.name,
    `${part.count}`,
    `${plainNumber(part.width, 2)} × ${length(part.height)}`,
    part.material,
    part.grain === 'any' ? 'any way' : `along ${part.grain}`,
  ]);
  const { titles, rows: lines } = table(columns, rows, page.width - INDENT);
  const groups = [...new Set(all.map(({ group }) => group))];
  const pieces = all.reduce((sum, { count }) => sum + count, 0);
  return [
    page.colour.heading(`Parts to make: ${pieces} pieces`),
    ...indented(titles).map(page.colour.faint),
    ...groups.flatMap((group) => [
      ...indented(wrap(GROUPS[group] ?? `With the ${group}`, page.width - INDENT)),
      ...all.flatMap((part, i) => (part.group === group ? indented(lines[i] ?? []) : [])),
    ]),
  ];
}

function hardwareTable({ hardware }: PlanDocument, page: Page): readonly string[] {
  const columns: readonly Column[] = [
    { title: 'Count', align: 'right' },
    { title: 'what', align: 'left' },
    { title: 'size', align: 'left' },
    { title: 'for', align: 'left' },
  ];
  const rows = hardware.map((line) => [`${line.count}`, line.name, line.size, line.for]);
  return tabled('To buy', columns, rows, page);
}

const SERIOUSNESS: readonly Finding['level'][] = ['error', 'warning', 'note'];

function findingList(all: readonly Finding[], { width, colour }: Page): readonly string[] {
  if (all.length === 0) return [];
  const lines = SERIOUSNESS.flatMap((level) =>
    all
      .filter((finding) => finding.level === level)
      .flatMap((finding) => [
        `  ${colour[level](level)}  ${finding.rule}`,
        ...wrap(finding.message, width - 4).map((line) => `    ${line}`),
        ...measured(finding).map((line) => `    ${line}`),
        ...wrap(finding.hint ?? '', width - 4).map((line) => `    ${colour.faint(line)}`),
      ]),
  );
  return [colour.heading('Findings'), ...lines];
}

/** What was measured against what, where a finding says so. */
function measured({ value, limit, unit = '' }: Finding): readonly string[] {
  const figure = (n: number) => `${plainNumber(n)} ${unit}`.trimEnd();
  if (value === undefined) return limit === undefined ? [] : [`limit ${figure(limit)}`];
  return [limit === undefined ? `measured ${figure(value)}` : `measured ${figure(value)}, limit ${figure(limit)}`];
}

const INDENT = 2;
const indented = (lines: readonly string[]): readonly string[] => lines.map((line) => `${' '.repeat(INDENT)}${line}`);

/** Figures one under another, long ones run on under their own beginning. */
function figures(title: string, rows: readonly Row[], { width, colour }: Page): readonly string[] {
  const labels = Math.min(LABELS, Math.max(...rows.map(([label]) => label.length))) + 2;
  const lines = rows.flatMap(([label, text]) => {
    const left = wrap(label, labels - 2);
    const right = wrap(text, width - INDENT - labels);
    return Array.from({ length: Math.max(left.length, right.length) }, (_, k) =>
      `${(left[k] ?? '').padEnd(labels)}${right[k] ?? ''}`.trimEnd(),
    );
  });
  return [colour.heading(title), ...indented(lines)];
}

/** A holder's name may be long: past this a label runs over several lines. */
const LABELS = 28;

function tabled(
  title: string,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  page: Page,
): readonly string[] {
  if (rows.length === 0) return [];
  const { titles, rows: lines } = table(columns, rows, page.width - INDENT);
  return [page.colour.heading(title), ...indented(titles).map(page.colour.faint), ...indented(lines.flat())];
}

const square = (side: number): string => `${plainNumber(side, 2)} × ${length(side)}`;

/** Hundredths: finer than a rule reads and as fine as a caliper does. What decides the focus is told to the micrometre. */
const length = (value: number): string => `${plainNumber(value, 2)} mm`;

function signed(value: number): string {
  const text = mm(value);
  return text.startsWith('-') || plainNumber(value) === '0' ? text : `+${text}`;
}
