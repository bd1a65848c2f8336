import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import fc from 'fast-check';
import { designOf } from '../design/reading.js';
import { randomDesign } from '../random-design.js';

interface Runs {
  /** Median, from the call to the end of the process. */
  readonly seconds: number;
  /** The most memory that any run held at once; 0 where the system does not tell. */
  readonly megabytes: number;
}

/** Runs Node with these words so many times after one to warm up; OUT stands for a folder that is removed afterwards. */
export async function processRuns(words: readonly string[], times: number): Promise<Runs> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const given = words.map((word) => (word === 'OUT' ? join(folder, 'out') : word));
  const seconds: number[] = [];
  let megabytes = 0;
  for (let run = 0; run <= times; run++) {
    const one = await processRun(given);
    if (run > 0) seconds.push(one.seconds);
    megabytes = Math.max(megabytes, one.megabytes);
  }
  rmSync(folder, { recursive: true });
  return { seconds: median(seconds), megabytes };
}

async function processRun(words: readonly string[]): Promise<Runs> {
  const start = performance.now();
  const child = spawn(process.execPath, words, { stdio: 'ignore' });
  let megabytes = 0;
  const watch = setInterval(() => {
    megabytes = Math.max(megabytes, peakMegabytes(child.pid));
  }, 20);
  const code = await new Promise((resolve) => child.on('close', resolve));
  clearInterval(watch);
  if (code !== 0) throw new Error(`${words.join(' ')} ended with ${code}`);
  return { seconds: (performance.now() - start) / 1000, megabytes };
}

/** How large a file of a build is. */
export function writtenBytes(design: string, file: string): number {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const out = join(folder, 'out');
  spawnSync(process.execPath, ['dist/cli/main.js', 'build', design, '--effort', '0', '-o', out]);
  const { size } = statSync(join(out, file));
  rmSync(folder, { recursive: true });
  return size;
}

/** Seconds that the stages of a build took, each the median of so many processes. */
export async function stageRuns(design: string, times: number): Promise<Readonly<Record<string, number>>> {
  const runs: Record<string, number>[] = [];
  for (let run = 0; run < times; run++) {
    const child = spawn(process.execPath, ['test/bench/stages.mjs', design], { stdio: ['ignore', 'pipe', 'inherit'] });
    let said = '';
    child.stdout.on('data', (bytes) => {
      said += String(bytes);
    });
    const code = await new Promise((resolve) => child.on('close', resolve));
    if (code !== 0) throw new Error(`the stages of ${design} ended with ${code}`);
    runs.push(JSON.parse(said) as Record<string, number>);
  }
  const stages = Object.keys(runs[0] ?? {});
  return Object.fromEntries(stages.map((stage) => [stage, median(runs.map((run) => run[stage] ?? 0))]));
}

/** High-water mark of a process's memory, where the system keeps one. */
function peakMegabytes(pid: number | undefined): number {
  try {
    const kilobytes = /VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    return Number(kilobytes ?? 0) / 1024;
  } catch {
    return 0;
  }
}

/** Seconds for so many random designs, read beforehand, from the design to the finished plan; median of three rounds. */
export async function plansIn(count: number): Promise<number> {
  // the compiled program: what runs TypeScript as it stands slows every small function
  const compiled = new URL('../../dist/index.js', import.meta.url).href;
  const { planDesign }: typeof import('../../src/index.js') = await import(compiled);
  const designs = fc.sample(randomDesign, { seed: 20, numRuns: count }).map(designOf);
  const rounds = Array.from({ length: 3 }, () => {
    const start = performance.now();
    for (const design of designs) planDesign(design);
    return (performance.now() - start) / 1000;
  });
  return median(rounds);
}

/** The compiled program's checks of whole designs, in one process. */
const checks = async () => {
  const compiled = new URL('../../dist/index.js', import.meta.url).href;
  const { loadWorkshop }: typeof import('../../src/index.js') = await import(compiled);
  const { check } = await loadWorkshop();
  return (text: string) => check(designOf(text), { onProgress: () => {} });
};

/** How many megabytes a process has grown between its tenth check of a design and its fiftieth. */
export async function memoryGrown(text: string): Promise<number> {
  const check = await checks();
  // what is only waiting to be collected is not kept
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  const held: number[] = [];
  for (let run = 1; run <= 50; run++) {
    check(text);
    // what the kernel's own helpers leave behind is freed between two turns of the event loop
    await new Promise((resolve) => setTimeout(resolve, 10));
    collect();
    await new Promise((resolve) => setTimeout(resolve, 10));
    held.push(process.memoryUsage().rss / 1024 / 1024);
  }
  return (held[49] ?? 0) - (held[9] ?? 0);
}

/** The power of the number of set-ups with which the time of a check grows, from designs with so many holders. */
export async function growth(withHolders: (count: number) => string): Promise<number> {
  const check = await checks();
  const counts = [1, 5, 10, 20];
  const points = counts.map((count) => {
    const text = withHolders(count);
    check(text);
    const rounds = [1, 2, 3].map(() => {
      const start = performance.now();
      check(text);
      return performance.now() - start;
    });
    // each holder is focused and exposed, upright and lengthwise, and the camera goes on the road
    return { x: Math.log(4 * count + 1), y: Math.log(median(rounds)) };
  });
  const [mx, my] = [mean(points.map(({ x }) => x)), mean(points.map(({ y }) => y))];
  const sum = (of: (p: { x: number; y: number }) => number) => points.reduce((total, p) => total + of(p), 0);
  return sum(({ x, y }) => (x - mx) * (y - my)) / sum(({ x }) => (x - mx) ** 2);
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
