import { expect, test } from 'vitest';
import { fingerRule } from '../../src/camera/finger-rule.js';

/** Width 2t to 5t and at least 8 mm, an odd number of three or more: camera.md section 14, common practice, no source. */
test.each([
  // t 4: at least 8; t 6: 12 to 30
  { length: 24, count: 3, ply: 4, told: [] },
  { length: 23.9, count: 3, ply: 4, told: [{ limit: 8, hint: /24 mm or more/ }] },
  { length: 36, count: 3, ply: 6, told: [] },
  { length: 35.9, count: 3, ply: 6, told: [{ limit: 12, hint: /5\.9 mm or less/ }] },
  { length: 90, count: 3, ply: 6, told: [] },
  { length: 90.3, count: 3, ply: 6, told: [{ limit: 30, hint: /6\.1 mm or more/ }] },
  { length: 40, count: 4, ply: 4, told: [{ limit: 3, hint: /./ }] },
  { length: 15, count: 1, ply: 4, told: [{ limit: 3, hint: /./ }] },
])('$count fingers on $length mm of $ply mm sheet', ({ length, count, ply, told }) =>
  expect(fingerRule('Box', { panelToSide: { from: 0, to: length, count, width: length / count } }, ply)).toMatchObject(
    told.map(({ limit, hint }) => ({
      rule: 'finger-rule',
      level: 'error',
      limit,
      about: 'plywood.thickness',
      message: expect.stringMatching(/^Box, panel to side: /),
      hint: expect.stringMatching(hint),
    })),
  ),
);
