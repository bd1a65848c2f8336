import { describe, expect, test } from 'vitest';
import { noPack } from '../../src/exposure/colour-cast.js';
import { dialIn } from '../../src/exposure/dial-in.js';
import type { TestedSheet } from '../../src/exposure/tested-sheet.js';
import type { Process, SheetResult } from '../../src/model/sitting-log.js';
import { resultEntry } from './entries.js';
import { chance, look, type Seen, type Sitting, sittingBy } from './simulated-sitter.js';

const nothing: SheetResult = resultEntry(0);

const sheet = (number: number, given: number, result: Partial<SheetResult>, more: Partial<TestedSheet> = {}) => ({
  sheet: number,
  given,
  strips: [],
  pack: noPack,
  bath: null,
  ...more,
  result: { ...nothing, ...result },
});

type Dialler = (process: Process, seen: readonly { readonly given: number; readonly seen: Seen }[]) => number;

/** What is known is told again for each sheet; the same tale has the same end. */
function remembering(dialler: Dialler): Dialler {
  const known = new Map<string, number>();
  return (process, seen) => {
    const tale = JSON.stringify([process, seen]);
    const next = known.get(tale) ?? dialler(process, seen);
    known.set(tale, next);
    return next;
  };
}

const ours = remembering((process, seen) => {
  const advice = dialIn(
    process,
    seen.map((one, index) => sheet(index + 1, one.given, one.seen)),
  );
  return advice?.given ?? Number.NaN;
});

/** Takes every judgement for what it says, the first step held to a stop. */
const naive: Dialler = (process, seen) => {
  const last = seen.at(-1);
  if (last === undefined) return 0;
  const sign = (last.seen.looks === 'too dark') === (process === 'reversal') ? 1 : -1;
  const asked = sign * (last.seen.by ?? 0);
  return last.given + (seen.length === 1 ? Math.max(-1, Math.min(1, asked)) : asked);
};

const wrongWay = remembering((process, seen) => ours(process === 'negative' ? 'reversal' : 'negative', seen));

/** Settings of the first sheets of one sitting, in stops more than the first. */
function settings(dialler: Dialler, process: Process, sitting: Sitting, even: () => number, sheets: number) {
  const seen: { given: number; seen: Seen }[] = [];
  let given = 0;
  const all = [given];
  while (all.length < sheets) {
    seen.push({ given, seen: look(sitting, given, process, even) });
    given = dialler(process, seen);
    all.push(given);
  }
  return all;
}

/** Share of sittings whose third sheet is exposed within a third of a stop of right. */
function reached(dialler: Dialler, process: Process, trials: number, seed: number): number {
  const even = chance(seed);
  let count = 0;
  for (let trial = 0; trial < trials; trial++) {
    const sitting = sittingBy(even);
    const third = settings(dialler, process, sitting, even, 3).at(-1) ?? Number.NaN;
    if (Math.abs(third - sitting.right) <= 1 / 3) count += 1;
  }
  return count / trials;
}

describe.each(['negative', 'reversal'] as const)('a simulated sitter and paper, %s', (process) => {
  test('is exposed within a third of a stop on the third sheet in 95 of 100 sittings', () => {
    expect(reached(ours, process, 500, 1)).toBeGreaterThanOrEqual(0.95);
    // 500 trials stray by 0.9 of 100: the long run says whether they were lucky
    expect(reached(ours, process, 8000, 2)).toBeGreaterThanOrEqual(0.95);
  });

  test('is not by somebody who takes each judgement for what it says', () => {
    expect(reached(naive, process, 500, 1)).toBeLessThan(0.95);
    expect(reached(naive, process, 8000, 2)).toBeLessThan(0.94);
  });

  test('is hardly ever where the process is mistaken', () => {
    expect(reached(wrongWay, process, 500, 1)).toBeLessThan(0.3);
  });

  test('the second sheet is never more than a stop from the first', () => {
    const even = chance(3);
    for (let trial = 0; trial < 200; trial++) {
      const [, second = Number.NaN] = settings(ours, process, sittingBy(even), even, 2);
      expect(Math.abs(second)).toBeLessThanOrEqual(1 + 1e-9);
    }
  });

  test.each([
    { right: 4, scale: 1 },
    { right: -4, scale: 1.3 },
    { right: 2.5, scale: 0.5 },
    { right: -3, scale: 1.7 },
  ])('what is farther off than expected, $right stops at scale $scale, is reached by the sixth sheet', (sitting) => {
    // an eye that judges in half stops, give or take three deviations of its noise (the worst of some hundred looks), sees no more
    const seenAsRight = (0.25 + 3 * 0.1) / sitting.scale;
    const even = chance(4);
    for (let trial = 0; trial < 20; trial++) {
      const sixth = settings(ours, process, sitting, even, 6).at(-1) ?? Number.NaN;
      expect(Math.abs(sixth - sitting.right)).toBeLessThanOrEqual(seenAsRight);
    }
  });
});

