import { describe, expect, test } from 'vitest';
import { stacksAgain } from '../../src/compare/stacks-again.js';
import { recordOfDesign } from '../../src/compare-cameras.js';
import { changed, designOf } from '../design/reading.js';
import { heron } from '../design/worked-designs.js';

const planOf = (text: string) => recordOfDesign(designOf(text)).plan;
/** Heron: films 5.8 and 24 deep, the glass at 5.8; a spacer of 18.2 is four plies of 4.05 and four shims of 0.5. */
const told = (after: string, before = heron) => stacksAgain(planOf(before), planOf(after));
const none = { spacers: [], glassFrame: [] };

describe('stacks of plies and shims at a camera that stands', () => {
  test('are there for the same design', () => expect(told(heron)).toEqual(none));

  test('a holder that came later needs its spacer', () => {
    const thin =
      '  - { name: thin box, filmDepth: 4.9 mm, width: 150 mm, length: 210 mm, thickness: 12 mm, mass: 330 g }';
    const more = changed(heron, 'shims:', `${thin}\nshims:`);
    expect(told(more)).toEqual({ ...none, spacers: ['the spacer of the thin box'] });
    expect(told(heron, more)).toEqual(none);
  });

  test('one whose film lies 0.2 deeper takes other shims on the same plies', () =>
    // 18.4: what is left over the plies is 2.2
    expect(told(changed(heron, 'filmDepth: 24 mm', 'filmDepth: 24.2 mm'))).toEqual({
      ...none,
      spacers: ['the spacer of the processing holder, of other layers'],
    }));

  test('one that went under the glass and goes under the holder is another', () =>
    expect(told(changed(heron, 'filmDepth: 24 mm', 'filmDepth: 4.9 mm')).spacers).toEqual([
      'the spacer of the processing holder, now under the holder',
    ]));

  test('a glass that is drawn deeper has other layers before it', () =>
    // 6.3 − 4.05 = 2.25 of packing instead of 1.75
    expect(told(changed(heron, 'depth: 5.8 mm, frosted', 'depth: 6.3 mm, frosted')).glassFrame).toEqual([
      'the glass frame, of other layers',
    ]));

  test('a spacer that was measured is what it was drawn of', () =>
    expect(told(changed(heron, 'mass: 900 g', 'mass: 900 g, spacer: { measured: 18.3 mm }'))).toEqual(none));
});
