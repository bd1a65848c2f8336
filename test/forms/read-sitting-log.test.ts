import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { keyTable } from '../../src/design/key-table.js';
import { readSittingLog, sittingLogJsonSchema } from '../../src/forms/read-sitting-log.js';
import { LOG_HEAD, resultText, settingText } from '../../src/forms/write-sitting-log.js';
import { castColours, looks, type ResultEntry, type SettingEntry } from '../../src/model/sitting-log.js';

const setting: SettingEntry = {
  sheet: 1,
  at: '2026-11-29 14:03',
  process: 'reversal',
  paper: 'glossy paper, grade 2',
  batch: 'B: 1184 # old',
  dialled: 0.5417,
  strips: [],
  colourPack: { cyan: 0, magenta: 0.1, yellow: 0 },
  magnification: 0.25,
  aperture: 16,
  speed: 6,
  filterFactor: 1.5,
  energy: 812.3,
  pops: 1,
  lampDistance: 1500,
  time: null,
};

const result: ResultEntry = {
  sheet: 1,
  at: null,
  looks: 'too dark',
  by: 1.5,
  strip: null,
  density: null,
  densities: [],
  wanted: null,
  cast: 'green',
  castBy: 0.2,
  gave: { energy: 700, time: null },
  bath: { start: 24, end: 22.5 },
  note: 'the "second" pop: late',
};

const read = (text: string) => {
  const log = readSittingLog(text, 'sitting.yaml');
  if ('problems' in log) throw new Error(JSON.stringify(log.problems));
  return { entries: log.entries.map(({ entry }) => entry), notes: log.notes };
};

const problemsOf = (text: string) => {
  const log = readSittingLog(text, 'sitting.yaml');
  return 'problems' in log ? log.problems : [];
};