const said = (process: Process, ...sheets: readonly TestedSheet[]) => {
  const advice = dialIn(process, sheets);
  if (advice === null) throw new Error('nothing was advised');
  return { ...advice, text: advice.reasoning.join(' ') };
};

// "Reversal: too dark → more exposure"; a negative that is too dense was exposed too much: trade, no source
describe('which way exposure moves', () => {
  test.each([
    { process: 'reversal', looks: 'too dark', way: 1 },
    { process: 'reversal', looks: 'too light', way: -1 },
    { process: 'negative', looks: 'too dark', way: -1 },
    { process: 'negative', looks: 'too light', way: 1 },
  ] as const)('$process, $looks', ({ process, looks, way }) => {
    const { change, text } = said(process, sheet(1, 0.4, { looks, by: 1 }));
    expect(Math.sign(change ?? 0)).toBe(way);
    expect(text).toContain(way > 0 ? 'asks for more' : 'asks for less');
  });
});

describe('what was seen', () => {
  test('the first step is held, and that is said', () => {
    const { change, text } = said('reversal', sheet(1, 0, { looks: 'too dark', by: 2 }));
    expect(change).toBeCloseTo(1, 9);
    expect(text).toContain('One sheet alone moves the setting by no more than 1 stop.');
  });

  test.each([
    { result: { looks: 'too dark', by: 1.5 }, says: /it then needs between 1\.\d and 2(\.\d)? stops more:/ },
    { result: { looks: 'too light', by: 1.5 }, says: /it then needs between 1\.\d and 2(\.\d)? stops less:/ },
    { result: { looks: 'right' }, says: /between 0\.\d stop less and 0\.\d stop more:/ },
    { result: { looks: 'too light', by: 0.5 }, says: /by half a stop: / },
  ] as const)('the stretch goes from near to far: $says', ({ result, says }) => {
    expect(said('reversal', sheet(1, 0, result)).text).toMatch(says);
  });

  test('a sheet that looks right keeps its setting', () => {
    expect(said('negative', sheet(1, 0.3, { looks: 'right' })).change).toBeCloseTo(0, 9);
  });

  test('three sheets that agree are the end of it, with how sure that is', () => {
    const { done, change, chance, text } = said(
      'reversal',
      sheet(1, 0, { looks: 'too dark', by: 1 }),
      sheet(2, 1, { looks: 'right' }),
      sheet(3, 1, { looks: 'right' }),
    );
    expect({ done, change }).toEqual({ done: true, change: 0 });
    expect(chance).toBeGreaterThan(0.95);
    expect(text).toMatch(/Done: Sheet 3 .* as sure as 9\d in 100/);
  });

  test.each([
    {
      process: 'negative',
      first: 'too light',
      second: 'too light',
      by: 1.5,
      given: 0.8,
      says: '0.8 stop more than sheet 1',
    },
    {
      process: 'reversal',
      first: 'too dark',
      second: 'too dark',
      by: 1.5,
      given: 0.8,
      says: '0.8 stop more than sheet 1',
    },
    { process: 'negative', first: 'too dark', second: 'too dark', by: 2, given: -1, says: '1 stop less than sheet 1' },
    {
      process: 'reversal',
      first: 'too dark',
      second: 'too light',
      by: 1,
      given: 0,
      says: 'the same exposure as sheet 1',
    },
  ] as const)(
    'what contradicts is told and starts anew: $process, $says',
    ({ process, first, second, by, given, says }) => {
      const { text, done, change } = said(
        process,
        sheet(1, 0, { looks: first, by: 1 }),
        sheet(2, given, { looks: second, by }),
      );
      const alone = said(process, sheet(2, given, { looks: second, by }));
      expect(text).toContain('contradicts');
      expect(text).toContain(says);
      expect({ done, change }).toEqual({ done: false, change: alone.change });
    },
  );

  test('a thousand sheets of a series are no burden, and the latest of them count', () => {
    const many = Array.from({ length: 1000 }, (_, index) =>
      sheet(index + 1, 0, { looks: 'too dark', by: index % 2 === 0 ? 0.5 : 1 }),
    );
    const { given, chance } = said('reversal', ...many);
    expect(given).toBeGreaterThan(0.4);
    expect(given).toBeLessThan(1.5);
    expect(chance).toBeGreaterThan(0.3);
  });

  test('rounding to half stops is no contradiction', () => {
    expect(
      said('reversal', sheet(1, 0, { looks: 'too dark', by: 0.5 }), sheet(2, 0.2, { looks: 'too dark', by: 0.5 })).text,
    ).not.toContain('contradicts');
  });

  // asked for 2 more, then with 2.33 more for 1.5 less: 3.5/2.33 is a scale of 1.5, beyond the 1.3 that is usual
  const steep = [sheet(1, 0, { looks: 'too dark', by: 2 }), sheet(2, 2.33, { looks: 'too light', by: 1.5 })];
  test('sheets that only an unusual scale explains are told, and no chance is claimed', () => {
    const { chance, done, text, change } = said('reversal', ...steep);
    expect({ chance, done }).toEqual({ chance: null, done: false });
    expect(text).toContain('do not fit together: a stop would have to look like 1.4 stops');
    expect(text).not.toContain('in 100');
    expect(change).toBeLessThan(-0.5);
  });

  test('nor is it done after one more that looks right; four that agree are believed', () => {
    const right = (number: number) => sheet(number, 1.35, { looks: 'right' });
    expect(said('reversal', ...steep, right(3))).toMatchObject({ chance: null, done: false });
    expect(said('reversal', ...steep, right(3), right(4)).chance).toBeGreaterThan(0.9);
  });

  test('two that look alike though a stop apart leave the next one open', () => {
    const alike = [sheet(1, 0, { looks: 'too dark', by: 1.5 }), sheet(2, 1.2, { looks: 'too dark', by: 1.5 })];
    expect(said('reversal', ...alike).chance).toBeLessThan(0.5);
  });

  const strips = [-2, -1, 0, 1, 2];
  test('the best strip is where the next sheet starts from, however far from the middle', () => {
    expect(said('negative', sheet(1, 0, { looks: 'right', strip: 4 }, { strips })).given).toBeCloseTo(1, 9);
    expect(said('reversal', sheet(1, 0, { looks: 'right', strip: 2 }, { strips })).given).toBeCloseTo(-1, 9);
  });

  test('the best strip at an end leaves room beyond it', () => {
    const { given, text } = said('negative', sheet(1, 0, { looks: 'right', strip: 5 }, { strips }));
    expect(given).toBeGreaterThan(2);
    expect(text).toContain('may lie beyond it');
  });
});

