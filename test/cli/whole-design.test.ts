import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, test } from 'vitest';
import { writeFolder } from '../../src/cli/write-folder.js';
import { heronDesign, spoiled } from './heron-design.js';
import { compiled, ended, scratch, snapshot, tailboard } from './scratch.js';

/** A build proves a whole camera: seconds on a slow machine. */
const PATIENCE = { timeout: 300_000 };

/** An error that shapes no part: a laser that leaves 0.6 mm is none, yet boxes can be drawn for it. */
const broken = spoiled('kerf: 0.15 mm', 'kerf: 0.6 mm');
const rule = 'kerf-plausible';

describe('plan', () => {
  test('prints a page, and as JSON the document with the figures of the worked camera', async () => {
    const place = camera(heronDesign);
    const page = await tailboard(['plan', 'heron.yaml'], place);
    expect(page).toMatchObject({ code: 0, err: '' });
    expect(page.out).toMatch(/^Heron/);
    const { code, out, err } = await tailboard(['plan', 'heron.yaml', '--json'], place);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const plan = JSON.parse(out);
    expect(plan.schema).toBe(1);
    // table of the worked cameras, first column
    expect(plan.slide.closest).toBeCloseTo(175.5, 2);
    expect(plan.slide.farthest).toBeCloseTo(281.7, 2);
    expect(plan.slide.rearBoxInside).toBeCloseTo(188.15, 2);
    expect(Object.keys(snapshot(place))).toEqual(['heron.yaml']);
  });

  test('tells of a broken rule and ends with 0 all the same', async () => {
    const { code, out } = await tailboard(['plan', 'heron.yaml'], camera(broken));
    expect(code).toBe(0);
    expect(out).toContain(rule);
  });

  test('a reader that goes away is no failure', async () => {
    const words = [
      'sh',
      '-c',
      '"$@" | true',
      'sh',
      process.execPath,
      compiled('cli/main.js'),
      'plan',
      'heron.yaml',
      '--json',
    ];
    expect(await ended(words, camera(heronDesign))).toMatchObject({ code: 0, err: '' });
  });

  test('a full disk behind > is one: 3, and one line', async () => {
    const words = [
      'sh',
      '-c',
      '"$@" > /dev/full',
      'sh',
      process.execPath,
      compiled('cli/main.js'),
      'plan',
      'heron.yaml',
    ];
    expect(await ended(words, camera(heronDesign))).toEqual({ code: 3, out: '', err: 'Output: the disk is full.\n' });
  });
});

describe('check', PATIENCE, () => {
  test('ends with 0 where nothing is broken', async () => {
    const place = camera(heronDesign);
    const { code, out, err } = await tailboard(['check', 'heron.yaml'], place);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('no rule of level error is broken');
    expect(Object.keys(snapshot(place))).toEqual(['heron.yaml']);
  });

  test('ends with 1 where a rule of level error is, and its JSON names it', async () => {
    const { code, out, err } = await tailboard(['check', 'heron.yaml', '--json'], camera(broken));
    expect({ code, err }).toEqual({ code: 1, err: '' });
    const { schema, name, findings } = JSON.parse(out);
    expect({ schema, name }).toEqual({ schema: 1, name: 'Heron' });
    expect(findings).toContainEqual(
      expect.objectContaining({ rule, level: 'error', value: 0.6, limit: 0.5, unit: 'mm' }),
    );
  });

  test('prints the budget of the register on request, and in JSON what was looked at', async () => {
    const place = camera(heronDesign);
    const { code, out } = await tailboard(['check', 'heron.yaml', '--only', 'register', '--register'], place);
    expect(code).toBe(0);
    expect(out).toContain('paper holder, in the middle of the picture');
    expect(out).toContain('What makes it smaller');
    const { proof } = JSON.parse((await tailboard(['check', 'heron.yaml', '--json'], place)).out);
    expect(proof.setups).toHaveLength(9);
    expect(proof.joints.map(({ joint }: { joint: string }) => joint)).toContain('rear box in the front box');
  });

  test('draws leaks where there are any, and nothing where there are none', async () => {
    const place = camera(heronDesign);
    expect(await tailboard(['check', 'heron.yaml', '--leaks', 'leaks'], place)).toMatchObject({
      code: 0,
      err: 'No leak to draw.\n',
    });
    expect(readdirSync(place)).toEqual(['heron.yaml']);
    // at 1:1 the boxes have let go of each other
    const apart = camera(spoiled('nearest: 1:2.5', 'nearest: 1:1'));
    const { code, err } = await tailboard(['check', 'heron.yaml', '--leaks', 'leaks'], apart);
    expect(code).toBe(1);
    expect(err).toMatch(/^Drew \d+ leaks? into leaks\.\n$/);
    expect(readFileSync(join(apart, 'leaks', 'leak-1.svg'), 'utf8')).toMatch(/^<svg[^>]*>/);
    // a folder of somebody else's is refused before the long work
    const foreign = await tailboard(['check', 'heron.yaml', '--leaks', '.'], apart);
    expect(foreign.code).toBe(2);
  });

  test('looks at one rule alone', async () => {
    const place = camera(broken);
    expect(await tailboard(['check', 'heron.yaml', '--only', 'racking'], place)).toMatchObject({ code: 0 });
    const { code, out } = await tailboard(['check', 'heron.yaml', '--only', rule, '--json'], place);
    expect(code).toBe(1);
    expect(new Set(JSON.parse(out).findings.map((finding: { rule: string }) => finding.rule))).toEqual(new Set([rule]));
  });
});

