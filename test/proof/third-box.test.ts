import { beforeAll, describe, expect, test } from 'vitest';
import { type Kernel, loadKernel } from '../../src/geometry/kernel.js';
import { proveLight } from '../../src/proof/light.js';
import { putTogether } from '../../src/proof/prove.js';
import { altered, without } from '../camera/altered.js';
import { godwit } from '../camera/middle-box/three-boxes.js';
import { movePart } from '../planted.js';

/** A middle box is drawn along half-way: the proof follows it, and finds what goes wrong on the way. */

const { design, build } = godwit;
let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});
const rulesOf = (changed: typeof build) => [
  ...new Set(
    putTogether(design, changed, kernel)
      .findings.filter(({ level }) => level === 'error')
      .map(({ rule }) => rule),
  ),
];

describe('three boxes as solids', { timeout: 120_000 }, () => {
  test('go together and slide', () => {
    expect(rulesOf(build)).toEqual([]);
  });

  test('a batten that takes the frame along later than the frame goes runs into it', () => {
    expect(rulesOf(movePart(build, 'R10', { z: 3 }))).toContain('parts-collide');
  });

  test('a middle box that would never be drawn along is met by the batten', () => {
    const stays = {
      ...build,
      parts: build.parts.map((part) => ({
        ...part,
        placements: part.placements.map(({ drawnFrom: _, ...place }) => place),
      })),
    };
    expect(rulesOf(stays)).toContain('parts-collide');
  });

  test('a middle box put off the axis jams in the front box', () => {
    const ids = build.parts.filter(({ placements }) => placements[0]?.drawnFrom !== undefined).map(({ id }) => id);
    const aside = ids.reduce((changed, id) => movePart(changed, id, { x: 1.48 }), build);
    expect(rulesOf(aside).length).toBeGreaterThan(0);
  });
});

describe('three boxes in the light', { timeout: 240_000 }, () => {
  test('are dark, both gaps shut by two bands of felt at both ends of the slide', () => {
    const { findings, joints } = proveLight(design, build);
    expect(findings.filter(({ level }) => level === 'error')).toEqual([]);
    for (const name of ['middle box in the front box', 'rear box in the middle box'])
      expect(joints.find(({ joint }) => joint === name)?.felt).toBe(2);
  });

  test('without the felt of the middle box light comes in', () => {
    const bare = without(build, 'felt-middle-long', 'felt-middle-side');
    expect(proveLight(design, bare).findings).toContainEqual(
      expect.objectContaining({ rule: 'light-path', message: expect.stringMatching(/middle box in the front box/) }),
    );
  });

  test('a middle box that stays behind lets daylight in between the boxes', () => {
    const stays = ['C1L', 'C1R', 'C2T', 'C2F', 'C3', 'C4', 'felt-middle-long', 'felt-middle-side'].reduce(
      (changed, id) =>
        altered(changed, id, (part) => ({
          ...part,
          placements: part.placements.map(({ drawnFrom: _, ...place }) => place),
        })),
      build,
    );
    expect(proveLight(design, stays).findings.map(({ rule }) => rule)).toContain('light-path');
  });
});
