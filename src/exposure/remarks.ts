import type { Design, Sitting } from '../design/design.js';
import type { Exposure, ExposureGiven } from '../model/exposure.js';
import type { Remark, SittingDocument } from '../model/sitting.js';
import { subjectDistance } from '../optics/conjugates.js';
import { circleAt, coversFrom, diagonal } from '../optics/image-circle.js';
import { apertureDialsInTurn } from '../standards/aperture-numbers.js';
import { strayOfMark } from '../standards/dial.js';
import { energy, exposureTime, fNumber, magnification, metres, mm, plainNumber, stops, tenth } from '../units/print.js';
import { HEAD } from './head.js';
import { beyondTable, LOSS_BEGINS } from './reciprocity.js';

/** What the remarks look at. */
export interface Remarked {
  readonly design: Design;
  readonly today: Sitting;
  /** The design's sitting with today's laid over it. */
  readonly sitting: Sitting;
  readonly given: ExposureGiven;
  readonly tested: boolean;
  readonly exposure: Exposure;
  readonly onePop: SittingDocument['onePop'];
  /** The nearest focus that the camera reaches, as a magnification. */
  readonly reaches: number;
}

/** What one kind of remark says of a sitting; null where there is nothing to say. */
type Says = (remarked: Remarked) => Omit<Remark, 'id'> | null;

/** Nobody who breathes is still for longer, s (common practice, no source). */
const STILL = 0.25;

/** Each gel reflects at its two surfaces, about 4 % at each; more than four cost contrast, too (common practice, no source). */
const MOST_GELS = 4;

/** A head sways by so much where nothing holds it, mm (common practice, no source). */
const SWAY = 60;

/** Speeds below it are those of papers, most of which see no yellow and no red (common practice, no source). */
const PAPER_SPEED = 25;

/** Smaller differences between two marks are lost in the rest, stops. */
const STRAY = 0.05;

/** Beyond this a magnification is nearer than another and not the same one rounded. */
const SAME = 1e-6;

/** For how long a sitter must hold still, s; null where it is short enough. */
function held({ time, correctedTime }: Exposure): number | null {
  const given = correctedTime ?? time;
  return given === null || given < STILL ? null : given;
}

/** How much is sharp about the eyes, mm; null where it is enough. */
function shallow({ subjectDistance: eyes, depthOfField: { near, far } }: Exposure): number | null {
  if (eyes === null || near === null || far === null) return null;
  // to the millimetre before and behind the eyes, as they are told: whoever adds them up finds this
  const sharp = Math.round(eyes - near) + Math.round(far - eyes);
  return sharp >= SWAY ? null : sharp;
}

const holdStill: Says = ({ exposure }) => {
  const still = held(exposure);
  if (still === null) return null;
  const cure =
    shallow(exposure) === null
      ? 'or take more light, or a wider stop.'
      : 'or take more light: a wider stop would leave even less sharp.';
  return {
    message: `The sitter must hold still for ${exposureTime(still)}.`,
    hint: `Give the head a rest, and the hands; ${cure}`,
  };
};

/** Rounded to what lights no less: nearer, or wider. Rounded as anything else, it might take a second pop. */
const down = (value: number, grain: number): number => Math.floor(value / grain + 1e-6) * grain;
const CENTIMETRE = 10;
const HUNDREDTH = 0.01;

const manyPops: Says = ({ exposure, given: { flashMost, aperture }, onePop }) => {
  if (exposure.energy === null || flashMost === null || onePop === null) return null;
  const stop =
    onePop.aperture === null
      ? 'no stop of this lens is wide enough'
      : `or the stop at ${fNumber(down(onePop.aperture, HUNDREDTH))} in place of ${fNumber(aperture)}${shallow(exposure) === null ? '' : ', with less sharp about the eyes'}`;
  return {
    message: `${exposure.pops} pops: a person moves or blinks from one to the next.`,
    hint: `For a single pop of ${energy(flashMost)}: the lamp at ${metres(down(onePop.lampDistance, CENTIMETRE))}; ${stop}.`,
  };
};

const depthAboutEyes: Says = ({ exposure }) => {
  const sharp = shallow(exposure);
  if (sharp === null) return null;
  return {
    message: `Only ${mm(sharp)} are sharp about the eyes; a head that nothing holds sways by more.`,
    hint: `${mm(SWAY)} are wanted: give the head a rest${stopDown(exposure)}.`,
  };
};

/** A smaller stop makes more sharp, and whatever there is too much of already, more still. */
function stopDown(exposure: Exposure): string {
  if (held(exposure) !== null) return '; a smaller stop makes the time longer still, unless there is more light';
  if (exposure.pops !== null && exposure.pops > 1)
    return '; a smaller stop takes more pops, unless the lamp comes nearer';
  return ', or stop down';
}

const lossUnknown: Says = ({ exposure: { time }, given: { reciprocity } }) =>
  time === null || time <= LOSS_BEGINS || reciprocity !== null
    ? null
    : {
        message: `Over ${exposureTime(LOSS_BEGINS)} paper and film ask for more than the meter says, by reciprocity; for this one nobody says how much.`,
        hint: 'Make a test; then write sitting.reciprocity, an exponent or a table.',
      };

const lossBeyondTable: Says = ({ exposure: { time }, given: { reciprocity } }) =>
  time === null || reciprocity === null || !beyondTable(time, reciprocity)
    ? null
    : {
        message: `${exposureTime(time)} lies outside the table in sitting.reciprocity; its last line was followed on.`,
        hint: 'Make a test, and add it to the table.',
      };

