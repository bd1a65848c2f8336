import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { planCamera } from '../../src/pipeline.js';
import { designOf } from '../design/reading.js';
import { bittern } from '../design/worked-designs.js';
import { heron, toldOfWhole } from './worked.js';

/** Limits: the table of rules in camera.md section 16, common practice, no source, where nothing else is said. */

const { design } = heron;
const withLens = (lens: Partial<Design['lens']>): Design => ({ ...design, lens: { ...design.lens, ...lens } });
const covering = (diameter: number) => withLens({ coverage: { diameter, at: 1 } });

describe('lens-covers: a circle stated at 1:1 is half at infinity and 0.7 at 1:2.5', () => {
  // the image of 5x7 is 120.6 x 171.4, its diagonal 209.577 (camera.md section 2): 299.40 x 0.7, 419.15 x 0.5
  test.each([
    { diameter: 299.3, level: 'error', value: 209.51, hint: /1:2\.49.*write nearest/s },
    { diameter: 299.5, level: 'warning', value: 149.75, hint: /1:2\.5/ },
    { diameter: 419.1, level: 'warning', value: 209.55, hint: /mask/ },
  ])('$diameter mm: $level', ({ diameter, level, value, hint }) => {
    const [told, ...more] = toldOfWhole('lens-covers', { design: covering(diameter) });
    expect(more).toEqual([]);
    expect(told).toMatchObject({ level, unit: 'mm', hint: expect.stringMatching(hint) });
    expect(told?.value).toBeCloseTo(value, 2);
    expect(told?.limit).toBeCloseTo(209.577, 3);
  });

  test('419.2 mm covers', () => expect(toldOfWhole('lens-covers', { design: covering(419.2) })).toEqual([]));

  test('the link leads to the key that the cure names', () => {
    // 299.3 covers from 1:2.49, which Heron reaches; 220 from nowhere within reach
    expect(toldOfWhole('lens-covers', { design: covering(299.3) })[0]?.about).toBe('focus.nearest');
    expect(toldOfWhole('lens-covers', { design: covering(220) })[0]?.about).toBe('format');
  });

  test('a lens that covers portraits alone is offered a farthest focus, one that covers all but landscapes is not', () => {
    // 209.577/(d/2) − 1: 0.31 at 320 (1:3.23), 0.0349 at 405 (1:28.7)
    const [part] = toldOfWhole('lens-covers', { design: covering(320) });
    expect(part).toMatchObject({ about: 'focus.farthest', hint: expect.stringContaining('write farthest: 1:3.22') });
    const [nearly] = toldOfWhole('lens-covers', { design: covering(405) });
    expect(nearly).toMatchObject({ about: 'lens.coverage', hint: expect.not.stringContaining('farthest') });
  });

  test('beyond the reach of the slide a smaller format is the cure', () => {
    // 220 x 0.7 = 154: the image of 4x5, 95.2 x 120.6, has 153.65 (camera.md section 2)
    const [told] = toldOfWhole('lens-covers', { design: covering(220) });
    expect(told).toMatchObject({ level: 'error', about: 'format' });
    expect(told?.hint).toMatch(/largest format that it covers here is 4x5\./);
  });

  test('an 8x10 round a lens with 288 mm at infinity covers from 1:10.2', () => {
    // camera.md section 17
    const [told] = planCamera(designOf(bittern)).findings.filter(({ rule }) => rule === 'lens-covers');
    expect(told).toMatchObject({ level: 'warning', value: 288 });
    expect(told?.message).toMatch(/1:10\.(18|2)\b/);
  });

  test('a camera that focuses no farther than 1:3 is not asked for infinity', () => {
    const portrait: Design = { ...covering(320), focus: { ...design.focus, farthest: 1 / 3 } }; // 320/2 x 4/3 = 213.3
    expect(toldOfWhole('lens-covers', { design: portrait })).toEqual([]);
    expect(toldOfWhole('lens-covers', { design: covering(320) })).toHaveLength(1);
  });
});

test('corner-falloff: a stop is lost where the tangent of half the field is 0.6436', () => {
  // cos⁴ = 1/2: tan = √(√2 − 1) = 0.64359; 104.79/0.64359 = 162.82
  const at = (focalLength: number) => toldOfWhole('corner-falloff', { design: withLens({ focalLength }) });
  expect(at(162.9)).toEqual([]);
  expect(at(162.7)).toMatchObject([{ level: 'note', limit: 1, unit: 'stops' }]);
});
