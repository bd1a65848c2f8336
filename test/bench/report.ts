import { writeFileSync } from 'node:fs';
import { machine } from './machine.js';
import type { BenchOptions } from './wanted.js';

/** One answer of one seed. */
export interface Answer {
  readonly value: number;
  /** Sheets less the largest clear strip of one, in sheets. */
  readonly equivalents?: number;
  readonly firstMilliseconds: number;
  readonly layout: unknown;
}

export interface Instance {
  readonly name: string;
  /** The optimum, or the best that is known. */
  readonly best: number;
  readonly bestEquivalents?: number;
  readonly solve: (seed: number) => Answer;
}

/** Runs every instance with every seed, one after the other, and prints how near to the best each came. */
export function report(file: string, instances: readonly Instance[], options: BenchOptions): void {
  const { seconds, seeds, json, layouts } = options;
  const seedList = Array.from({ length: seeds }, (_, i) => i + 1);
  const found = seedList.map((): Record<string, unknown> => ({}));
  const rows = instances.map(({ name, best, bestEquivalents, solve }) => {
    const answers = seedList.map((seed) => solve(seed));
    answers.forEach(({ layout }, i) => {
      (found[i] as Record<string, unknown>)[name] = layout;
    });
    const values = answers.map(({ value }) => value);
    const equivalents = answers.flatMap((a) => (a.equivalents === undefined ? [] : [a.equivalents]));
    const value = mean(values);
    const row = {
      name,
      value,
      best,
      ratio: value / best,
      worst: Math.max(...values),
      firstMilliseconds: mean(answers.map((a) => a.firstMilliseconds)),
      ...(equivalents.length === 0
        ? {}
        : { equivalents: mean(equivalents), worstEquivalents: Math.max(...equivalents), bestEquivalents }),
    };
    if (!json) process.stdout.write(`${line(row)}\n`);
    return row;
  });
  if (layouts !== undefined)
    seedList.forEach((seed, i) => {
      writeFileSync(seed === 1 ? layouts : layouts.replace(/(\.\w+)?$/, `-${seed}$1`), JSON.stringify(found[i]));
    });
  const summary = {
    mean: mean(rows.map(({ ratio }) => ratio)),
    total: sum(rows.map(({ value }) => value)),
    atBest: rows.filter(({ worst, best }) => worst <= best * (1 + 1e-9)).length,
    ...(rows.some((row) => row.equivalents !== undefined)
      ? {
          totalEquivalents: sum(rows.map((row) => row.equivalents ?? 0)),
          totalBestEquivalents: sum(rows.map((row) => row.bestEquivalents ?? 0)),
        }
      : {}),
  };
  if (json)
    process.stdout.write(
      `${JSON.stringify({ file, machine: machine(), threads: 1, seconds, seeds, instances: rows, ...summary }, null, 2)}\n`,
    );
  else {
    const { totalEquivalents, totalBestEquivalents } = summary;
    const eq =
      totalEquivalents === undefined
        ? ''
        : `, ${fixed(totalEquivalents)} equivalents (${totalBestEquivalents?.toFixed(3)} known)`;
    process.stdout.write(
      `${machine()}, one thread\n${rows.length} instances, ${seconds} s, ${seeds} seeds: ${percent(summary.mean)} above the best known on average, total ${fixed(summary.total)}${eq}, at the best known with every seed in ${summary.atBest}\n`,
    );
  }
}

function line(row: {
  readonly name: string;
  readonly value: number;
  readonly best: number;
  readonly ratio: number;
  readonly worst: number;
  readonly firstMilliseconds: number;
  readonly equivalents?: number;
  readonly bestEquivalents?: number | undefined;
}): string {
  const { name, value, best, ratio, worst, firstMilliseconds, equivalents, bestEquivalents } = row;
  const eq =
    equivalents === undefined ? '' : `  equivalents ${equivalents.toFixed(3)} (${bestEquivalents?.toFixed(3)})`;
  return `${name.padEnd(16)} ${fixed(value)} (best known ${fixed(best)}, worst seed ${fixed(worst)})  ${percent(ratio)}${eq}  first after ${firstMilliseconds.toFixed(1)} ms`;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]): number => sum(values) / values.length;
const fixed = (value: number): string => String(Math.round(1000 * value) / 1000);
const percent = (ratio: number): string => `${(100 * (ratio - 1)).toFixed(3)} %`;
