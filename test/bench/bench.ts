import { cpus } from 'node:os';
import { plansIn, processRuns } from './measure.js';

/** What the program promises of its speed, measured; nothing fails here, a busy machine would lie. */
const [kind, ...rest] = process.argv.slice(2).filter((word) => word !== '--json');
if (kind !== undefined) {
  process.stderr.write(`There is nothing to measure called ${[kind, ...rest].join(' ')}.\n`);
  process.exit(2);
}

const bare = await processRuns(['-e', '0'], 15);
const plan = await processRuns(['dist/cli/main.js', 'plan', 'designs/heron.yaml'], 15);
const build = await processRuns(['dist/cli/main.js', 'build', 'designs/heron.yaml', '-o', 'OUT'], 5);
const many = await plansIn(1000);

const rows = [
  { what: 'node -e 0', figure: bare.seconds, unit: 's', goal: null },
  { what: 'plan designs/heron.yaml, whole process', figure: plan.seconds, unit: 's', goal: null },
  { what: 'plan over node -e 0', figure: plan.seconds / bare.seconds, unit: 'times', goal: 4 },
  { what: 'build designs/heron.yaml, whole process', figure: build.seconds, unit: 's', goal: 4 },
  { what: 'build, most memory', figure: build.megabytes, unit: 'MB', goal: 400 },
  { what: '1,000 random designs planned in one process', figure: many, unit: 's', goal: 3 },
];

if (process.argv.includes('--json')) {
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

function machine(): string {
  const { arch, platform, version } = process;
  return `Node ${version}, ${platform} ${arch}, ${cpus().length} × ${cpus()[0]?.model ?? 'unknown'}`;
}
