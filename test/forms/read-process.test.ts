import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { keyTable } from '../../src/design/key-table.js';
import { processJsonSchema } from '../../src/forms/process-file.js';
import { readProcess, readProcessToday } from '../../src/forms/read-process.js';
import { changed } from '../design/reading.js';
import { exampleText, processOf } from '../step-sheet/processes.js';

const file = `name: trial
temperature: 75 F
steps:
  - { name: first, time: 1m30s, volume: 250 ml, reuse: 4, light: safe }
  - { name: second, time: 90 s, volume: none }
`;

function problemOf(text: string) {
  const read = readProcess(text, 'p.yaml');
  if (!('problems' in read)) throw new Error('the file was accepted');
  expect(read.problems).toHaveLength(1);
  return read.problems[0];
}

describe('a process file', () => {
  test('is read with its units, and defaults for what is left out', () => {
    const process = processOf(file);
    // (75 - 32) × 5/9
    expect(process.temperature).toBeCloseTo(23.889, 3);
    expect(process).toMatchObject({ prints: 1, timesFrom: 'pouring-in', carryOver: 4 });
    expect(process.tank).toEqual({ fillSeconds: null, drainSeconds: null, workingVolume: null, fullVolume: null });
    expect(process.steps.map(({ time, volume, serves, light }) => [time, volume, serves, light])).toEqual([
      [90, 250, 4, 'safe'],
      [90, 'none', 1, null],
    ]);
  });

  test('a step that says no volume is filled as the tank wants it', () =>
    expect(processOf(changed(file, ', volume: 250 ml', '')).steps[0]?.volume).toBe('tank'));

  test.each([
    [
      'a time without a unit',
      'time: 1m30s',
      'time: 90',
      'steps[0].time',
      '4:26',
      '90 has no unit.',
      'Write 1m30s, 90 s or 1.5 min.',
    ],
    [
      'a time that is none',
      'time: 1m30s',
      'time: a while',
      'steps[0].time',
      '4:26',
      '"a while" is not a time.',
      'Write 1m30s, 90 s or 1.5 min.',
    ],
    [
      'a time as a clock has it',
      'time: 1m30s',
      'time: 1:30',
      'steps[0].time',
      '4:26',
      '"1:30" is not a time.',
      'Write 1m30s, 90 s or 1.5 min.',
    ],
    [
      'too many seconds',
      'time: 1m30s',
      'time: 1m90s',
      'steps[0].time',
      '4:26',
      '"1m90s" has 60 or more where the next unit begins.',
      'Write 1m30s, 90 s or 1.5 min.',
    ],
    [
      'no time at all',
      'time: 1m30s',
      'time: 0 s',
      'steps[0].time',
      '4:26',
      '"0 s" is less than can be made use of.',
      'Write a value from 1 s to 10 h.',
    ],
    [
      'a volume that is none',
      'volume: 250 ml',
      'volume: a cup',
      'steps[0].volume',
      '4:41',
      '"a cup" is not a volume.',
      'Write 250 ml, as the tank, or none.',
    ],
    [
      'a decimal comma',
      'volume: 250 ml',
      'volume: "0,25 l"',
      'steps[0].volume',
      '4:41',
      '"0,25 l" has a decimal comma.',
      'Write 250 ml, as the tank, or none.',
    ],
    [
      'a bath that serves nobody',
      'reuse: 4',
      'reuse: 0',
      'steps[0].reuse',
      '4:56',
      '0 is not a number of prints from 1 to 200.',
      'Write 4, or one-shot.',
    ],
    [
      'half a print',
      'reuse: 4',
      'reuse: 2.5',
      'steps[0].reuse',
      '4:56',
      '2.5 is not a number of prints from 1 to 200.',
      'Write 4, or one-shot.',
    ],
    [
      'a light that is not known',
      'light: safe',
      'light: red',
      'steps[0].light',
      '4:66',
      '"red" is not known here.',
      'Write safe, window or any.',
    ],
    [
      'nothing poured, and used again',
      'volume: none',
      'volume: none, reuse: 3',
      'steps[1].reuse',
      '5:54',
      'Nothing is poured in this step, so nothing is used again.',
      'Delete the key, or write a volume.',
    ],
    [
      'a slip in a key',
      'reuse: 4',
      'reuses: 4',
      'steps[0].reuses',
      '4:49',
      'This key is not known here.',
      'Did you mean reuse?',
    ],
    [
      'a bath of steam',
      '75 F',
      '230 F',
      'temperature',
      '2:14',
      '"230 F" is more than can be made use of.',
      'Write a value from 0 C to 100 C.',
    ],
    [
      'more over the print than in the tank',
      'temperature: 75 F',
      'workingVolume: 400 ml\nfullVolume: 330 ml',
      'workingVolume',
      '2:16',
      '400 ml is more than the 330 ml that the tank holds.',
      'Write the volume that covers the print, which is the smaller of the two.',
    ],
    [
      'another rule of times',
      'temperature: 75 F',
      'timesFrom: now',
      'timesFrom',
      '2:12',
      '"now" is not known here.',
      'Write pouring-in or covered.',
    ],
    [
      'no steps',
      /steps:[\s\S]*/.exec(file)?.[0] ?? '',
      'steps: []\n',
      'steps',
      '3:8',
      'The list is too short.',
      'Write steps: [{ name: first bath, time: 1m30s, volume: 250 ml }].',
    ],
  ])('%s is refused where it stands', (_, from, to, path, place, what, accepted) => {
    const problem = problemOf(changed(file, from, to));
    expect(problem).toMatchObject({ path, what, accepted });
    expect(`${problem?.line}:${problem?.column}`).toBe(place);
  });

  test('an empty file is told how to begin', () =>
    expect(problemOf('')).toMatchObject({ what: 'The file is empty.', accepted: expect.stringContaining('steps: [') }));
});

describe('what is typed for today', () => {
  test('is read as the file is', () =>
    expect(readProcessToday({ prints: '6', fill: '9 s', drain: '0 s' })).toEqual({
      today: { prints: 6, fill: 9, drain: 0 },
    }));
  test.each([
    [{ prints: 'few' }, '--prints: "few" is not a whole number from 1 to 200. Write 4.'],
    [{ prints: '2.5' }, '--prints: "2.5" is not a whole number from 1 to 200. Write 4.'],
    [{ fill: '9' }, '--fill: "9" has no unit. Write 1m30s, 90 s or 1.5 min.'],
    [{ drain: '2 h' }, '--drain: "2 h" is more than this flag takes. Write a value from 0 s to 10 min.'],
  ])('%o is refused', (typed, refused) => expect(readProcessToday(typed)).toEqual({ refused }));
});

describe('the JSON Schema', () => {
  const schema = processJsonSchema();
  const valid = new Ajv2020({ strict: false }).compile(schema);

  test('takes the example, and refuses a key that is not known', () => {
    expect(valid(parse(exampleText))).toBe(true);
    expect(valid({ ...parse(exampleText), recipe: 1 })).toBe(false);
  });

  test('tells each key in words, with an example', () => {
    const table = keyTable(schema);
    expect(table.length).toBeGreaterThan(15);
    for (const { path, description, example } of table) {
      expect(description, path).not.toBe('');
      expect(example, path).not.toBe('');
    }
  });
});