describe('an entry that is written', () => {
  test('reads back as it was', () => {
    const { entries, notes } = read(`${LOG_HEAD}${settingText(setting)}\n${resultText(result)}`);
    expect(entries).toEqual([
      { kind: 'setting', setting },
      { kind: 'result', result },
    ]);
    expect(notes).toEqual([]);
  });

  test('with any words in it', () => {
    const line = fc
      .string({ unit: 'grapheme', minLength: 1, maxLength: 30 })
      .filter(
        (text) =>
          text.trim() !== '' &&
          !/[\p{Cc}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff\ufffd]/u.test(text),
      );
    fc.assert(
      fc.property(line, line, (batch, note) => {
        const { entries } = read(settingText({ ...setting, batch }) + resultText({ ...result, note }));
        expect(entries).toEqual([
          { kind: 'setting', setting: { ...setting, batch } },
          { kind: 'result', result: { ...result, note } },
        ]);
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  test('is what its JSON Schema describes', () => {
    const validate = new Ajv2020({ strict: false }).compile(sittingLogJsonSchema());
    expect(validate({ setting: { sheet: 1, process: 'reversal', magnification: '1:4', aperture: 'f/16' } })).toBe(true);
    expect(validate({ result: { sheet: 1, looks: 'too dark', by: 1 } })).toBe(true);
    expect(validate({ result: { sheet: 1, looks: 'murky' } })).toBe(false);
    expect(validate({ outcome: {} })).toBe(false);
  });
});

test('every key of an entry is described, with an example, and what holds where it is left out', () => {
  for (const { path, description, example, required, whenAbsent } of keyTable(sittingLogJsonSchema())) {
    expect.soft(description, path).not.toBe('');
    expect.soft(example, path).not.toBe('');
    expect.soft(required || whenAbsent !== null, path).toBe(true);
  }
});

describe('a log that people write', () => {
  test('keeps comments, blank lines and line ends of another system', () => {
    const { entries } = read(
      '# mine\r\n\r\n--- # first\r\nsetting: { sheet: 1, process: negative, magnification: 1:4, aperture: 16 }\r\n...\r\n# later\r\n---\r\nresult: { sheet: 1, looks: right }\r\n... \r\n',
    );
    expect(entries.map(({ kind }) => kind)).toEqual(['setting', 'result']);
  });

  test.each([
    { text: '---\nresult:\n  sheet: 1\n  looks: too drak\n...\n', at: [4, 10], what: 'too drak' },
    {
      text: '# a\n---\nresult: { sheet: 1, looks: right }\n...\n\n---\nresult:\n  sheet: 1\n  looks: too dark\n  by: 0.3\n...\n',
      at: [10, 7],
      what: '0.3',
    },
    { text: '---\nresult:\n  sheet: 1\n  looks: too dark\n...\n', at: [4, 10], what: 'By how much' },
    { text: '---\nresult:\n  sheet: 1\n...\n', at: [2, 1], what: 'What came out is not said' },
    { text: '---\nresult: { sheet: 1, looks: right, by: 1 }\n...\n', at: [2, 35], what: 'too dark or too light' },
    { text: '---\nresult: { sheet: 1, looks: void, cast: red }\n...\n', at: [2, 34], what: 'void sheet is not judged' },
    {
      text: '---\nresult: { sheet: 1, looks: right, cast: red, castBy: 2 }\n...\n',
      at: [2, 54],
      what: 'no cast that an eye can weigh',
    },
    { text: '---\nresult: { sheet: 1, looks: right, castBy: 0.1 }\n...\n', at: [2, 35], what: 'Of which colour' },
    {
      text: '---\nresult: { sheet: 1, looks: right }\nsetting: { sheet: 1, process: negative, magnification: 1:4, aperture: 16 }\n...\n',
      at: [2, 1],
      what: 'not both',
    },
    { text: '---\nresult: { sheet: 1, lokks: right }\n...\n', at: [2, 21], what: 'not known here' },
    {
      text: '---\nresult: { sheet: 1, looks: right, bath: { start: 24,5 C } }\n...\n',
      at: [2, 50],
      what: 'decimal comma',
    },
    { text: '---\nresult: { sheet: 1, looks: right\n...\n', at: [2, 9], what: 'not closed' },
    { text: '# a\nname: Dunlin\n', at: [2, 1], what: 'outside of every entry' },
    { text: '---\n...\n', at: [1, 1], what: 'single value' },
  ])('is shown where it is wrong: $what', ({ text, at, what }) => {
    const [first, ...others] = problemsOf(text);
    expect(first?.what).toContain(what);
    expect([first?.line, first?.column]).toEqual(at);
    expect(others).toEqual([]);
    expect(first?.accepted).not.toBe('');
  });
});

describe('an entry that was not written whole', () => {
  const first = `${LOG_HEAD}${settingText(setting)}`;
  const torn = `\n${resultText({ ...result, note: 'größer und länger' })}`;
  const next = `\n${settingText({ ...setting, sheet: 2 })}`;
  const bytes = (text: string) => new TextEncoder().encode(text);

  test('cut at any byte, spoils nothing before or behind it', () => {
    for (let length = 0; length < bytes(torn).length; length++) {
      const left = new TextDecoder().decode(bytes(torn).subarray(0, length));
      const { entries, notes } = read(first + left + next);
      const whole = left.trimEnd().endsWith('...');
      const numbers = entries.map((entry) => (entry.kind === 'setting' ? entry.setting.sheet : 'result'));
      expect(numbers, `cut after ${length} bytes`).toEqual(whole ? [1, 'result', 2] : [1, 2]);
      expect(notes.length, `cut after ${length} bytes`).toBe(whole || !left.includes('---') ? 0 : 1);
    }
  });

  test('at the end of the file is told by its line', () => {
    const { entries, notes } = read(`${first}\n---\nresult:\n  she`);
    expect(entries).toHaveLength(1);
    expect(notes[0]).toMatch(/^The entry at line 21 was not written whole/);
  });

  test('nothing is made of a block that the disk lost', () => {
    expect(read(`${first}\n${'\0'.repeat(100)}${next}`).entries).toHaveLength(2);
    expect(read(`${first}\n---\nresult:\n${'\0'.repeat(100)}${next}`).entries).toHaveLength(2);
  });
});

test('all words that an entry may hold are told apart', () => {
  for (const look of looks)
    for (const cast of castColours) {
      const judged =
        look === 'void' ? { by: null, cast: null, castBy: null } : { by: look === 'right' ? null : 1, cast };
      const one = { ...result, looks: look, ...judged };
      expect(read(resultText(one)).entries).toEqual([{ kind: 'result', result: one }]);
    }
});
