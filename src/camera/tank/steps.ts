import type { StepWords } from '../../model/build-step.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import { byCaliper, countedOut } from '../bench-figures.js';
import { TRAP, TURNED_UP } from '../dark-slide.js';
import { tankIds } from './parts.js';
import type { Tank } from './size.js';

export function tankSteps(own: Tank): readonly StepWords[] {
  return [chamber(own), window(own), front(own), rim(own), lid(own), shut(own), inTheWell(own)];
}

function chamber({ number, name, stack, wood, depth }: Tank): StepWords {
  const ids = tankIds(number);
  const own = stack.plies.filter((ply) => ply === wood.ply.thickness).length;
  const other = stack.plies.length > own;
  return {
    step: 'tank-chamber',
    acts: [
      `The ${name} is a tray with a window: the print is exposed and processed in it. Everything round its chamber stands in liquid, so glue it with epoxy or another glue that water does not loosen.`,
      `Lay ${ids.window} down, and stack ${own} × ${ids.chamber}${other ? ` and ${ids.otherPly}` : ''} on it, all open to the same end. Their outer edges are flush.`,
      `Between their arms come ${own} × ${ids.endWall}${other ? ` and ${ids.otherEndWall}` : ''}, flush with the open end. Set them by the printed spout and vent, put in dry on both sides with thin tape round them.`,
      'Clamp between flat boards, wipe the glue off the inside, and let it set. Take spout and vent out again before that.',
      'Brush two coats of thin epoxy onto the inside, and onto the ledge that the glass will lie on. Soak all cut edges, and sand lightly between the coats.',
    ],
    checks: [
      `From the front of ${ids.window} to the back of the last ply it is ${byCaliper(depth.chamber - depth.window + stack.plies.reduce((sum, ply) => sum + ply, 0))}, within 0.3 mm.`,
      'No bare wood is left inside: a drop of water stands on it and leaves no dark spot.',
    ],
    cautions: [EPOXY],
    needs: ['epoxy', 'clamps, 6 or more; masking tape', 'gloves'],
    borrows: [`tank-spout-${number}`, `tank-vent-${number}`],
  };
}

const EPOXY = 'Epoxy: gloves, moving air, and none on the skin. Follow its own sheet.';

function window({ number, glass, pane }: Tank): StepWords {
  const ids = tankIds(number);
  return {
    step: 'tank-window',
    acts: [
      'Have the edges of the glass ground, and paint them matte black. Light runs along inside a bare edge. Clean both faces with spirit.',
      `Lay a bead of silicone that is free of acid on the ledge in ${ids.window}, all round and without a gap. Press the glass into it until it lies on the wood at all four corners.`,
      `Fill the gap round the glass with silicone too. Wipe off what comes out, and let it set for a day.`,
    ],
    checks: [
      `The glass, ${mm(tenth(pane.width))} × ${mm(tenth(pane.height))} × ${mm(glass.thickness)}, is flush with the back of ${ids.window}, and silicone shows all round.`,
      'Lying on its window, the chamber holds water for an hour.',
    ],
    cautions: ['Glass edges cut until they are ground: wear gloves and safety glasses.'],
    needs: ['silicone', 'matte black', 'spirit and a clean cloth', 'gloves', 'safety glasses; dust mask'],
  };
}

function front(own: Tank): StepWords {
  const { number, boards, slide } = own;
  const ids = tankIds(number);
  const along = mm(tenth(slide.channel + 2 * TURNED_UP));
  return {
    step: 'tank-front',
    acts: [
      `Nothing before the window ever gets wet. Stain ${ids.ring}, ${ids.channel} and the inside of ${ids.face} black first.`,
      `Glue ${ids.ring}, of ${mm(boards.lip.thickness)} card, on the front of ${ids.window}, its notch at the open end. Fix a strip of velvet, ${mm(TRAP)} wide and ${along} long, in the notch with contact adhesive.`,
      `Glue ${ids.channel}, of ${mm(boards.channel.thickness)} board, on ${ids.ring}, its open end at the notch. Spread the glue thinly: none may be left in the channel.`,
      `Fix a second strip, ${mm(2)} longer, across the open end of ${ids.face}, and turn its ends up at both sides of the channel. Glue ${ids.face} on, velvet inside, its pin holes at the closed end.`,
      `Chamfer the end of ${ids.slide}, the dark slide, on both sides with fine sandpaper, stain it black, wax it and polish it.`,
      `Glue ${ids.label}, the white label, on the head of the slide, on the side without a word. White, raised and with one corner cut means unexposed.`,
      `Push ${ids.slide} into its channel, label to the rear, until its head stops it.`,
    ],
    checks: [
      `Drawn ${mm(Math.round(slide.drawn))} the end of the slide is still in the velvet. Scratch a fine line across it there: you stop at that line.`,
      'The opening of the face is over that of the window on all sides. A square through both shows it.',
    ],
    cautions: ['Contact adhesive: moving air, and keep flames away. Its label comes first.'],
    needs: [
      'contact adhesive',
      'wood glue',
      'black velvet',
      'matte black',
      'fine sandpaper on a block, 180 and 240',
      'wax',
    ],
  };
}

