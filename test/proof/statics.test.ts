import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { polygon } from '../../src/geometry/path.js';
import { planCamera } from '../../src/pipeline.js';
import { cordHolds } from '../../src/proof/cords.js';
import { staticsRules, staticsTable } from '../../src/proof/statics.js';
import { heron, recut, without } from '../camera/worked.js';
import { designOf } from '../design/reading.js';
import { bittern as bitternText } from '../design/worked-designs.js';

/** Two plies of 4.05, B 232.25, sole 163 × 135, W_fo 207.35, travel 106.2: camera.md section 17. */
const table = staticsTable(heron.design, heron.build);
const loadedWith = (name: string, of = table) => {
  const found = of.loaded.find(({ setup }) => setup.name === name);
  if (found === undefined) throw new Error(`no set-up ${name}`);
  return found;
};

describe('the centre of gravity over the whole travel', () => {
  test('of Heron, closed with its glass and drawn out with the heaviest holder: 96 and 161, the nut at 128', () => {
    // camera.md section 17, as rounded there; 3.0 kg with the glass
    expect(Math.abs(loadedWith('on the road').closest - 96)).toBeLessThan(1);
    expect(Math.abs(loadedWith('processing holder, upright').farthest - 161)).toBeLessThan(1);
    expect(Math.abs(table.nut - 128)).toBeLessThan(1);
    expect(Math.abs(loadedWith('on the road').massKg - 3)).toBeLessThan(0.05);
  });
  test('of Bittern 104 and 172, its nut at 138', () => {
    // camera.md section 17, a wood model of its own; to 5 mm and a tenth of a kilogram
    const { design, build } = planCamera(designOf(bitternText));
    const own = staticsTable(design, build);
    expect(Math.abs(loadedWith('on the road', own).closest - 104)).toBeLessThan(5);
    expect(Math.abs(loadedWith('processing holder, upright', own).farthest - 172)).toBeLessThan(6);
    expect(Math.abs(own.nut - 138)).toBeLessThan(6);
  });
  test('moves by the share of what slides, every holder and the glass', () => {
    for (const { setup, closest, farthest, massKg, momentNmm } of table.loaded) {
      const sliding = heron.build.parts
        .flatMap((part) => part.placements.map((place) => ({ part, place })))
        .filter(({ place }) => place.group !== 'front' && (place.when?.includes(setup.name) ?? true))
        .filter(({ place }) => typeof place.group === 'string' || place.when !== undefined || !setup.focusing)
        .filter(({ place }) => typeof place.group === 'string' || place.group.holder === setup.holder)
        .reduce((sum, { part }) => sum + part.massKg, 0);
      // two masses on a line: the whole moves by the travel times the share (M5.09)
      expect(farthest - closest).toBeCloseTo((heron.camera.settingOut.travel * sliding) / massKg, 6);
      const lean = Math.max(Math.abs(closest - table.nut), Math.abs(farthest - table.nut));
      expect(momentNmm).toBeCloseTo(massKg * 9.80665 * lean, 6);
    }
  });
});