describe('build', PATIENCE, () => {
  test('writes what was promised, the same bytes each time, also from another folder', async () => {
    const place = camera(heronDesign);
    const { code, out, err } = await tailboard(['build', 'heron.yaml'], place);
    expect(code).toBe(0);
    expect(out).toContain('output/heron');
    // a bar is for terminals; piped, nothing but words goes to stderr
    expect(err).not.toContain('\r');
    const built = snapshot(join(place, 'output', 'heron'));
    for (const path of [
      'plan.json',
      'parts.json',
      'sheets/layout.json',
      'sheets/plywood-4.05-1.svg',
      'sheets/plywood-4.05-1.dxf',
    ])
      expect(Object.keys(built)).toContain(path);
    expect(readdirSync(place).sort()).toEqual(['heron.yaml', 'output']);

    const elsewhere = scratch();
    const again = await tailboard(['build', join(place, 'heron.yaml'), '-o', 'cut/here'], elsewhere);
    expect(again.code).toBe(0);
    expect(snapshot(join(elsewhere, 'cut', 'here'))).toEqual(built);
  });

  test('refuses a broken rule, names it, and leaves the earlier output as it was', async () => {
    const place = await withEarlier(broken);
    const before = snapshot(place);
    const { code, out, err } = await tailboard(['build', 'heron.yaml'], place);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain(`--despite ${rule}`);
    expect(snapshot(place)).toEqual(before);
  });

  test('builds despite a rule that is named, and not despite another', async () => {
    const place = camera(broken);
    expect(await tailboard(['build', 'heron.yaml', '--despite', 'racking'], place)).toMatchObject({ code: 1, out: '' });
    expect(readdirSync(place)).toEqual(['heron.yaml']);
    const { code, out } = await tailboard(['build', 'heron.yaml', '--despite', 'racking', '--despite', rule], place);
    expect(code).toBe(0);
    // whoever finds the folder, or a sheet alone, must be able to tell
    expect(out).toContain(`Built despite ${rule}.`);
    const built = join(place, 'output', 'heron');
    expect(JSON.parse(readFileSync(join(built, 'plan.json'), 'utf8')).despite).toEqual([rule]);
    expect(readFileSync(join(built, 'sheets', 'plywood-4.05-1.svg'), 'utf8')).toContain(
      `built despite ${rule}</title>`,
    );
  });

  test('refuses a folder with something of somebody else in it, before it works', async () => {
    const place = await withEarlier(heronDesign);
    writeFileSync(join(place, 'output', 'heron', 'notes.txt'), 'glue first');
    const before = snapshot(place);
    const { code, err } = await tailboard(['build', 'heron.yaml'], place);
    expect(code).toBe(2);
    expect(err).toContain('notes.txt');
    expect(snapshot(place)).toEqual(before);
  });

  test('a place where no folder can be made: 3, and one line', async () => {
    const place = camera(heronDesign);
    const { code, out, err } = await tailboard(['build', 'heron.yaml', '-o', 'heron.yaml/output'], place);
    expect({ code, out }).toEqual({ code: 3, out: '' });
    expect(err).toBe('heron.yaml/output: a part of this path is a file, not a folder.\n');
    expect(readdirSync(place)).toEqual(['heron.yaml']);
  });

  test('no room half-way: 3, the earlier output whole, no litter', async () => {
    const place = await withEarlier(heronDesign);
    const before = snapshot(place);
    // a limit of 2 KB on each file fails a write just as a full disk does
    const words = [
      'sh',
      '-c',
      'ulimit -f 4; exec "$@"',
      'sh',
      process.execPath,
      compiled('cli/main.js'),
      'build',
      'heron.yaml',
    ];
    const { code, out, err } = await ended(words, place);
    expect({ code, out }).toEqual({ code: 3, out: '' });
    expect(err).toContain('output/heron: the file is larger than this disk takes.');
    expect(snapshot(place)).toEqual(before);
  });

  test('Ctrl-C while the camera is worked out: 130, the earlier output whole, no litter', async () => {
    await interrupted((delay) => setTimeout(delay));
  });

  test('Ctrl-C while the files are written: 130, the earlier output whole, no litter', async () => {
    await interrupted(async (_, place, runs) => {
      while (runs() && !readdirSync(join(place, 'output')).some((name) => name.endsWith('.tmp'))) await setTimeout(1);
    });
  });
});

