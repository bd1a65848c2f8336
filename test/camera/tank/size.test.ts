import { describe, expect, test } from 'vitest';
import { arrange } from '../../../src/assembly/arrangement.js';
import { plateOf } from '../../../src/assembly/measure.js';
import { spanOf } from '../../../src/assembly/span-of.js';
import { workbench } from '../../../src/assembly/workbench.js';
import { sizeTank } from '../../../src/camera/tank/size.js';
import { loadKernel } from '../../../src/geometry/kernel.js';
import { collisions } from '../../../src/proof/collisions.js';
import { contacts } from '../../../src/proof/contacts.js';
import { webLeast } from '../../../src/proof/web.js';
import { buildOf, given, heronTank } from './given.js';

// camera.md section 13: chamber depth = physical depth − 2t − 1.75, physical = effective + t_w(1 − 1/n)
describe.each([
  { name: 'Heron, 24 deep behind 3 of glass', change: {}, chamber: 24 + 3 * (1 - 1 / 1.52) - 8.1 - 1.75, plies: 3 },
  {
    name: 't 5.9, 27 deep',
    change: { ply: 5.9, filmDepth: 27 },
    chamber: 27 + 3 * (1 - 1 / 1.52) - 11.8 - 1.75,
    plies: 2,
  },
  {
    name: '4 of glass',
    change: { glass: { thickness: 4, refractiveIndex: 1.52 } },
    chamber: 24 + 4 * (1 - 1 / 1.52) - 9.85,
    plies: 3,
  },
])('$name', ({ change, chamber, plies }) => {
  const tank = sizeTank(given(change));
  const build = buildOf(tank);

  test('its chamber is as deep as its parts stand apart, to half the tolerance', () => {
    const inside = spanOf(build, 'KL2').z[1] - spanOf(build, 'tank-glass-2').z[1];
    expect(Math.abs(inside - chamber)).toBeLessThanOrEqual(0.11);
    expect(tank.stack.plies).toHaveLength(plies);
  });

  test('the glass is flush with the back of its frame, and 8 wider than the chamber, which is 6 wider than the sheet', () => {
    expect(spanOf(build, 'tank-glass-2').z[1]).toBeCloseTo(spanOf(build, 'KW2').z[1], 9);
    expect(spanOf(build, 'tank-glass-2').z[0]).toBeGreaterThanOrEqual(spanOf(build, 'KW2').z[0] - 1e-9);
    // its wall at the open end is a part by itself
    expect(plateOf(build, 'KC2').outline).toEqual(
      expect.arrayContaining(
        [-66.5, 66.5].flatMap((x) => [-91.9, 91.9].map((y) => ({ x: expect.closeTo(x, 9), y: expect.closeTo(y, 9) }))),
      ),
    );
    const pane = spanOf(build, 'tank-glass-2', { setup: build.setups[2] as never });
    expect(pane.x[1] - pane.x[0]).toBeCloseTo(141, 9);
    expect(pane.y[1] - pane.y[0]).toBeCloseTo(191.8, 9);
  });

  test('nothing is too thin, nothing wants the same place, and all hangs together', async () => {
    expect(webLeast({} as never, build)).toEqual([]);
    const kernel = await loadKernel();
    const told = kernel.stage((bench) => {
      const arrangement = arrange(build, workbench(bench), 0);
      return [...collisions(build, arrangement, 0.02).findings, ...contacts(build.parts, arrangement)];
    });
    expect(told.map(({ message }) => message)).toEqual([]);
  });
});

test('three plies, two boards of 1.25: 0.026 are left of 14.676', () => {
  // 24 + 3(1 − 1/1.52) − 9.85 − 0.5 = 14.6763; 3 × 4.05 = 12.15
  expect(heronTank.stack).toMatchObject({ plies: [4.05, 4.05, 4.05], shims: [1.25, 1.25] });
  expect(heronTank.stack.remainder).toBeCloseTo(0.0263, 4);
});

test('an 8x10 of 5.9 has more screws, none more than 60 from the next', () => {
  const large = sizeTank(
    given({
      ply: 5.9,
      filmDepth: 27,
      width: 233,
      closedExtent: 143.8,
      openExtent: 147.8,
      image: { short: 196.8, long: 247.6 },
      sheet: { width: 203.2, height: 254, thickness: 0.25 },
    }),
  );
  expect(large.screws.at.length).toBeGreaterThan(heronTank.screws.at.length);
  // (291.6 − 10.5)/60 → 5 along, (233 − 10.5)/60 → 4 across
  expect(large.screws.at).toHaveLength(2 * (5 + 4));
});

test('the foam presses the sheet by two tenths and no more, or it bows it', () => {
  // stop 1.25 + 0.5, sheet 0.25: 1.5 are left; foam of 1.5 on card of 0.2
  expect(heronTank.pad).toEqual({ pressed: 1.5, bought: 1.5, card: expect.closeTo(0.2, 9) });
});
