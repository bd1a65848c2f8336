import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/design.js';
import type { Placement } from '../../src/model/part.js';
import { planCamera } from '../../src/pipeline.js';
import { heron, movePart, reshape, rulesTelling, shiftPlacement, toldUnder } from '../planted.js';

/** Limits: the table of rules in camera.md section 16, common practice, no source, where nothing else is said. */

const { build, design } = heron;

describe('register: a quarter of the depth of focus at infinity', () => {
  // 6.3 x 209.577/1500/4 = 0.22006; depth of focus each way N c, V4.12 [verified: S33 formula]
  const pane = (z: number) => movePart(build, 'ground-glass', { z });

  test.each([0.22, -0.22])('a pane %d mm off passes', (z) => expect(rulesTelling(pane(z))).toEqual([]));

  test('0.221 too near to the lens is told for each holder, signed', () => {
    const told = toldUnder('register', pane(-0.221));
    expect(told.map(({ level }) => level)).toEqual(['error', 'error']);
    expect(told[0]?.value).toBeCloseTo(-0.221, 9);
    expect(told[0]?.limit).toBeCloseTo(0.22006, 5);
    expect(told[0]?.message).toMatch(
      /with paper holder the glass stands 0\.221 mm ahead of the film, 1 times the tolerance of 0\.22 mm/,
    );
    expect(told[0]?.hint).toMatch(/shim of 0\.2 mm/);
    expect(toldUnder('register', pane(0.221))[0]?.value).toBeCloseTo(0.221, 9);
    expect(rulesTelling(pane(-0.221))).toEqual(['register']);
  });

  test('a holder that stands off the seat is told alone', () => {
    const told = toldUnder('register', movePart(build, 'holder-2', { z: 0.3 }));
    expect(told).toMatchObject([{ message: expect.stringMatching(/processing holder.*0\.3 mm ahead of/) }]);
  });

  test('one that is out lengthwise only is told with its set-up', () => {
    const lengthwise = ({ when }: Placement) => when?.some((name) => name.endsWith('lengthwise')) ?? false;
    const turned = shiftPlacement(build, 'ground-glass', { z: 0.3 }, lengthwise);
    expect(toldUnder('register', turned)[0]?.message).toMatch(/with paper holder, lengthwise the glass/);
  });

  test('a spacer whose layers alone are out is left to the rule of the spacer', () => {
    // its last ply and what lies on it, where the glass is in for the processing holder
    const raised = ['SP2T', 'ground-glass'].reduce(
      (b, id) =>
        shiftPlacement(b, id, { z: 0.3 }, ({ when }) => when?.some((name) => /processing/.test(name)) ?? false),
      build,
    );
    expect(rulesTelling(raised)).toEqual([]);
  });

  test('frosted to the eye the picture reaches it through the glass: a third of it at n 1.5', () => {
    // V1.23 [verified: S17]: 3 mm shift the focus by 1; the pane here is 2 thick, its rear face 2 behind its front
    const eye: Design = { ...design, groundGlass: { ...design.groundGlass, frosted: 'eye', refractiveIndex: 1.5 } };
    const deep = { ...eye, groundGlass: { ...eye.groundGlass, depth: 7.8 } };
    expect(toldUnder('register', build, deep)[0]?.value).toBeCloseTo(2 - 2 / 3, 9);
  });

  test('a glass whose depth lies inside its frame’s front ply is left to the rule of the frame', () => {
    const shallow = planCamera({ ...design, groundGlass: { ...design.groundGlass, depth: 3 } });
    expect(shallow.findings.map(({ rule }) => rule)).toContain('glass-packing');
    expect(toldUnder('register', shallow.build, shallow.design)).toEqual([]);
  });
});

describe('register: a lock rib wants its groove', () => {
  const ribbed = (rib: { readonly fromAxis: number; readonly width: number; readonly height: number }): Design => ({
    ...design,
    holders: design.holders.map((holder, i) => (i === 0 ? { ...holder, locating: 'rib', rib } : holder)),
  });
  const rib = { fromAxis: 96, width: 4, height: 1.5 };

  test('in a back that is cut for it', () => {
    const planned = planCamera(ribbed(rib));
    expect(toldUnder('register', planned.build, planned.design)).toEqual([]);
    // cut for one of 4 mm: room for 4.5, and 0.5 of it is play
    expect(toldUnder('register', planned.build, ribbed({ ...rib, width: 4.4 }))).toEqual([]);
    expect(toldUnder('register', planned.build, ribbed({ ...rib, width: 4.6 }))).toMatchObject([
      { level: 'error', about: 'holders[0].rib', message: expect.stringMatching(/meets no groove/) },
    ]);
  });

  test('in a groove as long as the rib, which ends a millimetre within the holder of 150 mm', () => {
    const planned = planCamera(ribbed(rib));
    const cut = (end: number) =>
      reshape(planned.build, 'B1', (p) =>
        p.y > 90 && p.y < 102 && Math.abs(p.x) > 70 ? { ...p, x: Math.sign(p.x) * end } : p,
      );
    expect(toldUnder('register', cut(74.01), planned.design)).toEqual([]);
    expect(toldUnder('register', cut(73.99), planned.design)).toMatchObject([{ about: 'holders[0].rib' }]);
  });

  test('on a back without one it rocks', () => {
    const [told] = toldUnder('register', build, ribbed(rib));
    expect(told).toMatchObject({ level: 'error', value: 1.5, limit: 0, unit: 'mm', about: 'holders[0].rib' });
    expect(told?.message).toMatch(/it rocks on its rib, and the film is 1\.5 mm out/);
  });

  test('on a spacer too', () => {
    const planned = planCamera(ribbed(rib));
    const raised = movePart(planned.build, 'holder-1', { z: 0.1 });
    expect(toldUnder('register', raised, planned.design)).toMatchObject([
      { about: 'groundGlass.depth', hint: expect.stringMatching(/groundGlass\.depth: 5\.8 mm/) },
    ]);
  });
});
