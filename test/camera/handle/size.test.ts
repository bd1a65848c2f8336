import { describe, expect, test } from 'vitest';
import { spanOf, spansOf } from '../../../src/assembly/span-of.js';
import { sizeHandle } from '../../../src/camera/handle/size.js';
import { nuts, washers } from '../../../src/standards/screws.js';
import { lawsFrom, withDesign } from '../../laws/law.js';
import { heronWith } from '../asked-for.js';

const fits = { press: -0.02, glueSlip: 0.08, slide: 0.3, dropIn: 0.6 };
const sized = (thickness: number, boxLength: number, balance: number) =>
  sizeHandle({
    wood: { ply: { material: 'plywood', thickness, density: 680 }, fits },
    top: 100,
    boxLength,
    balance,
  });

describe('where it stands', () => {
  // 94 for the hand, two legs of 20, and the plate 4 beyond each: 142
  test.each([
    { box: 165.4, balance: 90, along: 'z', middle: 90, why: 'over the centre of gravity' },
    { box: 165.4, balance: 95.7, along: 'z', middle: 94.4, why: 'as far back as its plate lies on the top' },
    { box: 165.4, balance: 105, along: 'x', middle: 105, why: 'across where that would be more than 10 off' },
    { box: 127.1, balance: 87.7, along: 'x', middle: 87.7, why: 'across on a box that is too short' },
    { box: 105.3, balance: 90, along: 'x', middle: 75.3, why: 'its plate of 60 on the top whole' },
  ])('$why', ({ box, balance, along, middle }) => {
    const handle = sized(4.05, box, balance);
    expect(handle.along).toBe(along);
    expect(handle.middle).toBeCloseTo(middle, 6);
  });
});

describe('from thin sheet and thick', () => {
  test.each([
    // a washer of 9 lies between the outer plies: 9.2 of room; screw: plate, 8 of wood, washer 0.8, nut 3.2, and 0.5 to see
    { t: 3, inner: 4, screw: 16 },
    { t: 3.62, inner: 3, screw: 20 },
    { t: 4.05, inner: 3, screw: 20 },
    { t: 5.9, inner: 2, screw: 20 },
    { t: 6.15, inner: 2, screw: 20 },
    { t: 9.2, inner: 1, screw: 25 },
  ])('of $t mm: $inner inner plies, M4 × $screw', ({ t, inner, screw }) => {
    const handle = sized(t, 180, 90);
    expect(handle.innerPlies).toBe(inner);
    expect(handle.screw.length).toBe(screw);
    expect(handle.screw.slot).toBeGreaterThan(handle.screw.length - t);
  });
});

describe('its parts, in Heron', () => {
  const { build, parts } = heronWith('handle: true');
  const [plate, inner, outer] = ['F11', 'F12', 'F13'].map((id) => spansOf(build, id));
  const top = spanOf(build, 'F3');
  test('the plate lies on the top, and the plies stand on it in one block', () => {
    expect(plate?.[0]?.y[0]).toBeCloseTo(top.y[1], 9);
    const xs = [...(inner ?? []), ...(outer ?? [])].map(({ x }) => x).sort((a, b) => a[0] - b[0]);
    expect(xs).toHaveLength(5);
    xs.slice(1).forEach((x, i) => {
      expect(x[0]).toBeCloseTo(xs[i]?.[1] ?? 0, 9);
    });
    expect((xs[0]?.[0] ?? 0) + (xs[4]?.[1] ?? 0)).toBeCloseTo(0, 9);
    for (const { y } of [...(inner ?? []), ...(outer ?? [])]) expect(y[0]).toBeCloseTo(plate?.[0]?.y[1] ?? 0, 9);
  });
  test('the nuts stand over their washers, on screws that come from below the plate and end above them', () => {
    const [screw, washer, nut] = ['handle-screw', 'handle-washer', 'handle-nut'].map((id) => spanOf(build, id));
    expect(screw?.y[0]).toBeCloseTo(top.y[1], 9);
    expect((washer?.y[1] ?? 0) - (washer?.y[0] ?? 0)).toBeCloseTo(washers.M4.thickness.value, 9);
    expect(nut?.y[0]).toBeCloseTo(washer?.y[1] ?? 0, 9);
    expect((nut?.y[1] ?? 0) - (nut?.y[0] ?? 0)).toBeCloseTo(nuts.M4.height.value, 9);
    expect((screw?.y[1] ?? 0) - (nut?.y[1] ?? 0)).toBeGreaterThanOrEqual(0.5);
  });
  test('the grain of the top runs from side to side only where it carries', () => {
    const grain = (made: typeof parts) =>
      made.flatMap((part) => (part.id === 'F3' && part.kind === 'flat' ? part.grain : []));
    expect(grain(parts)).toEqual(['x']);
    expect(grain(heronWith().parts)).toEqual(['any']);
  });
  test('no hole is cut into the top', () =>
    expect(parts.flatMap((part) => (part.id === 'F3' && part.kind === 'flat' ? part.holes : []))).toEqual([]));
});

const { lawOfSoundCameras } = lawsFrom(20_261_202);
test('a sound camera can be carried, but where its top is too small or it is too heavy', () =>
  lawOfSoundCameras(40, ({ design, findings }) => {
    const before = new Set(findings.map(({ rule, level }) => `${rule} ${level}`));
    const more = withDesign(design, { handle: true }).findings.filter(({ level }) => level !== 'note');
    const told = new Set(more.map(({ rule, level }) => `${rule} ${level}`).filter((one) => !before.has(one)));
    // the handle adds to the weight in front
    expect([...told].filter((one) => !/^handle-(room|strength) error$|^balance warning$/.test(one))).toEqual([]);
  }));
