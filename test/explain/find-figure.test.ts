import { describe, expect, test } from 'vitest';
import { findFigure } from '../../src/explain/find-figure.js';
import { entriesOf } from '../../src/explain/plan-tree.js';
import { keptDesign } from '../designs/kept-design.js';

const heron = keptDesign('heron');
const entries = entriesOf(heron);
const find = (asked: string) => findFigure(asked, entries, heron.holders);

test.each([
  ['slide.rearBoxInside', 'slide.rearBoxInside'],
  ['Slide.RearboxInside ', 'slide.rearBoxInside'],
  ['rearBoxInside', 'slide.rearBoxInside'],
  ['W_ri', 'slide.rearBoxInside'],
  ['holders[1].seat.nearest', 'holders[1].seat.nearest'],
  ['holders.1.seat.nearest', 'holders[1].seat.nearest'],
  ['holders.processing holder.seat.nearest', 'holders[1].seat.nearest'],
  ['holders["processing holder"].seat.nearest', 'holders[1].seat.nearest'],
  ['spacers.processing holder.thickness', 'spacers[1].thickness'],
  ['tailboard.indexOffsets.processing holder', 'tailboard.indexOffsets.processing holder'],
  ['balance.closest', 'tailboard.balance.closest'],
  ['mass', 'camera.mass'],
  ['parts.F1.width', 'parts.F1.width'],
])('%s', (asked, path) => expect(find(asked)).toMatchObject({ kind: 'one', entry: { path } }));

test.each([
  ['tailboard', 'tailboard.sag'],
  ['holders.paper holder', 'holders[0].seat.infinity'],
  ['parts.F1', 'parts.F1.height'],
])('%s is a group', (asked, member) => {
  const found = find(asked);
  if (found.kind !== 'group') throw new Error(found.kind);
  expect(found.entries.map(({ path }) => path)).toContain(member);
  expect(found.entries.length).toBeLessThan(entries.length / 4);
});

describe('what is not there is told with the nearest names', () => {
  test.each([
    ['slide.rearBoxInsid', 'Did you mean slide.rearBoxInside'],
    ['slide.traval', 'Did you mean slide.travel'],
    ['optics.stops', 'optics.nearest.stops'],
    ['width', 'tailboard.width or camera.width'],
    ['holders[7].filmDepth', 'holders[0].filmDepth'],
    ['bellows', 'Without a name'],
  ])('%s', (asked, message) => {
    const found = find(asked);
    if (found.kind !== 'none') throw new Error(found.kind);
    expect(found.message).toContain(`no figure "${asked}"`);
    expect(found.message).toContain(message);
  });
});
