import { describe, expect, test } from 'vitest';
import { loadLight, loadWorkshop } from '../src/index.js';
import { changed, designOf } from './design/reading.js';
import { heron } from './design/worked-designs.js';

const { build, check } = await loadWorkshop();
const light = await loadLight();
const checked = (text: string) => check(designOf(text), { onProgress: () => {} });

describe('not-proven: a design of which no camera can be put together', () => {
  const inches = changed(heron, 'focalLength: 210 mm', 'focalLength: 8.27');

  test('is told what to cure, and that nothing was proven', () => {
    const { findings, proof, leaks } = checked(inches);
    expect(findings.map(({ rule }) => rule)).toEqual(expect.arrayContaining(['unit-plausible', 'not-proven']));
    expect(findings.filter(({ level }) => level === 'error').map(({ rule }) => rule)).toEqual(['unit-plausible']);
    expect({ proof, leaks }).toEqual({ proof: null, leaks: [] });
  });

  test('and where the opening of an old panel is too small for the lens', () => {
    const { findings, proof } = checked(changed(heron, 'mount: { by: clamp,', 'mount: { opening: 60 mm, by: clamp,'));
    expect(findings.map(({ rule }) => rule)).toEqual(expect.arrayContaining(['board-in-opening', 'not-proven']));
    expect(proof).toBe(null);
  });

  test('has neither drawings nor a book, even where it is built despite all', { timeout: 60_000 }, () => {
    const { files } = build(designOf(inches), {
      despite: ['unit-plausible'],
      effort: 0,
      onProgress: () => {},
      writeDocument: () => {
        throw new Error('nothing is to be written');
      },
    });
    expect(files.map(({ path }) => path)).toContain('plan.json');
    expect(files.filter(({ path }) => /book|drawings/.test(path))).toEqual([]);
  });

  test('has no dark to look into', () => expect(light(designOf(inches))).toBeNull());
});

test('a camera that can be put together is, and what was looked at is told', { timeout: 60_000 }, () => {
  const { findings, proof } = checked(heron);
  expect(findings.some(({ rule }) => rule === 'not-proven')).toBe(false);
  // nine set-ups: two holders, glass and exposure, upright and lengthwise, and the road
  expect(proof?.setups.length).toBe(9);
  expect(proof?.register.map(({ holder, at }) => `${holder}, ${at}`)).toHaveLength(4);
  // rails 0.25 mm a side, keepers 0.3 above, the ring 0.3 a side, the well 0.4: camera.md sections 6, 8 and 9
  const air = (inner: string, way: string) =>
    proof?.clearances.find(({ between, direction }) => between[1] === inner && direction === way)?.air;
  expect(air('rear', 'left')).toBeCloseTo(0.25, 2);
  expect(air('rear', 'up')).toBeCloseTo(0.3, 2);
  expect(air('back', 'right')).toBeCloseTo(0.3, 2);
  expect(air('seated', 'left')).toBeCloseTo(0.4, 2);
});
