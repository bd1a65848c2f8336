import type { Drawing } from '../model/page.js';
import type { PlanTank } from '../model/plan.js';
import type { Block } from '../paper/blocks.js';
import { figure } from '../paper/figure.js';
import { bullets, caution, heading, kept, note, numbered, paragraph } from '../paper/prose.js';
import { table } from '../paper/table.js';
import { mm, plainNumber } from '../units/print.js';
import type { Chapter } from './chapter.js';

export interface ProcessingGiven {
  readonly tanks: readonly {
    readonly name: string;
    readonly tank: PlanTank;
    readonly screws: number;
  }[];
  /** The holder as it stands when a bath is poured in. */
  readonly pouring: readonly Drawing[];
}

/** How prints are processed in a holder, or null where no holder is one for it. */
export const processingInTheHolder = ({ tanks, pouring }: ProcessingGiven): Chapter | null =>
  tanks.length === 0
    ? null
    : {
        title: 'Processing in the holder',
        blocks: [
          paragraph(
            'The holder in which the print was exposed is also its tray. Liquid comes in by the spout, stands between window and sheet, and goes out by the spout. Spout and vent keep out light by turning it back on itself, so that lamps may burn while liquid runs. Only the slide and the lid must stay shut.',
          ),
          ...pouring.map((drawing) => kept([figure(drawing, { caption: '' })])),
          ...figures(tanks),
          ...first(tanks),
          ...oneBath(tanks),
          ...secondExposure(),
          ...dangers(tanks),
        ],
      };

const ml = (volume: number): string => `${plainNumber(Math.round(volume))} ml`;
const s = (seconds: number): string => `${plainNumber(Math.ceil(seconds))} s`;

function figures(tanks: ProcessingGiven['tanks']): readonly Block[] {
  return [
    heading('Volumes and times'),
    ...table(
      [
        { title: 'Holder' },
        { title: 'a bath', align: 'right' },
        { title: 'at least', align: 'right' },
        { title: 'full', align: 'right' },
        { title: 'in', align: 'right' },
        { title: 'out', align: 'right' },
        { title: 'rock by', align: 'right' },
      ],
      tanks.map(({ name, tank }) => [
        name,
        ml(tank.workingVolume),
        ml(tank.leastVolume),
        ml(tank.fullVolume),
        s(tank.fillSeconds),
        s(tank.drainSeconds),
        `${plainNumber(Math.floor(tank.rockAngle))}°`,
      ]),
    ),
    note(
      'Reckoned, for water. Time your own holder with water before the first print, and write what you find into the process file. Filling and draining count as time in the bath.',
    ),
  ];
}

function first(tanks: ProcessingGiven['tanks']): readonly Block[] {
  const screws = Math.max(...tanks.map((one) => one.screws));
  return [
    heading('Before the first print'),
    ...numbered([
      'Clean the window on both sides. Look along it against a lamp: streaks show in the picture.',
      'Water: fill the holder, cap it, and let it lie for an hour on each side. Wipe, and look for a wet edge.',
      'Light: put a sheet of paper in, in the dark, and carry the holder under a bright lamp for ten minutes, caps off. Develop the sheet: it must stay white.',
      `Learn the ${screws} screws of the lid by hand, with the light on: crosswise, until wood meets wood, and no tighter.`,
    ]),
  ];
}

function oneBath(tanks: ProcessingGiven['tanks']): readonly Block[] {
  const [one] = tanks;
  const bath = one === undefined ? '' : `, ${ml(one.tank.workingVolume)}`;
  const angle = one === undefined ? '' : ` by ${plainNumber(Math.floor(one.tank.rockAngle))}° at most`;
  return [
    heading('One bath'),
    ...numbered([
      'Slide closed. Stand the holder up, its open end above. Both caps off, the funnel on the spout.',
      `Pour the bath in${bath}, without a pause. The clock begins with the first drop.`,
      'Funnel off, both caps on.',
      `Lay it on its lid at once, the slide above. The sheet now lies under ${mm(5)} of liquid. Rock it to all four sides${angle}, evenly, once in two seconds.`,
      'Half a minute before the end, or as the step sheet says: stand it up, open both caps, the vent first.',
      'Turn it over the jug, the spout’s corner lowest, and wait until it only drips. Stand it up again.',
      'Rinse between two baths: fill with water, rock three times, drain. What clings to walls and sheet is 3 to 5 ml.',
    ]),
    paragraph(
      'The slide stands dry ahead of the window, and so does all of the face. If ever liquid shows in the channel, dry the slide, and seal the window anew before the next print.',
    ),
  ];
}

function secondExposure(): readonly Block[] {
  return [
    heading('Light on purpose'),
    paragraph(
      'A reversal asks for a second exposure. Drain the holder, draw the slide whole, and let white light fall through the window for the time that the process says. From there on light does no harm, and the slide may stay out.',
    ),
  ];
}

function dangers(tanks: ProcessingGiven['tanks']): readonly Block[] {
  const push = Math.max(...tanks.map(({ tank }) => tank.lidForce));
  return [
    heading('What can go wrong'),
    caution(
      `Never leave both caps shut on a bleach, or on an acid after a carbonate: they give off gas. Closed at 20 °C and warmed to 38 °C by itself, air alone already pushes with ${plainNumber(Math.round(push))} N on the lid. Open the vent after each minute of rocking, away from your face.`,
    ),
    caution(
      'Developers, bleaches and acids: gloves, goggles, moving air, and none of it near food. Acid goes into water, never water into acid. The makers’ own data sheets and local rules go before this page.',
    ),
    ...bullets([
      'A window that is scratched or chipped at its edge breaks under pressure. Change it.',
      'Patches: too little liquid, or the holder stood while it should have lain. Fog from one side: the gasket, or the slide was not home.',
      'After work: all out, two fillings of water, caps off, lid off, dry it standing open. The foam comes back into shape only when the lid is off.',
    ]),
  ];
}
