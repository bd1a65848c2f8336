import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper, countedOut, exchanged } from '../bench-figures.js';
import { NO_PAD, padThickness } from './parts.js';
import type { GroundGlassFrame } from './size.js';

export const groundGlassFrameSteps = (own: GroundGlassFrame): readonly StepWords[] => [
  frame(own),
  glassIntoIt(own),
  glassIn(own),
];

/** Plies of packing by the id that they are cut under. */
function packingOf({ packing, extra, wood }: GroundGlassFrame): readonly string[] {
  const other = (ply: number) => extra.some(({ thickness }) => thickness === ply && ply !== wood.ply.thickness);
  const all = packing.plies.map((ply) => (other(ply) ? 'GQ' : 'GP'));
  return [...new Set(all)].map((id) => `${all.filter((one) => one === id).length} × ${id}`);
}

function frame(own: GroundGlassFrame): StepWords {
  const { packing, pocket, depth, frosted, glass, within, stands } = own;
  const plies = packingOf(own);
  const wanted = stands?.wanted ?? depth;
  const ledge = frosted === 'lens' ? wanted : wanted - glass.thickness;
  const shims = packing.shims.length;
  const first = plies.length > 0 ? 'G1 with its packing' : 'G1';
  return {
    step: 'glass-frame',
    acts: [
      'The frame holds the ground glass where the film will be. It is a stack of equal outlines: G1 in front, then the packing, then the pocket G2.',
      'Lay G1 on the flat board, its marked face up. The face below, bare of marks, bears on the seat.',
      ...(plies.length > 0
        ? [
            `Glue the packing of plywood on it: ${plies.join(' and ')}, edges flush. Let the glue set under weights, as long as its label says.`,
          ]
        : []),
      ...(pocket.plies > 1
        ? [`Glue the ${pocket.plies} pieces of G2 on each other, edges flush, and let them set too.`]
        : []),
      `Now measure ${first} near all four corners, through the opening, the jaws of the caliper over the rim. The table in the chapter on setting the register says which shims go with what you read.`,
      ...(shims > 0
        ? [
            `As drawn ${shims === 1 ? 'comes a shim' : 'come shims'}, ${shims === 1 ? 'a thin frame' : 'thin frames'} cut with a knife: ${countedOut(packing.shims)}. Lay what the table says on dry.`,
          ]
        : ['As drawn there is no shim. Where the table asks for one, lay it on dry.']),
      ...standing(own),
      'Last comes G2 with its marked face down, dry too. The glass will lie in its larger opening, on the ledge that the rim below makes.',
      'Clamp the stack at all four corners, and measure the ledge as below. Change shims until it is right.',
      'Then take the shims and G2 off, and fix them with small spots of contact adhesive near the rim, edges flush. Measure again.',
      'Paint the edges of the opening matte black. Leave the front face of G1 and the ledge bare.',
    ],
    checks: [
      `From the front face of G1 to the ledge it is ${byCaliper(ledge)}, within ${byCaliper(within)}: hold the rim near all four corners between the jaws of the caliper, put through the opening of G1.`,
      'All edges are flush, or the frame will not go into the well.',
      'Laid on the flat board, the frame does not rock.',
    ],
    needs: [
      'wood glue',
      'contact adhesive',
      'clamps, 6 or more; masking tape',
      'caliper that reads 0.05 mm or better',
      'matte black',
    ],
  };
}

/** What was measured beside what was drawn, and what that asks for. */
function standing({ stands, depth, within }: GroundGlassFrame): readonly string[] {
  if (stands === null) return [];
  const { measured, wanted, add, takeOut } = stands;
  const read = measured === null ? '' : ` and measured at ${byCaliper(measured)}`;
  return [
    `The frosted face was drawn ${byCaliper(depth)} behind the seat${read}; the films, as they stand, want it at ${byCaliper(wanted)}.${exchanged({ add, takeOut, lacks: wanted - (measured ?? depth), within })}`,
  ];
}

function glassIntoIt(own: GroundGlassFrame): StepWords {
  const { frosted, glass } = own;
  const pad = padThickness(own);
  return {
    step: 'ground-glass',
    acts: [
      'Wash the glass, let it dry, and hold it by its edges. The frosted side is the dull one, on which a fingernail rasps. Scratch a small mark near the edge of the smooth side: it tells them apart for good.',
      `Lay the glass on the ledge in G2, its frosted side ${frosted === 'lens' ? 'down, towards G1 and the lens' : 'up, away from G1, towards your eye'}. Each corner is cut off, for air and for a look at the stop of the lens.`,
      ...(pad > NO_PAD
        ? [
            `Lay card, ${byCaliper(pad)} thick in as many layers as it takes, on the glass under each of the four clips. A clip never presses on bare glass.`,
          ]
        : ['Stick thin tape under the end of each clip. A clip never presses on bare glass.']),
      'Hold a clip on the wood of G2, over the edge of the glass. Drill 1.5 mm wide and 4 mm deep through its hole, and drive its screw 2.5 × 6. Do the same with the others.',
      'Blow the dust away from under the glass before the last clip is tight.',
    ],
    checks: [
      `The frosted side faces ${frosted === 'lens' ? 'the lens' : 'your eye'}. The wrong way round, every picture is out of focus.`,
      `The glass, ${mm(glass.thickness)} thick, lies on the ledge at all four corners and does not rattle. It can still be moved a hair by hand: held too hard, it breaks.`,
    ],
    cautions: ['Glass edges cut: have them ground, and wear gloves and safety glasses.'],
    fixings: [{ count: 4, name: 'wood screw 2.5 × 6' }],
    needs: ['drill bits and a screwdriver for each screw of the list', 'gloves', 'tape to mark the drill’s depth'],
  };
}

const glassIn = ({ pins }: GroundGlassFrame): StepWords => ({
  step: 'glass-in',
  acts: [
    `For composing, lay the glass frame into the well, G1 on the seat${pins.length > 0 ? ', its holes over the seat pins' : ''}.`,
    'On the road G3, the protector, lies over the glass, its marked face to the glass and its notches over the clips. Take it off to look.',
  ],
  checks: ['The frame lies on the seat all round: a strip of thin paper is held fast at each corner.'],
});