describe('spacer', PATIENCE, () => {
  test('for the one holder that needs one, beside the camera', async () => {
    const place = camera(heronDesign);
    const { code, out } = await tailboard(['spacer', 'heron.yaml', '--json'], place);
    expect(code).toBe(0);
    const spacer = JSON.parse(out);
    // 24 − 5.8 = 18.2: four plies of 4.05 and four shims of 0.5, nothing left
    expect(spacer).toMatchObject({ holder: 'processing holder', under: 'glass', plies: [4.05, 4.05, 4.05, 4.05] });
    expect(spacer.thickness).toBeCloseTo(18.2, 6);
    expect(spacer.shims).toEqual([0.5, 0.5, 0.5, 0.5]);
    expect(readdirSync(join(place, 'output'))).toEqual(['heron-spacer-processing-holder']);
    for (const file of spacer.files) expect(readFileSync(join(place, file)).length).toBeGreaterThan(0);
  });

  test('for a holder that the design does not know', async () => {
    const place = camera(heronDesign);
    const words = ['spacer', 'heron.yaml', '--depth', '17.95mm', '--name', 'tin box', '-o', 'tin'];
    const { code, out } = await tailboard(words, place);
    expect(code).toBe(0);
    expect(out).toContain('12.15 mm'); // 17.95 − 5.8, three plies of 4.05
    expect(readdirSync(place).sort()).toEqual(['heron.yaml', 'tin']);
  });
});

function camera(design: string): string {
  const place = scratch();
  writeFileSync(join(place, 'heron.yaml'), design);
  return place;
}

async function withEarlier(design: string): Promise<string> {
  const place = camera(design);
  await writeFolder(join(place, 'output', 'heron'), [
    { path: 'plan.json', bytes: new TextEncoder().encode('{"earlier":1}') },
  ]);
  return place;
}

/**
 * Breaks a build off when `moment` has come. The moment may be missed on a busy machine (too early to be heard, or the
 * build was done): then it is tried again with another delay, but a build that heard the signal must end as promised.
 */
async function interrupted(
  moment: (delay: number, place: string, runs: () => boolean) => Promise<void>,
): Promise<void> {
  for (const delay of [400, 800, 250, 1600, 3000]) {
    const place = await withEarlier(heronDesign);
    const before = snapshot(place);
    let running = true;
    let signalled: Promise<void> = Promise.resolve();
    const words = [process.execPath, compiled('cli/main.js'), 'build', 'heron.yaml'];
    const { code } = await ended(words, place, (send) => {
      signalled = moment(delay, place, () => running).then(() => send('SIGINT'));
    });
    running = false;
    await signalled;
    if (code === 130) {
      expect(snapshot(place)).toEqual(before);
      return;
    }
    expect([0, null]).toContain(code);
  }
  throw new Error('no build could be caught at work');
}
