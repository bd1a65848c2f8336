import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { heronDesign } from './heron-design.js';
import { runHere } from './run-here.js';
import { scratch } from './scratch.js';

function heron(): string {
  const file = join(scratch(), 'heron.yaml');
  writeFileSync(file, heronDesign);
  return file;
}

describe('explain', () => {
  test('tells how a figure came about, on stdout', async () => {
    const { code, out, err } = await runHere('explain', heron(), 'slide.rearBoxInside');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('W_ri = i_h + 2 (g + e + r)');
    expect(out).toContain('To change it');
  });

  test('without a figure lists them, one of them with its value', async () => {
    const { code, out, err } = await runHere('explain', heron());
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^slide\.travel +106\.2 mm /m); // description of the camera, two worked cameras
    expect(out.split('\n').length).toBeGreaterThan(60);
  });

  test('of a group lists what is in it', async () => {
    const { code, out } = await runHere('explain', heron(), 'holders.processing holder');
    expect(code).toBe(0);
    expect(out).toMatch(/holders\[1\]\.seat\.infinity/);
    expect(out).not.toMatch(/holders\[0\]|slide/);
  });

  test('as JSON, the figure as in plan --json', async () => {
    const file = heron();
    const explained = JSON.parse((await runHere('explain', file, 'tailboard.axisHeight', '--json')).out);
    const plan = JSON.parse((await runHere('plan', file, '--json')).out);
    expect(explained).toMatchObject({ schema: 1, name: 'Heron', revision: plan.revision, unit: 'mm' });
    expect(explained.value).toBeCloseTo(plan.tailboard.axisHeight, 6);
    const list = JSON.parse((await runHere('explain', file, '--json')).out);
    expect(list).toMatchObject({ schema: 1, name: 'Heron', revision: plan.revision });
    expect(list.figures.length).toBeGreaterThan(60);
  });

  test('an unknown figure is one message with the nearest names, exit 2, nothing on stdout', async () => {
    const { code, out, err } = await runHere('explain', heron(), 'slide.rearBoxInsid');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^The plan has no figure "slide\.rearBoxInsid"\. Did you mean slide\.rearBoxInside/);
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  test('a design that cannot be read is told as by the other commands', async () => {
    const { code, out, err } = await runHere('explain', join(scratch(), 'nowhere.yaml'), 'slide.travel');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('nowhere.yaml');
  });
});
