import { describe, expect, test } from 'vitest';
import { begunDesign } from '../../src/design/begun-design.js';
import { madeUpIn } from '../../src/design/made-up.js';
import { starter } from '../../src/design/starter.js';
import { writeKeys } from '../../src/design/write-keys.js';
import { workedDesign } from './form-nodes.js';
import { designOf } from './reading.js';

const answers = { name: 'Wren', format: '4x5', focalLength: 150, flangeDistance: 140, thickness: 4, kerf: 0.2 };
const barrel = ['diameter', 'grip', 'front', 'rear', 'frontDiameter', 'rearDiameter'].map(
  (key) => `lens.barrel.${key}`,
);

const measured = (text: string, path: string): string => {
  const outcome = writeKeys(text, 'wren.yaml', [{ kind: 'measured', path }]);
  return 'text' in outcome ? outcome.text : outcome.problems.map(({ what }) => what).join(' ');
};

describe('figures that nobody has measured', () => {
  test('are those that a design begins with and that nobody gave', () => {
    expect(madeUpIn(starter(answers))).toEqual(barrel);
    const bare = starter({ ...answers, flangeDistance: null, kerf: null });
    expect(madeUpIn(bare)).toEqual(['lens.flangeDistance', ...barrel, 'laser.kerf']);
    expect(designOf(bare)).toMatchObject({ lens: { flangeDistance: 150 }, laser: { kerf: 0.15 } });
  });

  test('of a pair of a survey are said of each figure', () => {
    const text = begunDesign({
      name: 'Wren',
      format: '4x5',
      lens: { focalLength: '150 mm', flangeDistance: '150 mm', barrel: { diameter: '42 mm', grip: '15 mm' } },
      guessed: { flangeDistance: 'NOT MEASURED', barrel: 'NOT MEASURED: a stand-in' },
      focus: { nearest: '1:5' },
      plywood: { thickness: '4 mm' },
      groundGlass: undefined,
      holders: [],
      holdersGuessed: '',
      workshop: undefined,
    });
    expect(madeUpIn(text)).toEqual(['lens.flangeDistance', 'lens.barrel.diameter', 'lens.barrel.grip', 'laser.kerf']);
  });

  test('are none in a design of measured ones, nor where a text or another line has the word', () => {
    expect(madeUpIn(workedDesign('heron'))).toEqual([]);
    expect(madeUpIn('# PLACEHOLDER\nname: "a # PLACEHOLDER"\n# NOT MEASURED\nlaser: { kerf: 1 }\n')).toEqual([]);
    expect(madeUpIn('name: [')).toEqual([]);
  });

  test('are measured one by one, and every other byte stays', () => {
    const text = starter(answers);
    const line = /^ {4}front: .*$/m.exec(text)?.[0] ?? '';
    expect(measured(text, 'lens.barrel.front')).toBe(text.replace(line, line.replace(/ # .*$/, '')));
    expect(measured(text.replaceAll('\n', '\r\n'), 'lens.barrel.front')).toBe(
      text.replace(line, line.replace(/ # .*$/, '')).replaceAll('\n', '\r\n'),
    );
    expect(measured(text, 'lens.focalLength')).toBe(text);
  });

  test('several readings are one figure, and a mark of several figures is for whoever wrote it', () => {
    const text = 'plywood: { thickness: [4, 4.1] } # NOT MEASURED\nlaser: { kerf: 1, power: 2 } # PLACEHOLDER\n';
    expect(madeUpIn(text)).toEqual(['plywood.thickness', 'laser.kerf', 'laser.power']);
    expect(measured(text, 'plywood.thickness')).toBe(text.replace(' # NOT MEASURED', ''));
    expect(measured(text, 'laser.kerf')).toBe(
      'One comment says of several figures that they are made up: laser.kerf, laser.power.',
    );
  });
});
