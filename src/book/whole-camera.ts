import type { Drawing } from '../model/page.js';
import { figure } from '../paper/figure.js';
import { paragraph } from '../paper/prose.js';
import type { Chapter } from './chapter.js';

/** What is going to be built, before it is built. */
export const wholeCamera = (drawings: readonly Drawing[]): Chapter => ({
  title: 'The whole camera',
  blocks: [
    paragraph([
      'Look at these drawings before you begin, and come back to them when you wonder where a part goes. They are true to scale where a scale is named; measure only what has a figure.',
      'Thick lines and hatching are cut faces; thin lines are edges that you see. Views are arranged as in first-angle projection.',
    ]),
    ...drawings.map((drawing) => ({
      ...figure(drawing, { caption: '' }),
      above: 5,
      entry: { title: drawing.title, level: 1 },
    })),
  ],
});
