import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { randomDrawer } from '../survey/random-drawer.js';
import { machine } from './machine.js';
import { growth, memoryGrown, plansIn, processRuns, stageRuns, writtenBytes } from './measure.js';

const heron = readFileSync('designs/heron.yaml', 'utf8');

/** What the program promises of its speed, measured; nothing fails here, a busy machine would lie. */
export async function measurePromises(asJson: boolean): Promise<void> {
  const bare = await processRuns(['-e', '0'], 15);
  const plan = await processRuns(['dist/cli/main.js', 'plan', 'designs/heron.yaml'], 15);
  const building = ['dist/cli/main.js', 'build', 'designs/heron.yaml', '-o', 'OUT'];
  const quick = await processRuns([...building, '--effort', '0'], 5);
  const build = await processRuns(building, 5);
  const stages = await stageRuns('designs/heron.yaml', 5);
  const bookBytes = writtenBytes('designs/heron.yaml', 'book.pdf');
  const check = await processRuns(['dist/cli/main.js', 'check', 'designs/heron.yaml'], 5);
  const spacer = await processRuns(
    ['dist/cli/main.js', 'spacer', 'designs/heron.yaml', '--depth', '12.5mm', '--name', 'plate holder', '-o', 'OUT'],
    5,
  );
  const grown = await memoryGrown(heron);
  const power = await growth(heronWith);
  const many = await plansIn(1000);
  const survey = await surveyOf(1000);

  const rows = [
    { what: 'node -e 0', figure: bare.seconds, unit: 's', goal: null },
    { what: 'plan designs/heron.yaml, whole process', figure: plan.seconds, unit: 's', goal: null },
    { what: 'plan over node -e 0', figure: plan.seconds / bare.seconds, unit: 'times', goal: 4 },
    { what: 'build designs/heron.yaml --effort 0, whole process', figure: quick.seconds, unit: 's', goal: 4 },
    { what: 'build designs/heron.yaml, whole process', figure: build.seconds, unit: 's', goal: 15 },
    {
      what: 'drawings and book of it, in a process that did nothing else before',
      figure: (stages.drawing ?? Infinity) + (stages['writing the book'] ?? Infinity),
      unit: 's',
      goal: 4,
    },
    { what: 'book.pdf of it', figure: bookBytes / 1e6, unit: 'MB', goal: 3 },
    { what: 'build, most memory', figure: build.megabytes, unit: 'MB', goal: 400 },
    { what: 'check designs/heron.yaml, whole process', figure: check.seconds, unit: 's', goal: 8 },
    { what: 'check, most memory', figure: check.megabytes, unit: 'MB', goal: 500 },
    { what: 'spacer for a thicker holder, whole process', figure: spacer.seconds, unit: 's', goal: 1 },
    { what: 'grown from the 10th check to the 50th in one process', figure: grown, unit: 'MB', goal: 20 },
    {
      what: 'check with 1, 5, 10, 20 holders: grows with the set-ups to the power of',
      figure: power,
      unit: '',
      goal: 1.2,
    },
    { what: '1,000 random designs planned in one process', figure: many, unit: 's', goal: 3 },
    { what: 'survey of 1,000 lenses by 12 formats, whole process', figure: survey.seconds, unit: 's', goal: 30 },
    { what: 'survey, most memory', figure: survey.megabytes, unit: 'MB', goal: null },
  ];

  if (asJson) {
    process.stdout.write(`${JSON.stringify({ machine: machine(), rows }, null, 2)}\n`);
  } else {
    process.stdout.write(`${machine()}\n\n| what | median | goal | |\n| --- | --- | --- | --- |\n`);
    for (const { what, figure, unit, goal } of rows) {
      const met = goal === null ? '' : figure <= goal ? 'met' : 'missed';
      process.stdout.write(
        `| ${what} | ${figure.toPrecision(3)} ${unit} | ${goal === null ? '' : `≤ ${goal} ${unit}`} | ${met} |\n`,
      );
    }
  }
}

/** The survey of a drawer of so many random lenses. */
async function surveyOf(lenses: number) {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const file = join(folder, 'drawer.yaml');
  writeFileSync(file, randomDrawer(lenses));
  const runs = await processRuns(['dist/cli/main.js', 'survey', file, '--json'], 1);
  rmSync(folder, { recursive: true });
  return runs;
}

/** Heron with so many holders, each a little deeper than the one before. */
function heronWith(count: number): string {
  const first = heron.slice(0, heron.indexOf('\nholders:'));
  const holders = Array.from({ length: count }, (_, i) => {
    const depth = 5.8 + (18.2 * i) / 19;
    return `  - { name: holder ${i + 1}, filmDepth: ${depth.toFixed(2)} mm, depthTo: emulsion, width: 150 mm, length: 210 mm, thickness: ${(depth + 12).toFixed(1)} mm }`;
  });
  return `${first}\nholders:\n${holders.join('\n')}\nshims: [0.1 mm, 0.25 mm, 0.5 mm]\n`;
}
