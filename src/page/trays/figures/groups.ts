import type { PlanDocument, PlanSpacer } from '../../../index.js';
import { coverage, exposureTime, fNumber, kg, magnification, mm, plainNumber, stops } from '../../../units/print.js';
import { reserveWords } from '../../camera/focus.js';

/** A figure in a row: where it stands in the plan, and how it is printed. */
export interface Printed {
  readonly figure: string;
  readonly text: string;
}

export interface FigureRow {
  readonly label: string;
  /** Figures, with words between them. */
  readonly said: readonly (Printed | string)[];
}

export interface FigureGroup {
  readonly title: string;
  readonly rows: readonly FigureRow[];
}

/** The figures of a plan in the order in which a builder asks, parts and hardware apart. */
/** @param reached the nearest focus at the end of the reserve, as a magnification */
export const figureGroups = (plan: PlanDocument, reached: number): readonly FigureGroup[] => [
  { title: 'Lens and what it covers', rows: lensRows(plan) },
  { title: 'Focus', rows: focusRows(plan, reached) },
  { title: 'Boxes and slide', rows: slideRows(plan) },
  ...plan.holders.map(({ name }, i) => ({ title: upper(name), rows: holderRows(plan, i) })),
  { title: 'Ground glass', rows: glassRows(plan) },
  ...(plan.filterHolder || plan.shutter || plan.hood || plan.cap
    ? [{ title: 'Ahead of the lens', rows: aheadRows(plan) }]
    : []),
  { title: 'Tailboard, tripod, balance', rows: tailboardRows(plan) },
  { title: 'Size and mass', rows: sizeRows(plan) },
];

const upper = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

const row = (label: string, ...said: FigureRow['said']): FigureRow => ({ label, said });
/** Hundredths, as a caliper reads. */
const long = (figure: string, value: number): Printed => ({ figure, text: `${plainNumber(value, 2)} mm` });
/** To the micrometre: what decides the focus. */
const fine = (figure: string, value: number): Printed => ({ figure, text: mm(value) });
const ratio = (figure: string, value: number): Printed => ({ figure, text: magnification(value) });

function lensRows({ optics }: PlanDocument): readonly FigureRow[] {
  const { imageCircle: circle, exitPupil } = optics;
  const needed = long('optics.imageCircle.required', circle.required);
  return [
    row(
      'Focal length',
      long('optics.focalLength', optics.focalLength),
      ', ',
      { figure: 'optics.maxAperture', text: fNumber(optics.maxAperture) },
      ' wide open',
    ),
    row(
      'Flange distance',
      long('optics.flangeDistance', optics.flangeDistance),
      ' from the lens seat to the film at infinity',
    ),
    row('Lens seat', 'at z ', long('optics.seatZ', optics.seatZ), ', counted from the rear face of the front panel'),
    row(
      'Exit pupil',
      long('optics.exitPupil.diameter', exitPupil.diameter),
      ' across, at z ',
      long('optics.exitPupil.z', exitPupil.z),
    ),
    row('Image', long('optics.imageDiagonal', optics.imageDiagonal), ' from corner to corner'),
    circle.infinity === null || circle.nearest === null
      ? row('Image circle', { figure: 'optics.imageCircle.infinity', text: 'not known' }, '; ', needed, ' needed')
      : row(
          'Image circle',
          long('optics.imageCircle.infinity', circle.infinity),
          ' at infinity, ',
          long('optics.imageCircle.nearest', circle.nearest),
          ' at the nearest; ',
          needed,
          ' needed',
        ),
    row('Covers', { figure: 'optics.coversFrom', text: coverage(optics.coversFrom, optics.imageCircle.infinity) }),
  ];
}

