import { describe, expect, test } from 'vitest';
import { ON_THE_ROAD, stands } from '../../src/assembly/setups.js';
import type { Planned } from '../../src/pipeline.js';
import { heronWith } from './asked-for.js';

/** Names of the set-ups in which a part stands. */
const standing = ({ build }: Planned, id: string): readonly string[] =>
  build.setups
    .filter((setup) => build.parts.some((part) => part.id === id && part.placements.some((p) => stands(p, setup))))
    .map(({ name }) => name);

const all = ({ build }: Planned) => build.setups.map(({ name }) => name);
const usual = all(heronWith());
const inUse = usual.filter((name) => name !== ON_THE_ROAD);
const [CAPPED, HOODED] = ['paper holder, upright, the cap on', 'paper holder, upright, the hood on'];

describe('the rails take one thing at a time', () => {
  const keys = ['shutter: {}', 'hood: {}', 'cap: true'];
  const some = Array.from({ length: 7 }, (_, k) => keys.filter((_key, i) => ((k + 1) >> i) % 2 === 1));
  test.each(some.map((asked) => ({ asked: asked.join(', '), planned: heronWith(...asked) })))(
    '$asked',
    ({ planned }) => {
      const plates = ['D1', 'LH1', 'LC1'].map((id) => standing(planned, id));
      for (const name of all(planned))
        expect(plates.filter((names) => names.includes(name)).length).toBeLessThanOrEqual(1);
      // and each that is made stands there in one set-up at least
      for (const [i, id] of ['D1', 'LH1', 'LC1'].entries())
        expect(plates[i]?.length, id).toBe(planned.parts.some((part) => part.id === id) ? plates[i]?.length || 1 : 0);
      expect(all(planned).at(-1)).toBe(ON_THE_ROAD);
    },
  );
});

test('a hood is on while one focuses and exposes, and off for the road', () => {
  const planned = heronWith('hood: {}');
  expect(all(planned)).toEqual(usual);
  expect(standing(planned, 'LH4')).toEqual(inUse);
});

test('beside a shutter it is on for times by hand, and the shutter off then', () => {
  const planned = heronWith('hood: {}', 'shutter: {}');
  expect(all(planned)).toEqual([...inUse, HOODED, ON_THE_ROAD]);
  expect(standing(planned, 'LH4')).toEqual([HOODED]);
  expect(standing(planned, 'D3')).toEqual(usual);
});

test('a cap is on for the road, where its peg is in, and in a set-up of its own with the holder open behind it', () => {
  const planned = heronWith('cap: true', 'shutter: {}');
  expect(standing(planned, 'LC1')).toEqual([CAPPED, ON_THE_ROAD]);
  expect(standing(planned, 'cap-peg')).toEqual([ON_THE_ROAD]);
  for (const id of ['D1', 'D9']) expect(standing(planned, id)).toEqual(inUse);
  expect(standing(planned, 'D5')).toEqual(inUse.filter((name) => name.startsWith('glass')));
});

test('all else stands there as in the set-up that is like it', () => {
  const planned = heronWith('cap: true', 'hood: {}', 'shutter: {}');
  const ahead = /^(?:D\d|LH|LC|hood-card|cap-peg|carrier-card|guide-card|stop-felt|shutter-peg)/;
  for (const { id } of planned.parts.filter((part) => !ahead.test(part.id))) {
    const names = standing(planned, id);
    for (const name of [CAPPED, HOODED]) expect(names.includes(name), id).toBe(names.includes('paper holder, upright'));
  }
});
