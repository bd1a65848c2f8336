import type { Page } from '../model/page.js';
import type { Block } from '../paper/blocks.js';
import { contentsList } from '../paper/contents.js';
import { flow, type Listed } from '../paper/flow.js';
import { chapterTitle, PARAGRAPH, paragraph } from '../paper/prose.js';
import { roomOf } from '../paper/sheet-size.js';
import { paperSizes } from '../standards/paper-sizes.js';
import { assembly } from './assembly.js';
import type { Chapter } from './chapter.js';
import { cover } from './cover.js';
import { cutSheets } from './cut-sheets.js';
import type { BookGiven } from './given.js';
import { howToUse } from './how-to-use.js';
import { standingCamera } from './standing-camera.js';
import { whatYouNeed } from './what-you-need.js';
import { wholeCamera } from './whole-camera.js';

/** The whole book, page by page. */
export function bookPages(given: BookGiven, paper: keyof typeof paperSizes): readonly Page[] {
  const { name, revision, despite } = given.plan;
  const [width, height] = paperSizes[paper].value;
  const room = roomOf({ width, height });
  const chapters = [
    ...(given.since === null ? [] : [standingCamera(given.since, given)]),
    howToUse(given),
    wholeCamera(given.drawings, room),
    whatYouNeed(given),
    ...given.before,
    cutSheets(given),
    assembly(given.steps, room),
    ...given.after,
  ];
  const waived = despite.length === 0 ? '' : `, built despite ${despite.join(', ')}`;
  return flow(
    (listed) => [
      ...cover(given),
      { ...CONTENTS, beginsPage: true },
      ...contentsOf(listed, room),
      ...chapters.flatMap(chapterBlocks),
    ],
    { paper: { width, height }, foot: `${name}, revision ${revision}${waived}` },
  );
}

const chapterBlocks = ({ title, blocks }: Chapter): readonly Block[] => [chapterTitle(title), ...blocks];

/** Neither the cover nor the contents themselves are looked for in them. */
const contentsOf = (listed: readonly Listed[], room: number): readonly Block[] =>
  listed.length === 0 ? [paragraph('')] : contentsList(listed.slice(2), room - CONTENTS.height - PARAGRAPH);

const CONTENTS = chapterTitle('Contents');