function focusRows(plan: PlanDocument, reached: number): readonly FigureRow[] {
  const { optics, slide } = plan;
  const { nearest, farthest, infinity } = optics;
  const past = reserveWords(plan, reached);
  return [
    row(
      'At infinity',
      'film ',
      long('optics.infinity.filmDistance', infinity.filmDistance),
      ` behind the lens seat${farthest ? '; not asked for, the slide ends before' : ''}`,
    ),
    ...(farthest
      ? [
          row(
            'Farthest asked',
            ratio('optics.farthest.magnification', farthest.magnification),
            ', film ',
            long('optics.farthest.filmDistance', farthest.filmDistance),
            ' behind the lens seat',
          ),
          row(
            'Subject there',
            long('optics.farthest.subjectDistance', farthest.subjectDistance),
            ' ahead of the lens (front principal plane)',
          ),
        ]
      : []),
    row(
      'Nearest asked',
      ratio('optics.nearest.magnification', nearest.magnification),
      ', film ',
      long('optics.nearest.filmDistance', nearest.filmDistance),
      ' behind the lens seat',
    ),
    nearest.subjectDistance === null
      ? row('Subject there', { figure: 'optics.nearest.subjectDistance', text: 'at infinity' })
      : row(
          'Subject there',
          long('optics.nearest.subjectDistance', nearest.subjectDistance),
          ' ahead of the lens (front principal plane)',
        ),
    row(
      'Exposure there',
      { figure: 'optics.nearest.extensionFactor', text: `${plainNumber(nearest.extensionFactor, 2)} ×` },
      ' the metered one (',
      { figure: 'optics.nearest.stops', text: stops(nearest.stops) },
      '); wide open it works as ',
      { figure: 'optics.nearest.effectiveAperture', text: fNumber(nearest.effectiveAperture) },
    ),
    ...(past === '' ? [] : [row('Runs on', past, ', for a lens that is longer than it says')]),
    row(
      'Could reach',
      slide.reachableMagnification < 0
        ? { figure: 'slide.reachableMagnification', text: 'no focus, not even infinity' }
        : ratio('slide.reachableMagnification', slide.reachableMagnification),
      ', ',
      long('slide.slack', Math.abs(slide.slack)),
      ` of draw ${slide.slack < 0 ? 'short' : 'to spare'}; limited by `,
      { figure: 'slide.limitedBy', text: slide.limitedBy },
    ),
    slide.reachableOtherSide === null || slide.reachableOtherSide < 0
      ? row('Other side of board', 'with the lens mounted there it would reach ', {
          figure: 'slide.reachableOtherSide',
          text: 'no focus',
        })
      : row(
          'Other side of board',
          'with the lens mounted there it could reach ',
          ratio('slide.reachableOtherSide', slide.reachableOtherSide),
        ),
  ];
}

function slideRows({ slide, lensBoard }: PlanDocument): readonly FigureRow[] {
  return [
    row(
      'Lens board',
      long('lensBoard.side', lensBoard.side),
      ' square, before an opening of ',
      long('lensBoard.opening', lensBoard.opening),
    ),
    row(
      'Behind the panel',
      'lens and mount reach to z ',
      long('lensBoard.reachBehindPanel', lensBoard.reachBehindPanel),
      ', ',
      long('lensBoard.radiusBehindPanel', lensBoard.radiusBehindPanel),
      ' from the axis at most',
    ),
    row(
      'Front box',
      long('slide.frontBoxInside', slide.frontBoxInside),
      ' square inside, ',
      long('slide.frontBoxOutside', slide.frontBoxOutside),
      ' outside, ',
      long('slide.frontBoxLength', slide.frontBoxLength),
      ' long',
    ),
    row(
      'Rear box',
      long('slide.rearBoxInside', slide.rearBoxInside),
      ' square inside, ',
      long('slide.rearBoxOutside', slide.rearBoxOutside),
      ' outside, ',
      long('slide.rearBoxLength', slide.rearBoxLength),
      ' long',
    ),
    row('Clearance', long('slide.clearance', slide.clearance), ' a side, the felt pressed together'),
    row(
      'Travel',
      long('slide.travel', slide.travel),
      ': holder seat from z ',
      long('slide.closest', slide.closest),
      ' to z ',
      long('slide.farthest', slide.farthest),
    ),
    row(
      'Overlap drawn out',
      long('slide.overlapFarthest', slide.overlapFarthest),
      '; ',
      long('slide.overlapRequired', slide.overlapRequired),
      ' needed',
    ),
    row('Reserve', long('slide.reserve', slide.reserve), ' of draw past the nearest focus'),
    row(
      'Kept free behind it',
      long('slide.panelDead', slide.panelDead),
      '; the lens ',
      { figure: 'slide.passesInsideRearBox', text: slide.passesInsideRearBox ? 'passes' : 'does not pass' },
      ' inside the rear box',
    ),
    row(
      'Seat to boxes',
      long('slide.stackBehindBoxes', slide.stackBehindBoxes),
      ' from the holder seat forward to the front of the standard',
    ),
  ];
}

