import type { Block } from '../paper/blocks.js';
import { bullets, caution, heading, paragraph } from '../paper/prose.js';
import { mm } from '../units/print.js';
import type { Chapter } from './chapter.js';

export interface CareGiven {
  /** Of the printed clamp, where there is one: what must not be exceeded, °C. */
  readonly clampHeat: number | null;
  /** What it is printed of. */
  readonly clampMaterial: string | null;
  /** Gap between the boxes a side, and how thick the felt in it is when free. */
  readonly clearance: number;
  readonly felt: number;
  readonly revision: string;
  /** The first holder with a spacer; null where none has one. */
  readonly spaced: string | null;
}

export const care = (given: CareGiven): Chapter => ({
  title: 'Care',
  blocks: [...whatItNeeds(given), ...spareParts(given), ...dangers(given)],
});

function whatItNeeds({ clampHeat, clampMaterial, clearance, felt }: CareGiven): readonly Block[] {
  return [
    paragraph('A wooden camera asks for little: dry air, a little wax, and nothing heavy on it.'),
    heading('Now and then'),
    ...bullets([
      'Wax: rub a candle end along the sole, the rails and the underside of the keepers, and wipe off what is loose. Dry wood jams. Never oil: it swells the wood, and dust sticks to it.',
      `Felt: brush it with a stiff brush. Felt of ${mm(felt)} fills a gap of ${mm(clearance)} only while it is springy. When it stays flat, or when moths were in it, fit new bands. Lavender or cedar in the box keeps moths away.`,
      'Seat: wipe the bare wood of the seat with a dry cloth. It is never painted, oiled or waxed: what lies on it moves the focus.',
      'Screws: look at the turn-buttons’ nuts and at the screws of the keepers once a year. Wood shrinks under them. Those under the front box take an angled screwdriver.',
      'Glass: warm water and a drop of soap, on a soft cloth. A greasy frosted side shows a bright spot.',
      'Black: repaint what shines, with water-based matte black. Gloss turns light round corners. Nothing on the seat, on the rails or where something slides.',
      'Cords: elastic grows tired in a year or two. A cord that no longer pulls the holder flat is changed, both at once.',
    ]),
    heading('Damp and heat'),
    ...bullets([
      'Wood swells in damp air. If the slide drags, dry the camera for a day in a warm room before you sand anything. Varnish both faces of a board alike, or it warps.',
      'From the cold into a warm room: leave the camera shut in its bag until it is warm. Water on the glass, the lens and the film comes from opening it at once.',
      ...(clampHeat === null
        ? []
        : [
            `The lens clamp is printed${clampMaterial === null ? '' : ` of ${clampMaterial}`}. It must not get warmer than ${clampHeat} °C, or it gives and the lens slips. Never leave the camera in a car in the sun. Look at its pinch bolts after a hot day.`,
          ]),
      'After a damp day or a repair measure the register again.',
    ]),
    heading('Putting it away'),
    ...bullets([
      'Slide pushed in and locked, a cap on the lens, the glass in with its protector on, cords on.',
      'Dark slides pushed home and lying flat: a slide that is left half out warps.',
      'Dry, dark, not on a stove and not in a cellar. Nothing on top of it.',
    ]),
  ];
}

function spareParts({ spaced, revision }: CareGiven): readonly Block[] {
  return [
    heading('Spare parts'),
    paragraph(
      `Keep the design file: it holds the camera, revision ${revision}. Any part can be cut again from the sheets that belong to it, as long as the sheet is as thick as the one before; measure it first.`,
    ),
    ...bullets([
      ...(spaced === null
        ? []
        : [`A spacer for one of its holders: tailboard spacer <design file> --holder "${spaced}".`]),
      'A spacer for a holder that turned up later: tailboard spacer <design file> --depth <film depth> --name <what you call it>. The camera stays as it is.',
      'New wood or another laser: cut the test piece again before the part.',
    ]),
  ];
}

function dangers({ clampHeat }: CareGiven): readonly Block[] {
  return [
    heading('What can hurt you'),
    caution([
      'Elastic cords: hold the hook while you take one off, and keep your face away. They fly.',
      'Glass: edges are ground before it is handled; gloves when it is broken.',
      'Old lenses: some old glass holds thorium and is slightly radioactive. Looking through it does no harm; never grind or sand it.',
      'Flash units: they hold their charge after they are switched off. Never open one.',
      'Chemicals: gloves, goggles, fresh air; acid into water, never water into acid.',
      ...(clampHeat === null
        ? []
        : ['Hot parts: the bed and the nozzle of a printer burn when you print a new clamp.']),
      'The makers’ own instructions and local rules go before anything written here.',
    ]),
  ];
}
