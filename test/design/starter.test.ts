import { describe, expect, test } from 'vitest';
import { starter } from '../../src/design/starter.js';
import { formats } from '../../src/standards/formats.js';
import { designOf } from './reading.js';

const answers = { name: 'Heron', format: '5x7', focalLength: 210, flangeDistance: 203.5, thickness: 4.05, kerf: 0.15 };

describe('a starter', () => {
  test('is accepted as it stands and holds what was answered', () =>
    expect(designOf(starter(answers))).toMatchObject({
      name: 'Heron',
      format: { name: '5x7' },
      lens: { focalLength: 210, flangeDistance: 203.5 },
      plywood: { thickness: 4.05 },
      laser: { kerf: 0.15 },
    }));

  test.each(formats.map(({ name }) => name))('is accepted for %s', (format) =>
    expect(designOf(starter({ ...answers, format })).format.name).toBe(format),
  );

  test('has a holder with room for its sheet', () => {
    // Depth t + 1.25 + 0.5 = 5.80 and thickness 3t + 1.75 = 13.9 for t = 4.05 [camera.md section 13, no source]
    const [holder] = designOf(starter(answers)).holders;
    expect(holder?.filmDepth).toBeCloseTo(5.8, 9);
    expect(holder?.thickness).toBeCloseTo(13.9, 9);
    for (const format of formats) {
      const design = designOf(starter({ ...answers, format: format.name }));
      expect(design.holders[0]?.width).toBeGreaterThan(format.nominal.value[0]);
      expect(design.holders[0]?.length).toBeGreaterThan(format.nominal.value[1]);
    }
  });

  test('does not pass invented figures of the barrel off as measured', () => {
    const lines = starter(answers).split('\n');
    const barrel = lines.slice(lines.indexOf('  barrel:') + 1, lines.indexOf('  barrel:') + 7);
    expect(barrel).toHaveLength(6);
    for (const line of barrel) expect(line).toMatch(/^ {4}\w+: \d+ mm # PLACEHOLDER/);
    expect(starter(answers)).toMatch(/MEASURE YOUR LENS/);
  });

  test('takes any name that can be a name', () => {
    for (const name of ['Heron: the second', 'the "grey" one', '#1', 'yes', '1e3', '- x'])
      expect(designOf(starter({ ...answers, name })).name).toBe(name);
  });
});