function holderRows({ holders, spacers, tailboard }: PlanDocument, i: number): readonly FigureRow[] {
  const holder = holders[i];
  const spacer = spacers[i];
  if (holder === undefined) return [];
  const { name, filmDepth, effectiveDepth, standingDepth, seat, tank } = holder;
  const at = `holders[${i}]`;
  return [
    row(
      'Film depth',
      fine(`${at}.filmDepth`, filmDepth),
      ...(filmDepth === effectiveDepth ? [] : ['; ', fine(`${at}.effectiveDepth`, effectiveDepth), ' with the spacer']),
      ...(standingDepth === undefined ? [] : ['; ', fine(`${at}.standingDepth`, standingDepth), ' as it stands']),
    ),
    row(
      'Holder seat',
      'z ',
      ...(seat.farthest === undefined
        ? [long(`${at}.seat.infinity`, seat.infinity), ' at infinity, z ']
        : [long(`${at}.seat.farthest`, seat.farthest), ' at the farthest, z ']),
      long(`${at}.seat.nearest`, seat.nearest),
      ' at the nearest',
    ),
    row(
      'Index line',
      fine(`tailboard.indexOffsets.${name}`, tailboard.indexOffsets[name] ?? 0),
      ' behind the first one',
    ),
    ...(spacer === undefined ? [] : [spacerRow(spacer, `spacers[${i}]`)]),
    ...(tank === undefined ? [] : tankRows(tank, `${at}.tank`)),
  ];
}

function tankRows(tank: NonNullable<PlanDocument['holders'][number]['tank']>, at: string): readonly FigureRow[] {
  const whole = (figure: keyof typeof tank, value: number, unit: string): Printed => ({
    figure: `${at}.${figure}`,
    text: `${plainNumber(value, 0)}${unit}`,
  });
  return [
    row(
      'A bath',
      whole('workingVolume', tank.workingVolume, ' ml'),
      '; ',
      whole('leastVolume', tank.leastVolume, ' ml'),
      ' at least, ',
      whole('fullVolume', tank.fullVolume, ' ml'),
      ' when full',
    ),
    row(
      'Runs in and out',
      'in ',
      whole('fillSeconds', Math.ceil(tank.fillSeconds), ' s'),
      ' and ',
      whole('drainSeconds', Math.ceil(tank.drainSeconds), ' s'),
    ),
    row('Rocked', 'by ', whole('rockAngle', Math.floor(tank.rockAngle), '°'), ' at most'),
    row('Its lid bears', whole('lidForce', tank.lidForce, ' N'), ' when it is capped cold and warmed'),
  ];
}

function spacerRow(spacer: PlanSpacer, at: string): FigureRow {
  if (spacer.under === 'none') return row('Spacer', { figure: `${at}.under`, text: 'none needed' });
  return row(
    'Spacer',
    fine(`${at}.thickness`, spacer.thickness),
    ' ',
    { figure: `${at}.under`, text: spacer.under === 'glass' ? 'under the ground glass' : 'under the holder' },
    ...(spacer.measured === undefined
      ? [`: ${layers(spacer)}, `, ...leftOver(`${at}.remainder`, spacer.remainder)]
      : asMeasured({ ...spacer, measured: spacer.measured }, at)),
    '; ±',
    fine(`${at}.tolerance`, spacer.tolerance),
    ' allowed',
  );
}

/** A spacer that stands, what it should be more or less, and the shims that mend it. */
function asMeasured(
  { measured, remainder, add = [], takeOut = [] }: PlanSpacer & { readonly measured: number },
  at: string,
): FigureRow['said'] {
  const mended = [
    ...(takeOut.length > 0 ? [`take out ${shimCounts(takeOut)}`] : []),
    ...(add.length > 0 ? [`add ${shimCounts(add)}`] : []),
  ];
  return [
    ': ',
    fine(`${at}.measured`, measured),
    ' as measured, ',
    fine(`${at}.remainder`, Math.abs(remainder)),
    ` too ${remainder < 0 ? 'thick' : 'thin'}${mended.length > 0 ? `: ${mended.join(', ')}` : ''}`,
  ];
}

const glassRows = ({ groundGlass: glass }: PlanDocument): readonly FigureRow[] => [
  row('Ground glass', 'frosted face ', fine('groundGlass.effectiveDepth', glass.effectiveDepth), ' behind the seat'),
  row(
    'Packing before it',
    fine('groundGlass.packing', glass.packing),
    `: ${layers(glass)}, `,
    ...leftOver('groundGlass.remainder', glass.remainder),
  ),
];

/** What plies and shims do not fill, or take too much. */
const leftOver = (figure: string, remainder: number): FigureRow['said'] => [
  fine(figure, Math.abs(remainder)),
  remainder < 0 ? ' too thick' : ' left open',
];

/** Plies and shims as counts. */
function layers({ plies, shims }: Pick<PlanDocument['groundGlass'], 'plies' | 'shims'>): string {
  const stack = [
    ...(plies.length > 0 ? [counted(plies, 'ply', 'plies')] : []),
    ...(shims.length > 0 ? [shimCounts(shims)] : []),
  ];
  return stack.length > 0 ? stack.join(' + ') : 'nothing';
}

