import { nearestFocus } from './camera/standing.js';
import type { Design } from './design/design.js';
import { readToday } from './design/read-today.js';
import { revisionOf } from './design/revision.js';
import { exposureCard } from './exposure/card.js';
import { exposureCardPage } from './files/exposure-card.js';
import { pageSvg } from './files/page-svg.js';
import { type Fonts, pagePdf } from './files/pdf.js';
import type { OutputFile } from './model/output-file.js';

/**
 * The card that rides with the camera, as a picture and as a page to print; or what is wrong with how it was asked for.
 *
 * @param typed what differs from the design's `sitting`, by its keys, as it was typed
 */
export function cardFiles(
  design: Design,
  typed: Readonly<Record<string, string | readonly string[]>>,
  fonts: Fonts,
): { readonly files: readonly OutputFile[] } | { readonly refused: string } {
  const read = readToday(typed);
  if ('refused' in read) return read;
  const card = exposureCard(design, read.today, { revision: revisionOf(design), reaches: nearestFocus(design) });
  if ('refused' in card) return { refused: `${card.refused.what} ${card.refused.accepted}` };
  const page = exposureCardPage(card);
  if ('refused' in page) return { refused: `${page.refused.what} ${page.refused.accepted}` };
  return {
    files: [
      { path: 'exposure-card.svg', bytes: new TextEncoder().encode(pageSvg(page)) },
      { path: 'exposure-card.pdf', bytes: pagePdf([page], fonts, { title: page.title }) },
    ],
  };
}
