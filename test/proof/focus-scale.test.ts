import { describe, expect, test } from 'vitest';
import { planCamera } from '../../src/pipeline.js';
import { changed, designOf } from '../design/reading.js';
import { heron as heronText } from '../design/worked-designs.js';
import { alterPart, heron, moveEngraving, reshapeOutline, rulesTelling, toldUnder, turnEndForEnd } from '../planted.js';

/** Positions: camera.md section 8, derived: s + T* = z_seat + V + f·m; limits are choices of ours. */

const { build } = heron;

describe('scale-sense: larger magnification lies farther from the panel', () => {
  test.each([
    { keeper: 'T3S', of: 'magnifications' },
    { keeper: 'T3', of: 'distances' },
  ])('$keeper turned end for end', ({ keeper, of }) => {
    const turned = turnEndForEnd(build, keeper);
    const [told, ...more] = toldUnder('scale-sense', turned);
    expect(more).toEqual([]);
    expect(told).toMatchObject({ level: 'error', unit: 'mm', limit: 0, hint: expect.stringMatching(/end for end/) });
    expect(told?.message).toContain(`The scale of ${of} runs backwards`);
    expect(rulesTelling(turned)).toEqual(['scale-sense']);
  });
});

describe('scale-sense: each holder’s index line reads to half a millimetre', () => {
  test('a keeper engraved 0.5 off', () => {
    expect(rulesTelling(moveEngraving(build, 'T3S', 0.49))).toEqual([]);
    const told = toldUnder('scale-sense', moveEngraving(build, 'T3S', 0.51));
    expect(told).toMatchObject([
      {
        level: 'error',
        limit: 0.5,
        message: expect.stringMatching(/scale of magnifications misleads: with the paper holder the index line 1/),
      },
      { level: 'error', message: expect.stringMatching(/with the processing holder the index line 2/) },
    ]);
    expect(told[0]?.value).toBeCloseTo(0.51, 6);
    expect(rulesTelling(moveEngraving(build, 'T3S', 0.51))).toEqual(['scale-sense']);
  });

  test('the index line of one holder', () => {
    // the lines of 5.8 and 24 lie 18.2 apart, the deeper one behind
    const lines = build.parts.find(({ id }) => id === 'R4U');
    if (lines?.kind !== 'flat') throw new Error('the sole is cut from sheet');
    const behind = (z: number) => z > 190;
    const told = toldUnder('scale-sense', moveEngraving(build, 'R4U', -0.6, behind));
    expect(told.map(({ message }) => message)).toEqual([
      expect.stringMatching(/magnifications .* processing holder .* 0\.6 mm nearer/),
      expect.stringMatching(/distances .* processing holder .* 0\.6 mm nearer/),
    ]);
    expect(told[0]?.hint).toMatch(/0\.6 mm behind the engraved one/);
  });

  test('holds for a camera that is not asked for infinity, and for a shallow holder on a spacer', () => {
    const portrait = planCamera(designOf(changed(heronText, 'pastInfinity', 'farthest: 1:20, pastInfinity')));
    expect(toldUnder('scale-sense', portrait.build, portrait.design)).toEqual([]);
    const shallow = planCamera(designOf(changed(heronText, 'depth: 5.8 mm', 'depth: 8 mm')));
    expect(toldUnder('scale-sense', shallow.build, shallow.design)).toEqual([]);
  });
});

describe('scale-sense: what was never engraved', () => {
  const engraved = (id: string, keep: (text: string) => boolean) =>
    alterPart(build, id, (part) =>
      part.kind === 'flat' ? { ...part, marks: part.marks.filter(({ text }) => keep(text)) } : part,
    );
  test('the index of one holder: neither scale can be read with it', () => {
    const without = engraved('R4U', (text) => text !== '2');
    expect(toldUnder('scale-sense', without)).toMatchObject([
      { level: 'error', message: expect.stringMatching(/magnifications cannot be read with the processing holder/) },
      { level: 'error', message: expect.stringMatching(/distances cannot be read .* no index line 2 beside it/) },
    ]);
    expect(rulesTelling(without)).toEqual(['scale-sense']);
  });
  test('the words of a keeper; one line is a scale', () => {
    expect(
      toldUnder(
        'scale-sense',
        engraved('T3', () => false),
      ),
    ).toMatchObject([
      { level: 'error', value: 0, limit: 1, message: expect.stringMatching(/^The scale of distances is blank/) },
    ]);
    expect(
      toldUnder(
        'scale-sense',
        engraved('T3', (text) => text === 'inf'),
      ),
    ).toEqual([]);
  });
});

describe('scale-sense: 2 mm of sole behind the last index line', () => {
  // the deeper line at 175.5 + 24 + 8 − 4.05 − 5.8 = 197.65; the sole ends at 167.4 + 45 = 212.4
  const cutAt = (rear: number) => reshapeOutline(build, 'R4U', (p) => ({ ...p, z: p.z > 200 ? rear : p.z }));
  test('a sole that ends at 199.66 passes, one at 199.64 does not', () => {
    expect(rulesTelling(cutAt(199.66))).toEqual([]);
    const [told] = toldUnder('scale-sense', cutAt(199.64));
    expect(told).toMatchObject({ level: 'warning', limit: 2, unit: 'mm', about: 'holders[1].filmDepth' });
    expect(told?.value).toBeCloseTo(1.99, 6);
    expect(rulesTelling(cutAt(199.64))).toEqual(['scale-sense']);
  });
  test('one that ends ahead of it', () => {
    const [told] = toldUnder('scale-sense', cutAt(193.65));
    expect(told?.value).toBeCloseTo(-4, 6);
    expect(told?.message).toMatch(
      /cannot be read with the processing holder: its index line falls 4 mm behind the sole/,
    );
    expect(told?.hint).toMatch(/strip of 9 mm/);
  });
});
