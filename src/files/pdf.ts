import PDFDocument from 'pdfkit';
import type { Point } from '../geometry/path.js';
import type { Mark, Page, Stroke } from '../model/page.js';

/** The letters of a document, as the bytes of TrueType files: what is used of them is put into the file. */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** Points in a millimetre: PDF counts in 1/72 in (ISO 32000-1, 8.3.2.3). */
const POINTS = 72 / 25.4;

/** The library takes the clock where it is told no date; a document that is the same each time has to have one. */
const MADE = new Date(0);

/** Pages as one document: true size, their letters in the file and readable by machines, bookmarks where pages name them. */
export function pagePdf(
  pages: readonly Page[],
  fonts: Fonts,
  { title, subject = pages.map(({ description }) => description).join(' ') }: About,
): Uint8Array {
  const document = new CollectedDocument({
    autoFirstPage: false,
    margin: 0,
    // without one the library begins with a font of its own, which it has not got in a browser; its types know names only
    font: fonts.regular as unknown as string,
    // compressed streams differ from one processor and one engine to the next
    compress: false,
    // from 1.4 on the library repeats the title in XML and does not escape it
    pdfVersion: '1.3',
    lang: 'en',
    displayTitle: true,
    info: {
      Title: title,
      Subject: subject,
      Producer: 'tailboard',
      Creator: 'tailboard',
      CreationDate: MADE,
      ModDate: MADE,
    },
  });
  document.registerFont('regular', fonts.regular).registerFont('bold', fonts.bold);
  let chapter: PDFKit.PDFOutline = document.outline;
  for (const { width, height, marks, bookmarks = [] } of pages) {
    document.addPage({ size: [width * POINTS, height * POINTS], margin: 0 });
    document.scale(POINTS);
    document.addContent('1 j');
    for (const mark of marks) put(mark, document);
    // an item of the outline leads to the page that is open
    for (const { title: entry, level } of bookmarks) {
      if (level === 0) chapter = document.outline.addItem(entry);
      else chapter.addItem(entry);
    }
  }
  document.end();
  return document.whole();
}

interface About {
  readonly title: string;
  /** What it is about, in a sentence; what its pages show where left out. */
  readonly subject?: string;
}

function put(mark: Mark, document: PDFKit.PDFDocument): void {
  switch (mark.kind) {
    case 'line':
      document.addContent(inked(mark, walk(mark.points) + (mark.closed ? ' h' : '')));
      break;
    case 'strokes':
      document.addContent(inked(mark, mark.paths.map(walk).join('\n')));
      break;
    case 'circle':
      document.addContent(inked(mark, round(mark.centre, mark.radius)));
      break;
    case 'words': {
      const { at, text, size, anchor, colour, bold, turned } = mark;
      document.font(bold ? 'bold' : 'regular', size).fillColor(colour);
      const left = anchor === 'start' ? at.x : at.x - { middle: 0.5, end: 1 }[anchor] * document.widthOfString(text);
      if (turned !== undefined) {
        document.save();
        // the library turns clockwise
        document.rotate((-turned * 180) / Math.PI, { origin: [at.x, at.y] });
      }
      document.text(text, left, at.y, { lineBreak: false, baseline: 'alphabetic' });
      if (turned !== undefined) document.restore();
    }
  }
}

/** Two micrometres: finer than any printer, and half as many letters as the library would write. */
const number = (value: number): string => String(Math.round(value * 500) / 500 || 0);
const pair = ({ x, y }: Point): string => `${number(x)} ${number(y)}`;

const walk = (points: readonly Point[]): string =>
  points.map((point, i) => `${pair(point)} ${i === 0 ? 'm' : 'l'}`).join(' ');

/** Length of the handles of a quarter circle of radius 1, by which a cubic curve strays 0.0003 from it. */
const HANDLE = (4 / 3) * (Math.SQRT2 - 1);

function round({ x, y }: Point, radius: number): string {
  const h = HANDLE * radius;
  const at = (dx: number, dy: number) => pair({ x: x + dx, y: y + dy });
  const r = radius;
  return [
    `${at(r, 0)} m`,
    `${at(r, h)} ${at(h, r)} ${at(0, r)} c`,
    `${at(-h, r)} ${at(-r, h)} ${at(-r, 0)} c`,
    `${at(-r, -h)} ${at(-h, -r)} ${at(0, -r)} c`,
    `${at(h, -r)} ${at(r, -h)} ${at(r, 0)} c h`,
  ].join(' ');
}

/** A path with its ink, by the operators of ISO 32000-1, annex A. */
function inked({ fill, stroke }: { readonly fill?: string; readonly stroke?: Stroke }, path: string): string {
  if (fill === undefined && stroke === undefined) throw new Error('a mark with neither fill nor stroke cannot be seen');
  return [
    'q',
    ...(fill === undefined ? [] : [`${shades(fill)} rg`]),
    ...(stroke === undefined ? [] : [`${shades(stroke.colour)} RG ${number(stroke.width)} w`]),
    ...(stroke?.dash === undefined ? [] : [`[${stroke.dash.map(number).join(' ')}] 0 d`]),
    path,
    fill === undefined ? 'S' : stroke === undefined ? 'f' : 'B',
    'Q',
  ].join('\n');
}

/** #rrggbb as three shares. */
const shades = (colour: string): string =>
  [1, 3, 5].map((from) => number(Number.parseInt(colour.slice(from, from + 2), 16) / 255)).join(' ');

/**
 * A document that keeps what it has written: the streams of Node and of browsers give it out differently, and later. It
 * begins to write while it is still being constructed, before any field of its own is there.
 */
class CollectedDocument extends PDFDocument {
  declare private pieces: Uint8Array[] | undefined;

  override push(piece: Uint8Array | null): boolean {
    if (piece === null) return true;
    if (this.pieces === undefined) this.pieces = [];
    this.pieces.push(piece);
    return true;
  }

  /** All of it, once it has ended. */
  whole(): Uint8Array {
    const pieces = this.pieces ?? [];
    const bytes = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
    let filled = 0;
    for (const piece of pieces) {
      bytes.set(piece, filled);
      filled += piece.length;
    }
    return bytes;
  }
}
