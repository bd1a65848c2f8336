import { pageSvg } from './files/page-svg.js';
import { type Fonts, pagePdf } from './files/pdf.js';
import { processCardPage } from './files/process-card.js';
import type { OutputFile } from './model/output-file.js';
import type { StepSheet } from './model/step-sheet.js';
import { cardSize, paperSizes } from './standards/paper-sizes.js';

const papers = { A5: cardSize, ...paperSizes };
export type CardPaper = keyof typeof papers;
export const cardPapers = Object.keys(papers) as readonly CardPaper[]; // its own keys

/** The step sheet as a card to lie beside the trays, as a picture and as a page to print; or why there is none. */
export function processCardFiles(
  sheet: StepSheet,
  paper: CardPaper,
  fonts: Fonts,
): { readonly files: readonly OutputFile[] } | { readonly refused: string } {
  const wrong = sheet.findings.find(({ level }) => level === 'error');
  if (wrong !== undefined) return { refused: `There is no card of steps that cannot be done. ${wrong.message}` };
  const [width, height] = papers[paper].value;
  const page = processCardPage(sheet, { width, height });
  if ('refused' in page) return { refused: `${page.refused.what} ${page.refused.accepted}` };
  return {
    files: [
      { path: 'process-card.svg', bytes: new TextEncoder().encode(pageSvg(page)) },
      { path: 'process-card.pdf', bytes: pagePdf([page], fonts, { title: page.title }) },
    ],
  };
}