describe('the tailboard at full draw', () => {
  const loaded = loadedWith('processing holder, upright');
  test('tilts the film’s edge by 0.10 to 0.13', () => {
    // camera.md section 8, two plies in the worked cameras
    const edge = (loaded.tilt * 171.4) / 2;
    expect(edge).toBeGreaterThan(0.1);
    expect(edge).toBeLessThan(0.13);
  });
  test('bends as a cantilever does: the tilt is 3/2 of sag over reach', () => {
    // M4.10's formulas, divided
    expect(loaded.tilt / loaded.sag).toBeCloseTo(1.5 / loaded.overhang, 9);
  });
  test('is far from breaking: M y/I by hand', () => {
    // 1.646 kg at the end of the reach, 232.25 × 8.1: 6 P a/(b h²)
    const load = (loaded.stress * 232.25 * 8.1 * 8.1) / (6 * loaded.overhang);
    expect(load / 9.80665).toBeCloseTo(1.6457, 1);
    expect(loaded.stress).toBeLessThan(table.sheet.strength / 20);
  });
  test('bends more if the doubler gives, and least on a second support', () => {
    // M4.14: the span between the supports bends too
    expect(loaded.sagIfDoublerBends).toBeCloseTo(loaded.sag * (1 + 60 / loaded.overhang), 9);
    expect(loaded.sagSupported).toBeLessThan(loaded.sag);
    expect(loaded.ownSag).toBeLessThan(loaded.sag);
  });
  test('a sheet of three plies is stiffer along its grain than is reckoned with', () => {
    // M4.08 for nearly equal plies, 26/27 of 17 500; M4.06: along and across add up to it
    expect(Math.abs(table.sheet.along - (26 / 27) * 17500)).toBeLessThan(200);
    expect(table.sheet.along + table.sheet.across).toBeCloseTo(17500, 6);
    expect(table.sheet.typed).toBe(7000);
  });
});

describe('the slide', () => {
  test('is 1.66 jamming lengths long, pushed at the edge of the standard', () => {
    // camera.md section 8: 135/(0.35 × 232.25); M4.28's push 1/(1 − 1/1.66) of the drag
    expect(table.racking.ratio).toBeCloseTo(135 / (0.35 * 232.25), 3);
    expect(table.racking.pushN / table.racking.dragN).toBeCloseTo(1 / (1 - 1 / 1.6608), 2);
  });
  test('runs by itself from 19.3° on, the lock open', () =>
    expect((table.slidesAt * 180) / Math.PI).toBeCloseTo(19.29, 2)); // atan 0.35, method of M4.24
  test('stands on both edges of its sole, the less so with a dark slide pulled', () => {
    const [glass, paper] = [loadedWith('glass for paper holder, upright'), loadedWith('paper holder, upright')];
    const sum = ([front, rear]: readonly [number, number]) => front + rear;
    // what slides weighs what it weighs: the glass in 0.127 kg less than the paper holder, and 10 N are pulled
    expect(sum(glass.sole)).toBeGreaterThan(0);
    expect(sum(paper.sole) + 10 - sum(glass.sole)).toBeCloseTo((paper.massKg - glass.massKg) * 9.80665, 6);
  });
});

describe('on a tripod 1300 high, its feet on a circle of 400', () => {
  // M5.10, M5.11: the tipping line 200 from the middle; by hand for what the table says of mass and lean
  test('a level push at the axis tips it by W·reach/height', () => {
    const { massKg, closest, farthest, tippedBy } = loadedWith('processing holder, upright');
    const reach = 200 - Math.max(Math.abs(closest - table.nut), Math.abs(farthest - table.nut));
    // axis 138.8 above the tailboard, two plies and two of the doubler below it
    expect(tippedBy).toBeCloseTo((massKg * 9.80665 * reach) / (1300 + 138.8 + 4 * 4.05), 1);
  });
  test('on the slope at which its weight stands over that line', () => {
    for (const { tipsAt } of table.loaded) {
      expect(tipsAt).toBeLessThan(Math.atan(200 / 1300));
      expect(tipsAt).toBeGreaterThan(Math.atan(150 / 1500));
    }
  });
});

describe('what nuts and screws hold', () => {
  const hold = (name: RegExp) => table.holds.find((one) => name.test(one.name));
  test('the flange of the tripod’s nut crushes no wood', () => {
    // ring of 19 less 8, crushing at 6.7 N/mm² [from memory: Wood Handbook, yellow birch]
    expect(hold(/tripod/)?.holdsN).toBeCloseTo((Math.PI / 4) * (19 * 19 - 8 * 8) * 6.7, 6);
    expect(hold(/tripod/)?.loadN).toBeLessThan((hold(/tripod/)?.holdsN ?? 0) / 4);
  });
  test('the lock holds what slides', () => {
    // F = T/(0.2 d), the table of nut factors as in M3; two faces of wood at their lowest friction, 0.25 (M4.22)
    expect(hold(/lock/)?.holdsN).toBeCloseTo((2 * 0.25 * 500) / (0.2 * 6), 6);
    expect(hold(/lock/)?.loadN).toBeCloseTo(1.6457 * 9.80665, 0);
  });
  test('the keepers’ screws', () =>
    // 108.25 G² D L [from memory: Wood Handbook], G 0.62, a screw of 3.2 in one ply, two of them
    expect(hold(/keepers/)?.holdsN).toBeCloseTo(2 * 108.25 * 0.62 * 0.62 * 3.2 * 4.05, 6));
});

