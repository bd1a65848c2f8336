import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeFolder } from '../../src/cli/write-folder.js';
import { bareHeronText } from '../designs/kept-design.js';
import { compiled, type Ended, ended, scratch, snapshot } from './scratch.js';

/** A build proves a whole camera: seconds on a slow machine. */
const PATIENCE = { timeout: 300_000 };

function place(): string {
  const folder = scratch();
  writeFileSync(join(folder, 'heron.yaml'), bareHeronText());
  return folder;
}

/** A build that is broken off where it first says something like this, to `out` or to `err`. */
function brokenOff(folder: string, at: RegExp, { showsProgress = true } = {}): Promise<Ended> {
  const script = `
    const { build } = await import(${JSON.stringify(compiled('cli/build.js'))});
    const { endOnSignals } = await import(${JSON.stringify(compiled('cli/interrupt.js'))});
    const { colours } = await import(${JSON.stringify(compiled('cli/terminal.js'))});
    endOnSignals();
    const to = (stream) => async (text) => {
      stream.write(text);
      if (!${at}.test(text)) return;
      process.kill(process.pid, 'SIGINT');
      await new Promise((resolve) => setTimeout(resolve, 60_000));
    };
    const terminal = { out: to(process.stdout), err: to(process.stderr), colour: colours(false), width: 80 };
    const options = { despite: [], effort: '0', output: 'made' };
    await build('heron.yaml', options, { ...terminal, interactive: true, showsProgress: ${showsProgress} });`;
  // of a script that is not in a file the worker would be one as well
  const file = join(scratch(), 'build.mjs');
  writeFileSync(file, script);
  return ended([process.execPath, file], folder);
}

test('a build that is broken off on a terminal says that nothing was written', PATIENCE, async () => {
  const folder = place();
  const { code, err } = await brokenOff(folder, /sizing/);
  expect(code).toBe(130);
  // the bar is wiped first
  expect(err.endsWith('\r\u001b[KBroken off: nothing was written.\n')).toBe(true);
});

test('where there is an earlier output, that this is as it was', PATIENCE, async () => {
  const folder = place();
  await writeFolder(join(folder, 'made'), [{ path: 'plan.json', bytes: new Uint8Array(3) }]);
  const before = snapshot(folder);
  const { code, err } = await brokenOff(folder, /sizing/);
  expect(code).toBe(130);
  expect(err).toMatch(/Broken off: nothing was written, and made is as it was\.\n$/);
  expect(snapshot(folder)).toEqual(before);
});

test('what is written already is not denied', PATIENCE, async () => {
  const folder = place();
  const { code, out, err } = await brokenOff(folder, /Wrote \d+ files/);
  expect(code).toBe(130);
  expect(out).toContain('files into made.');
  expect(err).not.toContain('Broken off');
});
