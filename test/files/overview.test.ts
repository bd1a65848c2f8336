import { Resvg } from '@resvg/resvg-js';
import { describe, expect, test } from 'vitest';
import { overviewSvg } from '../../src/files/overview.js';
import { inventedCamera } from '../sheets/invented-camera.js';
import { sampleSheets } from './sample-sheets.js';

const svg = overviewSvg(sampleSheets, { title: 'Heron <5x7>', pieces: inventedCamera });

describe('the overview of all sheets', () => {
  test('is a picture that another program can draw, parts in their tones', () => {
    const { width, height, pixels } = new Resvg(svg, {
      fitTo: { mode: 'width', value: 600 },
      font: { loadSystemFonts: false },
    }).render();
    expect(width).toBe(600);
    expect(height).toBeGreaterThan(300);
    const seen = new Set<string>();
    for (let i = 0; i < pixels.length; i += 4) seen.add([...pixels.subarray(i, i + 3)].map((v) => v.toString(16).padStart(2, '0')).join('')); // biome-ignore format: one line
    for (const fill of new Set([...svg.matchAll(/<path [^>]*fill="#([\da-f]{6})"/g)].map(([, tone]) => tone ?? ''))) expect(seen).toContain(fill); // biome-ignore format: one line
  });

  test('shows every piece and lists every part with its name and count', () => {
    expect(svg.match(/<path /g)).toHaveLength(inventedCamera.reduce((sum, { count }) => sum + count, 0));
    const words = [...svg.matchAll(/<text [^>]*>\s*([^<]*?)\s*<\/text>/g)].map(([, w]) => w);
    for (const { part, count } of inventedCamera) expect(words).toContainEqual(expect.stringMatching(new RegExp(`^${part.id}\\s+${part.name}\\s+× ${count}$`))); // biome-ignore format: one line
  });

  test('captions each sheet with its material, size and use', () => {
    for (const sheet of sampleSheets) {
      const use = Math.round((100 * sheet.usedArea) / (sheet.width * sheet.height));
      expect(svg).toContain(`${sheet.name} · ${sheet.width} × ${sheet.height} mm · ${use} % used`);
    }
  });

  test('escapes what a design may be called', () => expect(svg).toContain('Heron &lt;5x7&gt;'));
});
