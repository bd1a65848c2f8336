import { describe, expect, test } from 'vitest';
import type { Setup } from '../../../src/assembly/build.js';
import { boxesOf, type Extent } from '../../../src/assembly/extent.js';
import { isHolderFace, roleOf } from '../../../src/assembly/holders.js';
import { countOf, stands } from '../../../src/assembly/setups.js';
import { spansOf } from '../../../src/assembly/span-of.js';
import { cuttingAtOnce } from '../../../src/cutting.js';
import { boundsOf } from '../../../src/geometry/path.js';
import type { FlatPart, Part } from '../../../src/model/part.js';
import type { Planned } from '../../../src/pipeline.js';
import { registerBudgets, registerRules } from '../../../src/proof/register.js';
import { changed } from '../../design/reading.js';
import { fourByFive, heronMade, planned } from '../made-holders.js';

const heron = planned(heronMade());
const thick = planned(
  changed(changed(heronMade(), 'thickness: 4.05 mm, sheet', 'thickness: 5.9 mm, sheet'), 'depth: 5.8 mm, ', ''),
);
const small = planned(fourByFive);
const withInsert = planned(heronMade(', insert: 4x5'));

const uprightOf = ({ build, design }: Planned): Setup => {
  const name = design.holders[0]?.name;
  const found = build.setups.find((one) => one.name === `${name}, upright`);
  if (found === undefined) throw new Error(`no set-up of ${name}`);
  return found;
};

function partOf({ parts }: Planned, id: string): Part {
  const part = parts.find((one) => one.id === id);
  if (part === undefined) throw new Error(`there is no ${id}`);
  return part;
}

const flat = (one: Planned, id: string): FlatPart => {
  const part = partOf(one, id);
  if (part.kind !== 'flat') throw new Error(`${id} is not cut`);
  return part;
};

/** Where a part stands while the picture is taken upright, z from the holder seat. */
function at(one: Planned, id: string, setup = uprightOf(one)): Extent {
  const seat = one.build.gate.z;
  const [box] = boxesOf(partOf(one, id)).filter(({ placement }) => stands(placement, setup));
  if (box === undefined) throw new Error(`${id} does not stand there`);
  const { x, y, z } = box.extent;
  return { x, y, z: [z[0] - seat, z[1] - seat] };
}

const sides = (loop: FlatPart['outline']) => {
  const { left, right, bottom, top } = boundsOf(loop);
  return [right - left, top - bottom].map((length) => Math.round(length * 1000) / 1000);
};
const window = (one: Planned, id: string) => {
  const largest = [...flat(one, id).holes].sort((a, b) => (sides(b)[0] ?? 0) - (sides(a)[0] ?? 0))[0];
  return largest && sides(largest);
};

/*
 * The description of the camera, section 13, common practice, no source: T = t + 1.25 + 0.5 (4.05 gives 5.80, 5.9 gives
 * 7.65); thickness 3t + 1.75; opening of face and lip = image, pocket = sheet + 0.8; dark slide 1.0 thick, i_w + 12 wide;
 * width = pocket + 2 · 11, length = image + closed end + 18 to 24.
 */
