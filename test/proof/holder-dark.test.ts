import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import { boundsOf } from '../../src/geometry/path.js';
import { box, clipped } from '../../src/geometry/shapes.js';
import type { Planned } from '../../src/pipeline.js';
import { holdersDark } from '../../src/proof/holder-dark.js';
import { holdersWithSlides, slidesRun } from '../../src/proof/holder-slide.js';
import { checkCamera } from '../../src/workshop.js';
import { fourByFive, heronMade, planned } from '../camera/made-holders.js';
import { alterPart, movePart, removePart } from '../planted.js';

const heron = planned(heronMade());
const small = planned(fourByFive);
/** So many leaks are enough to see that there are some. */
const MOST = 2;
const dark = ({ design }: Planned, build: Build) => holdersDark(design, build, MOST);

describe.each([
  { what: 'Heron’s paper holder', one: heron },
  { what: 'a film holder for 4x5', one: small },
])('$what', ({ one }) => {
  test('is dark by itself, closed, half out and drawn', () => {
    expect(dark(one, one.build).findings).toEqual([]);
  });

  test('turns light twice under its lid, with 10 mm of land at the sides and 8 at the cut corners', () => {
    const { joints } = dark(one, one.build);
    expect(joints.map(({ joint, needed }) => [joint.includes('corners'), needed.land])).toEqual([
      [false, 10],
      [true, 8],
    ]);
    for (const { turns, land, needed } of joints) {
      expect(turns).toBeGreaterThanOrEqual(2);
      expect(land).toBeGreaterThanOrEqual(needed.land);
    }
  });

  test('its slide closes: from outside to where its head stops it, nothing is in its way', () => {
    expect(slidesRun(one.design, one.build)).toEqual([]);
    const [holder] = holdersWithSlides(one.design, one.build);
    // closed it covers the image by 6 at the closed end
    const { long } = one.design.format.image;
    const slide = holder?.slide.find(({ id }) => id === 'HS1');
    if (slide?.kind !== 'flat') throw new Error('a slide is cut');
    const tip = boundsOf(slide.outline).bottom + (slide.placements[0]?.matrix[13] ?? 0);
    expect(tip - (holder?.drawn ?? 0)).toBeCloseTo(-long / 2 - 6, 6);
  });
});

describe('holder-dark: something left out on purpose', () => {
  const without = (...ids: readonly string[]): Build => ids.reduce((build, id) => removePart(build, id), heron.build);
  const velvet = ['velvet-face-1', 'velvet-lip-1', 'velvet-side-1'];

  test('without velvet light runs in along a drawn slide', () => {
    expect(dark(heron, without(...velvet)).findings).toContainEqual(
      expect.objectContaining({
        rule: 'holder-dark',
        level: 'error',
        message: expect.stringMatching(/straight line .*paper holder, its slide drawn/),
      }),
    );
  });

  test('without velvet turned up beside the slide it runs in at its edge', () =>
    expect(dark(heron, without('velvet-side-1')).findings).toContainEqual(
      expect.objectContaining({ rule: 'holder-dark', message: expect.stringMatching(/HS1/) }),
    ));

  test('without the pad light under the lid turns once only', () =>
    expect(dark(heron, without('HQ1', 'lid-felt-1')).findings).toMatchObject([
      { rule: 'holder-dark', value: 1, limit: 2, unit: 'turns' },
    ]));

  test('a lid that laps the pocket by 4 mm has too little land', () => {
    const narrow = alterPart(heron.build, 'HD1', (part) => {
      if (part.kind !== 'flat') return part;
      const { left, right, bottom, top } = boundsOf(part.outline);
      return { ...part, outline: clipped(box(left + 6.5, bottom, right - 6.5, top), 9) };
    });
    expect(dark(heron, narrow).findings).toContainEqual(
      expect.objectContaining({ rule: 'holder-dark', limit: 10, unit: 'mm' }),
    );
  });

  test('without its lid the sheet lies in the light', () =>
    expect(dark(heron, without('HD1', 'HQ1', 'lid-felt-1')).findings.length).toBeGreaterThan(0));

  test('a slide that is narrower than the image does not close', () =>
    expect(
      dark(
        heron,
        alterPart(heron.build, 'HS1', (part) =>
          part.kind === 'flat'
            ? { ...part, outline: part.outline.map((v) => (v.y < 100 ? { ...v, x: 0.9 * v.x } : v)) }
            : part,
        ),
      ).findings,
    ).toContainEqual(expect.objectContaining({ message: expect.stringMatching(/its slide closed/) })));
});

describe('slide-path: the way of the slide in its own holder', () => {
  test('a lip that stands into the channel stops it', () =>
    expect(slidesRun(heron.design, movePart(heron.build, 'HL1', { z: -0.3 }))).toMatchObject([
      { rule: 'slide-path', level: 'error', message: expect.stringMatching(/HS1 .* meets HL1/) },
    ]));
  test('a channel that is too short stops it', () =>
    expect(slidesRun(heron.design, movePart(heron.build, 'HC1', { y: 2 }))).toMatchObject([
      { message: expect.stringMatching(/meets HC1/) },
    ]));
});

test('Heron with its paper holder made goes together and keeps out light: nothing is wrong with it, and no warning is new', async () => {
  const kernel = await loadKernel();
  const { findings, proof, moves } = checkCamera(heron.design, kernel, { onProgress: () => {} });
  expect(findings.filter(({ level }) => level !== 'note')).toEqual([]);
  expect(proof?.joints.map(({ joint }) => joint)).toContain('lid of the paper holder');
  // the sheet goes in from behind, and so out again
  const sheet = moves.find(({ pieces }) => pieces.some((key) => key.startsWith('sheet-1')));
  expect(sheet?.way).toEqual({ axis: 'z', sign: -1 });
  const slide = moves.find(
    ({ pieces, whole }) => whole === 'dark slide' && pieces.some((key) => key.startsWith('HS1')),
  );
  expect(slide?.way?.axis).toBe('y');
}, 240_000);
