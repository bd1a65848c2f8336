import { describe, expect, test } from 'vitest';
import { printProblem } from '../../src/design/problem.js';
import { readReadings } from '../../src/design/read-readings.js';

const cut =
  'cut: { kerf: 0.15 mm, thickness: 4.05 mm, fits: { press: -0.02, glueSlip: 0.08, slide: 0.3, dropIn: 0.6 }, combSum: 80 }';
const comb = 'comb: { x: 78.5 mm, y: 78.52 mm }';

const read = (text: string) => {
  const outcome = readReadings(text, 'readings.yaml');
  if ('problems' in outcome) throw new Error(outcome.problems.map(printProblem).join('\n'));
  return outcome;
};
const problems = (text: string): string => {
  const outcome = readReadings(text, 'readings.yaml');
  if (!('problems' in outcome)) throw new Error('the readings were accepted');
  return outcome.problems.map(printProblem).join('\n');
};

describe('readings', () => {
  test('in mm, in inches, one or several, in either style', () =>
    expect(
      read(
        `${cut}\ncomb:\n  x: [78.5 mm, 3.09 in]\n  y: 78.52\nthickness: [4.02, 4.05 mm]\nslot: 4.1\nfits: { press: -0.02 }`,
      ).readings,
    ).toEqual({
      cut: {
        kerf: 0.15,
        thickness: 4.05,
        fits: { press: -0.02, glueSlip: 0.08, slide: 0.3, dropIn: 0.6 },
        combSum: 80,
      },
      comb: { x: [78.5, expect.closeTo(78.486, 9)], y: [78.52] },
      thickness: [4.02, 4.05],
      slot: 4.1,
      fits: { press: -0.02 },
    }));

  test('that were left empty are not there', () =>
    expect(read(`${cut}\n${comb}\nthickness:\nslot:\nfits:\n  press:\n  slide: 0.3`).readings).toMatchObject({
      comb: { x: [78.5], y: [78.52] },
      thickness: [],
      slot: null,
      fits: { slide: 0.3 },
    }));

  test('of the combs alone need not tell how the piece was drawn', () =>
    expect(read(comb).readings).not.toHaveProperty('cut'));
});

describe('what is wrong is shown where it stands', () => {
  test.each([
    ['a comb that is missing', 'comb: { x: 78.5 mm }', 'comb.y: It is not given.'],
    ['a comb left empty', 'comb:\n  x: 78.5\n  y:\n', '3:3  comb.y: It is not given.'],
    ['a decimal comma', 'comb: { x: 78,5 mm, y: 78.5 mm }', 'comma'],
    ['no length', 'comb: { x: wide, y: 78.5 mm }', '1:12  comb.x: '],
    ['a length below nothing', 'comb: { x: -78.5, y: 78.5 mm }', 'comb.x: '],
    ['a slip in a key', `${comb}\nfits: { pres: 0.02 }`, 'Did you mean press?'],
    ['a key that means nothing here', `${comb}\nlens: 4`, 'Known here: cut, comb, fits, thickness, slot'],
    ['a list where one mark is asked for', `${comb}\nslot: [4.05, 4.1]`, '2:7  slot: Here stands a list.'],
    ['an empty list', 'comb: { x: [], y: 78.5 mm }', 'The list is empty.'],
    ['a length where keys are asked for', 'comb: 78.5 mm', 'Write the keys x, y.'],
    ['half of how it was cut', `${comb}\ncut: { kerf: 0.15 mm }`, 'cut.thickness: It is missing here'],
    ['a mark of a piece that nobody knows', `${comb}\nfits: { press: 0.02 }`, '2:9  fits.press: Nobody knows'],
    ['no YAML', 'comb: { x: 78.5', 'not closed'],
    ['nothing', '', 'The file is empty.'],
    ['a list of a list', 'comb: { x: [[78.5]], y: 78.5 }', 'comb.x[0]: '],
  ])('%s', (_, text, says) => expect(problems(text)).toContain(says));

  test('and so is what only the whole of them shows', () =>
    expect(
      printProblem(read(`${comb}\nslot: 4.1\n${cut}`).locate({ path: 'slot', what: 'No.', accepted: 'Yes.' })),
    ).toMatch(/^readings\.yaml:2:7 {2}slot: No\.\n/));
});
