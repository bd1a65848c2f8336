import { describe, expect, test } from 'vitest';
import { type Figure, type Formula, keyed } from '../../src/camera/figure.js';
import { type SettingOut, type SettingOutGiven, setOut } from '../../src/camera/setting-out.js';

/** What the design file says, each figure by a symbol of the description; the camera in round figures. */
const given: SettingOutGiven = {
  ply: keyed('t', 'ply', 'ply', 4),
  clearance: keyed('c', 'clearance', 'clearance', 1.5),
  railPlay: keyed('y_r', 'railPlay', 'railPlay', 0.25),
  focalLength: keyed('f', 'focalLength', 'focalLength', 150),
  flangeDistance: keyed('V', 'flangeDistance', 'flangeDistance', 140),
  nearest: keyed('m_near', 'nearest', 'nearest', 1 / 4),
  farthestFocus: keyed('m_far', 'farthest', 'farthest', 0),
  pastInfinity: keyed('p', 'pastInfinity', 'pastInfinity', 4),
  pastNearest: null,
  lens: {
    seat: keyed('z_seat', 'seat', 'seat', 0),
    radiusBehindPanel: keyed('R', 'radius', 'radius', 30),
    reachBehindPanel: keyed('z_R', 'reach', 'reach', 40),
    board: keyed('board', 'board', 'board', 100),
  },
  otherSide: {
    seat: keyed('z_other', 'otherSeat', 'otherSeat', -8),
    radiusBehindPanel: keyed('R_other', 'otherRadius', 'otherRadius', 30),
    reachBehindPanel: keyed('z_R_other', 'otherReach', 'otherReach', 32),
    board: keyed('board', 'board', 'board', 100),
  },
  imageLong: keyed('i_h', 'imageLong', 'imageLong', 120),
  depths: [{ of: 'holder', depth: keyed('T_1', 'depth', 'depth', 10) }],
  glassDepth: keyed('T_g', 'glassDepth', 'glassDepth', 10),
  holderWidth: keyed('w_h', 'holderWidth', 'holderWidth', 100),
  closedExtent: keyed('x_c', 'closedExtent', 'closedExtent', 70),
};

const tooWide: SettingOutGiven = {
  ...given,
  lens: { ...given.lens, radiusBehindPanel: keyed('R', 'radius', 'radius', 66) },
};

/** Where a rail is twice the sheet. */
const thick: SettingOutGiven = { ...given, ply: keyed('t', 'ply', 'ply', 9) };

const withoutInfinity: SettingOutGiven = { ...given, farthestFocus: keyed('m_far', 'farthest', 'farthest', 0.1) };

/** The formulas that a figure comes from: its own, or one for each claim. */
function formulasOf({ from }: Figure): readonly { readonly formula: Formula; readonly source: string }[] {
  if (from.kind === 'formula') return [{ formula: from.formula(), source: from.source }];
  return from.kind === 'claims' ? from.claims() : [];
}

/** A figure and all that it is reckoned from, down to what is given. */
const withInputs = (figure: Figure): readonly Figure[] => [
  figure,
  ...formulasOf(figure).flatMap(({ formula }) => formula.inputs.flatMap(withInputs)),
];

const isFigure = (value: unknown): value is Figure => typeof value === 'object' && value !== null && 'from' in value;

const figuresOn = (rod: SettingOut): readonly Figure[] =>
  [...Object.values(rod), ...Object.values(rod.figures)].filter(isFigure).flatMap(withInputs);

const everywhere = () => [given, tooWide, thick, withoutInfinity].flatMap((each) => figuresOn(setOut(each)));

/** A figure on the rod or anywhere below it. */
function bySymbol(symbol: string): Figure {
  const found = figuresOn(setOut(given)).find((figure) => figure.symbol === symbol);
  if (found === undefined) throw new Error(`nothing on the rod is called ${symbol}`);
  return found;
}

describe('symbols are those of the project’s description of the camera', () => {
  test('the lengths, section 2', () => {
    const rod = setOut(given);
    const names = {
      W_ri: rod.rearInside,
      W_ro: rod.rearOutside,
      W_fi: rod.frontInside,
      W_fo: rod.frontOutside,
      L_f: rod.frontLength,
      L_r: rod.rearLength,
      q: rod.stackBehindBoxes,
      d_f: rod.panelDead,
      O: rod.overlapRequired,
      B: rod.backSide,
      h_a: rod.axisHeight,
      p_n: rod.figures.reserve,
      // and section 7
      s_min: rod.closest,
      s_max: rod.farthest,
      m_reach: rod.figures.reachable,
    };
    for (const [symbol, figure] of Object.entries(names)) expect(figure.symbol).toBe(symbol);
    expect(setOut(tooWide).panelDead.symbol).toBe('d_f');
  });

  test.each([
    // sections 2, 6, 7 and 8, in the camera of round figures
    { symbol: 'r', value: 6 }, // max(6, 1.5·4)
    { symbol: 'g', value: 2 },
    { symbol: 'e', value: 0.3 },
    { symbol: 'g_b', value: 2 },
    { symbol: 'h_rib', value: 25 },
    { symbol: 't_s', value: 8 }, // 2·4
    { symbol: 'T_max', value: 10 },
    { symbol: 'T_min', value: 10 },
  ])('$symbol stands in a formula as $value', ({ symbol, value }) => expect(bySymbol(symbol).value).toBe(value));
});