const tooNear: Says = ({ design: { lens }, sitting, given: { magnification: m }, reaches }) =>
  m <= reaches * (1 + SAME)
    ? null
    : {
        message: `The camera reaches ${magnification(reaches)} at the nearest, a sitter ${metres(subjectDistance(lens.focalLength, reaches))} from the front principal plane.`,
        hint: `${m > 1 && sitting.magnification !== undefined ? `Was ${magnification(1 / m)} meant? ` : ''}Let the sitter move back, or build for focus.nearest: ${magnification(m, 'nearer')}.`,
      };

/** A head may well be cut by the picture, and a share of 120 per cent may be a slip of the finger. */
const headCut: Says = ({
  design: { format },
  sitting: { head, subject, magnification: said, headHeight = HEAD },
  given,
}) => {
  const onGlass = given.magnification * headHeight;
  if (head === undefined || subject !== undefined || said !== undefined || onGlass <= format.image.long) return null;
  return {
    message: `The head is ${mm(tenth(onGlass))} tall on the glass and the picture ${mm(tenth(format.image.long))}: it is cut.`,
    hint: 'Where the whole head is meant, give a height or a share below 100 %.',
  };
};

const tooFar: Says = ({ design: { focus }, given: { magnification: m } }) =>
  m >= focus.farthest * (1 - SAME)
    ? null
    : {
        message: `The camera is built for ${magnification(focus.farthest)} and nearer.`,
        hint: 'Come nearer; or see on the ground glass whether it still gets sharp.',
      };

const corners: Says = ({ design: { lens, format }, given: { magnification: m } }) => {
  if (lens.coverage === null) return null;
  const P = lens.pupilMagnification;
  const corner = diagonal({ width: format.image.short, height: format.image.long });
  const here = circleAt(m, lens.coverage, P);
  if (here >= corner) return null;
  const from = coversFrom(corner, circleAt(0, lens.coverage, P), P);
  return {
    message: `At ${magnification(m)} the image circle is ${mm(Math.round(here))}, and the picture ${mm(Math.round(corner))} from corner to corner.`,
    hint: `The corners are covered from ${magnification(from, 'nearer')} on: come nearer, or let them go dark.`,
  };
};

const manyGels: Says = ({ given: { filters } }) =>
  filters.length <= MOST_GELS
    ? null
    : {
        message: `${filters.length} gels stand in the light; each surface throws back about 4 %, over the picture, too.`,
        hint: 'Take the fewest and the flattest: one of the whole density in place of several.',
      };

const blueSensitive: Says = ({ sitting, tested, given: { speed } }) => {
  if (tested || speed === null || speed >= PAPER_SPEED || sitting.process === 'reversal') return null;
  const set = sitting.filterSets?.find(({ name }) => name === sitting.filterSet)?.filters ?? [];
  const factors = [...(sitting.filter ?? []), ...set.map(({ factor = 1 }) => factor)].filter((factor) => factor > 1);
  if (factors.length === 0) return null;
  return {
    message: `Filter factors from tables hold for film that sees all colours. At a speed of ${plainNumber(speed)} this is paper, and most papers see blue and little else.`,
    hint: 'Find the factor of each coloured filter by a test on this paper; densities of neutral ones hold.',
  };
};

const otherSpeed: Says = ({ tested, given: { reading, speed } }) =>
  tested || reading === null || speed === null || reading.speed === speed
    ? null
    : {
        message: `The reading is for a speed of ${plainNumber(reading.speed)} and the paper has ${plainNumber(speed)}: ${stops(Math.log2(reading.speed / speed))} are carried over by arithmetic.`,
        hint: 'A meter and a paper see colours differently, and lamps differ in colour: trust the first test more.',
      };

const exactStop: Says = ({ given: { aperture, reading } }) => {
  if (reading === null) return null;
  const strayed = (number: number) => strayOfMark(number, apertureDialsInTurn) ?? 0;
  const apart = strayed(aperture) - strayed(reading.aperture);
  if (Math.abs(apart) < STRAY) return null;
  const mark = Math.abs(strayed(aperture)) > Math.abs(strayed(reading.aperture)) ? aperture : reading.aperture;
  return {
    message: `${fNumber(mark)} was taken as that number. Where it stands among whole stops it means ${fNumber(mark / 2 ** (strayed(mark) / 2))}, and the sheet comes out ${plainNumber(Math.abs(apart), 2)} stop ${apart < 0 ? 'under' : 'over'}.`,
    hint: 'Where you know the diameter of the stop, type its exact number.',
  };
};

const lampNotUsed: Says = ({ today, given: { reading } }) =>
  reading?.kind !== 'meter' || (today.lampDistance === undefined && today.flashMost === undefined)
    ? null
    : {
        message: 'The reading is that of a meter, so neither the distance of a lamp nor its energy enters.',
        hint: 'Give a flash reading, or read the meter again where the lamps stand now.',
      };

/** By weight: what makes the picture impossible, what moves, what is sharp, and what is doubtful about the exposure. */
const REMARKS: readonly (readonly [id: string, says: Says])[] = [
  ['too-near', tooNear],
  ['too-far', tooFar],
  ['head-cut', headCut],
  ['dark-corners', corners],
  ['hold-still', holdStill],
  ['many-pops', manyPops],
  ['shallow-depth', depthAboutEyes],
  ['loss-unknown', lossUnknown],
  ['beyond-table', lossBeyondTable],
  ['many-gels', manyGels],
  ['blue-sensitive', blueSensitive],
  ['other-speed', otherSpeed],
  ['exact-stop', exactStop],
  ['lamp-not-used', lampNotUsed],
];

/** The ids of all remarks, the weightiest first. */
export const remarkIds: readonly string[] = REMARKS.map(([id]) => id);

export const remarksOn = (remarked: Remarked): readonly Remark[] =>
  REMARKS.flatMap(([id, says]) => {
    const said = says(remarked);
    return said === null ? [] : [{ id, ...said }];
  });
