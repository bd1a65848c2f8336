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

/** Drawings as the pages of one document: true size, their letters in the file and readable by machines. */
export function pagePdf(pages: readonly Page[], fonts: Fonts, about: { readonly title: string }): Uint8Array {
  const document = new PDFDocument({
    autoFirstPage: false,
    margin: 0,
    // compressed streams differ from one processor and one engine to the next
    compress: false,
    lang: 'en',
    displayTitle: true,
    info: {
      Title: about.title,
      Subject: pages.map(({ description }) => description).join(' '),
      Producer: 'tailboard',
      Creator: 'tailboard',
      CreationDate: MADE,
      ModDate: MADE,
    },
  });
  document.registerFont('regular', fonts.regular).registerFont('bold', fonts.bold);
  for (const { width, height, marks } of pages) {
    document.addPage({ size: [width * POINTS, height * POINTS], margin: 0 });
    document.scale(POINTS);
    for (const mark of marks) {
      document.save();
      put(mark, document);
      document.restore();
    }
  }
  document.end();
  return whole(document);
}

function put(mark: Mark, document: PDFKit.PDFDocument): void {
  switch (mark.kind) {
    case 'line':
      walk(mark.points, document);
      if (mark.closed) document.closePath();
      ink(mark, document);
      break;
    case 'strokes':
      for (const points of mark.paths) walk(points, document);
      ink(mark, document);
      break;
    case 'circle':
      document.circle(mark.centre.x, mark.centre.y, mark.radius);
      ink(mark, document);
      break;
    case 'words': {
      const { at, text, size, anchor, colour, bold, turned } = mark;
      document.font(bold ? 'bold' : 'regular', size).fillColor(colour);
      const left = at.x - { start: 0, middle: 0.5, end: 1 }[anchor] * document.widthOfString(text);
      // the library turns clockwise
      if (turned !== undefined) document.rotate((-turned * 180) / Math.PI, { origin: [at.x, at.y] });
      document.text(text, left, at.y, { lineBreak: false, baseline: 'alphabetic' });
    }
  }
}

function walk(points: readonly Point[], document: PDFKit.PDFDocument): void {
  points.forEach(({ x, y }, i) => {
    if (i === 0) document.moveTo(x, y);
    else document.lineTo(x, y);
  });
}

function ink(
  { fill, stroke }: { readonly fill?: string; readonly stroke?: Stroke },
  document: PDFKit.PDFDocument,
): void {
  if (stroke !== undefined) {
    document.lineWidth(stroke.width).lineJoin('round');
    if (stroke.dash !== undefined) document.dash(stroke.dash[0], { space: stroke.dash[1] });
  }
  if (fill !== undefined && stroke !== undefined) document.fillAndStroke(fill, stroke.colour);
  else if (fill !== undefined) document.fill(fill);
  else if (stroke !== undefined) document.stroke(stroke.colour);
  else throw new Error('a mark with neither fill nor stroke cannot be seen');
}

/** An ended document has everything written already, so that nobody has to wait for it. */
function whole(document: PDFKit.PDFDocument): Uint8Array {
  const pieces: Uint8Array[] = [];
  for (let piece = document.read(); piece !== null; piece = document.read()) {
    if (typeof piece === 'string') throw new Error('a document is written in bytes');
    pieces.push(piece);
  }
  const bytes = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let filled = 0;
  for (const piece of pieces) {
    bytes.set(piece, filled);
    filled += piece.length;
  }
  return bytes;
}
