import type { BenchFault, BenchReading } from '../model/lens-bench.js';
import type { LineFit } from '../statistics/line-fit.js';
import { mm, scale, tenth } from '../units/print.js';
import { type BenchLine, benchLine } from './bench-line.js';

/** Readings whose magnifications differ by less, in proportion, tell no slope; a choice of ours. */
const LEAST_SPREAD = 0.02;

/** A line that explains so much of the spread is one that somebody measured. */
const PLAINLY_A_LINE = 0.99;

/** Whether a line can be drawn at all; the reasons where it cannot. */
export function unfit(readings: readonly BenchReading[]): readonly BenchFault[] {
  const n = readings.length;
  if (n < 3)
    return [
      {
        path: ['readings'],
        what: `There ${n === 1 ? 'is one reading' : `are ${n === 0 ? 'no' : n} readings`}: two draw a line whatever they are worth, and only the third tells how good it is.`,
        accepted: 'Take three at least, better eight, at magnifications as different as you will use.',
      },
    ];
  const ratios = readings.map((reading) => reading.magnification);
  const [least, most] = [Math.min(...ratios), Math.max(...ratios)];
  if (most - least > LEAST_SPREAD * most) return [];
  return [
    {
      path: ['readings', ratios.indexOf(most), 'magnification'],
      what: `All readings are at about ${scale(most)}: there is no spread from which a focal length could be told.`,
      accepted: 'Move the object and focus again: from 1:6 to 1:1 is a good spread.',
    },
  ];
}

/** Whether the line is that of a lens; the reasons where it is not. */
export function unlikely(readings: readonly BenchReading[], { fit }: BenchLine): readonly BenchFault[] {
  if (fit.slope <= 0) return [notGrowing(readings)];
  if (fit.intercept <= 0)
    return [
      {
        path: ['readings'],
        what: `By this line the film at infinity would stand ${mm(tenth(-fit.intercept))} ahead of the lens seat.`,
        accepted:
          'Look through units and ratios: distances count from the lens seat to the ground surface, and 1:3 is written 1:3 or 0.333.',
      },
    ];
  return readings.flatMap(({ objectDistance }, i): readonly BenchFault[] =>
    objectDistance === null || objectDistance > fit.slope
      ? []
      : [
          {
            path: ['readings', i, 'object_distance'],
            what: `The object stands ${mm(objectDistance)} from the lens, nearer than its focal length of ${mm(tenth(fit.slope))}: its image is virtual, and no ground glass shows it.`,
            accepted: 'Write how far the object stands from the lens seat, or move it farther away and focus again.',
          },
        ],
  );
}

/** The image of a nearer object is larger and farther from the lens: where the readings say otherwise, what may have happened. */
function notGrowing(readings: readonly BenchReading[]): BenchFault {
  const what = 'The distance does not grow with the magnification, and behind every lens it does.';
  const turned = lineThrough(readings.map((reading) => ({ ...reading, magnification: 1 / reading.magnification })));
  if (turned !== null && isPlain(turned))
    return {
      path: ['readings', 0, 'magnification'],
      what: `${what} Turned over, all of them lie on a line of f = ${mm(tenth(turned.slope))}.`,
      accepted:
        'Write image over object: 1:3 or 0.333 where the image is a third as long, not 3; or change image and object round.',
    };
  const without = readings
    .map((_, i) => ({ i, fit: lineThrough(readings.filter((__, at) => at !== i)) }))
    .flatMap(({ i, fit }) => (fit !== null && isPlain(fit) ? [{ i, fit }] : []))
    .sort((a, b) => b.fit.determination - a.fit.determination)[0];
  return {
    path: without ? ['readings', without.i] : ['readings'],
    what: without
      ? `${what} Without reading ${without.i + 1} it does, with f = ${mm(tenth(without.fit.slope))}.`
      : what,
    accepted: without
      ? 'Look at this reading again: a ratio turned over, or a slip of the scale?'
      : 'Look whether each ratio stands with its own distance, and whether distances count from the lens seat to the glass.',
  };
}

const isPlain = ({ slope, determination }: LineFit): boolean => slope > 0 && determination > PLAINLY_A_LINE;

/** The line, where three readings with some spread are there to draw it. */
function lineThrough(readings: readonly BenchReading[]): LineFit | null {
  const finite = readings.every((reading) => Number.isFinite(reading.magnification));
  if (!finite || unfit(readings).length > 0) return null;
  return benchLine(readings.map((reading) => ({ ...reading, magnificationDoubt: null }))).fit;
}
