import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { heronDesign } from './heron-design.js';
import { runHere } from './run-here.js';
import { scratch, snapshot, tailboard } from './scratch.js';

/** A build proves a whole camera: seconds on a slow machine. */
const PATIENCE = { timeout: 300_000 };

const thinner = heronDesign.replace('filmDepth: 24 mm', 'filmDepth: 22 mm');
const json = (...path: readonly string[]) => JSON.parse(readFileSync(join(...path), 'utf8'));

/** A folder with two designs, and the plan of the first as a build would have kept it. */
async function place(): Promise<string> {
  const folder = scratch();
  writeFileSync(join(folder, 'before.yaml'), heronDesign);
  writeFileSync(join(folder, 'after.yaml'), thinner);
  const { code, out } = await runHere('plan', join(folder, 'before.yaml'), '--json');
  expect(code).toBe(0);
  mkdirSync(join(folder, 'built'));
  writeFileSync(join(folder, 'built', 'plan.json'), out);
  return folder;
}

describe('compare', PATIENCE, () => {
  test('takes a design, a plan.json and a built folder, and tells the same of each', async () => {
    const folder = await place();
    const told = async (before: string) => {
      const { code, out, err } = await runHere('compare', join(folder, before), join(folder, 'after.yaml'), '--json');
      expect({ code, err }).toEqual({ code: 0, err: '' });
      return JSON.parse(out);
    };
    const document = await told('before.yaml');
    expect(document.schema).toBe(1);
    // a seat 2 mm farther back: longer boxes, and nothing of the back (camera.md section 7)
    expect(document.recut).toEqual(expect.arrayContaining(['F2L', 'F2R', 'F3', 'F4', 'R1L', 'R1R', 'R2T', 'R2F']));
    expect(document.keeps).toEqual(expect.arrayContaining(['F1', 'F6', 'R3', 'B1', 'G1', 'lens-clamp']));
    const { recut, keeps, lost, changed } = document;
    for (const before of ['built', 'built/plan.json'])
      expect(await told(before)).toMatchObject({ recut, keeps, lost, changed });
  });

  test('a page for a person has figures, parts, what is kept, and what the old boxes do', async () => {
    const folder = await place();
    const { code, out } = await runHere('compare', join(folder, 'before.yaml'), join(folder, 'after.yaml'));
    expect(code).toBe(0);
    for (const heading of ['Figures that change', 'Cut again', 'Kept', 'In the boxes as they are'])
      expect(out).toContain(heading);
    expect(out).toMatch(/slide\.closest +175\.5 +177\.5/);
    expect(out).toMatch(/F3 +front box top +207\.35 × 171\.45 mm, was 207\.35 × 169\.45 mm/);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  });

  test('with itself: nothing', async () => {
    const folder = await place();
    const { out } = await runHere('compare', join(folder, 'built'), join(folder, 'before.yaml'));
    expect(out).toContain('All figures are the same');
    expect(out).toContain('Nothing: every part is there already');
  });

  test.each([
    { before: 'none.yaml', says: 'none.yaml: there is no such file' },
    { before: 'empty', says: 'it has no plan.json. Name a folder that tailboard build wrote' },
    { before: 'broken.json', says: 'broken.json: plan.json: It is not JSON' },
    { before: 'old.json', says: 'lensBoard is missing' },
    { before: 'bad.yaml', says: 'bad.yaml:' },
  ])('$before: 2 and one message', async ({ before, says }) => {
    const folder = await place();
    mkdirSync(join(folder, 'empty'));
    writeFileSync(join(folder, 'broken.json'), '{');
    const { lensBoard: _, ...old } = json(folder, 'built', 'plan.json');
    writeFileSync(join(folder, 'old.json'), JSON.stringify(old));
    writeFileSync(join(folder, 'bad.yaml'), heronDesign.replace('focalLength: 210 mm', 'focalLength: 210 mn'));
    for (const words of [
      ['compare', join(folder, before), join(folder, 'after.yaml')],
      ['compare', join(folder, 'after.yaml'), join(folder, before)],
      ['build', join(folder, 'after.yaml'), '--since', join(folder, before)],
    ]) {
      const { code, out, err } = await runHere(...words);
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toContain(says);
    }
  });
});

describe('build --since', PATIENCE, () => {
  test('its sheets hold what must be cut, piece by piece, and nothing else', async () => {
    const folder = await place();
    const revision: string = json(folder, 'built', 'plan.json').revision;
    const earlier = snapshot(join(folder, 'built'));
    const { code, out } = await tailboard(['build', 'after.yaml', '--since', 'built', '--effort', '0'], folder);
    expect(code).toBe(0);
    expect(out).toContain('Cut again: F2L');
    // the clamp stands as it was
    expect(out).not.toMatch(/printed part|Print again/);
    expect(readdirSync(join(folder, 'output'))).toEqual([`heron-since-${revision}`]);
    const made = join(folder, 'output', `heron-since-${revision}`);
    const { recut, keeps } = json(made, 'changes.json');
    const parts: readonly { id: string; count: number; kind: string }[] = json(made, 'parts.json').parts;
    const wanted = parts.filter(({ id, kind }) => kind === 'flat' && recut.includes(id));
    const laid = json(made, 'sheets', 'layout.json')
      .layouts.flatMap(
        ({ sheets }: { sheets: readonly { parts: readonly { id: string; instance: number }[] }[] }) => sheets,
      )
      .flatMap((sheet: { parts: readonly { id: string; instance: number }[] }) => sheet.parts)
      .map(({ id, instance }: { id: string; instance: number }) => `${id}.${instance}`);
    const pieces = wanted.flatMap(({ id, count }) => Array.from({ length: count }, (_, i) => `${id}.${i + 1}`));
    expect(laid.sort()).toEqual(pieces.sort());
    // the record is that of the whole camera as it then stands
    expect(parts.map(({ id }) => id)).toEqual(expect.arrayContaining(keeps));
    expect(snapshot(join(folder, 'built'))).toEqual(earlier);
  });
});