/** Heron with hooks whose notches lie between so many mm behind the seat, 8 deep. */
const hooked = (from: number, to: number): Build =>
  recut(
    'B5',
    polygon([
      [-8, 0],
      [8, 0],
      [8, from],
      [0, from],
      [0, to],
      [8, to],
      [8, 26],
      [-8, 26],
    ]),
  );

describe('cord-hold: what lies on the seat, the lens up', () => {
  const told = (build: Build) => staticsRules(heron.design, build).filter(({ rule }) => rule === 'cord-hold');
  const holdOf = (what: string, build: Build) => cordHolds(build).find((hold) => hold.what === what);

  test('a thick holder bends its cords well', () => {
    // back of the holder 36 behind the seat, the cord's middle 1.5 more; in a notch up to 16 it lies at 14.5
    const hold = holdOf('processing holder', hooked(12, 16));
    expect(hold?.rise).toBeCloseTo(37.5 - 14.5, 6);
    // four ends of 10 N
    const out = hold?.out ?? 0;
    expect(hold?.pressN).toBeCloseTo((40 * 23) / Math.sqrt(23 * 23 + out * out), 6);
    expect(hold?.weightN).toBeCloseTo(0.9 * 9.80665, 6);
    // hooks stand between fence and edge of the back: 78 + 0.4 + 10 and 116.1, so 102.26; the holder ends at 78
    expect(out).toBeCloseTo(24.26, 1);
  });

  test('a thin one, its back as high as the notch, hangs loose', () => {
    // 12 thick: the cord at 13.5 lies straight in a notch from 12 to 16
    const [glass, paper, ...rest] = told(hooked(12, 16));
    expect(rest).toEqual([]);
    expect(glass?.message).toMatch(/^Lens up, the ground glass drops from its seat/);
    expect(paper).toMatchObject({ level: 'warning', value: 0, unit: 'N' });
    expect(paper?.limit).toBeCloseTo(0.33 * 9.80665, 6);
    expect(paper?.message).toMatch(/nothing presses it down/);
    // 3.24 N of 40: a slope of 0.0812, over 27.26 to its edge at 75: 2.2, and one more
    expect(paper?.hint).toMatch(/^Glue a strip 4 mm high/);
  });

  test('lower notches hold it', () => expect(told(hooked(4, 8))).toEqual([]));

  test('just as much as it weighs is enough', () => {
    const weighing = (massKg: number): Build => {
      const build = hooked(4, 8);
      return {
        ...build,
        parts: build.parts.map((part) => (part.name === 'processing holder' ? { ...part, massKg } : part)),
      };
    };
    // back at 36: the rise is 37.5 − 6.5 = 31 over 24.26; 40 × 31/39.36 = 31.50 N, 3.212 kg
    expect(told(weighing(3.2))).toEqual([]);
    const [found] = told(weighing(3.23));
    expect(found?.value).toBeCloseTo(31.5, 1);
    expect(found?.message).toMatch(/it weighs 31\.7 N, and the cords press it down with 31\.5 N/);
    // more than all four ends can ever press
    expect(told(weighing(4.2))[0]?.hint).toBe('Use cords that pull harder, or two more of them.');
  });

  test('without cords there is nothing to judge', () => expect(told(without('cord'))).toEqual([]));
});