describe('developers of other temperature', () => {
  const at = (bath: number | null, one: ReturnType<typeof sheet>) => ({ ...one, bath });
  const seen = [
    sheet(1, 0, { looks: 'too dark', by: 1 }),
    sheet(2, 1, { looks: 'right' }),
    sheet(3, 1, { looks: 'right' }),
  ] as const;
  const [first, second, third] = seen;

  test.each([
    { baths: [24, 23, 22.5], done: true },
    { baths: [null, 24, null], done: true },
    { baths: [16, 16, 24], done: false },
    { baths: [24, 24, 16], done: false },
  ])('$baths: done $done', ({ baths: [a = null, b = null, c = null], done }) => {
    expect(said('reversal', at(a, first), at(b, second), at(c, third)).done).toBe(done);
  });

  test('are set aside, which is told, and the last counts alone', () => {
    const { change, chance, text } = said('reversal', at(24, first), at(24, second), at(16, third));
    const alone = said('reversal', third);
    expect({ change, chance }).toEqual({ change: alone.change, chance: alone.chance });
    expect(text).toContain(
      'The developer of sheet 3 was at 16 °C; sheet 2, at 24 °C, was more than 2 °C from that and is set aside, and 1 before it as well.',
    );
  });

  test('come back to where they were, and the sheet between them is left out', () => {
    const { done, text } = said(
      'reversal',
      at(24, first),
      at(16, sheet(2, 1, { looks: 'too dark', by: 1.5 })),
      at(24, second),
      at(24, third),
    );
    expect(done).toBe(true);
    expect(text).toContain('sheet 2, at 16 °C');
  });

  test('teach no slope, and the density that was wanted still is', () => {
    const { text } = said(
      'negative',
      at(24, sheet(1, 0, { density: 0.5, wanted: 1 })),
      at(16, sheet(2, 1, { density: 0.7 })),
    );
    expect(text).toContain('0.7, and 1 is wanted. The slope was taken as 1.7');
  });
});

