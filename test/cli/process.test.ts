import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { changed } from '../design/reading.js';
import { readPdf } from '../files/read-pdf.js';
import { exampleText } from '../step-sheet/processes.js';
import { heronDesign } from './heron-design.js';
import { scratch, snapshot, tailboard } from './scratch.js';

function written(text = exampleText): { readonly folder: string; readonly file: string } {
  const folder = scratch();
  const file = join(folder, 'process.yaml');
  writeFileSync(file, text);
  return { folder, file };
}

describe('tailboard process, compiled', () => {
  test('prints the steps with their marks, the liquid and the cautions', async () => {
    const { folder } = written();
    const { code, out, err } = await tailboard(['process', 'process.yaml'], folder);
    expect([code, err]).toEqual([0, '']);
    // by hand: bath B begins at 90 + 45 + 60 s, is in 8 s later, is drained 12 s before it is out
    expect(out).toMatch(/4 bath B +any +3:15 +3:23 +5:03 +5:15 +2:00 +24 +150/);
    expect(out).toMatch(/5 bath C +150 +4 prints +1 +150/);
    expect(out).toContain('One print takes 10 min 45 s; 4, one after another, 43 min.');
    expect(out).toContain('For 4 prints 2.26 l in all.');
    expect(out).toContain('Acid into water');
    expect(out).toContain('Never cap the tank tight');
  });

  test('--json is the same sheet, and flags go before the file', async () => {
    const { folder } = written();
    const { out } = await tailboard(['process', 'process.yaml', '--json', '--prints', '6', '--fill', '10s'], folder);
    const sheet = JSON.parse(out);
    expect(sheet).toMatchObject({ schema: 1, prints: 6, seconds: 645, tank: { fillSeconds: 10, drainSeconds: 12 } });
    // 6 × 120, 6 × 120, two of 150 for six prints, the same, 6 × 250
    expect(sheet.liquid).toBe(720 + 720 + 300 + 300 + 1500);
    expect(sheet.steps[3]).toMatchObject({ beginsAt: 195, coveredAt: 205, drainAt: 303, endsAt: 315 });
  });

  test('a step shorter than filling and draining is an error, told with both figures', async () => {
    const { folder } = written(changed(exampleText, 'time: 45 s', 'time: 15 s'));
    const { code, out } = await tailboard(['process', 'process.yaml'], folder);
    expect(code).toBe(1);
    expect(out.replace(/\s+/g, ' ')).toContain(
      'Step 2, rinse: it takes 15 s from pouring in, and filling and draining alone take 20 s. measured 15 s, limit 20 s',
    );
  });

  test('a mistake in the file is told with its line', async () => {
    const { folder } = written(changed(exampleText, 'time: 45 s', 'time: 45'));
    const { code, out, err } = await tailboard(['process', 'process.yaml'], folder);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/^process\.yaml:26:11 {2}steps\[1\]\.time: 45 has no unit\./);
  });

  test('a mistake in a flag, and a file that is not there, are the call’s', async () => {
    const { folder } = written();
    expect(await tailboard(['process', 'process.yaml', '--fill', '9'], folder)).toMatchObject({
      code: 2,
      err: '--fill: "9" has no unit. Write 1m30s, 90 s or 1.5 min.\n',
    });
    expect((await tailboard(['process', 'none.yaml'], folder)).code).toBe(2);
  });

  test('a design whose holders are no tanks has nothing to give, and a holder is one of a design', async () => {
    const { folder } = written();
    writeFileSync(join(folder, 'heron.yaml'), heronDesign);
    const call = (...more: readonly string[]) => tailboard(['process', 'process.yaml', ...more], folder);
    expect(await call('--design', 'heron.yaml', '--holder', 'paper holder')).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringMatching(/^The paper holder is no tank that the design knows/),
    });
    expect(await call('--holder', 'paper holder')).toMatchObject({
      code: 2,
      err: '--holder is one of a design: name its file with --design heron.yaml.\n',
    });
  });

  test('takes from a design what the file does not say of the tank, and the paper of its book', async () => {
    const { folder } = written(exampleText.replace(/^(fill|drain|workingVolume|fullVolume): .*\n/gm, ''));
    const made = '{ name: tank, make: true, filmDepth: 24 mm, window: { thickness: 2 mm } }';
    writeFileSync(join(folder, 'heron.yaml'), heronDesign.replace(/ {2}- \{ name: processing holder.*/, `  - ${made}`));
    const plan = JSON.parse((await tailboard(['plan', 'heron.yaml', '--json'], folder)).out);
    const { fillSeconds, drainSeconds, workingVolume, fullVolume } = plan.holders[1].tank;
    const { out } = await tailboard(
      ['process', 'process.yaml', '--design', 'heron.yaml', '--drain', '20s', '-o', 'card', '--json'],
      folder,
    );
    expect(drainSeconds).not.toBe(20);
    expect(JSON.parse(out).tank).toEqual({ fillSeconds, drainSeconds: 20, workingVolume, fullVolume });
    expect(readFileSync(join(folder, 'card', 'process-card.svg'), 'utf8')).toContain('width="210mm" height="297mm"');
  });

  test('the schema is published', () => {
    const schema = JSON.parse(readFileSync(new URL('../../dist/process.schema.json', import.meta.url), 'utf8'));
    expect(schema.title).toBe('Process of a print');
    expect(Object.keys(schema.properties)).toContain('steps');
  });
});

