import { describe, expect, test } from 'vitest';
import { gelCovers } from '../../../src/camera/filter-holder/checks.js';
import { widenHole } from '../../planted.js';
import { heronWith } from '../asked-for.js';

const asked = (key: string) => {
  const { camera, build } = heronWith(key);
  const own = camera.objects.filterHolder;
  if (!own) throw new Error('Heron was asked for a filter holder');
  return { own, build };
};

describe('gel-covers: 2 mm over the edge of the opening wherever the gel lies; a choice of ours', () => {
  const { own, build } = asked('filterHolder: {}');
  // 33.33 + 2·29.15·0.499 + 2 = 64.4 wide; the next gel that is sold, 75, has 1 of play: (75 − 64.4)/2 − 0.5 = 4.8
  test('as drawn, and with a wider opening', () => {
    expect(gelCovers(own, build)).toEqual([]);
    expect(gelCovers(own, widenHole(build, 'FH1', 2.7))).toEqual([]);
    expect(gelCovers(own, widenHole(build, 'FH1', 2.9))).toMatchObject([
      { rule: 'gel-covers', level: 'warning', limit: 2, about: 'filterHolder.side' },
    ]);
  });
  test('gels too small for the lens', () => {
    const small = asked('filterHolder: { side: 65 mm }');
    expect(gelCovers(small.own, small.build)).toMatchObject([
      { hint: 'Take gels of 70 mm or more.', message: expect.stringMatching(/they are 65 mm wide/) },
    ]);
  });
});

test('takes the number of gels that is asked for: 0.2 of card for each', () => {
  for (const filters of [1, 4, 12]) {
    const { own, build } = asked(`filterHolder: { filters: ${filters} }`);
    expect(own.card).toBeCloseTo(0.2 * filters, 9);
    expect(build.parts.find(({ id }) => id === 'filter-card')).toMatchObject({ shape: { thickness: own.card } });
  }
});