describe('every figure on the rod, and all that it is reckoned from', () => {
  test('has a symbol, and says what it is', () => {
    const ours = everywhere().filter(({ from }) => from.kind !== 'key');
    expect(ours.length).toBeGreaterThan(100);
    for (const { symbol, what } of ours) {
      expect(symbol).toMatch(/^[A-Za-z]\w*$/);
      expect(what).toMatch(/\w+ \w+/);
    }
  });

  test('shares its symbol with no other', () => {
    const meaning = new Map<string, string>();
    for (const { symbol, what } of everywhere()) {
      expect(meaning.get(symbol) ?? what).toBe(what);
      meaning.set(symbol, what);
    }
  });

  test('is a length in mm, or a magnification', () => {
    const magnifications = [given, withoutInfinity].map((each) => setOut(each).figures);
    for (const { reachable, reachableOtherSide } of magnifications)
      expect([reachable.unit, reachableOtherSide.unit]).toEqual(['magnification', 'magnification']);
    const rest = everywhere().filter(({ symbol }) => !['m_reach', 'm_other'].includes(symbol));
    for (const { unit } of rest) expect(unit).toBe('mm');
  });

  test('comes from somewhere', () => {
    for (const figure of everywhere()) {
      const { from } = figure;
      if (from.kind === 'key') continue;
      if (from.kind === 'constant') expect(from.source).toMatch(/\w+ \w+/);
      else expect(formulasOf(figure).length).toBeGreaterThan(0);
      for (const { source } of formulasOf(figure)) expect(source).toMatch(/\w+ \w+/);
    }
  });

  test('is what its formula gives, or the claim that governs', () => {
    for (const figure of everywhere()) {
      const values = formulasOf(figure).map(({ formula }) => formula.value);
      const { from } = figure;
      if (from.kind === 'formula') expect(values).toEqual([figure.value]);
      if (from.kind === 'claims')
        expect(from.by === 'widest' ? Math.max(...values) : Math.min(...values)).toBe(figure.value);
    }
  });
});

describe('where a figure comes from is told with it', () => {
  const practice = 'common practice, no source';
  const slide = 'derived, from the three conditions of the slide';
  const sources = (symbol: string) => formulasOf(bySymbol(symbol)).map(({ source }) => source);

  test.each([
    'r', // section 6, marked [P]
    'p_n', // a twentieth of f: our choice
    'a_R', // 3 of free air: our choice
    'b_r', // a rail of 16: our choice
  ])('%s holds a number that was chosen', (symbol) => expect(sources(symbol)).toEqual([practice]));

  test('of the overlap, what was chosen and what follows', () =>
    // section 7: 30 and a fifth of the width are [P], two felt bands and room follow from the felt
    expect(sources('O').map((source) => source === practice)).toEqual([true, false, true]));

  test.each([
    'm_reach',
    'm_other',
    'f_s',
    'L_r',
    'L_f',
    'O_far', // section 7, the three inequalities
  ])('%s follows from the slide', (symbol) => expect(sources(symbol)).toEqual([slide]));

  test('the closest seat is the smallest of its claims, the farthest the largest', () => {
    const { closest, farthest } = setOut(given);
    expect(closest.from).toMatchObject({ kind: 'claims', by: 'narrowest' });
    expect(farthest.from).toMatchObject({ kind: 'claims', by: 'widest' });
  });

  test('a length that follows from others has one claim, itself', () => {
    const { rearOutside } = setOut(given);
    expect(rearOutside.claims).toEqual([{ because: 'rear box inside and two walls', value: 144.6 }]); // 136.6 + 2·4
  });

  test('of a farthest focus is spoken only where one is asked', () => {
    const inputs = (each: SettingOutGiven) => {
      const { closest, figures } = setOut(each);
      return [closest, figures.reachable, figures.reachableOtherSide].map((figure) =>
        formulasOf(figure).some(({ formula }) => formula.inputs.some(({ symbol }) => symbol === 'm_far')),
      );
    };
    expect(inputs(given)).toEqual([false, false, false]);
    expect(inputs(withoutInfinity)).toEqual([true, true, true]);
  });
});

test('plain numbers of the rod and its figures are the same', () => {
  const rod = setOut(given);
  const { clearance, travel, reserve, slack, reachable, reachableOtherSide, overlapFarthest } = rod.figures;
  expect(
    [clearance, travel, reserve, slack, reachable, reachableOtherSide, overlapFarthest].map((f) => f.value),
  ).toEqual([
    rod.clearance,
    rod.travel,
    rod.reserve,
    rod.slack,
    rod.reachable,
    rod.reachableOtherSide,
    rod.overlapFarthest,
  ]);
  expect(rod.figures.roomRoundLens.value).toBeCloseTo(35.3, 9); // 136.6/2 − (30 + 3)
  expect(setOut(tooWide).figures.roomRoundLens.value).toBeCloseTo(-0.7, 9); // 68.3 − (66 + 3)
});
