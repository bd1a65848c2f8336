import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper, countedOut } from '../bench-figures.js';
import { NO_PAD, padThickness } from './parts.js';
import type { GroundGlassFrame } from './size.js';

export const groundGlassFrameSteps = (own: GroundGlassFrame): readonly StepWords[] => [
  frame(own),
  glassIntoIt(own),
  glassIn(),
];

/** Plies of packing by the id that they are cut under. */
function packingOf({ packing, extra, wood }: GroundGlassFrame): readonly string[] {
  const other = (ply: number) => extra.some(({ thickness }) => thickness === ply && ply !== wood.ply.thickness);
  const all = packing.plies.map((ply) => (other(ply) ? 'GQ' : 'GP'));
  return [...new Set(all)].map((id) => `${all.filter((one) => one === id).length} × ${id}`);
}

function frame(own: GroundGlassFrame): StepWords {
  const { packing, pocket, depth, frosted, glass, within } = own;
  const plies = packingOf(own);
  const ledge = frosted === 'lens' ? depth : depth - glass.thickness;
  const shims = packing.shims.length;
  const gluedFirst = [
    ...(plies.length > 0 ? ['the packing on G1'] : []),
    ...(pocket.plies > 1 ? ['the pieces of G2 on each other'] : []),
  ];
  return {
    step: 'glass-frame',
    acts: [
      'The frame holds the ground glass where the film will be. It is a stack of equal outlines: G1 in front, then the packing, then the pocket G2.',
      'Lay G1 on the flat board, its marked face up. The face below, bare of marks, bears on the seat.',
      ...(plies.length > 0 ? [`Then comes the packing of plywood: ${plies.join(' and ')}.`] : []),
      ...(shims > 0
        ? [
            `Then ${shims === 1 ? 'comes a shim' : 'come shims'}, ${shims === 1 ? 'a thin frame' : 'thin frames'} cut with a knife: ${countedOut(packing.shims)}. Lay ${shims === 1 ? 'it' : 'them'} in dry for now.`,
          ]
        : []),
      `Last comes G2${pocket.plies > 1 ? `, ${pocket.plies} pieces on each other,` : ''} with its marked face down. The glass will lie in its larger opening, on the ledge that the rim below makes.`,
      ...(shims > 0
        ? [
            `${gluedFirst.length > 0 ? `Glue ${gluedFirst.join(', and ')}, but not the shims.` : 'Glue nothing yet.'} Clamp the stack at all four corners, and measure the ledge as below.`,
            'Change shims until the depth is right; the chapter on setting the register tells how. Then stick the shims and G2 on with small spots of contact adhesive near the rim, and measure again.',
          ]
        : [
            'Glue the stack with thin glue, edges flush, and clamp it between flat boards. Measure the ledge as below while the glue is wet.',
          ]),
      'Paint the edges of the opening matte black. Leave the front face of G1 and the ledge bare.',
    ],
    checks: [
      `From the front face of G1 to the ledge it is ${byCaliper(ledge)}, within ${byCaliper(within)}: measure it near all four corners with the depth rod of the caliper.`,
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

function glassIntoIt(own: GroundGlassFrame): StepWords {
  const { frosted, glass } = own;
  const pad = padThickness(own);
  return {
    step: 'ground-glass',
    acts: [
      'Wash the glass, let it dry, and hold it by its edges. The frosted side is the dull one, on which a fingernail rasps.',
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
    needs: ['drill bits and a screwdriver for each screw of the list', 'gloves', 'tape to mark the drill’s depth'],
  };
}

const glassIn = (): StepWords => ({
  step: 'glass-in',
  acts: [
    'For composing, lay the glass frame into the well, G1 on the seat. Its holes go over the seat pins, if there are any.',
    'On the road G3, the protector, lies over the glass, its marked face to the glass and its notches over the clips. Take it off to look.',
  ],
  checks: ['The frame lies on the seat all round: a strip of thin paper is held fast at each corner.'],
});