describe('what was measured', () => {
  test('counts alone where the eye judged too, and that is said', () => {
    const both = said('negative', sheet(1, 0, { looks: 'too light', by: 2, density: 0.9, wanted: 1 }));
    expect(both.change).toBe(said('negative', sheet(1, 0, { density: 0.9, wanted: 1 })).change);
    expect(both.text).toContain('The eye says too light by 2 stops; where a density was read, it counts alone.');
  });

  test('is told without a sign that another stands beside', () => {
    const { text } = said('reversal', sheet(1, 0, { density: 0.9, wanted: 1.1 }));
    // 0.2/1.7 = 0.118 in log exposure, by 0.30103 for a stop 0.39
    expect(text).toContain('= −0.118 in the logarithm of exposure: 0.39 stop less.');
  });

  // change in log exposure = (wanted - got) / slope; one stop is 0.30103: V5.51, ND 0.3 a stop within 0.003
  test('by the slope of the strip', () => {
    const strips = [-1, 0, 1];
    // a straight line of 0.598 for each tenfold: 0.18 between strips a stop apart
    const densities = [0.62, 0.8, 0.98];
    const { change, given, text } = said('negative', sheet(1, 0, { densities, wanted: 0.9 }, { strips }));
    expect(given).toBeCloseTo(1 - 0.08 / 0.18, 2);
    expect(change).toBeCloseTo(-0.08 / 0.18, 2);
    expect(text).toContain('learned from 3 exposures');
  });

  test('give or take what the reading and the slope are in doubt by', () => {
    // by hand (law of propagation, from memory: JCGM 100:2008, 5.1.2), each density good to 0.02 at least: u(slope) is
    // 0.02/√(2 · 0.30103²) = 0.047; 1.33 stops · 0.047/0.598 and 0.02/0.598/0.30103 stops together are 0.153, twice that 0.31
    const strips = [-1, 0, 1];
    const { text } = said('negative', sheet(1, 0, { densities: [0.62, 0.8, 0.98], wanted: 1.22 }, { strips }));
    expect(text).toContain('1.33 stops more, give or take 0.31 stop (95 in 100)');
    // where they scatter more than that, by their scatter: 0.0408 about a slope of 0.698, in the same way 0.367
    const bent = said('negative', sheet(1, 0, { densities: [0.56, 0.82, 0.98], wanted: 1.22 }, { strips }));
    expect(bent.text).toContain('give or take 0.37 stop (95 in 100)');
  });

  test('the toe of the curve is no part of its slope', () => {
    // 0.18 a stop, 0.598 for each tenfold, but for the first two
    const strips = [-2, -1, 0, 1];
    const { text } = said('negative', sheet(1, 0, { densities: [0.1, 0.15, 0.33, 0.51], wanted: 0.6 }, { strips }));
    expect(text).toContain('The slope 0.6 for each tenfold of exposure was learned from 3 exposures.');
  });

  test('two sheets of nearly one exposure have no slope', () => {
    // a tenth of a stop and a reading that is 0.1 off would make it 3.3 times what it is
    const { text } = said('negative', sheet(1, 0, { density: 0.5, wanted: 1 }), sheet(2, 0.1, { density: 0.6 }));
    expect(text).toContain('one exposure alone has no slope');
  });

  test('by a slope that is only taken, near enough is what is so for the flattest material too', () => {
    // negative film of 0.5 for each tenfold: a third of a stop is 0.0502 of its density
    const at = (density: number) => said('negative', sheet(1, 0, { density, wanted: 1 })).done;
    expect([at(0.951), at(0.949), at(1.049), at(1.051)]).toEqual([true, false, true, false]);
  });

  test('by reversal the same densities in the other order', () => {
    const { given } = said(
      'reversal',
      sheet(1, 0, { densities: [0.98, 0.8, 0.62], wanted: 0.9 }, { strips: [-1, 0, 1] }),
    );
    expect(given).toBeCloseTo(-1 + 0.08 / 0.18, 2);
  });

  test('without a strip by a slope that is named, and no more than a stop', () => {
    const { change, text } = said('negative', sheet(1, 0, { density: 0.4, wanted: 1.4 }));
    expect(change).toBeCloseTo(1, 9);
    expect(text).toContain('was taken as 1.7');
    expect(said('reversal', sheet(1, 0, { density: 0.4, wanted: 1.4 })).change).toBeCloseTo(-1, 9);
  });

  test('two sheets are a strip of two', () => {
    const { change, done, text } = said(
      'negative',
      sheet(1, 0, { density: 0.5, wanted: 1 }),
      sheet(2, 1, { density: 0.7, wanted: null }),
    );
    expect(text).toContain('learned from 2 exposures');
    expect({ change: Math.round((change ?? 0) * 100), done }).toEqual({ change: 100, done: false });
  });

  test('toe and shoulder have no slope, and that is said', () => {
    const { text } = said(
      'negative',
      sheet(1, 0, { densities: [0.06, 0.07, 0.07], wanted: 0.75 }, { strips: [-1, 0, 1] }),
    );
    expect(text).toContain('toe or the shoulder');
    expect(text).toContain('was taken as 1.7');
  });

  test('densities that go against the process move nothing', () => {
    const { change, done, text } = said(
      'reversal',
      sheet(1, 0, { densities: [0.6, 0.8, 1], wanted: 0.9 }, { strips: [-1, 0, 1] }),
    );
    expect({ change, done }).toEqual({ change: 0, done: false });
    expect(text).toContain('contradict the process');
  });

  test('a third of a stop is done', () => {
    const densities = [0.62, 0.8, 0.98];
    const { done, given } = said('negative', sheet(1, 0, { densities, wanted: 0.75 }, { strips: [-1, 0, 1] }));
    expect({ done, given }).toEqual({ done: true, given: 0 });
  });

  test('which density is wanted must have been said once', () => {
    const { text, change } = said('negative', sheet(1, 0, { density: 0.7 }));
    expect(text).toContain('which density is wanted was not said');
    expect(change).toBe(0);
  });
});

