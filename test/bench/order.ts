import { readFileSync } from 'node:fs';
import { searchTour } from '../../src/sheets/tour.js';
import { type Instance, report } from './report.js';
import { timed } from './timed.js';
import type { BenchOptions } from './wanted.js';

interface CutJob {
  readonly name: string;
  readonly best: number;
  readonly job: {
    readonly start: readonly [number, number];
    readonly contours: readonly {
      readonly points: readonly (readonly [number, number])[];
      readonly after: readonly number[];
    }[];
  };
}

/** Measures the order of cuts on a file of cutting jobs; the travel is measured here, along what was found. */
export function measureOrder(file: string, options: BenchOptions): void {
  const { jobs } = JSON.parse(readFileSync(file, 'utf8')) as { readonly jobs: readonly CutJob[] };
  report(
    file,
    jobs.map(({ name, best, job }): Instance => {
      const [x, y] = job.start;
      const given = {
        start: { x, y },
        contours: job.contours.map(({ points, after }) => ({ points: points.map(([x, y]) => ({ x, y })), after })),
      };
      return {
        name,
        best,
        solve: (seed) => {
          const { found, firstMilliseconds } = timed(() => searchTour(given, seed), options.seconds);
          return { value: travelled(job, found), firstMilliseconds, layout: found };
        },
      };
    }),
    options,
  );
}

/** The way without the beam, mm; a tour that leaves out a contour or breaks an order is none. */
function travelled(
  { start, contours }: CutJob['job'],
  { order, entries }: { readonly order: readonly number[]; readonly entries: readonly number[] },
): number {
  const done = new Set<number>();
  let [x, y] = start;
  let sum = 0;
  order.forEach((contour, i) => {
    const { points, after } = contours[contour] as CutJob['job']['contours'][number];
    if (done.has(contour) || !after.every((before) => done.has(before)))
      throw new Error(`contour ${contour} comes twice or too early`);
    done.add(contour);
    const [nextX, nextY] = points[entries[i] as number] as readonly [number, number];
    sum += Math.hypot(nextX - x, nextY - y);
    [x, y] = [nextX, nextY];
  });
  if (done.size !== contours.length) throw new Error('a contour was left out');
  return sum;
}
