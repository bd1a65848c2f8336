import { describe, expect, test } from 'vitest';
import { checkTankFittings } from '../../../src/camera/tank-fittings/checks.js';
import type { Insert } from '../../../src/camera/tank-fittings/insert.js';
import type { FittedTank } from '../../../src/camera/tank-fittings/parts.js';
import type { TankFittings } from '../../../src/camera/tank-fittings/size.js';
import { buildOf, fittedTank } from './fitted.js';
import { tankOf } from './given.js';

/** What the checks say of a tank, its parts as sized or altered. */
const found = (own: FittedTank, altered?: TankFittings) =>
  checkTankFittings(own, buildOf(own, altered)).map(({ rule, value, limit, unit, message }) => ({
    rule,
    value,
    limit,
    unit,
    message,
  }));

test.each([
  { deep: 10, wall: 15 },
  { deep: 15.2, wall: 11 },
  { deep: 15.2, wall: 18 },
  { deep: 25, wall: 18 },
  { deep: 15.2, wall: 15, nozzle: 0.6 },
])('the fittings of a chamber $deep deep behind a wall of $wall keep every rule', (size) =>
  expect(found(fittedTank(tankOf(size)))).toEqual([]),
);

describe('tank-shut', () => {
  const own = fittedTank();
  const { spout, vent } = own.fittings;
  const withSpout = (changes: Partial<Insert>): TankFittings => ({ ...own.fittings, spout: { ...spout, ...changes } });

  test('a passage that narrows past a baffle', () => {
    const [finding] = found(own, withSpout({ gap: spout.gap - 0.5 }));
    expect(finding).toMatchObject({ rule: 'tank-shut', limit: 60, unit: 'mm²' });
    // the opening at the exit has 60 mm² where it is as wide as a leg
    expect(finding?.value).toBeCloseTo((60 * (spout.gap - 0.5)) / spout.gap, 1);
  });

  // a ply of 3.36 less glue of 0.08 on each side is 3.2: as much as two walls of 1.6, and a passage of 3 wants 6.2
  test.each([3.36, 3.3, 3.5, 6.3])('plies of %d mm that leave no room for a passage, and nothing else', (deep) =>
    expect(found(fittedTank(tankOf({ deep })))).toMatchObject([
      { rule: 'tank-shut', value: expect.closeTo(deep - 0.16, 9), limit: expect.closeTo(6.2, 9), unit: 'mm' },
    ]),
  );

  test('a vent of less than a quarter of its spout', () => {
    const [finding] = found(own, { ...own.fittings, vent: { ...vent, gap: 1 } });
    expect(finding).toMatchObject({ rule: 'tank-shut', unit: 'mm²' });
    expect(finding?.limit).toBeCloseTo(15, 1);
    expect(finding?.message).toContain('vent');
  });

  test('baffles that overlap by less than two gaps', () => {
    const wide = found(own, withSpout({ gap: spout.gap + 0.1 }));
    expect(wide).toMatchObject([{ rule: 'tank-shut', value: 0, limit: 2, unit: 'turns' }]);
    // and just as much as they are sized for
    expect(found(own, withSpout({ gap: spout.gap }))).toEqual([]);
  });

  test('a leg that holds back a bath', () => {
    const [exit, c, b, a, well] = spout.rooms;
    const low = { ...a, roof: a.roof - 12 };
    const messages = found(own, withSpout({ rooms: [exit, c, b, low, well] })).map(({ message }) => message);
    expect(messages.join()).toContain('keeps');
    // the sill then lies 7.5 over the face to the chamber, less what the tilt of 15° lifts the far end
    const lower = { ...a, roof: 3 };
    const stands = found(own, withSpout({ rooms: [exit, c, b, lower, well] })).find(({ unit }) => unit === 'mm');
    const [sin, cos] = [Math.sin(Math.PI / 12), Math.cos(Math.PI / 12)];
    const sill = (b.to + spout.baffle - exit.from) * sin - lower.roof * cos;
    expect(sill).toBeGreaterThan(0);
    expect(stands?.value).toBeGreaterThan(sill - 1e-3);
  });

  test('a lid so thin that the tank lies on its caps', () => {
    const { given } = own;
    const middle = (given.notch.from + given.notch.to) / 2;
    const lid = middle + own.fittings.cap.apothem;
    expect(found({ ...own, given: { ...given, lid: lid + 0.5 } })).toEqual([]);
    expect(found({ ...own, given: { ...given, lid: lid + 0.4 } })).toMatchObject([
      { rule: 'tank-shut', limit: 0.5, unit: 'mm' },
    ]);
  });
});

test('slide-path: a cap in the way of the dark slide', () => {
  const own = fittedTank();
  const { given } = own;
  const front = (given.notch.from + given.notch.to) / 2 - own.fittings.cap.apothem;
  const behind = (air: number) => ({ ...own, given: { ...given, slide: { ...given.slide, back: front - air } } });
  expect(found(behind(1))).toEqual([]);
  const [finding] = found(behind(0.9));
  expect(finding).toMatchObject({ rule: 'slide-path', limit: 1, unit: 'mm' });
  expect(finding?.value).toBeCloseTo(0.9, 6);
});
