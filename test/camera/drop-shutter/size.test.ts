import { describe, expect, test } from 'vitest';
import { sizeDropShutter } from '../../../src/camera/drop-shutter/size.js';
import type { ShutterAsked } from '../../../src/design/design.js';
import { heronWith } from '../asked-for.js';

const ply = { material: 'plywood-4', thickness: 4, density: 680 };
const wood = { ply, fits: { press: -0.02, glueSlip: 0.08, slide: 0.3, dropIn: 0.6 } };
const plate = { width: 300, bottom: -150, railTop: 150, rear: -40, betweenLips: 140, beyondLips: -48.6 };

/**
 * A shutter whose slide hangs 100 above a bundle of 30, as the check values have it: the back plate, at z −52.6, has an
 * opening of 30 + 2·d·tan + 2 = 210, and the closed slide covers it by 10, so h = 105 + 10 − 15.
 */
const depth = 100;
const light = {
  focalLength: 300,
  maxAperture: 10,
  pupil: depth - 52.6,
  halfField: Math.atan(178 / 2 / depth),
  alongLong: 178 / 2 / depth,
};
const shutter = (by: ShutterAsked['by'], elastic: ShutterAsked['elastic'] = null) =>
  sizeDropShutter({ wood, light, plate, halfLong: 0, by, elastic, longestPart: 2000 });

/** The guide leaves nine tenths of gravity: all times are 1/√0.9 of those of a free fall, as V6.11 has it for 0.8. */
const SLOWER = 1 / Math.sqrt(0.9);

describe('a slide 100 above a bundle of 30', () => {
  test('V6.07: a slot of 60', () => {
    // T 54.040, F 17.813, Te 35.811 ms to 1e-3 ms, efficiency 0.6627 [verified: S4 formula, S73]
    const { effective, open, fullyOpen, efficiency } = shutter({ slot: 60 }).figures;
    expect(Math.abs(1000 * effective - 35.811 * SLOWER)).toBeLessThan(1.1e-3);
    expect(Math.abs(1000 * open - 54.04 * SLOWER)).toBeLessThan(1.1e-3);
    expect(Math.abs(1000 * fullyOpen - 17.813 * SLOWER)).toBeLessThan(1.1e-3);
    expect(Math.abs(efficiency - 0.6627)).toBeLessThan(1e-4);
  });
  test('V6.12: the slot for 1/30 s', () => {
    // 55.443 to 0.01 mm, as V6.07
    expect(Math.abs(shutter({ time: SLOWER / 30 }).slide.slot - 55.443)).toBeLessThan(0.01);
  });
  test('a time that no slot gives has the slot that comes nearest, one to three diameters of the light', () => {
    expect(shutter({ time: 1 / 500 }).slide.slot).toBeCloseTo(30, 9);
    expect(shutter({ time: 1 }).slide.slot).toBeCloseTo(90, 9);
  });
  test('elastic makes the same slot faster, and the same time asks for a longer slot', () => {
    const pulled = { pullKg: 0.4, over: null };
    expect(shutter({ slot: 60 }, pulled).figures.effective).toBeLessThan(shutter({ slot: 60 }).figures.effective);
    expect(shutter({ time: 1 / 30 }, pulled).slide.slot).toBeGreaterThan(shutter({ time: 1 / 30 }).slide.slot);
    // slot and mass are settled to a thousandth of a millimetre
    expect(shutter({ time: 1 / 30 }, pulled).figures.effective).toBeCloseTo(1 / 30, 6);
  });
});

describe('Heron', () => {
  const own = (key: string, ...more: readonly string[]) => {
    const { dropShutter } = heronWith(key, ...more).camera.objects;
    if (!dropShutter) throw new Error('Heron was asked for a shutter');
    return dropShutter.shutter;
  };

  /** Light through a slot over a round bundle, followed in small steps of time: shares no formula with the program. */
  function stepped({ slide, openings, light: { focalLength, maxAperture } }: ReturnType<typeof own>) {
    const [a, D, L] = [0.9 * 9806.65, focalLength / maxAperture, slide.slot];
    // the slot's leading edge hangs above the middle by half the opening and what the closed slide laps over it
    const above = slide.lower - openings.back / 2 - 10;
    const step = 1e-5;
    let [lit, first, last] = [0, 0, 0];
    for (let t = 0; t < 0.5; t += step) {
      const edge = above - (a * t * t) / 2;
      const [from, to] = [Math.max(-D / 2, edge), Math.min(D / 2, edge + L)];
      if (to <= from) continue;
      if (first === 0) first = t;
      last = t;
      const area = (y: number) =>
        y * Math.sqrt((D * D) / 4 - y * y) + ((D * D) / 4) * Math.asin(Math.max(-1, Math.min(1, (2 * y) / D)));
      lit += ((area(to) - area(from)) / ((Math.PI * D * D) / 4)) * step;
    }
    return { effective: lit, open: last - first };
  }

  test.each(['shutter: {}', 'shutter: { time: 1/15 s }', 'shutter: { slot: 60 mm }'])('%s, followed in time', (key) => {
    const shutter = own(key);
    const { effective, open } = stepped(shutter);
    expect(Math.abs(shutter.figures.effective - effective)).toBeLessThan(3e-5);
    expect(Math.abs(shutter.figures.open - open)).toBeLessThan(3e-5);
  });

  test('the slide is cut for the time that is wanted, and hangs as high as an even picture takes', () => {
    const { figures, slide, openings } = own('shutter: { time: 1/30 s }', 'filterHolder: {}');
    expect(figures.effective).toBeCloseTo(1 / 30, 6);
    expect(figures.uneven).toBeLessThanOrEqual(0.3);
    expect(slide.slotWidth).toBeGreaterThan(openings.back);
    // blind, slot, blind: before the fall the lower one covers the opening and 10 each side, after it the upper one
    expect(slide.lower).toBeGreaterThanOrEqual(openings.back + 20);
    expect(slide.fall).toBeGreaterThanOrEqual(openings.back + 20 + slide.slot - 1e-9);
  });

  test('no slide is longer than the sheet, though the picture is less even then', () => {
    const small = heronWith('shutter: { time: 1/15 s }', 'filterHolder: {}').design;
    const longest = (sheet: number) => {
      const text = own('shutter: { time: 1/15 s }', 'filterHolder: {}');
      return sizeDropShutter({
        wood: text.wood,
        light: text.light,
        plate: { width: 100, bottom: -50, railTop: 58, rear: -33.5, betweenLips: 45, beyondLips: -42.2 },
        halfLong: small.format.image.long / 2,
        by: { time: 1 / 15 },
        elastic: null,
        longestPart: sheet,
      }).slide.length;
    };
    expect(longest(600)).toBeGreaterThan(330);
    expect(longest(330)).toBeLessThanOrEqual(330);
  });
});
