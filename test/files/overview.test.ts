import { Resvg } from '@resvg/resvg-js';
import { describe, expect, test } from 'vitest';
import { overviewSvg } from '../../src/files/overview.js';
import { inventedCamera } from '../sheets/invented-camera.js';
import { offcuts, sampleSheets } from './sample-sheets.js';

const svg = overviewSvg(sampleSheets, { title: 'Heron <5x7>', pieces: inventedCamera, offcuts });

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

  test('counts what lies on the sheets: of some of them no more than they hold', () => {
    const [first] = sampleSheets;
    if (first === undefined) throw new Error('there are sheets');
    const some = overviewSvg([first, first], { title: 'two alike', pieces: inventedCamera, offcuts: [] });
    const [{ part = '' } = {}] = first.placed;
    const count = 2 * first.placed.filter((one) => one.part === part).length;
    expect(some).toMatch(new RegExp(`>${part} [^<]* × ${count}<`));
  });

  test('captions each sheet with its material, size and use', () => {
    for (const sheet of sampleSheets) {
      const use = Math.round((100 * sheet.usedArea) / (sheet.width * sheet.height));
      expect(svg).toContain(`${sheet.name} · ${sheet.width} × ${sheet.height} mm · ${use} % used`);
    }
  });

  test('draws what lies in windows in another line, over the part that has the window, and counts it', () => {
    const drawn = sampleSheets.map((sheet) => {
      const nested = sheet.operations.find(({ layer }) => layer === 'cut-nested')?.paths ?? [];
      const [, picture = ''] = svg.split(`<g id="${sheet.name}">`);
      const strokes = [...(picture.split('<g id=')[0] ?? '').matchAll(/<path [^>]*stroke="([^"]+)"/g)].map(
        ([, s]) => s,
      );
      const other = strokes.filter((stroke) => stroke !== strokes[0]);
      expect(other).toHaveLength(nested.length);
      expect(strokes.slice(strokes.length - nested.length)).toEqual(other);
      expect(picture.includes(`${nested.length} in windows`)).toBe(nested.length > 0);
      return nested.length;
    });
    expect(Math.max(...drawn)).toBeGreaterThan(0);
  });

  test('draws what is left where it is, with its size in whole millimetres, never more than there is', () => {
    expect(offcuts.length).toBeGreaterThan(0);
    for (const { sheet, left, right, bottom, top } of offcuts) {
      const height = sampleSheets.find(({ name }) => name === sheet)?.height ?? Number.NaN;
      const [, picture = ''] = svg.split(`<g id="${sheet}">`);
      const [rect = ''] = /<rect [^>]*#hatch[^>]*>/.exec(picture) ?? [];
      const said = ['x', 'y', 'width', 'height'].map((name) =>
        Number(new RegExp(` ${name}="([^"]+)"`).exec(rect)?.[1]),
      );
      [left, height - top, right - left, top - bottom].forEach((value, k) => {
        expect(said[k]).toBeCloseTo(value, 3);
      });
      expect(picture).toContain(`${Math.floor(right - left)} × ${Math.floor(top - bottom)} mm left`);
    }
  });

  test('has a bar of 100 mm in the measure of the sheets, and says which way the grain runs', () => {
    const [, bar] = /<g id="key">\s*<line x1="([^>]*)\/>/.exec(svg) ?? [];
    const [from, to] = [/^([\d.]+)/, /x2="([\d.]+)"/].map((part) => Number(part.exec(bar ?? '')?.[1])) as [
      number,
      number,
    ];
    expect(to - from).toBeCloseTo(100, 6);
    expect(svg).toContain('100 mm');
    expect(svg).toContain('face grain of all sheets');
  });

  test('escapes what a design may be called', () => expect(svg).toContain('Heron &lt;5x7&gt;'));
});
