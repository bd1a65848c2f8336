import { svg } from 'lit-html';
import { classMap } from 'lit-html/directives/class-map.js';
import type { ShownSheet } from '../../../model/shown-sheets.js';
import { plainNumber } from '../../../units/print.js';
import type { App } from '../../app.js';

/** The smallest letters that are read, px. */
const LETTER = 13;
/** A number is no larger than this on a part that has room for a poster, in letters. */
const LARGEST = 1.6;

interface PictureGiven {
  /** How wide it is shown at least, px: letters are drawn for that. */
  readonly pixels: number;
  readonly asCut: boolean;
}

/** A sheet with its parts filled and numbered, and the lines of the laser over them. */
export function sheetPicture(app: App, sheet: ShownSheet, { pixels, asCut }: PictureGiven) {
  const { chosen } = app.pose.now();
  const letter = (LETTER * sheet.width) / pixels;
  return svg`
    <path class="wood" d=${sheet.wood}></path>
    ${sheet.offcut === null ? '' : offcutPicture(sheet.offcut, letter)}
    ${sheet.parts.map(
      ({ part, name, instance, count, shape, nested }) => svg`
        <path
          class=${classMap({ piece: true, nested, chosen: part === chosen })}
          d=${shape}
          fill-rule="evenodd"
          data-part=${part}
        ><title>${`${part} ${name}${count > 1 ? `, ${instance} of ${count}` : ''}`}</title></path>`,
    )}
    ${sheet.operations.map(
      ({ layer, colour, path }) => svg`
        <path class=${`beam ${layer}`} d=${path} stroke=${asCut ? colour : 'currentColor'}></path>`,
    )}
    ${sheet.parts
      .filter(({ label }) => label.size >= letter)
      .map(
        ({ part, label }) => svg`
          <text
            class=${classMap({ chosen: part === chosen })}
            x=${label.x}
            y=${label.y + 0.35 * Math.min(label.size, LARGEST * letter)}
            font-size=${Math.min(label.size, LARGEST * letter)}
          >${part}</text>`,
      )}
  `;
}

/** What stays clear, and how large it is: whole millimetres, rounded down, so that nobody finds less. */
function offcutPicture({ left, right, top, bottom }: NonNullable<ShownSheet['offcut']>, letter: number) {
  const [width, height] = [right - left, bottom - top];
  const words = `${plainNumber(Math.floor(width), 0)} × ${plainNumber(Math.floor(height), 0)} mm left`;
  const long = 0.55 * letter * words.length;
  const fits = Math.max(width, height) > long && Math.min(width, height) > letter;
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  const turn = width < long ? `rotate(-90 ${x} ${y})` : '';
  return svg`
    <rect class="offcut" x=${left} y=${top} width=${width} height=${height}></rect>
    ${fits ? svg`<text x=${x} y=${y + 0.35 * letter} font-size=${letter} transform=${turn}>${words}</text>` : ''}
  `;
}
