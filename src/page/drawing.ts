import { html, svg } from 'lit-html';
import type { Mark, Page } from '../model/page.js';
import { wideBox } from './wide-box.js';

/** A colour of the paper, and the one that stands for it here, so that a drawing is read by night too. */
export type Inks = Readonly<Record<string, string>>;

/**
 * A drawing on paper, as a picture on the page; as wide as its letters ask for, in a box of its own that can be moved.
 *
 * @param pixels for a millimetre, so that its smallest letters can be read
 */
export const drawing = (page: Page, inks: Inks, pixels: number) => html`
  ${wideBox(
    'drawing-box',
    page.title,
    html`<svg
      role="img"
      aria-label=${page.description}
      viewBox=${`0 0 ${page.width} ${page.height}`}
      width=${page.width * pixels}
      height=${page.height * pixels}
    >
      ${page.marks.map((mark) => shape(mark, (colour) => inks[colour] ?? colour))}
    </svg>`,
  )}
`;

type Ink = (colour: string) => string;

function shape(mark: Mark, ink: Ink) {
  switch (mark.kind) {
    case 'line': {
      const d = path(mark.points) + (mark.closed ? 'Z' : '');
      return svg`<path d=${d} fill=${mark.fill === undefined ? 'none' : ink(mark.fill)} stroke=${mark.stroke === undefined ? 'none' : ink(mark.stroke.colour)} stroke-width=${mark.stroke?.width ?? 0} stroke-dasharray=${mark.stroke?.dash?.join(' ') ?? 'none'}></path>`;
    }
    case 'strokes':
      return svg`<path d=${mark.paths.map(path).join('')} fill="none" stroke=${ink(mark.stroke.colour)} stroke-width=${mark.stroke.width}></path>`;
    case 'circle':
      return svg`<circle cx=${mark.centre.x} cy=${mark.centre.y} r=${mark.radius} fill=${mark.fill === undefined ? 'none' : ink(mark.fill)} stroke=${mark.stroke === undefined ? 'none' : ink(mark.stroke.colour)} stroke-width=${mark.stroke?.width ?? 0}></circle>`;
    case 'words': {
      const { at, text, size, anchor, colour, bold, turned } = mark;
      // turned anticlockwise on paper; here it is the other way
      const turn = turned === undefined ? '' : `rotate(${(-turned * 180) / Math.PI} ${at.x} ${at.y})`;
      return svg`<text x=${at.x} y=${at.y} font-size=${size} font-weight=${bold ? 'bold' : 'normal'} fill=${ink(colour)} text-anchor=${anchor} transform=${turn}>${text}</text>`;
    }
  }
}

const path = (points: readonly { readonly x: number; readonly y: number }[]): string =>
  points.length === 0 ? '' : `M${points.map(({ x, y }) => `${x},${y}`).join('L')}`;