const shimCounts = (shims: readonly number[]): string => counted(shims, 'shim', 'shims');

const counted = (sizes: readonly number[], one: string, more: string): string =>
  [...new Set(sizes)]
    .map((size) => {
      const count = sizes.filter((other) => other === size).length;
      return `${count} ${count === 1 ? one : more} of ${mm(size)}`;
    })
    .join(' + ');

function aheadRows({ filterHolder, shutter, hood, cap }: PlanDocument): readonly FigureRow[] {
  return [
    ...(filterHolder
      ? [
          row(
            'Filter holder',
            'opening ',
            long('filterHolder.opening', filterHolder.opening),
            ', gels ',
            long('filterHolder.gel', filterHolder.gel),
            ' square; the light is ',
            long('filterHolder.light', filterHolder.light),
            ' across there',
          ),
        ]
      : []),
    ...(shutter ? shutterRows(shutter) : []),
    ...(hood
      ? [
          row(
            'Lens hood',
            'mouth ',
            long('hood.mouth', hood.mouth),
            ' square, ',
            long('hood.depth', hood.depth),
            ' ahead of the lens; the light is ',
            long('hood.light', hood.light),
            ' wide there',
          ),
          row(
            'Shades',
            'the lens from ',
            { figure: 'hood.shade', text: `${plainNumber(hood.shade, 0)}°` },
            ' off the axis on',
          ),
        ]
      : []),
    ...(cap ? [row('Cap', 'laps ', long('cap.lap', cap.lap), ' over the opening of the accessory frame')] : []),
  ];
}

function shutterRows(shutter: NonNullable<PlanDocument['shutter']>): readonly FigureRow[] {
  const { time, open, fullyOpen, efficiency, dial, dialStops, uneven } = shutter;
  const ms = (figure: string, s: number): Printed => ({ figure, text: `${plainNumber(1000 * s, 1)} ms` });
  return [
    row(
      'Drop shutter',
      'slot ',
      long('shutter.slot', shutter.slot),
      ', falls ',
      long('shutter.fall', shutter.fall),
      ', ',
      long('shutter.distance', shutter.distance),
      ' ahead of the lens seat',
    ),
    row(
      'Exposes',
      { figure: 'shutter.time', text: exposureTime(time) },
      ' with the lens wide open, ',
      { figure: 'shutter.dialStops', text: stops(Math.abs(dialStops)) },
      ` ${dialStops < 0 ? 'less' : 'more'} than the `,
      { figure: 'shutter.dial', text: exposureTime(dial) },
      ' of a dial',
    ),
    row(
      'Light comes in',
      'for ',
      ms('shutter.open', open),
      ', for ',
      ms('shutter.fullyOpen', fullyOpen),
      ' unhindered: ',
      { figure: 'shutter.efficiency', text: `${plainNumber(100 * efficiency, 0)} %` },
      ' is used',
    ),
    uneven === null
      ? row('Above and below', { figure: 'shutter.uneven', text: 'lit before the slide falls' })
      : row(
          'Above and below',
          'the picture gets ',
          { figure: 'shutter.uneven', text: stops(uneven) },
          ' more above than below',
        ),
  ];
}

function tailboardRows({ tailboard }: PlanDocument): readonly FigureRow[] {
  const { balance } = tailboard;
  return [
    row(
      'Tailboard',
      long('tailboard.length', tailboard.length),
      ' × ',
      long('tailboard.width', tailboard.width),
      ', optical axis ',
      long('tailboard.axisHeight', tailboard.axisHeight),
      ' above it',
    ),
    row('Slot for the lock', long('tailboard.slot', tailboard.slot), ' long'),
    row('Tripod nut', 'at z ', long('tailboard.tripod', tailboard.tripod)),
    row(
      'Balance',
      'z ',
      long('tailboard.balance.closest', balance.closest),
      ' closed and empty, z ',
      long('tailboard.balance.farthest', balance.farthest),
      ' drawn out with the heaviest holder',
    ),
    row('Sag', long('tailboard.sag', tailboard.sag), ' at the end, drawn out and loaded'),
  ];
}

const sizeRows = ({ camera }: PlanDocument): readonly FigureRow[] => [
  row('Width × height', long('camera.width', camera.width), ' × ', long('camera.height', camera.height)),
  row(
    'Depth',
    long('camera.depthClosed', camera.depthClosed),
    ' closed, ',
    long('camera.depthOpen', camera.depthOpen),
    ' drawn out, lens and accessories not counted',
  ),
  row('Mass', { figure: 'camera.mass', text: kg(camera.mass) }, ' without a holder'),
];
