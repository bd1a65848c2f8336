import type { Drawing } from '../model/page.js';
import type { Block } from '../paper/blocks.js';
import { figure } from '../paper/figure.js';
import { heading, kept, PARAGRAPH, paragraph } from '../paper/prose.js';
import type { Chapter } from './chapter.js';

/** What is going to be built, before it is built; `room` is what a page holds. */
export const wholeCamera = (drawings: readonly Drawing[], room: number): Chapter => ({
  title: 'The whole camera',
  blocks: [
    paragraph([
      'Look at these drawings before you begin, and come back to them when you wonder where a part goes. They are true to scale where a scale is named; measure only what has a figure.',
      'Thick lines and hatching are cut faces; thin lines are edges that you see. Views are arranged as in first-angle projection.',
    ]),
    ...sharing(drawings.map(shown), room),
  ],
});

/** In their order, but one that has room on the page of an earlier one comes up to it. */
function sharing(blocks: readonly Block[], room: number): readonly Block[] {
  const left = [...blocks];
  const placed: Block[] = [];
  for (let block = left.shift(); block !== undefined; block = left.shift()) {
    placed.push(block);
    let free = room - block.height;
    for (;;) {
      const next = left.findIndex(({ height, above = PARAGRAPH }) => above + height <= free);
      const [fitting] = next < 0 ? [] : left.splice(next, 1);
      if (fitting === undefined) break;
      placed.push(fitting);
      free -= fitting.height + (fitting.above ?? PARAGRAPH);
    }
  }
  return placed;
}

/** Most drawings have their title on them; the others get one. */
function shown(drawing: Drawing): Block {
  const { title, marks } = drawing;
  const own = figure(drawing, { caption: '' });
  if (!marks.some((mark) => mark.kind === 'words' && mark.text === title)) return kept([heading(title), own]);
  return { ...own, above: 5, entry: { title, level: 1 } };
}
