import { Resvg } from '@resvg/resvg-js';
import { describe, expect, test } from 'vitest';
import { pageSvg } from '../../src/files/page-svg.js';
import { samplePage, words } from './page-sample.js';
import { fontFile } from './read-pdf.js';

const svg = pageSvg(samplePage);

describe('a drawing as a picture', () => {
  test('has its true size in millimetres, and says what it is and what it shows', () => {
    expect(svg).toMatch(/^<svg [^>]*width="100mm" height="140mm" viewBox="0 0 100 140"/);
    expect(svg).toMatch(/<title>Heron &lt;5x7&gt; &amp; &quot;friends&quot;<\/title>/);
    expect(svg).toMatch(/<desc>\s*One of each mark\.\s*<\/desc>/);
  });

  test('is the same each time', () => expect(pageSvg(samplePage)).toBe(svg));

  test.each(words)('keeps words as words, in letters that every reader has: $text', ({ text, at, size, anchor }) => {
    expect(svg).toMatch(
      new RegExp(
        `<text x="${at.x}" y="${at.y}" [^>]*font-family="sans-serif" font-size="${size}"[^>]* text-anchor="${anchor}"[^>]*>${text}</text>`,
      ),
    );
  });

  /** Where another program puts the ink of one mark of words: left, right, top and bottom in mm. */
  const inkOf = (mark: (typeof words)[number]) => {
    const alone = pageSvg({ ...samplePage, marks: [mark] });
    const scale = 8;
    const { width, pixels } = new Resvg(alone, {
      fitTo: { mode: 'width', value: 100 * scale },
      font: {
        loadSystemFonts: false,
        fontFiles: [fontFile('DejaVuSans'), fontFile('DejaVuSans-Bold')],
        sansSerifFamily: 'DejaVu Sans',
      },
    }).render();
    const dark: { x: number; y: number }[] = [];
    for (let i = 0; i < pixels.length; i += 4) {
      const at = i / 4;
      if ((pixels[i] ?? 255) < 128) dark.push({ x: (at % width) / scale, y: Math.floor(at / width) / scale });
    }
    const [xs, ys] = [dark.map(({ x }) => x), dark.map(({ y }) => y)];
    return {
      left: xs.reduce((a, b) => Math.min(a, b)),
      right: xs.reduce((a, b) => Math.max(a, b)),
      top: ys.reduce((a, b) => Math.min(a, b)),
      bottom: ys.reduce((a, b) => Math.max(a, b)),
    };
  };

  test('puts words to the right of, about, or up to a point', () => {
    const [start, end, middle] = words.map(inkOf);
    // a letter begins up to a tenth of its size beside its place
    expect(start?.left).toBeCloseTo(10, 0);
    expect(end?.right).toBeCloseTo(90, 0);
    expect(((middle?.left ?? 0) + (middle?.right ?? 0)) / 2).toBeCloseTo(50, 0);
  });

  test('turns words anticlockwise: upwards to the right', () => {
    const turned = words[3] as (typeof words)[number];
    const { turned: _, ...level } = turned;
    // above the base line, but for what hangs below it
    expect(inkOf(turned).top).toBeLessThan(inkOf(level).top - 3);
    expect(inkOf(turned).bottom).toBeLessThan(turned.at.y + 1);
  });
});
