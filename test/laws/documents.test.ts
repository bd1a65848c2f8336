import { expect, test } from 'vitest';
import { engrave } from '../../src/camera/engrave.js';
import { cutting } from '../../src/cutting.js';
import { partsJson } from '../../src/files/parts-json.js';
import { area, type ClosedPath } from '../../src/geometry/path.js';
import { type Planned, planCamera, planOf } from '../../src/pipeline.js';
import { lawsFrom } from './law.js';

const { law, lawOfSoundCameras } = lawsFrom(2);

/** Paths of numbers that are no numbers. */
function notFinite(value: unknown, path = ''): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, own]) => notFinite(own, `${path}.${key}`));
}

test('every number in a plan and in its findings is finite', () =>
  law(120, (planned) => {
    expect(notFinite(planOf(planned))).toEqual([]);
    expect(notFinite(planned.findings)).toEqual([]);
  }));

test('the same design gives the same plan and the same parts, to the byte', () =>
  law(40, (planned) => {
    const again = planCamera(structuredClone(planned.design));
    const bytes = (p: Planned) => JSON.stringify(planOf(p)) + partsJson(p.build, p.revision, new Map());
    expect(bytes(again)).toBe(bytes(planned));
  }));

test('every finding says what is wrong, and what it has to do with a limit', () =>
  law(120, ({ findings }) => {
    for (const { rule, message, level, hint } of findings) {
      expect(rule).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(message.trim().length, rule).toBeGreaterThan(10);
      if (level === 'error') expect(hint ?? '', rule).not.toBe('');
    }
  }));

const loopArea = (outline: ClosedPath, holes: readonly ClosedPath[]): number =>
  holes.reduce((sum, hole) => sum - Math.abs(area(hole)), Math.abs(area(outline)));

test('the sheets hold as much wood as the parts, no piece lost and none twice', () =>
  lawOfSoundCameras(2, (planned) => {
    const { cut } = cutting(planned, planned.parts);
    const counts = new Map(planOf(planned).parts.map(({ id, count }) => [id, count]));
    const flat = engrave(planned.parts, planned).parts.flatMap((p) => (p.kind === 'flat' ? [p] : []));
    const wanted = flat.reduce((sum, p) => sum + (counts.get(p.id) ?? 0) * loopArea(p.outline, p.holes), 0);
    const laid = cut.sheets.flatMap(({ placed }) => placed.map(({ part }) => part));
    const found = laid.reduce((sum, id) => {
      const part = flat.find((p) => p.id === id);
      return sum + (part ? loopArea(part.outline, part.holes) : Number.NaN);
    }, 0);
    expect(found).toBeCloseTo(wanted, 3);
    expect(cut.sheets.reduce((sum, sheet) => sum + sheet.usedArea, 0)).toBeCloseTo(wanted, 1);
    for (const { id } of flat) expect(laid.filter((on) => on === id).length, id).toBe(counts.get(id));
  }));
