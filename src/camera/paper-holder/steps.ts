import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper, countedOut } from '../bench-figures.js';
import { TRAP, TURNED_UP } from '../dark-slide.js';
import { depthsOf } from './parts.js';
import type { PaperHolder } from './size.js';

const VELVET = 'black velvet';
const STAIN = 'matte black';

/** What is done with the holder at the bench, and with its first sheet. */
export const paperHolderSteps = (own: PaperHolder): readonly StepWords[] => [
  shell(own),
  darkSlide(own),
  lid(own),
  inTheWell(own),
];

function shell(own: PaperHolder): StepWords {
  const { mark, name, front, boards, slide, filmDepth, within } = own;
  const { plies, shims } = front.packing;
  const depth = depthsOf(own);
  const along = slide.channel + 2 * TURNED_UP;
  const packed = plies.length + shims.length > 0;
  const under = packed ? 'the packing' : `HF${mark}`;
  return {
    step: 'holder-shell',
    acts: [
      `The ${name} is a stack, laid up from its face. Stain all parts black first, and let them dry: edges, both sides of HC${mark} and HL${mark}, and the insides of HF${mark} and HP${mark}.`,
      ...(plies.length > 0
        ? [
            `Glue ${plies.length === 1 ? `HG${mark}` : `${plies.length} × HG${mark}`} behind HF${mark}, its marked side up, edges flush.`,
          ]
        : []),
      ...(shims.length > 0
        ? [`Measure what is glued, then put shims on it until it is right: ${countedOut(shims)}, as drawn.`]
        : []),
      `Glue HC${mark}, the channel of ${mm(boards.channel.thickness)} board, on ${packed ? 'the packing' : `the marked side of HF${mark}`}, edges flush, its open end at the end without pin holes. Spread the glue thinly: none may be left in the channel.`,
      `Cut two strips of velvet, ${mm(TRAP)} wide and ${mm(Math.round(along * 10) / 10)} long; make one of them ${mm(2)} longer. Fix the longer one with contact adhesive across the open end of the channel, on ${under}. Turn its ends up at both sides, where HC${mark} is cut back for them.`,
      `Lay HL${mark}, the lip of ${mm(boards.lip.thickness)} card, on HC${mark}, its notch at the open end. Align its opening with that of HF${mark}, not by eye but with a square through both. Glue it.`,
      `Fix the other strip of velvet to the plain side of HP${mark}, where the notch of HL${mark} will lie.`,
      `Glue HP${mark} on HL${mark}, velvet down, edges flush. Clamp all of it between flat boards with film on them.`,
      `Glue a block HB${mark} into each corner of HP${mark}, its right angle in the corner, holes over holes.`,
    ],
    checks: [
      `From the face to the lip it measures ${byCaliper(filmDepth)} at all four corners of the opening, within ${byCaliper(within)}: hold it between the jaws of the caliper, through the opening. Write the mean into the design file as measured, before the glass is shimmed.`,
      `The dark slide goes in and out dry before the glue sets. It runs ${byCaliper(depth.slide)} behind the face.`,
      `Hold it against a bright lamp: no light comes through a glue line.`,
    ],
    cautions: ['Contact adhesive: open the window, and keep flames away. Its label comes first.'],
    needs: ['wood glue', 'contact adhesive', 'clamps, 6 or more; masking tape', VELVET, STAIN, 'try square'],
  };
}

function darkSlide({ mark, name, boards, slide }: PaperHolder): StepWords {
  return {
    step: 'dark-slide',
    acts: [
      `Chamfer the end of HS${mark}, the dark slide of ${mm(boards.slide.thickness)} board, on both sides with fine sandpaper, and round its edges: it must not catch in the velvet.`,
      `Stain HS${mark} black on both sides and all edges. Rub wax on it, and polish it off.`,
      `Leave HU${mark}, the label, white, or paint it white. Glue it on the head of the slide, on the side without a word, ${mm(11)} from the step.`,
      'White and raised, with one corner cut, means unexposed. The black side says exposed. Your thumb tells them apart in the dark.',
      `Push the slide into the open end of the ${name} until its head stops it.`,
    ],
    checks: [
      `Drawn ${mm(Math.round(slide.drawn))} its end is still in the velvet and clear of the picture. Scratch a fine line across it there, on the white side: you stop at that line.`,
      'It stays where it is left, in every position, and does not rattle.',
    ],
    needs: ['fine sandpaper on a block, 180 and 240', STAIN, 'wax', 'wood glue'],
  };
}

function lid(own: PaperHolder): StepWords {
  const { mark, name, lid: pad, insert, sheet } = own;
  return {
    step: 'holder-lid',
    acts: [
      ...(pad.boards > 0
        ? [
            `Glue ${pad.boards === 1 ? `the pad HQ${mark}` : `the ${pad.boards} pads HQ${mark}`} in the middle of HD${mark}, on its marked side. Put the lid dry on the holder first, and see that the pad drops into the pocket on all sides.`,
          ]
        : []),
      `Fix felt of ${mm(pad.feltFree)} to the pad of HD${mark}, ${mm(2)} smaller on each side. It presses the sheet against the lip.`,
      `Write “${name}” on the outside of the lid.`,
      `Drill ${mm(1.5)} wide into the blocks, no deeper than the screws go. Put a turn-button HT${mark} on each with a wood screw 2.5 × ${pad.screw}. Tighten it until the button turns stiffly.`,
      ...(insert === null
        ? []
        : [
            `For ${insert.name} glue the mask HM${mark} under the frame HR${mark}, so that both openings have the same middle. The insert drops into lip and pocket with the mask towards the lens.`,
          ]),
      'Try the loading in the light with a spoiled sheet, then with your eyes closed, and only then in the dark.',
      'To load: close the slide first, and feel the white label. In the dark turn the buttons aside, and take the lid off.',
      ...(insert === null ? [] : [`For ${insert.name} put the insert in before the sheet.`]),
      'Lay the sheet into the pocket with its coated side to the lip; of film, the cut corner is at the upper right then. Put the lid on, and turn all four buttons over it.',
    ],
    checks: [
      `A sheet of ${mm(sheet.width)} by ${mm(sheet.height)} drops into the pocket and falls out of it when the holder is turned over.`,
      'With the lid on, the sheet does not rattle, and the lid lies flat on the pocket all round.',
      'Leave a sheet of paper in the closed holder beside a bright lamp for ten minutes, turn it once, and develop it: it stays white.',
    ],
    needs: [
      'wood glue',
      'contact adhesive',
      'black felt or soft foam',
      'drill bits and a screwdriver for each screw of the list',
    ],
  };
}

const inTheWell = ({ name, on }: PaperHolder): StepWords => ({
  step: 'glass-in',
  acts: [
    `Try the ${name} in the well: glass out, holder in${on === 'B1' ? '' : ' on its spacer'}, its dark slide towards the lens, its open end at the low fence.`,
    'For an exposure draw the slide to its line, never right out. Turn it over when you push it in again, so that it says exposed.',
  ],
  checks: [`The ${name} lies flat on its pins, and its dark slide comes out and goes in freely over the low fence.`],
});
