import { describe, expect, test } from 'vitest';
import { layoutJson } from '../../src/files/layout-json.js';
import { flatten, moved } from '../../src/geometry/path.js';
import { inventedCamera } from '../sheets/invented-camera.js';
import { loopGap } from '../sheets/measure.js';
import { kerf, sampleSheets } from './sample-sheets.js';

/** The defaults of the contract. */
const laser = { kerf, cutSpeed: 10, engraveSpeed: 200, travelSpeed: 300, pierceTime: 0.5 };
const text = layoutJson(sampleSheets, laser);
const layout = JSON.parse(text);

describe('layout.json', () => {
  test('has the promised keys', () => {
    expect(Object.keys(layout)).toEqual(['schema', 'layouts']);
    expect(layout.schema).toBe(1);
    for (const of of layout.layouts) {
      expect(Object.keys(of)).toEqual(['schema', 'material', 'thickness', 'kerf', 'sheets']);
      expect(of.kerf).toBe(0.15);
      for (const sheet of of.sheets) {
        expect(Object.keys(sheet)).toEqual(['file', 'width', 'height', 'margin', 'spacing', 'parts', 'usedArea', 'cutLength', 'travelLength', 'estimatedMinutes']); // biome-ignore format: one line
        for (const part of sheet.parts) expect(Object.keys(part)).toEqual(['id', 'instance', 'x', 'y', 'rotation']);
      }
    }
  });

  test('names the remnant of a sheet that is cut from one', () => {
    const [first, second] = sampleSheets;
    const remnant = { file: 'rack/7.json', material: 'plywood-4.05', thickness: 4.05, outline: [], holes: [] };
    const both = [first, second].flatMap((sheet, i) => (sheet ? [i === 0 ? sheet : { ...sheet, remnant }] : []));
    const { sheets } = JSON.parse(layoutJson(both, laser)).layouts[0];
    expect(sheets.map((sheet: { remnant?: string }) => sheet.remnant)).toEqual([undefined, 'rack/7.json']);
  });

  test('has one entry a material, with its own sheets', () => {
    const entries = layout.layouts.map((l: { material: string; thickness: number }) => [l.material, l.thickness]);
    expect(entries).toEqual([
      ['plywood-4.05', 4.05],
      ['plywood-3.02', 3.02],
    ]);
    const files = layout.layouts.flatMap((l: { sheets: { file: string }[] }) => l.sheets.map(({ file }) => file));
    expect(files).toEqual(sampleSheets.map(({ name }) => `${name}.svg`));
  });

  test('takes each part from its own frame to where it is cut, half a kerf inside the line', () => {
    const [first] = layout.layouts[0].sheets;
    const outlines = sampleSheets[0]?.operations.filter(
      ({ layer }) => layer === 'cut-outside' || layer === 'cut-nested',
    );
    for (const { id, instance, x, y, rotation } of first.parts) {
      const part = inventedCamera.find((piece) => piece.part.id === id)?.part;
      const line = outlines?.flatMap(({ paths }) => paths).find((p) => p.id.startsWith(`${id}.${instance}.`));
      const chords = flatten(line?.path.vertices ?? [], 0.0005);
      const finished = moved(part?.outline ?? [], { x, y, turn: (rotation * Math.PI) / 180 });
      finished.forEach((v, i) => {
        const next = finished[(i + 1) % finished.length] ?? v;
        if (v.bulge !== 0) return;
        const middle = { x: (v.x + next.x) / 2, y: (v.y + next.y) / 2 };
        expect(Math.abs(loopGap(middle, chords) - kerf / 2)).toBeLessThan(0.001);
      });
    }
  });

  test('rounds to four decimals and is the same bytes each time', () => {
    expect(text).not.toMatch(/\.\d{5}/);
    expect(text).not.toMatch(/-0[,\s]/);
    expect(layoutJson(sampleSheets, laser)).toBe(text);
  });

  test('says nothing of sheets where there are none', () =>
    expect(JSON.parse(layoutJson([], laser))).toEqual({ schema: 1, layouts: [] }));
});