describe.each([
  { what: '5x7 of 4.05', one: heron, depth: 5.8, thickness: 13.9, image: [120.6, 171.4], sheet: [127, 177.8] },
  { what: '5x7 of 5.9', one: thick, depth: 7.65, thickness: 19.45, image: [120.6, 171.4], sheet: [127, 177.8] },
  { what: '4x5 of 4.05', one: small, depth: 5.8, thickness: 13.9, image: [95.2, 120.6], sheet: [101.6, 127] },
])('a holder for $what', ({ one, depth, thickness, image, sheet }) => {
  const [short = 0, long = 0] = image;
  const [wide = 0, high = 0] = sheet;

  test('its film lies as deep as face, channel and lip are thick', () => {
    expect(at(one, 'sheet-1').z[0]).toBeCloseTo(depth, 9);
    expect(at(one, 'HL1').z[1]).toBeCloseTo(depth, 9);
    expect(at(one, 'HF1').z[0]).toBeCloseTo(0, 9);
    expect(one.design.holders[0]?.filmDepth).toBeCloseTo(depth, 9);
    expect(at(one, 'HD1').z[1]).toBeCloseTo(thickness, 9);
  });

  test('face and lip are open over the image, the pocket takes the sheet', () => {
    expect(window(one, 'HF1')).toEqual(image);
    expect(window(one, 'HL1')).toEqual(image);
    expect(window(one, 'HP1')?.[0]).toBeCloseTo(wide + 0.8, 3);
    expect(window(one, 'HP1')?.[1]).toBeCloseTo(high + 0.8, 3);
  });

  test('width and length come from pocket and image', () => {
    const [width = 0, length = 0] = sides(flat(one, 'HF1').outline);
    expect(width).toBeCloseTo(wide + 0.8 + 22, 3);
    expect(length - long - 20).toBeGreaterThanOrEqual(18);
    expect(length - long - 20).toBeLessThanOrEqual(24.001);
  });

  test('the dark slide is 1 mm thick, 12 wider than the image, and lies in the channel', () => {
    const slide = at(one, 'HS1');
    const channel = at(one, 'HC1');
    expect(flat(one, 'HS1').thickness).toBe(1);
    const stem = flat(one, 'HS1')
      .outline.filter(({ y }) => y < 0)
      .map(({ x }) => Math.abs(x));
    expect(2 * Math.max(...stem)).toBeCloseTo(short + 12, 9);
    expect(slide.z[0]).toBeGreaterThan(channel.z[0]);
    expect(slide.z[1]).toBeLessThanOrEqual(channel.z[1] + 1e-9);
  });

  test('drawn, the slide has left the picture, and its end stays in velvet 12 wide on both sides', () => {
    const tip = at(one, 'HS1').y[0];
    expect(tip).toBeGreaterThan(long / 2 + 2);
    for (const id of ['velvet-face-1', 'velvet-lip-1']) {
      const { y } = at(one, id);
      expect(y[1] - y[0]).toBeCloseTo(12, 9);
      expect(y[1]).toBeCloseTo(at(one, 'HF1').y[1], 9);
      expect(y[1] - tip).toBeGreaterThanOrEqual(8);
    }
  });

  test('lid land is 10 at the sides, four buttons lie over it by 8', () => {
    const lid = at(one, 'HD1');
    const [pocketWidth = 0, pocketHeight = 0] = window(one, 'HP1') ?? [];
    expect(lid.x[1] - pocketWidth / 2).toBeGreaterThanOrEqual(10);
    expect(lid.y[1] - pocketHeight / 2).toBeGreaterThanOrEqual(10);
    expect(-lid.y[0] - pocketHeight / 2).toBeGreaterThanOrEqual(10);
    expect(countOf(partOf(one, 'HT1').placements, one.build.setups)).toBe(4);
    expect(at(one, 'HT1').z[0]).toBeCloseTo(lid.z[1], 9);
  });

  test('the pad fills the pocket to the sheet', () => {
    const felt = at(one, 'lid-felt-1');
    expect(felt.z[0]).toBeCloseTo(at(one, 'sheet-1').z[1], 9);
    const pads = spansOf(one.build, 'HQ1', { setup: uprightOf(one) }).map(({ z }) => z[0] - one.build.gate.z);
    expect(felt.z[1]).toBeCloseTo(Math.min(...pads), 9);
    expect(felt.z[1] - felt.z[0]).toBeGreaterThan(0.8);
  });

  test('boards are parts of their own sheets, which are as large as those of the plywood', () => {
    expect(flat(one, 'HC1').material).toBe('board-1.25');
    expect(flat(one, 'HL1').material).toBe('board-0.5');
    expect(flat(one, 'HS1').material).toBe('board-1');
    const { cut } = cuttingAtOnce(one);
    expect(cut.findings.filter(({ level }) => level === 'error')).toEqual([]);
    for (const material of ['board-1.25', 'board-0.5', 'board-1'])
      expect(cut.sheets.filter((sheet) => sheet.material === material)).toMatchObject([{ width: 600, height: 400 }]);
  });

  test('every part is in the holder’s group, its face has the role, and it stands only while a picture is taken', () => {
    const own = one.parts.filter(({ id }) => /^H[A-Z]\d$|^velvet-|^lid-|^sheet-/.test(id));
    expect(own.length).toBeGreaterThan(12);
    for (const { placements } of own)
      for (const { group } of placements) expect(group).toEqual({ holder: one.design.holders[0]?.name });
    expect(one.parts.filter(isHolderFace).map(({ id }) => id)).toContain('HF1');
    expect(roleOf(partOf(one, 'sheet-1'))).toBe('sheet');
    const focusing = one.build.setups.filter((setup) => setup.focusing);
    for (const { placements } of own)
      for (const setup of focusing) expect(placements.some((place) => stands(place, setup))).toBe(false);
  });

  test('seat pins enter the face clear of the channel', () => {
    const width = sides(flat(one, 'HF1').outline)[0] ?? 0;
    const inner = flat(one, 'HC1').outline.filter(({ x }) => Math.abs(x) < width / 2 - 1);
    const end = Math.min(...inner.map(({ y }) => y));
    // a whole circle has two vertices, a diameter apart
    const pins = flat(one, 'HF1').holes.filter((hole) => hole.length === 2);
    expect(pins.length).toBeGreaterThanOrEqual(2);
    for (const [a, b] of pins) expect((a?.y ?? 0) + Math.abs((a?.x ?? 0) - (b?.x ?? 0)) / 2).toBeLessThan(end);
  });
});

