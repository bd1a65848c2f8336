import type { Point } from '../geometry/path.js';
import type { Mark, Page, Stroke } from '../model/page.js';
import { decimal } from './decimal.js';
import { escaped, tidy } from './svg.js';

/** Whoever opens the file has some letters without serifs: which ones is not for a drawing to say. */
const LETTERS = 'sans-serif';

/** A drawing for people as a picture: true size in mm, on white, so that dark ink is read before a dark ground too. */
export function pageSvg({ title, description, width, height, marks }: Page): string {
  const [across, down] = [decimal(width), decimal(height)];
  return tidy(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${across}mm" height="${down}mm" viewBox="0 0 ${across} ${down}">` +
      `<title>${escaped(title)}</title><desc>${escaped(description)}</desc>` +
      `<rect width="${across}" height="${down}" fill="#ffffff"/>${marks.map(element).join('')}</svg>`,
  );
}

function element(mark: Mark): string {
  const named = nameOf(mark);
  switch (mark.kind) {
    case 'line': {
      const points = mark.points.map(pair).join(' ');
      return `<${mark.closed ? 'polygon' : 'polyline'}${named} points="${points}"${ink(mark)}/>`;
    }
    case 'strokes':
      return `<path${named} d="${mark.paths.map((points) => `M${points.map(pair).join('L')}`).join('')}"${ink(mark)}/>`;
    case 'circle':
      return `<circle${named} cx="${decimal(mark.centre.x)}" cy="${decimal(mark.centre.y)}" r="${decimal(mark.radius)}"${ink(mark)}/>`;
    case 'words': {
      const { at, text, size, anchor, colour, bold, turned } = mark;
      // SVG turns clockwise
      const turn =
        turned === undefined
          ? ''
          : ` transform="rotate(${decimal((-turned * 180) / Math.PI)} ${decimal(at.x)} ${decimal(at.y)})"`;
      return (
        `<text${named} x="${decimal(at.x)}" y="${decimal(at.y)}" font-family="${LETTERS}" font-size="${decimal(size)}"` +
        `${bold ? ' font-weight="bold"' : ''} fill="${escaped(colour)}" text-anchor="${anchor}"${turn}>${escaped(text)}</text>`
      );
    }
  }
}

const nameOf = ({ id, role }: Mark): string =>
  `${id === undefined ? '' : ` id="${escaped(id)}"`}${role === undefined ? '' : ` class="${role}"`}`;

const pair = ({ x, y }: Point): string => `${decimal(x)},${decimal(y)}`;

function ink({ fill, stroke }: { readonly fill?: string; readonly stroke?: Stroke }): string {
  const filled = ` fill="${escaped(fill ?? 'none')}"`;
  if (stroke === undefined) return filled;
  const dash = stroke.dash === undefined ? '' : ` stroke-dasharray="${stroke.dash.map(decimal).join(' ')}"`;
  return `${filled} stroke="${escaped(stroke.colour)}" stroke-width="${decimal(stroke.width)}" stroke-linejoin="round"${dash}`;
}
