import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { runHere } from './run-here.js';
import { scratch } from './scratch.js';

const dunlin = join(import.meta.dirname, '..', '..', 'designs', 'dunlin', 'dunlin.yaml');

/** A log in a folder of its own, and the command that works on it. */
function begin(...always: readonly string[]) {
  const log = join(scratch(), 'sitting.yaml');
  const run = (...words: readonly string[]) =>
    runHere('expose', dunlin, '--log', log, '--subject', '1.1m', ...always, ...words);
  const json = async (...words: readonly string[]) => {
    const { code, out, err } = await run(...words, '--json');
    if (code !== 0) throw new Error(err);
    return JSON.parse(out);
  };
  return { log, run, json, text: () => readFileSync(log, 'utf8') };
}

describe('a sitting with a log', () => {
  test('begins with what is reckoned, and writes it down before it is shown', async () => {
    const { json, text } = begin('--process', 'reversal');
    const plain = JSON.parse((await runHere('expose', dunlin, '--subject', '1.1m', '--json')).out);
    const first = await json();
    expect(first.energy).toBe(plain.energy);
    expect(first.dialling).toMatchObject({ sheet: 1, dialled: 0, change: null, written: true });
    expect(text()).toMatch(/^# Sitting log.*\n(?:#.*\n)*\n---\nsetting:\n {2}sheet: 1\n/);
  });

  test.each([
    { process: 'reversal', looks: 'too dark', more: true },
    { process: 'reversal', looks: 'too light', more: false },
    { process: 'negative', looks: 'too dark', more: false },
    { process: 'negative', looks: 'too light', more: true },
  ])('$process, $looks: the energy goes the right way', async ({ process, looks, more }) => {
    const { json } = begin('--process', process);
    const before = await json();
    const after = await json('--result', looks, '--by', '1');
    expect(after.energy > before.energy).toBe(more);
    // V5.33: twice the energy is a stop [verified: S47, S46]
    expect(Math.log2(after.energy / before.energy)).toBeCloseTo(after.dialling.dialled, 3);
  });

  test.each([
    {
      words: ['--aperture', 'f/256', '--flash-most', '100', '--magnification', '1:1'],
      says: /setting\.energy: .*100000 J/,
    },
    {
      words: ['--meter-time', '60s', '--meter-aperture', 'f/5.6', '--meter-speed', '6400', '--aperture', 'f/64'],
      says: /setting\.time: .*36000 s/,
    },
  ])('what the log could not be read with again is not written into it: $words', async ({ words, says }) => {
    const log = join(scratch(), 'sitting.yaml');
    const place = words.includes('--magnification') ? [] : ['--subject', '1.1m'];
    const { code, out, err } = await runHere('expose', dunlin, '--log', log, ...place, ...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(says);
    expect(existsSync(log)).toBe(false);
  });

  test('is only ever added to', async () => {
    const { run, log, text } = begin();
    await run();
    appendFileSync(log, '# the cat sat on the tripod\n');
    const before = text();
    await run('--result', 'too dark', '--by', '1', '--bath-start', '24C', '--note', 'a "note": # with all');
    expect(text().startsWith(before)).toBe(true);
    expect(text().slice(before.length)).toContain('note: "a \\"note\\": # with all"');
  });

  test('asked again gives the same sheet again and writes nothing; asked for another, the sheet anew', async () => {
    const { json, run, text } = begin();
    await run();
    const before = text();
    const again = await json();
    expect(again.dialling).toMatchObject({ sheet: 1, written: false });
    expect(text()).toBe(before);
    const nearer = await json('--lamp-distance', '1.5m');
    expect(nearer.dialling).toMatchObject({ sheet: 1, written: true });
    expect((await json('--result', 'right', '--lamp-distance', '1.5m')).dialling.sheet).toBe(2);
  });

  test('what was learned holds for another distance and stop', async () => {
    const { json } = begin('--process', 'reversal');
    await json();
    const here = await json('--result', 'too dark', '--by', '1');
    const away = await json('--aperture', 'f/22');
    // the marks as numbers: 22/11 is two stops
    expect(away.energy / here.energy).toBeCloseTo(4, 3);
    expect(away.dialling.dialled).toBe(here.dialling.dialled);
  });

  test('what was really given counts', async () => {
    const { json } = begin('--process', 'reversal');
    const first = await json();
    const { dialling } = await json('--result', 'right', '--gave-energy', String(first.energy * 2));
    expect(dialling.dialled).toBeCloseTo(1, 2);
    expect(dialling.reasoning[0]).toContain('Sheet 1 was really given 1 stop more than advised');
  });

  test('a time that was really given counts without what a long exposure loses', async () => {
    const steady = [
      ...['--meter-time', '1s', '--meter-aperture', 'f/11', '--meter-speed', '6', '--speed', '6'],
      ...['--reciprocity', '1.31'],
    ];
    const { json } = begin(...steady);
    const first = await json();
    const given = (2 * first.time) ** 1.31; // V5.57's rule: t^p, [verified: S54]
    const { dialling } = await json('--result', 'right', '--gave-time', `${given}s`);
    expect(dialling.dialled).toBeCloseTo(1, 3);
  });

  test('a cast by reversal puts a filter into the light and its cost into the energy', async () => {
    const { json } = begin('--process', 'reversal');
    const first = await json();
    const next = await json('--result', 'right', '--cast', 'green', '--cast-by', '0.6');
    expect(next.dialling.colourFilters).toEqual({ cyan: 0, magenta: 0.2, yellow: 0 });
    // V5.54: CC30M two thirds of a stop [verified: S53], so CC20M 4/9 in proportion
    expect(Math.log2(next.energy / first.energy)).toBeCloseTo(4 / 9, 3);
    expect(next.filters.map(({ name }: { name: string }) => name)).toEqual(['CC20M']);
  });

  test('a batch that is named with the result was the batch of that sheet, too', async () => {
    const { json } = begin('--process', 'reversal');
    await json();
    const { dialling } = await json('--result', 'too dark', '--by', '1', '--batch', 'A');
    expect(dialling).toMatchObject({ batch: 'A', change: 1 });
    expect(dialling.reasoning.join(' ')).not.toContain('new batch');
    const again = await json('--result', 'too light', '--by', '0.5');
    // both sheets are weighed: between the two, and nearer to the second
    expect(again.dialling.dialled).toBeGreaterThan(0.4);
    expect(again.dialling.dialled).toBeLessThan(1);
  });

  test('another batch starts from where the one before ended; another process from nothing', async () => {
    const { json } = begin();
    await json('--process', 'reversal', '--batch', 'A');
    const ended = await json('--process', 'reversal', '--result', 'too dark', '--by', '1');
    const batch = await json('--process', 'reversal', '--result', 'right', '--batch', 'B');
    expect(batch.dialling).toMatchObject({ batch: 'B', change: null });
    // batch A was right there, as far as an eye sees
    expect(Math.abs(batch.dialling.dialled - ended.dialling.dialled)).toBeLessThan(0.1);
    expect(batch.dialling.reasoning.join(' ')).toContain('where batch A ended');
    const kept = await json('--process', 'reversal', '--result', 'right');
    expect(kept.dialling.batch).toBe('B');
    const process = await json('--process', 'negative');
    expect(process.dialling).toMatchObject({ dialled: 0, batch: null });
    expect(process.dialling.reasoning.join(' ')).toContain('nothing that was learned holds for it');
  });

  test('baths of different temperature are told, and the chemicals', async () => {
    const { json } = begin();
    await json();
    const first = await json('--result', 'right', '--bath-start', '68F');
    expect(first.dialling.remarks.join(' ')).toContain('gloves');
    expect(first.dialling.remarks.join(' ')).not.toContain('the bath');
    const second = await json('--result', 'right', '--bath-start', '23C');
    expect(second.dialling.remarks.join(' ')).toContain('sheet 2 was at 23 °C, that of sheet 1 at 20 °C');
  });
});

describe('a test strip', () => {
  test('by flash goes in whole pops', async () => {
    const { json } = begin();
    const { dialling, pops, energy } = await json('--strip', 'whole', '--steps', '4', '--lamp-distance', '0.6m');
    expect(dialling.strip.map(({ pops: now }: { pops: number }) => now)).toEqual(
      [1, 1, 2, 4].map((each) => each * pops),
    );
    // the first exposure alone is a stop under what is reckoned
    const whole = await json('--lamp-distance', '0.6m');
    expect(whole.energy / energy).toBeCloseTo(2, 3);
  });

  test('goes about what was found so far', async () => {
    const { json } = begin('--process', 'reversal');
    await json();
    const { dialled } = (await json('--result', 'too dark', '--by', '1')).dialling;
    expect(dialled).toBeGreaterThan(0.5);
    const { dialling, energy } = await json('--strip', 'whole', '--steps', '3');
    expect(dialling.strip.map((one: { dialled: number }) => one.dialled - dialled)).toEqual(
      [-1, 0, 1].map((stop) => expect.closeTo(stop, 6)),
    );
    // V5.33: twice the energy is a stop [verified: S47, S46]; the first exposure is a stop under what was found
    expect((await json()).energy / energy).toBeCloseTo(2, 3);
  });

  test('by time in half stops adds each time 0.41 of the sum so far', async () => {
    const { json } = begin(
      ...['--meter-time', '1/8s', '--meter-aperture', 'f/11', '--meter-speed', '6', '--speed', '6'],
    );
    const { dialling } = await json('--strip', 'half', '--steps', '3');
    const [first, second, third] = dialling.strip.map(({ time }: { time: number }) => time);
    expect(second / first).toBeCloseTo(0.4142, 3);
    expect(third / (first + second)).toBeCloseTo(0.4142, 3);
  });

  test('is judged by its best strip, or by what was read of each', async () => {
    const { json, run } = begin('--process', 'reversal');
    await json('--strip', 'whole', '--steps', '3');
    expect((await run('--result', 'right')).err).toContain('which strip is meant? Write --best-strip');
    expect((await run('--result', 'right', '--best-strip', '4')).err).toContain('has 3 strips');
    expect((await json('--result', 'right', '--best-strip', '2')).dialling).toMatchObject({ dialled: 0, change: 0 });
    await json('--strip', 'whole', '--steps', '3');
    const read = ['1.4', '1.0', '0.6'].flatMap((density) => ['--strip-density', density]);
    const { dialling } = await json(...read, '--wanted', '0.8');
    expect(dialling.dialled).toBeCloseTo(0.5, 2);
    expect(dialling.reasoning.join(' ')).toContain('learned from 3 exposures');
  });
});

describe('what cannot be', () => {
  test.each([
    { words: ['--result', 'right'], says: 'No sheet was given out yet' },
    { words: ['--strip', 'quarter'], says: '--strip: "quarter" is not known here' },
    { words: ['--strip', 'half'], says: 'Take --strip whole' },
    { words: ['--strip', 'whole', '--steps', '9'], says: '--steps: "9" is not a whole number from 2 to 8' },
    { words: ['--steps', '3'], says: '--steps counts the strips' },
    { words: ['--batch', ''], says: '--batch: The text is empty' },
    { words: ['--card'], says: 'Give one of them' },
    { words: ['--aperture', 'wide'], says: '--aperture' },
  ])('is refused before a log is begun: $words', async ({ words, says }) => {
    const { run, log } = begin();
    const { code, out, err } = await run(...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
    expect(existsSync(log)).toBe(false);
  });

  test.each([
    { words: ['--result', 'murky'], says: '--result: "murky" is not known here' },
    { words: ['--result', 'too dark'], says: 'Write --by 1' },
    { words: ['--result', 'too dark', '--by', '0.3'], says: '--by: 0.3 is not in half stops' },
    { words: ['--result', 'right', '--by', '1'], says: '--by: This says how much' },
    { words: ['--result', 'right', '--best-strip', '1'], says: '--best-strip: Sheet 1 was no test strip' },
    { words: ['--result', 'right', '--cast-by', '0.1'], says: '--cast-by: Of which colour' },
    { words: ['--result', 'right', '--bath-start', '24,5C'], says: '--bath-start: "24,5C" has a decimal comma' },
    { words: ['--result', 'right', '--gave-time', '2s'], says: '--gave-time: Sheet 1 was not given out by time' },
    { words: ['--note', 'nice'], says: '--result: What came out is not said' },
  ])('is refused and leaves the log alone: $words', async ({ words, says }) => {
    const { run, text } = begin();
    await run();
    const before = text();
    const { code, out, err } = await run(...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
    expect(text()).toBe(before);
  });

  test('a result has nowhere to go without a log', async () => {
    const { code, err } = await runHere('expose', dunlin, '--subject', '1.1m', '--result', 'right');
    expect(code).toBe(2);
    expect(err).toContain('--log sitting.yaml');
  });

  test.each([
    { text: 'name: Dunlin\nformat: 5x7\n', says: 'sitting.yaml:1:1  This stands outside of every entry.' },
    {
      text: '---\nresult:\n  sheet: 1\n  looks: right\n...\n',
      says: 'sitting.yaml:3:10  result.sheet: No sheet 1 was given out above.',
    },
    { text: '\0\0ELF binary', says: 'outside of every entry' },
  ])('a file that is no log is left alone: $says', async ({ text, says }) => {
    const { run, log } = begin();
    writeFileSync(log, text);
    const { code, err } = await run();
    expect(code).toBe(2);
    expect(err).toContain(says);
    expect(readFileSync(log, 'utf8')).toBe(text);
  });

  test('a torn end is told, and the sheet before it goes on', async () => {
    const { run, log, json } = begin();
    await run();
    appendFileSync(log, '\n---\nresult:\n  sheet: 1\n  looks: too da');
    const { dialling } = await json('--result', 'right');
    expect(dialling.notes).toEqual([expect.stringContaining('was not written whole')]);
    expect(dialling.sheet).toBe(2);
    expect((await json()).dialling).toMatchObject({ sheet: 2, written: false });
  });
});
