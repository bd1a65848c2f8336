import { Resvg } from '@resvg/resvg-js';
import { describe, expect, test } from 'vitest';
import { reversed } from '../../src/geometry/path.js';
import { boxAt, rectangle } from '../../src/geometry/shapes.js';
import { leakDrawing } from '../../src/proof/leak-drawing.js';
import { leaksIn } from '../../src/proof/light-leaks.js';
import { sceneOf } from '../../src/proof/light-scene.js';
import { buildOf, recut } from './dark-box.js';

describe('the drawing of a leak', () => {
  const slit = reversed(rectangle(boxAt(12, 7, 0.3, 10)));
  const scene = sceneOf(buildOf(recut('front', ({ holes }) => ({ holes: [...holes, slit] }))));
  const [leak] = leaksIn(scene, 1);
  const svg = leak ? leakDrawing(scene, leak) : '';

  test('says what it is, for those who do not see it', () => {
    expect(svg).toContain('<title>Light through front</title>');
    expect(svg).toMatch(
      /<desc>0\.3 mm wide at x 1[12](\.\d)? mm, y [\d.]+ mm, z -?[\d.]+ mm; exposing, closest<\/desc>/,
    );
  });

  test('hatches the part with the gap, names it, draws the light and a scale', () => {
    expect(svg).toContain('fill="url(#rising)"');
    expect(svg).toMatch(/font-weight="bold"[^>]*>front</);
    expect(svg.match(/id="light"/g)).toHaveLength(1);
    expect(svg).toContain('10 mm');
  });

  test('is sound: another program draws it, with red in it', () => {
    const { pixels, width, height } = new Resvg(svg, { fitTo: { mode: 'zoom', value: 4 } }).render();
    expect([width, height]).toEqual([4 * 344, 4 * 418]);
    let red = 0;
    for (let i = 0; i < pixels.length; i += 4)
      if ((pixels[i] ?? 0) > 150 && (pixels[i + 1] ?? 255) < 60 && (pixels[i + 2] ?? 255) < 60) red++;
    // the ray, as far as the picture shows it at least 20 mm of 8 units, 1.2 wide, 4 × 4 pixels to the unit
    expect(red).toBeGreaterThan(160 * 1.2 * 16 * 0.8);
  });

  test('the same leak gives the same bytes', () => expect(leak && leakDrawing(scene, leak)).toBe(svg));
});
