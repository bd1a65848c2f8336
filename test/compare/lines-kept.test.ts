import { describe, expect, test } from 'vitest';
import { withoutIndexLine } from '../../src/compare/lines-kept.js';
import { recordOfDesign } from '../../src/compare-cameras.js';
import { changed, designOf } from '../design/reading.js';
import { heron } from '../design/worked-designs.js';

const planOf = (text: string) => recordOfDesign(designOf(text)).plan;
const holder = (name: string, depth: string) =>
  `  - { name: ${name}, filmDepth: ${depth}, width: 150 mm, length: 210 mm, thickness: 24 mm, mass: 330 g }\n`;
/** Holders at the end of the list of Heron, whose films lie 5.8 and 24 deep, the glass 5.8. */
const withHolders = (...more: readonly string[]) => changed(heron, 'shims:', `${more.join('')}shims:`);
const told = (text: string) => withoutIndexLine(planOf(heron), planOf(text));

describe('the index lines on a sole that is kept', () => {
  test('are all there for the same holders', () => expect(told(heron)).toEqual([]));

  test.each([
    { text: withHolders(holder('tin box', '12 mm')), lacking: ['tin box'] },
    // on a spacer it lies as deep as the glass, at a line that is there without its number
    { text: withHolders(holder('thin box', '4 mm')), lacking: ['thin box'] },
    {
      text: withHolders(holder('tin box', '12 mm'), holder('thin box', '4 mm')),
      lacking: ['tin box', 'thin box'],
    },
  ])('are right, and lack those of holders that came later: $lacking', ({ text, lacking }) =>
    expect(told(text)).toEqual(lacking),
  );

  test('are right for another lens: the scale moves, and not they', () =>
    expect(told(changed(heron, 'flangeDistance: 203.5 mm', 'flangeDistance: 207 mm'))).toEqual([]));

  test('are wrong where a holder is another one', () =>
    expect(told(changed(heron, 'filmDepth: 24 mm', 'filmDepth: 22 mm'))).toBeNull());

  test('are wrong where another holder has the number', () => {
    const paper = heron.slice(heron.indexOf('  - { name: paper'), heron.indexOf('  - { name: processing'));
    expect(told(changed(changed(heron, paper, ''), 'shims:', `${paper}shims:`))).toBeNull();
  });

  test('are wrong where one is gone that others came after', () => {
    const deep = heron.slice(heron.indexOf('  - { name: processing'), heron.indexOf('shims:'));
    expect(told(changed(heron, deep, ''))).toBeNull();
  });

  test('are all moved by a film or a glass that lies ahead of all others', () => {
    const both = { from: 'depth: 5.8 mm, frosted', to: 'depth: 5.2 mm, frosted' };
    expect(told(changed(withHolders(holder('thin box', '5.2 mm')), both.from, both.to))).toBeNull();
  });
});