/** The words of a picture, by their lines from the left: what stands at one height is one line. */
function rowsOf(svg: string): readonly string[] {
  const rows = new Map<string, { x: number; text: string }[]>();
  for (const [, x, y = '', text = ''] of svg.matchAll(/<text x="([^"]+)" y="([^"]+)"[^>]*>([^<]*)<\/text>/g))
    rows.set(y, [...(rows.get(y) ?? []), { x: Number(x), text: text.replaceAll('&apos;', "'") }]);
  return [...rows.values()].map((row) =>
    row
      .sort((a, b) => a.x - b.x)
      .map(({ text }) => text)
      .join(' '),
  );
}

describe('the card', () => {
  const call = (...more: readonly string[]) => ['process', 'process.yaml', '-o', 'card', ...more];

  test('has the figures of the sheet, the cautions and a box for each print, on one page of A5', async () => {
    const { folder } = written();
    const { code, err } = await tailboard(call(), folder);
    expect([code, err]).toEqual([0, 'Wrote process-card.svg and process-card.pdf into card.\n']);
    const svg = readFileSync(join(folder, 'card', 'process-card.svg'), 'utf8');
    expect(svg).toMatch(/^<svg [^>]*width="148mm" height="210mm"/);
    const rows = rowsOf(svg);
    // as worked by hand for the sheet
    expect(rows).toContain('4 bath B any 3:15 3:23 5:03 5:15 2:00 24 150');
    expect(rows).toContain('3 light window 2:15 – – 3:15 1:00 – –');
    expect(rows).toContain('1 bath A 120 1 4 480 –');
    const words = rows.join(' ');
    expect(words).toContain('Mind: never cap the tank tight on it.');
    expect(words).toContain('Acid into water, never water into acid.');
    expect(words).toContain('in °C out °C');
    // four prints, a box each, in six steps
    expect(svg.match(/>4<\/text>/g)?.length).toBeGreaterThanOrEqual(6);
    const { pages, info } = await readPdf(readFileSync(join(folder, 'card', 'process-card.pdf')));
    expect(pages).toHaveLength(1);
    expect(pages[0]).toMatchObject({ width: expect.closeTo(148, 4), height: expect.closeTo(210, 4) });
    expect(info).toMatchObject({ Title: 'Six invented steps: step sheet' });
  });

  test('nothing on it runs over its edge, in the letters that its document has', async () => {
    const { folder } = written();
    await tailboard(call('--prints', '40', '--paper', 'letter'), folder);
    const { pages } = await readPdf(readFileSync(join(folder, 'card', 'process-card.pdf')));
    expect(pages[0]).toMatchObject({ width: expect.closeTo(215.9, 4), height: expect.closeTo(279.4, 4) });
    const lines = pages[0]?.lines ?? [];
    expect(lines.map(({ text }) => text).join(' ')).toContain('print the card again for more');
    // the margin is 8 mm
    for (const { x, width, y, text } of lines) {
      expect(x, text).toBeGreaterThanOrEqual(7.9);
      expect(x + width, text).toBeLessThanOrEqual(215.9 - 7.9);
      expect(y, text).toBeLessThanOrEqual(279.4 - 7.9);
    }
  });

  test('is the same each time, and is never written over what others wrote', async () => {
    const { folder } = written();
    await tailboard(call(), folder);
    const before = snapshot(join(folder, 'card'));
    expect((await tailboard(call(), folder)).code).toBe(0);
    expect(snapshot(join(folder, 'card'))).toEqual(before);
    writeFileSync(join(folder, 'card', 'notes.txt'), 'mine');
    expect(await tailboard(call(), folder)).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringContaining('notes.txt'),
    });
    expect(snapshot(join(folder, 'card'))).toEqual({ ...before, 'notes.txt': 'mine' });
  });

  test.each([
    ['of steps that cannot be done', changed(exampleText, 'time: 45 s', 'time: 15 s'), [], 1, /Nothing was written/],
    [
      'on paper that is not known',
      exampleText,
      ['--paper', 'A6'],
      2,
      /--paper "A6" is not known. Write A5, A4, Letter\./,
    ],
    [
      'of more steps than it holds',
      exampleText + '  - { name: one more bath, time: 1 min, caution: x }\n'.repeat(18),
      [],
      2,
      /24 steps .* do not fit on one card/,
    ],
  ])('there is none %s', async (_, text, flags, code, says) => {
    const { folder } = written(text);
    const ended = await tailboard(call(...flags), folder);
    expect(ended.code).toBe(code);
    expect(ended.err).toMatch(says);
    expect(existsSync(join(folder, 'card'))).toBe(false);
  });

  test('of paper without a folder nothing can be made', async () => {
    const { folder } = written();
    expect(await tailboard(['process', 'process.yaml', '--paper', 'A4'], folder)).toMatchObject({
      code: 2,
      err: expect.stringContaining('say with -o'),
    });
  });
});