function rim(own: Tank): StepWords {
  const { number, stack, boards, depth, screws, within } = own;
  const ids = tankIds(number);
  const shims = stack.shims.filter((one) => one !== boards.channel.thickness && one !== boards.lip.thickness);
  const counted = [
    ...of(ids.packing, stack.shims.filter((one) => one === boards.channel.thickness).length),
    ...of(ids.thinPacking, stack.shims.filter((one) => one === boards.lip.thickness).length),
  ];
  const packed = [...counted, ...(shims.length > 0 ? [`shims cut with a knife, ${countedOut(shims)}`] : [])];
  return {
    step: 'tank-rim',
    acts: [
      `The sheet will lie against ${ids.lip}, the lip. How deep that lies decides the focus, so it is measured before it is glued.`,
      packed.length > 0
        ? `As drawn it is packed with ${packed.join(' and ')}. Seal them and ${ids.lip} with epoxy first, both faces and all edges, and sand them flat.`
        : `Seal ${ids.lip} with epoxy first, both faces and all edges, and sand it flat.`,
      `Lay them on dry and measure from the front of ${ids.face} to the back of ${ids.lip}, near all four corners. Change packing until it is right, then glue all with epoxy.`,
      `Glue ${ids.nutPly}, ${ids.rim}, ${ids.stop} and ${ids.thinStop} on, the holes in line over two spare screws. The slots of ${ids.nutPly} are open at the edge.`,
      `Slide a nut into each slot with a spot of epoxy, and draw it against ${ids.rim} with a waxed screw until that sets.`,
      'Give the pocket and its edges two coats of epoxy as well.',
    ],
    checks: [
      `From the front of ${ids.face} to the back of ${ids.lip} it is ${byCaliper(depth.sheet)}, within ${byCaliper(within)}.`,
      `All ${screws.at.length} screws turn in freely. No epoxy is on their threads.`,
    ],
    cautions: [EPOXY],
    needs: ['epoxy', 'caliper that reads 0.05 mm or better'],
  };
}

const of = (id: string, count: number): readonly string[] => (count > 0 ? [`${count} × ${id}`] : []);

function lid({ number, plug, pad, sheet }: Tank): StepWords {
  const ids = tankIds(number);
  return {
    step: 'tank-lid',
    acts: [
      `Glue ${plug.plies === 1 ? ids.plug : `the ${plug.plies} pieces of ${ids.plug} on each other, and`} onto the inside of ${ids.cover}. Let it set lying in its pocket, a strip of 0.4 card on each side of the plug.`,
      `Countersink the screw holes of ${ids.cover} from outside, until the heads lie flush.`,
      'Seal the plug and the inside of the lid with two coats of epoxy.',
      pad.card > 0.05
        ? `Glue card of ${byCaliper(pad.card)} on the plug, sealed too, and the foam pad on the card with contact adhesive.`
        : 'Glue the foam pad on the plug with contact adhesive.',
    ],
    checks: [
      `The pad presses a sheet of ${byCaliper(sheet.thickness)} against the lip, and bows it nowhere: a straightedge laid on the lip touches no paper.`,
    ],
    cautions: ['Contact adhesive and epoxy: moving air, gloves.'],
    needs: ['epoxy', 'contact adhesive', 'countersink bit'],
  };
}

function shut({ number, name, cord, screws, chamber, depth }: Tank): StepWords {
  const ids = tankIds(number);
  const full = (chamber.width * chamber.height * (depth.sheet - depth.chamber)) / 1000;
  return {
    step: 'tank-shut',
    acts: [
      `Lay the gasket on ${ids.rim} inside the screws: cord of foam, ${mm(cord.diameter)} thick. Its ends are cut square and glued butt on butt in the middle of a long side.`,
      `Put the lid on, and drive the ${screws.at.length} screws crosswise, a turn at a time, until the wood of the lid bears on ${ids.thinStop}. No tighter.`,
      `Fill it with water by the spout, about ${plainNumber(Math.round(full))} ml, cap it, and lay it on its lid, on its window and on each edge, an hour each.`,
      'Empty it, put a sheet of paper in in the dark, and carry it under a lamp for ten minutes, turning it. Develop the sheet.',
    ],
    checks: [
      'Not a drop has come out, and the wood is dry everywhere.',
      'Turned over with the vent open, its spout’s corner a little lower, it runs empty.',
      'The sheet from under the lamp is white all over. A grey edge tells on which side the gasket does not press.',
    ],
    cautions: [
      `Never cap the ${name} tight on bleach, or on acid after carbonate: gas lifts the lid and cracks the window. Chemicals: gloves and goggles, moving air, the maker’s own sheets.`,
    ],
    needs: ['water, and an hour for each side'],
  };
}

const inTheWell = ({ name, on }: Tank): StepWords => ({
  step: 'glass-in',
  acts: [
    `Try the ${name} in the well: glass out, holder in${on === 'B1' ? '' : ' on its spacer'}, its dark slide towards the lens. Spout and vent are capped, and stand up over the low fence.`,
  ],
  checks: [`The ${name} lies flat, and its slide comes out freely past both caps.`],
});
