import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { getDocument, type PDFDocumentProxy, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Fonts } from '../../src/files/pdf.js';

const { resolve } = createRequire(import.meta.url);
export const fontFile = (name: string): string => resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`);

export const fonts: Fonts = {
  regular: readFileSync(fontFile('DejaVuSansCondensed')),
  bold: readFileSync(fontFile('DejaVuSansCondensed-Bold')),
};

/** Those of the book: their widths are what words are reckoned with. */
export const bookFonts: Fonts = {
  regular: readFileSync(fontFile('DejaVuSans')),
  bold: readFileSync(fontFile('DejaVuSans-Bold')),
};

/** Points in a millimetre. */
const POINTS = 72 / 25.4;

export interface Line {
  readonly text: string;
  /** Where the base line begins, mm from the upper left corner, y down. */
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly width: number;
  /** Anticlockwise, rad. */
  readonly turned: number;
  readonly font: { readonly name: string; readonly embedded: boolean };
}

/** What another program finds in a document. */
export async function readPdf(bytes: Uint8Array) {
  const document = await open(bytes);
  const { info } = await document.getMetadata();
  const preferences: unknown = await document.getViewerPreferences();
  const pages = [];
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n);
    // the fonts are read when the page is drawn
    await page.getOperatorList();
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
    const { items } = await page.getTextContent({ disableNormalization: true });
    const lines = items.flatMap((item): readonly Line[] => {
      if (!('str' in item) || item.str === '') return [];
      const [a, b, , , x, y] = item.transform as [number, number, number, number, number, number];
      const font = page.commonObjs.get(item.fontName) as { name: string; missingFile: boolean };
      return [
        {
          text: item.str,
          x: x / POINTS,
          y: (top - y) / POINTS,
          size: Math.hypot(a, b) / POINTS,
          width: item.width / POINTS,
          turned: Math.atan2(b, a),
          font: { name: font.name, embedded: !font.missingFile },
        },
      ];
    });
    pages.push({ width: (right - left) / POINTS, height: (top - bottom) / POINTS, lines });
  }
  return { info, preferences, pages, outline: await outlineOf(document) };
}

interface Bookmark {
  readonly title: string;
  readonly level: number;
  /** From 0. */
  readonly page: number;
}

/** Bookmarks in the order in which a reader shows them, each with the page that it leads to. */
async function outlineOf(document: PDFDocumentProxy): Promise<readonly Bookmark[]> {
  const found: Bookmark[] = [];
  const walk = async (items: Awaited<ReturnType<PDFDocumentProxy['getOutline']>>, level: number): Promise<void> => {
    for (const { title, dest, items: inner } of items ?? []) {
      const [page] = Array.isArray(dest) ? dest : [];
      found.push({ title, level, page: await document.getPageIndex(page) });
      await walk(inner, level + 1);
    }
  };
  await walk(await document.getOutline(), 0);
  return found;
}

/** A page of a document as another program draws it, four bytes a pixel, so many pixels to a millimetre. */
export async function drawPdf(bytes: Uint8Array, pixels: number) {
  const document = await open(bytes);
  const page = await document.getPage(1);
  const viewport = page.getViewport({ scale: pixels / POINTS });
  const [width, height] = [Math.round(viewport.width), Math.round(viewport.height)];
  const { context } = (document.canvasFactory as CanvasFactory).create(width, height);
  await page.render({ canvasContext: context, viewport }).promise;
  return { width, height, pixels: context.getImageData(0, 0, width, height).data };
}

/** What draws where there is no browser; the library's types know only of a browser's. */
interface CanvasFactory {
  readonly create: (width: number, height: number) => { readonly context: Context };
}
type Context = Parameters<PDFPageProxy['render']>[0]['canvasContext'] & {
  readonly getImageData: (
    left: number,
    top: number,
    width: number,
    height: number,
  ) => { readonly data: Uint8ClampedArray };
};

const open = (bytes: Uint8Array): Promise<PDFDocumentProxy> =>
  // it keeps what it is given, and it shall not complain of what it cannot do here
  getDocument({ data: Uint8Array.from(bytes), isEvalSupported: false, useSystemFonts: false, verbosity: 0 }).promise;
