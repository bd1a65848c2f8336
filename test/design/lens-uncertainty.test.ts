import { describe, expect, test } from 'vitest';
import { changed, designOf, problemsOf } from './reading.js';
import { heron } from './worked-designs.js';

const withDoubt = (doubt: string) =>
  changed(heron, 'flangeDistance: 203.5 mm', `flangeDistance: 203.5 mm\n  uncertainty: ${doubt}`);

describe('how well a lens is known', () => {
  test('is nothing where nobody measured it', () => expect(designOf(heron).lens.uncertainty).toBeNull());

  test('is two standard errors, what they share, and how many readings', () => {
    expect(
      designOf(withDoubt('{ focalLength: 0.37 mm, flangeDistance: 0.21, correlation: -0.86, readings: 8 }')).lens
        .uncertainty,
    ).toEqual({ focalLength: 0.37, flangeDistance: 0.21, correlation: -0.86, readings: 8 });
    expect(
      designOf(withDoubt('{ focalLength: 0.37 mm, flangeDistance: 0.21, correlation: 0 }')).lens.uncertainty,
    ).toMatchObject({ correlation: 0, readings: null });
  });

  test.each([
    ['no correlation', '{ focalLength: 0.37, flangeDistance: 0.21 }'],
    ['a correlation beyond one', '{ focalLength: 0.37, flangeDistance: 0.21, correlation: -1.1 }'],
    ['two readings', '{ focalLength: 0.37, flangeDistance: 0.21, correlation: -0.86, readings: 2 }'],
    ['an error below nothing', '{ focalLength: -0.37, flangeDistance: 0.21, correlation: -0.86 }'],
  ])('takes no %s', (_, doubt) => expect(problemsOf(withDoubt(doubt)).length).toBeGreaterThan(0));
});
