import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { judgement } from './judge.js';
import { type Fault, keep, kept, type Stage } from './kept.js';
import { killed, moments, staged } from './kills.js';
import { Looker } from './looker.js';
import { CHUNK, chunkOf } from './soak-design.js';

const usage = `npm run soak                  a million random designs planned and ten thousand checked, from where it was left
  --plans 1000000 --checks 10000   how many
  --judge COMMAND             builds cameras that pass, and has each judged: COMMAND FOLDER --design FILE ends with 0
  --judged 200                how many
  --kills 200                 how many builds are killed, each at another moment
  --seed 1                    which designs
  --beside 1                  how many designs are looked at beside each other
npm run soak -- --show 12345  the design of that number
`;

/** What was found, and the designs on which something was. */
const FOLDER = '.soak';

/** How many designs are looked at before it is written down that they were. */
const STEP: Readonly<Record<Stage, number>> = { plan: CHUNK, check: 10 };

const { values } = parseArgs({
  options: {
    plans: { type: 'string', default: '1000000' },
    checks: { type: 'string', default: '10000' },
    judge: { type: 'string' },
    judged: { type: 'string', default: '200' },
    kills: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
    beside: { type: 'string', default: '1' },
    show: { type: 'string' },
  },
});

function whole(text: string): number {
  if (/^\d+$/.test(text)) return Number(text);
  process.stderr.write(usage);
  process.exit(2);
}

const seed = whole(values.seed);
const designNumbered = (number: number): string => chunkOf(seed, Math.floor(number / CHUNK))[number % CHUNK] as string;

if (values.show !== undefined) process.stdout.write(designNumbered(whole(values.show)));
else await soak();

async function soak(): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  const file = join(FOLDER, `seed-${seed}.json`);
  const state = kept(file);
  const beside = Array.from({ length: whole(values.beside) }, () => new Looker(seed));

  /** Each takes the next piece of work until there is none. */
  const share = (work: readonly number[], each: (from: number, looker: Looker) => Promise<void>) => {
    const left = [...work];
    return Promise.all(
      beside.map(async (looker) => {
        for (let from = left.shift(); from !== undefined; from = left.shift()) await each(from, looker);
      }),
    );
  };
  const wrong = (fault: Fault) => {
    state.faults.push(fault);
    const design = join(FOLDER, `seed-${seed}-${fault.number}.yaml`);
    writeFileSync(design, designNumbered(fault.number));
    process.stdout.write(`FAULT: ${fault.stage} of design ${fault.number}, seed ${seed}, ${design}\n${fault.what}\n`);
  };
  const killedBuilds = async (count: number) => {
    if (state.killed >= count) return;
    const stage = await staged(join(FOLDER, 'killed'), readFileSync('test/designs/bare-heron.yaml', 'utf8'));
    for (const kill of moments(seed, count).slice(state.killed)) {
      const fault = await killed(stage, kill);
      if (fault !== null) {
        state.faults.push({ stage: 'kill', number: state.killed, what: fault });
        process.stdout.write(`FAULT: ${fault}\n`);
      }
      state.killed += 1;
      keep(file, state);
      process.stdout.write(`killed, seed ${seed}: ${state.killed} builds\n`);
    }
  };
  const lookedAt = async (stage: Stage, count: number) => {
    const steps = Array.from({ length: Math.ceil(count / STEP[stage]) }, (_, i) => i * STEP[stage]);
    const seen = new Set(state[stage].done);
    const { done, fates } = state[stage];
    await share(
      steps.filter((from) => !seen.has(from)),
      async (from, looker) => {
        for (let number = from; number < from + STEP[stage]; number++) {
          const outcome = await looker.see(stage, number);
          const fate = 'fate' in outcome ? outcome.fate : 'at fault';
          fates[fate] = (fates[fate] ?? 0) + 1;
          if ('fault' in outcome) wrong({ stage, number, what: outcome.fault });
          else if (stage === 'check' && fate === 'sound') state.sound.push(number);
        }
        done.push(from);
        keep(file, state);
        const counts = Object.entries(fates).map(([fate, many]) => `${many} ${fate}`);
        process.stdout.write(`${stage}, seed ${seed}: ${done.length * STEP[stage]} looked at, ${counts.join(', ')}\n`);
      },
    );
  };

  await lookedAt('plan', whole(values.plans));
  await lookedAt('check', whole(values.checks));
  const { judge } = values;
  if (judge !== undefined) {
    const judged = new Set(state.judged);
    await share(
      state.sound.slice(0, whole(values.judged)).filter((number) => !judged.has(number)),
      async (number) => {
        const fault = await judgement(judge, designNumbered(number), FOLDER, number);
        if (fault !== null) wrong({ stage: 'judge', number, what: fault });
        state.judged.push(number);
        keep(file, state);
        process.stdout.write(`judged, seed ${seed}: ${state.judged.length} cameras\n`);
      },
    );
  }
  for (const looker of beside) looker.end();
  await killedBuilds(whole(values.kills));
  process.stdout.write(`Seed ${seed}: ${state.faults.length} faults.\n`);
  process.exitCode = state.faults.length === 0 ? 0 : 1;
}
