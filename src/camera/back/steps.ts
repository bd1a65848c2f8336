import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper, readWithin } from '../bench-figures.js';
import { type Back, CHANNEL_BOARD, PAST_CLOSED_END, PIN_PROUD } from './size.js';

export const backSteps = (own: Back): readonly StepWords[] => [ring(own), fences(own), turning(own), ...inGroove(own)];

function ring({ side, ringOutside, ringSlip, tongue }: Back): StepWords {
  return {
    step: 'turning-ring',
    acts: [
      'B1 is the back plate. Its rear face, the unmarked one, is the seat: glass and film bear on it, and it stays bare wood for ever. B2 is the turning ring, which finds its place in R3.',
      'Dry first: lay B2 on the marked face of B1, its own marked face down, so that the edges of the two oblong openings are flush. The marked faces meet.',
      'Glue B2 thinly, lay it on, and tape it. Check as below, then clamp the two between flat boards, with a sheet of plastic film on the seat.',
      'Wipe the glue out of the corner between B1 and the outer edge of B2: that corner will lie against R3.',
      'When the glue has set, paint the front face of B2 and the edges of the opening matte black. Paint nothing else of the back.',
    ],
    checks: [
      `B1 stands ${byCaliper((side - ringOutside) / 2)} over B2 ${tongue === null ? 'on all four sides' : 'on the left, on the right and at the closed end'}, ${readWithin((side - ringOutside) / 2)}. The closed end is the lower one when the camera stands upright.`,
      `B2 drops into the opening of R3 from behind, and again a quarter turn to the left and to the right, with ${mm(ringSlip)} of play on each side.`,
      'The seat is flat within 0.2 mm: lay the straight edge on it along, across and cornerwise.',
    ],
    needs: [
      'wood glue',
      'clamps, 6 or more; masking tape',
      'matte black',
      'straight edge and ruler, 300 mm or longer',
      'plastic film',
    ],
  };
}

function fences(own: Back): StepWords {
  const {
    wood,
    wellPlay,
    holderWidth,
    fenceWidth,
    opening,
    closedExtent,
    openExtent,
    openFence,
    grooves,
    places,
    pins,
  } = own;
  const inner = holderWidth / 2 + wellPlay;
  const edge = own.tongue ?? own.side / 2;
  const short = edge - openExtent - wellPlay;
  const pinned = places.pinned.length > 0;
  const [left, right] = [...pins].sort((a, b) => a.x - b.x);
  return {
    step: 'fences',
    acts: [
      'The fences stand on the seat round the place of holder and glass, which is called the well. Lay B1 down on its ring, the seat up, the closed end towards you.',
      ...(pinned
        ? [
            `Cut the two seat pins to ${byCaliper(wood.ply.thickness + PIN_PROUD)}, not longer: what sticks out in front would keep the back off R3.`,
            `Press the two seat pins, dowels ${mm(left?.diameter ?? 0)} on the left and ${mm(right?.diameter ?? 0)} on the right, into B1 from the seat side, until ${mm(PIN_PROUD)} of each stand out. In front they end flush. Do not glue them: they can be pulled.`,
            'Lay G1, the front of the glass frame, on the pins as a gauge. Turn up its marked face.',
          ]
        : [
            'Lay G1, the front of the glass frame, on B1 as a gauge, its opening over that of B1. Turn up its marked face.',
          ]),
      ...(openFence.height > 0
        ? [
            `Cut ${openFence.layers} strips of channel board, the card ${mm(CHANNEL_BOARD)} thick that dark slides run in, ${byCaliper(2 * (inner + fenceWidth))} × ${byCaliper(openFence.depth)}.`,
          ]
        : []),
      `Dry first: stand a strip of card ${mm(wellPlay)} thick against G1 at both sides and at the closed end. Set the long fences B3 and the short fence B4 against the card, their marked faces down. B4 fits between the two B3, which reach ${byCaliper(PAST_CLOSED_END - wellPlay)} past its inner edge.`,
      `Place the B3 lengthwise too: their open ends are ${byCaliper(short)} from the open edge of B1${openFence.height > 0 && Math.abs(short - openFence.depth) < 0.3 ? ', as wide as the low fence is: a strip of its board laid along that edge is the gauge' : ''}.`,
      'Pencil round them. Put glue on the fences, thinly, and none within 2 mm of the inner edge. Set them to the lines, and press them down.',
      ...(openFence.height > 0
        ? [
            'Glue the strips of channel board on each other and across the open end, against the ends of B3. This low fence lets the dark slide pass over it. Never leave it off.',
          ]
        : []),
      'Lift G1 off before the glue sets. Wipe the seat clean with a damp cloth.',
      'Glue the tabs of the four cord hooks B5 into the slots of B1. They stand on the seat side, and their notches open outwards, left and right.',
      ...(grooves.length > 0
        ? ['Keep glue out of the groove across the seat: the rib of a holder goes in there.']
        : []),
    ],
    checks: [
      `The long fences stand ${byCaliper(2 * inner)} apart at both ends, ${readWithin(2 * inner)}.`,
      `From the edge of the opening to each long fence it is ${byCaliper(inner - opening.width / 2)}, left and right alike, within 0.2 mm.`,
      ...(openFence.height > 0
        ? [
            `From B4 to the fence at the open end it is ${byCaliper(closedExtent + openExtent + 2 * wellPlay)}, ${readWithin(closedExtent + openExtent + 2 * wellPlay)}.`,
          ]
        : []),
      'G1 drops in without force. No glue lies where it bears: scrape the seat to bare wood.',
      'Nothing stands out of the front face of B1. Pull at each hook when it has set: it must hold.',
    ],
    cautions: ['A scraper or knife: push it away from your hands.'],
    needs: ['wood glue', `card ${mm(wellPlay)} thick`, 'sharp chisel or knife', 'fine saw', 'scraper'],
    borrows: ['G1'],
  };
}

const turning = ({ tongue }: Back): StepWords => ({
  step: 'turn-buttons',
  acts: [],
  checks: [
    tongue === null
      ? 'Turn the buttons out, take the back off, and put it on again a quarter turn round: it goes on in all four ways.'
      : 'Turn the buttons out, take the back off, and put it on again with its tongue, the long end, up, to the left and to the right. It goes on in these three ways; never use it with the tongue down.',
    'The back lies flat on R3 all round.',
  ],
});

const inGroove = ({ grooves }: Back): readonly StepWords[] =>
  grooves.length === 0
    ? []
    : [
        {
          step: 'glass-in',
          acts: [],
          checks: ['A holder with a rib lies flat only when its rib has dropped into the groove across the seat.'],
        },
      ];