describe('a colour cast', () => {
  test('by reversal half of it is taken away, by its complement', () => {
    const { pack, text } = said('reversal', sheet(1, 0, { looks: 'too dark', by: 1, cast: 'green', castBy: 0.2 }));
    expect(pack).toEqual({ cyan: 0, magenta: 0.1, yellow: 0 });
    expect(text).toContain('CC10M on the lens instead of no filter');
    expect(text).toContain('Exposure and filters change together');
  });

  test('a strong one goes by no more than 0.20 at a time, and that is said', () => {
    const { pack, text } = said('reversal', sheet(1, 0, { looks: 'right', cast: 'green', castBy: 0.6 }));
    expect(pack).toEqual({ cyan: 0, magenta: 0.2, yellow: 0 });
    expect(text).toContain('half of what the eye asks, but no more than 0.2 at a time: CC20M');
    const weak = said('reversal', sheet(1, 0, { looks: 'right', cast: 'green', castBy: 0.4 }));
    expect(weak.pack).toEqual(pack);
    expect(weak.text).not.toContain('no more than');
  });

  test('on a negative nothing is changed, with the reason', () => {
    const { pack, text } = said('negative', sheet(1, 0, { looks: 'right', cast: 'green', castBy: 0.2 }));
    expect(pack).toEqual(noPack);
    expect(text).toContain('set right by the filters of its print');
  });

  test('half of a faint one is less than a filter', () => {
    const { pack, text } = said('reversal', sheet(1, 0, { looks: 'right', cast: 'red', castBy: 0.05 }));
    expect(pack).toEqual(noPack);
    expect(text).toContain('less than the weakest filter');
  });
});

test('sheets that nobody looked at advise nothing', () => {
  expect(dialIn('reversal', [{ ...sheet(1, 0, {}), result: null }])).toBeNull();
});
