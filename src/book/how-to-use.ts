import { bullets, heading, paragraph } from '../paper/prose.js';
import { table } from '../paper/table.js';
import type { Chapter } from './chapter.js';
import type { BookGiven } from './given.js';

/** What a builder has to know before the first page of work. */
export const howToUse = ({ plan: { slide } }: Pick<BookGiven, 'plan'>): Chapter => ({
  title: 'How to use this book',
  blocks: [
    paragraph([
      'This book takes you from a stack of cut parts to a camera that works. You need to know wood; of cameras you need to know nothing.',
      'Read it through once before you begin. Then work through the chapters in their order: each step relies on those before it.',
    ]),
    heading('What stands on the pages'),
    ...bullets([
      'All lengths are in millimetres. Every part has a number, such as F1; it is engraved on the part wherever it does not show.',
      'In the drawing of a step, what is there already is grey; what the step adds is black.',
      'A box in front of a line is for you to tick: a part that lies ready, or a check that you have made. Make the checks before the glue sets.',
      'A frame with a grey ground is a caution. What it says is short: the instructions of your machines, glues and paints, and the rules of your place, go before anything written here.',
      'A line with nothing on it is for your own figures. Write them in: you need them later.',
      'Pages with templates are of true size. Print them at 100 %, without fitting to the page, and check the 100 mm bar on each with a ruler.',
    ]),
    heading('Left and right, front and rear, up'),
    paragraph([
      'You stand behind the camera as the photographer does, and look towards the lens. The lens is in front. Left and right are yours. Up is away from the tailboard, the long board that everything stands on.',
      'Right and left on the drawings are the photographer’s, standing behind the camera, also where the camera lies upside down.',
      'An arrow with a U on a part points up; one with an L points to the lens.',
    ]),
    heading('Words of the camera'),
    ...table(
      [{ title: 'Word', width: 36 }, { title: 'What it means here' }],
      [
        ['tailboard', 'The base board. The front box stands on it; the rear slides along it between two rails.'],
        slide.middleBox
          ? [
              'front, middle and rear box',
              'Three boxes, one in the other. The front box carries the lens; the rear box slides in the middle box, and that in the front box.',
            ]
          : [
              'front box, rear box',
              'Two boxes, one in the other. The front box carries the lens; the rear box slides in it.',
            ],
        ['standard', 'The upright plate at the end of the rear box. It carries the back.'],
        [
          'back',
          'The square frame at the rear that takes the ground glass or a holder. It comes off and goes on a quarter turn round.',
        ],
        ['ground glass', 'The frosted pane on which you see the picture, upside down, and set the focus.'],
        ['holder', 'The flat box with the film or paper in it. It takes the place of the ground glass.'],
        [
          'dark slide',
          'The thin lid of a holder, drawn out to expose. Its rim is white on one side: white outward means not yet exposed.',
        ],
        ['stop', 'The hole in the lens that lets light through; a higher number is a smaller hole.'],
        [
          'magnification',
          'How large a thing is on the film: at 1:4 a quarter of what it is. The larger it is, the farther the camera is drawn out.',
        ],
        ['lens cap', 'Where the lens has no shutter, the cap is the shutter: off for the time, and on again.'],
        ['holder seat', 'The face of the back that the holder lies against. All depths count from it.'],
        ['film depth', 'How far behind the holder seat the film lies. It differs from holder to holder.'],
        ['register', 'That the frosted face lies as deep as the film. If it does not, every picture is out of focus.'],
        ['spacer, shim', 'Plies and thin sheets that bring glass and film to the same depth.'],
        ['infinity', 'The place of the slide at which the far distance is sharp: the camera is nearly closed.'],
        ['light trap', 'A joint with turns, so that no light comes through it. Black paint in it matters.'],
      ],
    ),
  ],
});
