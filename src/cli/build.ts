import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type BuildResult, findingsPage, type KitRunResult, loadPrices, printProblem } from '../index.js';
import { work } from './in-worker.js';
import { onInterrupt } from './interrupt.js';
import { refuseUnknownRules } from './known-rules.js';
import { refuseOwnRemnants } from './own-remnants.js';
import { withProgress } from './progress.js';
import { readCamera } from './read-camera.js';
import { readDesignFile, readTextFile } from './read-design-file.js';
import { refuseBroken } from './refuse-broken.js';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';
import { refuseForeign, writeFolder } from './write-folder.js';

export interface BuildOptions {
  readonly output?: string;
  readonly despite: readonly string[];
  /** A number, as it was typed. */
  readonly effort?: string;
  /** A plan, a built folder or a design. */
  readonly since?: string;
  /** Kits, a number as it was typed. */
  readonly copies?: string;
  /** Its file. */
  readonly prices?: string;
}

/** More would take hours. */
const MOST_EFFORT = 100_000;

/** Writes everything that the workshop needs, or nothing where a rule of level error is broken and was not waived. */
export async function build(file: string, options: BuildOptions, terminal: Terminal): Promise<number> {
  const { output, despite } = options;
  refuseUnknownRules('--despite', despite);
  const effort = options.effort === undefined ? {} : { effort: effortOf(options.effort) };
  const run = await runOf(options);
  const design = readDesignFile(file);
  if (run !== null && options.since !== undefined)
    throw new Stop(
      EXIT.wrongCall,
      '--since is for one camera that stands, and --copies for new ones: give one of the two.',
    );
  const since = options.since === undefined ? null : await readCamera(options.since);
  const slug = since === null ? design.slug : `${design.slug}-since-${since.plan.revision}`;
  const folder = output ?? join('output', run === null ? slug : run.slugOf(design.slug));
  refuseOwnRemnants(file, design, folder);
  // before the long work, and again before the folder is replaced
  refuseForeign(folder);
  const written = nothingIsWritten(folder, terminal);
  const { files, findings, summary } = await withProgress<BuildResult | KitRunResult>(terminal, (show) =>
    run === null
      ? work({ kind: 'build', design, despite, ...effort, ...(since === null ? {} : { since }) }, show)
      : work({ kind: 'kits', design, copies: run.copies, prices: run.prices, despite, ...effort }, show),
  );
  await terminal.err(findingsPage(findings, terminal));
  refuseBroken(findings, despite);
  await writeFolder(folder, files);
  written();
  await terminal.out([...summary, `Wrote ${files.length} files into ${folder}.`, ''].join('\n'));
  return EXIT.done;
}

/**
 * Should the user who sits there break off, tells that no harm was done; until the function that it gives back is called.
 * No signal is heard between the folder's taking its place and that.
 */
const nothingIsWritten = (folder: string, { showsProgress, err }: Terminal): (() => void) =>
  onInterrupt(() => {
    if (showsProgress)
      void err(`Broken off: nothing was written${existsSync(folder) ? `, and ${folder} is as it was` : ''}.\n`);
  });

/** What is asked of a run of kits; null where one camera is built. */
async function runOf({ copies: typed, prices: file }: BuildOptions) {
  if (typed === undefined) {
    if (file === undefined) return null;
    throw new Stop(
      EXIT.wrongCall,
      '--prices is for a run of kits: say how many with --copies 10, or --copies 1 for one.',
    );
  }
  const { priceFile, readPrices, runSlug, MOST_COPIES } = await loadPrices();
  const copies = /^\d+$/.test(typed) ? Number(typed) : Number.NaN;
  if (!(copies >= 1 && copies <= MOST_COPIES))
    throw new Stop(
      EXIT.wrongCall,
      `--copies: ${typed} is not a whole number from 1 to ${MOST_COPIES}. Write 10 for ten kits, and leave it out for the files of one camera.`,
    );
  const slugOf = (slug: string) => runSlug(slug, copies);
  if (file === undefined) return { copies, slugOf, prices: null };
  const outcome = readPrices(readTextFile(file, priceFile).text, file);
  if ('problems' in outcome) throw new Stop(EXIT.wrongCall, outcome.problems.map(printProblem).join('\n\n'));
  return { copies, slugOf, prices: outcome.prices };
}

function effortOf(text: string): number {
  const effort = /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
  if (effort <= MOST_EFFORT) return effort;
  throw new Stop(
    EXIT.wrongCall,
    `--effort: ${text} is not a number from 0 to ${MOST_EFFORT}. Write 0 for the first sheets that are found, 20 for the usual search.`,
  );
}
