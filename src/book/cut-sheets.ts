import type { FlatPart } from '../model/part.js';
import { figure } from '../paper/figure.js';
import { caution, kept, note, paragraph, subheading } from '../paper/prose.js';
import { plainNumber } from '../units/print.js';
import type { Chapter } from './chapter.js';
import type { BookGiven } from './given.js';
import { sheetPicture } from './sheet-picture.js';

const TITLE = 'Cutting and sorting the sheets';

/** Two to a page. */
const ROOM = { width: 174, height: 116 } as const;

/** Each sheet small, its parts numbered, so that they can be found as they are lifted off the bed. */
export function cutSheets({ sheets, parts, bare, since }: BookGiven): Chapter {
  const flat = parts.flatMap(({ part }): readonly FlatPart[] => (part.kind === 'flat' ? [part] : []));
  const unmarked = bare.filter((id) => sheets.some(({ placed }) => placed.some(({ part }) => part === id)));
  if (since !== null && sheets.length === 0)
    return { title: TITLE, blocks: [paragraph('Nothing is cut: the camera that stands has every part.')] };
  return {
    title: TITLE,
    blocks: [
      paragraph([
        'Cut the test piece first (see its chapter) and let its readings go into the design. Then cut the sheets, each from its own file, at true size. The width of the cut is in the lines already.',
        'Keep the order of the operations: engrave, cut-inside, cut-nested, cut-window, cut-outside. Parts that lie in the window of another one are cut free before the window falls out.',
      ]),
      caution([
        'Never leave the laser alone while it cuts: plywood burns. Keep an extinguisher at hand and the extraction on. Cut only wood that you know; glue and finish in plywood give off fumes.',
        'The instructions of your machine and the rules of your place come first.',
      ]),
      paragraph(
        'Lift the parts off sheet by sheet and lay them in the order of this chapter. Small parts fall through the slats of the bed: look for them before you cut the next sheet. Keep the waste until all parts are ticked off.',
      ),
      ...(unmarked.length === 0
        ? []
        : [
            note(
              `${unmarked.join(' and ')} ${unmarked.length === 1 ? 'bears' : 'bear'} no engraved number. Write it on with a pencil as you lift ${unmarked.length === 1 ? 'it' : 'them'} off.`,
            ),
          ]),
      ...sheets.map((sheet, i) => {
        const drawing = sheetPicture(sheet, flat, ROOM);
        const size = `${plainNumber(sheet.width)} × ${plainNumber(sheet.height)} mm`;
        const from = sheet.remnant ? `, cut from ${sheet.remnant.file}` : '';
        return {
          ...kept([
            subheading(`Sheet ${i + 1} of ${sheets.length}: ${sheet.name}, ${size}${from}`),
            figure(drawing, { caption: piecesOn(sheet.placed.map(({ part }) => part)) }),
          ]),
          above: 5,
        };
      }),
    ],
  };
}

/** How many pieces there are to be found, and what they are. */
function piecesOn(ids: readonly string[]): string {
  const each = [...new Set(ids)].map((id) => {
    const count = ids.filter((other) => other === id).length;
    return count === 1 ? id : `${count} × ${id}`;
  });
  return `${ids.length} ${ids.length === 1 ? 'piece' : 'pieces'}: ${each.join(', ')}`;
}
