import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { revisionOf } from '../../src/design/revision.js';
import { planCamera, planOf } from '../../src/pipeline.js';
import { heronMade } from '../camera/made-holders.js';
import { bareHeron } from '../designs/kept-design.js';
import { changed, designOf, problemsOf } from './reading.js';

const holderOf = (keys: string) => designOf(heronMade(keys)).holders[0];
const told = (keys: string) => problemsOf(heronMade(keys));

describe('sizes that nobody writes come from the construction', () => {
  // section 13 of the description, t = 4.05: 5.80, 13.9, pocket + 2 · 11, image + 20 + 18 to 24
  test('of Heron’s paper holder', () =>
    expect(holderOf('')).toMatchObject({
      filmDepth: expect.closeTo(5.8, 9),
      slideDepth: expect.closeTo(4.05, 9),
      thickness: expect.closeTo(13.9, 9),
      width: expect.closeTo(149.8, 9),
      length: expect.closeTo(171.4 + 20 + 24, 9),
      closedEnd: 20,
      locating: 'pins',
    }));

  test('and what is written is taken', () =>
    expect(holderOf(', width: 150 mm, length: 210 mm, thickness: 13.9 mm')).toMatchObject({
      width: 150,
      length: 210,
      // section 9: half of what the length exceeds the image by, where that is less than 20
      closedEnd: expect.closeTo(19.3, 9),
    }));

  test('boards that were measured enter the film depth', () => {
    const text = changed(heronMade(), 'shims:', 'workshop: { boards: { channel: 1.3 mm, lip: 0.45 mm } }\nshims:');
    expect(designOf(text).holders[0]?.filmDepth).toBeCloseTo(4.05 + 1.3 + 0.45, 9);
    expect(designOf(text).boards.channel.material).toBe('board-1.3');
  });
});

describe('what the construction cannot do is told, with what it can', () => {
  test.each([
    [', filmDepth: 1.7 mm', 'holders[0].filmDepth', /delete the key/],
    // pocket 127.8 and 2 · 11
    [', width: 149 mm', 'holders[0].width', /149\.8 mm or more/],
    // 171.4 and 18 at both ends
    [', length: 206 mm', 'holders[0].length', /207\.4 mm or more/],
    [', closedEnd: 17 mm', 'holders[0].closedEnd', /18 mm or more/],
    [', thickness: 14.1 mm', 'holders[0].thickness', /Delete the key/],
    [', slideDepth: 3 mm', 'holders[0].slideDepth', /Delete the key/],
    [', depthTo: slot', 'holders[0].depthTo', /Delete the key/],
    [', locating: well', 'holders[0].locating', /Delete the key/],
    [', rib: { fromAxis: 98 mm, width: 4 mm, height: 1.5 mm }', 'holders[0].rib', /Delete the key/],
    [', insert: 8x10', 'holders[0].insert', /or less/],
    [', insert: { width: 60 mm, height: 90 mm, image: [70 mm, 80 mm] }', 'holders[0].insert.image', /at most/],
    [', measured: 7 mm', 'holders[0].measured', /again/],
  ])('%s', (keys, path, accepted) => {
    const [first, ...more] = told(keys);
    expect(first).toMatchObject({ path, accepted: expect.stringMatching(accepted) });
    expect(more).toEqual([]);
  });

  test('a slide that fills its channel jams', () => {
    const text = changed(heronMade(), 'shims:', 'workshop: { boards: { slide: 1.2 mm } }\nshims:');
    expect(problemsOf(text)).toMatchObject([{ path: 'workshop.boards.slide' }]);
  });

  test('an image as large as the sheet leaves nothing for the lip', () => {
    const own = 'format: { width: 127 mm, height: 177.8 mm, image: [125 mm, 175 mm] }';
    expect(problemsOf(changed(heronMade(), 'format: 5x7', own))).toMatchObject([{ path: 'holders[0].make' }]);
  });
});

describe('a holder that is not made', () => {
  const bought = 'filmDepth: 5.8 mm, width: 150 mm, length: 210 mm, thickness: 13.9 mm';
  test.each(['filmDepth: 5.8 mm, ', 'width: 150 mm, ', 'length: 210 mm, '])('without %s is asked for it', (key) =>
    expect(problemsOf(changed(heronMade(), 'make: true', bought.replace(key, '')))).toMatchObject([
      { path: `holders[0].${key.split(':')[0]}`, what: 'It is not given, and it has no default.' },
    ]),
  );
  test.each([
    ['insert: 4x5', 'holders[0].insert'],
    ['measured: 5.8 mm', 'holders[0].measured'],
  ])('%s is not for it', (key, path) =>
    expect(problemsOf(changed(heronMade(), 'make: true', `${bought}, ${key}`))).toMatchObject([{ path }]),
  );
});

describe('revision', () => {
  test('a pile of velvet shapes no part, a board does', () => {
    const boards = (keys: string) =>
      revisionOf(designOf(changed(heronMade(), 'shims:', `workshop: { boards: ${keys} }\nshims:`)));
    const own = revisionOf(designOf(heronMade()));
    expect(boards('{ velvet: 1.5 mm }')).toBe(own);
    expect(boards('{ lip: 0.6 mm }')).not.toBe(own);
  });

  test('of a design that makes no holder boards change nothing', () => {
    const heron = bareHeron();
    const other = { ...heron, workshop: { ...heron.workshop, boards: { ...heron.workshop.boards, channel: 1.3 } } };
    expect(revisionOf(other)).toBe(revisionOf(heron));
  });
});

/*
 * A plate of glass between lens and film takes t (1 − 1/n) off the depth (src/optics/depth.ts has the source): of Heron's
 * window, 3 mm at 1.52, 1.0263. Its sheet lies 25.0263 behind the face so that it works at 24.
 */
describe('a holder with a window is measured as a caliper does it, from its face to the lip', () => {
  const measuring = (depth: string) =>
    designOf(changed(herons, 'window: { thickness: 3 mm }', `window: { thickness: 3 mm }, measured: ${depth}`));
  const herons = readFileSync(join(import.meta.dirname, '../../designs/heron.yaml'), 'utf8');

  test('what the glass takes comes off', () => {
    const plan = planOf(planCamera(measuring('25.33 mm')));
    expect(plan.holders[1]?.standingDepth).toBeCloseTo(25.33 - 1.0263, 4);
    // camera.md section 4: the spacer under the glass is as thick as the film lies deeper than the glass
    expect(plan.spacers[1]?.thickness).toBeCloseTo(25.33 - 1.0263 - 5.8, 4);
  });

  test('as its layers come to, nothing changes', () => {
    const plan = planOf(planCamera(measuring('25.0263 mm')));
    expect(plan.spacers[1]?.thickness).toBeCloseTo(18.2, 3);
  });

  test('more than a millimetre off its layers is refused with what they come to', () =>
    expect(
      problemsOf(changed(herons, 'window: { thickness: 3 mm }', 'window: { thickness: 3 mm }, measured: 24 mm')),
    ).toMatchObject([{ path: 'holders[1].measured', what: expect.stringContaining('come to 25.03 mm') }]));
});
