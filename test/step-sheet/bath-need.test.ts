import { describe, expect, test } from 'vitest';
import { bathNeed } from '../../src/step-sheet/bath-need.js';

// worked by hand
describe('what a bath takes for all prints', () => {
  test.each([
    // every print its own: 7 × 150; after one print 4/(150 + 4) is of the bath before
    { serves: 1, prints: 7, afterAnother: true, baths: 7, total: 1050, thinned: 4 / 154 },
    // 4 and 3 prints: two baths, nothing lost, for as much is carried in as out
    { serves: 4, prints: 7, afterAnother: true, baths: 2, total: 300, thinned: 1 - (150 / 154) ** 4 },
    // the first bath gets nothing in return: of 4 and of 3 prints all but the last take 4 ml along, 3 × 4 + 2 × 4 = 20
    { serves: 4, prints: 7, afterAnother: false, baths: 2, total: 320, thinned: null },
    { serves: 1, prints: 7, afterAnother: false, baths: 7, total: 1050, thinned: null },
    // two prints do not use up a bath for ten
    { serves: 10, prints: 2, afterAnother: false, baths: 1, total: 154, thinned: null },
  ])('$prints prints, $serves a bath, after another: $afterAnother', ({ serves, prints, afterAnother, ...need }) => {
    const { baths, total, thinned } = bathNeed({ volume: 150, serves, afterAnother }, { prints, carryOver: 4 });
    expect({ baths, total }).toEqual({ baths: need.baths, total: need.total });
    if (need.thinned === null) expect(thinned).toBeNull();
    else expect(thinned).toBeCloseTo(need.thinned, 12);
  });

  test('drop by drop: mixing and draining print after print gives what the formula does', () => {
    const [volume, carried] = [150, 4];
    let foreign = 0;
    for (let print = 0; print < 6; print++) foreign = (foreign * volume + carried) / (volume + carried);
    const { thinned } = bathNeed({ volume, serves: 6, afterAnother: true }, { prints: 6, carryOver: carried });
    expect(thinned).toBeCloseTo(foreign, 12);
  });
});
