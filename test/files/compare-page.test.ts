import { expect, test } from 'vitest';
import { compareCameras } from '../../src/compare/compare.js';
import { recordOfDesign } from '../../src/compare-cameras.js';
import { comparePage } from '../../src/files/compare-page.js';
import { keptDesign, secondLens } from '../designs/kept-design.js';

const plain = (text: string) => text;
const colour = { heading: plain, faint: plain, error: plain, warning: plain, note: plain };

test.each([80, 100])('on %i columns each figure has its name in one piece, and a sentence gives way', (width) => {
  const cameras = { before: recordOfDesign(keptDesign('teal')), after: recordOfDesign(secondLens()) };
  const document = compareCameras(cameras.before, cameras.after);
  const lines = comparePage(document, cameras, { width, colour }).split('\n');
  for (const { figure } of document.changed)
    expect(lines.filter((line) => line.startsWith(`  ${figure}  `))).toHaveLength(1);
  // Teal is held by the grip of its boxes, which takes a sentence to say
  expect(document.changed.find(({ figure }) => figure === 'slide.limitedBy')?.before).toMatch(/^.{40,}$/);
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(width);
});
