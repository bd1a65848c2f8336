import { describe, expect, test } from 'vitest';
import { sheetsOf, testedSheets } from '../../src/exposure/logged-sheets.js';
import type { LogEntry, ResultEntry, SettingEntry } from '../../src/model/sitting-log.js';
import { resultEntry, settingEntry } from './entries.js';

const setting = (sheet: number, more: Partial<SettingEntry> = {}): LogEntry => ({
  kind: 'setting',
  setting: settingEntry(sheet, more),
});

const result = (sheet: number, more: Partial<ResultEntry> = {}): LogEntry => ({
  kind: 'result',
  result: resultEntry(sheet, { looks: 'right', ...more }),
});

const together = (...entries: readonly LogEntry[]) => {
  const sheets = sheetsOf(entries);
  if ('faults' in sheets) throw new Error(JSON.stringify(sheets.faults));
  return sheets;
};

describe('the sheets of a log', () => {
  test('a setting that is given out again replaces the first', () => {
    const { sheets, notes } = together(setting(1), setting(1, { energy: 500 }), result(1));
    expect(sheets.map((sheet) => sheet.setting.energy)).toEqual([500]);
    expect(notes).toEqual([]);
  });

  test('not after its result, as where two programs wrote at once, and that is told', () => {
    const { sheets, notes } = together(setting(1), result(1), setting(1, { energy: 500 }));
    expect(sheets.map((sheet) => [sheet.setting.energy, sheet.result?.looks])).toEqual([[400, 'right']]);
    expect(notes).toEqual(['Sheet 1 was given out again after its result; that is passed over.']);
  });

  test('a second result replaces the first, and that is told', () => {
    const { sheets, notes } = together(setting(1), result(1), result(1, { looks: 'too dark', by: 1 }));
    expect(sheets.map((sheet) => sheet.result?.looks)).toEqual(['too dark']);
    expect(notes).toEqual(['Sheet 1 has a second result; the later one holds.']);
  });

  test.each([
    {
      more: { process: 'reversal', batch: 'B' },
      says: ['Sheet 1 was given out for negative and then for reversal, batch B; the later one holds.'],
    },
    { more: { batch: 'B' }, says: [] },
  ] as const)('one number for two series, as where two programs wrote at once, is told: $more', ({ more, says }) => {
    expect(together(setting(1), setting(1, more)).notes).toEqual(says);
  });

  const strip = setting(1, { strips: [-1, 0, 1] });
  test.each([
    { name: 'an unknown sheet', entries: [setting(1), result(2)], path: 'result.sheet' },
    { name: 'a strip of a whole sheet', entries: [setting(1), result(1, { strip: 1 })], path: 'result.strip' },
    {
      name: 'densities of a whole sheet',
      entries: [setting(1), result(1, { densities: [1, 2] })],
      path: 'result.densities',
    },
    { name: 'a strip too many', entries: [strip, result(1, { strip: 4 })], path: 'result.strip' },
    { name: 'a density too few', entries: [strip, result(1, { densities: [1, 2] })], path: 'result.densities' },
    { name: 'no strip of a test strip', entries: [strip, result(1)], path: 'result.looks' },
    {
      name: 'a time of a flash',
      entries: [setting(1), result(1, { gave: { energy: null, time: 2 } })],
      path: 'result.gave.time',
    },
    {
      name: 'an energy of steady light',
      entries: [setting(1, { energy: null, time: 1 }), result(1, { gave: { energy: 100, time: null } })],
      path: 'result.gave.energy',
    },
  ])('$name is shown where it stands', ({ entries, path }) => {
    const sheets = sheetsOf(entries);
    expect('faults' in sheets ? sheets.faults.map((fault) => [fault.index, fault.path.join('.')]) : []).toEqual([
      [1, path],
    ]);
  });
});

describe('as they were really given', () => {
  const series = { process: 'negative', paper: null, batch: null } as const;

  test('half the energy is a stop less, on every strip of it', () => {
    const { sheets } = together(
      setting(1, { dialled: 0.5, strips: [-0.5, 0.5, 1.5] }),
      result(1, { strip: 2, gave: { energy: 200, time: null } }),
    );
    // V5.34 [verified: S46]: half the energy is a stop
    expect(testedSheets(sheets, series, null)).toMatchObject([{ given: -0.5, strips: [-1.5, -0.5, 0.5] }]);
  });

  test('a time counts without what it loses', () => {
    const { sheets } = together(
      setting(1, { energy: null, time: 20.417 }),
      result(1, { gave: { energy: null, time: 50.62 } }),
    );
    // V5.57 [verified: S54]: 20.417 s by 1.31 are 10 s metered; 20^1.31 is 50.62 s by hand: a stop, and not 1.31
    expect(testedSheets(sheets, series, { exponent: 1.31 })[0]?.given).toBeCloseTo(1, 3);
  });

  test('a botched sheet is left out, and a strip of it need not be named', () => {
    const { sheets } = together(
      setting(1),
      result(1),
      setting(2, { strips: [-1, 0, 1] }),
      result(2, { looks: 'void' }),
      setting(3),
      result(3),
      result(3, { looks: 'void' }),
    );
    expect(testedSheets(sheets, series, null).map(({ sheet }) => sheet)).toEqual([1]);
  });

  test('only the sheets of the series count', () => {
    const { sheets } = together(setting(1), setting(2, { batch: 'B' }), setting(3, { process: 'reversal' }));
    expect(testedSheets(sheets, series, null).map(({ sheet }) => sheet)).toEqual([1]);
  });
});