describe('a depth that is asked for', () => {
  const packed = planned(heronMade(', filmDepth: 10.35 mm'));
  test('is met ahead of the channel by plies and shims', () => {
    // 10.35 = 2 · 4.05 + 0.5 + 1.25 + 0.5
    expect(at(packed, 'sheet-1').z[0]).toBeCloseTo(10.35, 9);
    expect(countOf(partOf(packed, 'HG1').placements, packed.build.setups)).toBe(1);
    expect(at(packed, 'shim-1-500').z).toEqual([expect.closeTo(8.1, 9), expect.closeTo(8.6, 9)]);
    expect(packed.findings.filter(({ level }) => level === 'error')).toEqual([]);
  });
});

test('boards come from the stock where it has them', () => {
  const stocked = planned(
    changed(heronMade(), 'laser:', 'stock: [{ material: board, thickness: 1.25 mm, sheet: [420 mm, 297 mm] }]\nlaser:'),
  );
  const { cut } = cuttingAtOnce(stocked);
  expect(cut.sheets.filter(({ material }) => material === 'board-1.25')).toMatchObject([{ width: 420, height: 297 }]);
  // no spacer is made of it
  expect(
    stocked.parts.filter((part) => part.kind === 'flat' && part.material === 'board-1.25').map(({ id }) => id),
  ).toEqual(['HC1', 'HQ1']);
});

describe('measured once it is glued', () => {
  const measured = planned(heronMade(', measured: 5.9 mm').replace('depth: 5.8 mm, ', ''));
  test('nothing is cut anew: the register reckons with it, and a spacer has its shims chosen for it', () => {
    expect(measured.design.holders[0]).toMatchObject({ filmDepth: expect.closeTo(5.8, 9), measured: 5.9 });
    expect(at(measured, 'sheet-1').z[0]).toBeCloseTo(5.8, 9);
    expect(measured.revision).toBe(heron.revision);
    expect(measured.parts).toEqual(heron.parts);
    const [budget] = registerBudgets(measured.design, measured.build);
    expect(budget?.nominal).toBeCloseTo(5.8 - 5.9, 9);
    expect(measured.findings.filter(({ level }) => level === 'error')).toEqual([]);
    const far = planned(heronMade(', measured: 6.2 mm').replace('depth: 5.8 mm, ', ''));
    const [error] = registerRules(far.design, far.build).filter(({ rule }) => rule === 'register');
    expect(error).toMatchObject({ value: expect.closeTo(-0.4, 9), hint: expect.stringContaining('under the glass') });
  });
});

test('a holder that was weighed has its mass', () => {
  const weighed = planned(heronMade(', mass: 400 g'));
  const setup = uprightOf(weighed);
  const own = weighed.parts.flatMap((part) =>
    part.placements.filter((place) => typeof place.group !== 'string' && stands(place, setup)).map(() => part.massKg),
  );
  expect(own.reduce((sum, mass) => sum + mass, 0)).toBeCloseTo(0.4, 9);
});

describe('an insert for 4x5', () => {
  const setup = withInsert.build.setups.find(({ insert }) => insert === '4x5');
  if (setup === undefined) throw new Error('no set-up with the insert');
  test('brings a smaller sheet to the same depth, behind a mask in the plane of the lip', () => {
    expect(at(withInsert, 'insert-sheet-1', setup).z[0]).toBeCloseTo(5.8, 9);
    expect(at(withInsert, 'HM1', setup).z).toEqual(at(withInsert, 'HL1', setup).z);
    expect(window(withInsert, 'HM1')).toEqual([95.2, 120.6]);
    expect(window(withInsert, 'HR1')).toEqual([102.4, 127.8]);
  });
  test('drops into lip and pocket', () => {
    const [mask, lip] = [sides(flat(withInsert, 'HM1').outline), window(withInsert, 'HL1')];
    const [frame, pocket] = [sides(flat(withInsert, 'HR1').outline), window(withInsert, 'HP1')];
    for (const side of [0, 1]) {
      expect((lip?.[side] ?? 0) - (mask[side] ?? 0)).toBeCloseTo(0.6, 3);
      expect((pocket?.[side] ?? 0) - (frame[side] ?? 0)).toBeCloseTo(0.6, 3);
    }
  });
  test('stands in a set-up of its own, without the large sheet', () => {
    expect(partOf(withInsert, 'sheet-1').placements.some((place) => stands(place, setup))).toBe(false);
    expect(partOf(withInsert, 'HM1').placements.some((place) => stands(place, uprightOf(withInsert)))).toBe(false);
  });
});
