import { expect, test } from 'vitest';
import { engrave } from '../../src/camera/engrave.js';
import { heron } from '../planted.js';

test('small-mark: parts on which no mark can be read are named, and only those', () => {
  const { parts, findings } = engrave(heron.build.parts, heron.revision);
  // a triangle of 12 mm legs: a line of letters 3 mm high does not lie in it
  expect(findings.map(({ rule, level, message }) => ({ rule, level, told: /F10/.test(message) }))).toEqual([
    { rule: 'small-mark', level: 'note', told: true },
  ]);
  const bare = parts.filter((part) => part.kind === 'flat' && part.engraving.length === 0).map(({ id }) => id);
  expect(bare).toEqual(['F10']);
});
