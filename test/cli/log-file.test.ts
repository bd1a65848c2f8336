import { execFile } from 'node:child_process';
import { chmodSync, existsSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import { appendToLog, readLogText } from '../../src/cli/log-file.js';
import { Stop } from '../../src/cli/stop.js';
import { readSittingLog } from '../../src/forms/read-sitting-log.js';
import { scratch } from './scratch.js';

const entry = (sheet: number, note = 'as always') =>
  `\n---\nresult:\n  sheet: ${sheet}\n  looks: right\n  note: ${note}\n...\n`;

const sheetsIn = (file: string) => {
  const log = readSittingLog(readLogText(file), file);
  if ('problems' in log) throw new Error(JSON.stringify(log.problems));
  return log.entries.map(({ entry: read }) => (read.kind === 'result' ? read.result.sheet : Number.NaN));
};

const stopOf = (act: () => void): Stop => {
  try {
    act();
  } catch (error) {
    if (error instanceof Stop) return error;
    throw error;
  }
  throw new Error('It did not stop.');
};

/** Programs take their time to start on a busy machine, ms. */
const PROGRAMS = 30_000;

const root = join(import.meta.dirname, '..', '..');
const run = promisify(execFile);

describe('a log on the disk', () => {
  test('is begun by the first entry', () => {
    const file = join(scratch(), 'sitting.yaml');
    expect(readLogText(file)).toBe('');
    appendToLog(file, entry(1));
    expect(sheetsIn(file)).toEqual([1]);
  });

  test('cut at any byte of its last entry, takes the next one and loses nothing before', () => {
    const file = join(scratch(), 'sitting.yaml');
    const kept = `# my log\n${entry(1)}# a comment\n${entry(2)}`;
    const last = new TextEncoder().encode(entry(3, '"größer"'));
    for (let length = 0; length <= last.length; length++) {
      writeFileSync(file, Buffer.concat([Buffer.from(kept), last.subarray(0, length)]));
      const before = readFileSync(file);
      appendToLog(file, entry(4));
      const after = readFileSync(file);
      expect(after.subarray(0, before.length).equals(before)).toBe(true);
      // the entry is whole once its three dots are there, line end or not
      expect(sheetsIn(file), `cut after ${length} bytes`).toEqual(length >= last.length - 1 ? [1, 2, 3, 4] : [1, 2, 4]);
    }
  });

  test('on a full disk tells so and is left as it was', () => {
    const { exitCode, message } = stopOf(() => appendToLog('/dev/full', entry(1)));
    expect(exitCode).toBe(3);
    expect(message).toContain('the disk is full');
  });

  test(
    'on a disk that fills in the middle of an entry keeps what it had, and takes the next one',
    async () => {
      const file = join(scratch(), 'sitting.yaml');
      const full = 1024;
      writeFileSync(file, `${'#'.repeat(full - 120)}\n${entry(1)}`);
      const kept = readFileSync(file);
      // the shell's limit is in blocks of 1024 bytes: the file may grow to that, and no further
      const script = `import { appendToLog } from ${JSON.stringify(join(root, 'src/cli/log-file.ts'))};
      try { appendToLog(${JSON.stringify(file)}, ${JSON.stringify(entry(2, `"${'long '.repeat(50)}"`))}); }
      catch (stop) { process.stdout.write(stop.exitCode + ' ' + stop.message); }`;
      const { stdout } = await run(
        'bash',
        [
          '-c',
          'trap "" XFSZ; ulimit -f 1; exec "$0" --import tsx --input-type=module -e "$1"',
          process.execPath,
          script,
        ],
        { cwd: root },
      );
      expect(stdout).toMatch(/^3 .*written in part only/);
      expect(readFileSync(file).subarray(0, kept.length).equals(kept)).toBe(true);
      expect(readFileSync(file).length).toBe(full);
      appendToLog(file, entry(3));
      expect(sheetsIn(file)).toEqual([1, 3]);
    },
    PROGRAMS,
  );

  test(
    'takes what several programs add at once, none in the middle of another',
    async () => {
      const file = join(scratch(), 'sitting.yaml');
      const script = `import { appendToLog } from ${JSON.stringify(join(root, 'src/cli/log-file.ts'))};
      const first = Number(process.argv[1]);
      for (let sheet = first; sheet < first + 20; sheet++)
        appendToLog(${JSON.stringify(file)}, '\\n---\\nresult:\\n  sheet: ' + sheet + '\\n  looks: right\\n...\\n');`;
      await Promise.all(
        [100, 200].map((first) =>
          run(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script, String(first)], { cwd: root }),
        ),
      );
      const sheets = sheetsIn(file);
      expect(sheets).toHaveLength(40);
      for (const first of [100, 200])
        expect(sheets.filter((sheet) => Math.floor(sheet / 100) * 100 === first)).toEqual(
          Array.from({ length: 20 }, (_, index) => first + index),
        );
    },
    PROGRAMS,
  );

  test('is refused where it is no file', () => {
    expect(stopOf(() => readLogText(scratch())).exitCode).toBe(2);
    expect(stopOf(() => readLogText('/dev/zero')).exitCode).toBe(2);
  });

  test('in a folder that is not there is the failure of the machine, and nothing is made', () => {
    const file = join(scratch(), 'no', 'sitting.yaml');
    expect(stopOf(() => appendToLog(file, entry(1))).exitCode).toBe(3);
    expect(existsSync(file)).toBe(false);
  });

  test('is found behind a link', () => {
    const folder = scratch();
    const link = join(folder, 'link.yaml');
    writeFileSync(join(folder, 'real.yaml'), entry(1));
    symlinkSync(join(folder, 'real.yaml'), link);
    appendToLog(link, entry(2));
    expect(sheetsIn(join(folder, 'real.yaml'))).toEqual([1, 2]);
  });

  test.skipIf(process.getuid?.() === 0)('that may not be written to is left alone', () => {
    const file = join(scratch(), 'sitting.yaml');
    writeFileSync(file, entry(1));
    chmodSync(file, 0o444);
    expect(stopOf(() => appendToLog(file, entry(2))).exitCode).toBe(3);
  });
});
