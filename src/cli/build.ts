import { join } from 'node:path';
import { findingsPage } from '../index.js';
import { work } from './in-worker.js';
import { refuseUnknownRules } from './known-rules.js';
import { refuseOwnRemnants } from './own-remnants.js';
import { withProgress } from './progress.js';
import { readCamera } from './read-camera.js';
import { readDesignFile } from './read-design-file.js';
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
}

/** More would take hours. */
const MOST_EFFORT = 100_000;

/** Writes everything that the workshop needs, or nothing where a rule of level error is broken and was not waived. */
export async function build(file: string, options: BuildOptions, terminal: Terminal): Promise<number> {
  const { output, despite } = options;
  refuseUnknownRules('--despite', despite);
  const effort = options.effort === undefined ? {} : { effort: effortOf(options.effort) };
  const design = readDesignFile(file);
  const since = options.since === undefined ? null : await readCamera(options.since);
  const folder = output ?? join('output', since === null ? design.slug : `${design.slug}-since-${since.plan.revision}`);
  refuseOwnRemnants(file, design, folder);
  // before the long work, and again before the folder is replaced
  refuseForeign(folder);
  const { files, findings, summary } = await withProgress(terminal, (show) =>
    work({ kind: 'build', design, despite, ...effort, ...(since === null ? {} : { since }) }, show),
  );
  await terminal.err(findingsPage(findings, terminal));
  refuseBroken(findings, despite);
  await writeFolder(folder, files);
  await terminal.out([...summary, `Wrote ${files.length} files into ${folder}.`, ''].join('\n'));
  return EXIT.done;
}

function effortOf(text: string): number {
  const effort = /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
  if (effort <= MOST_EFFORT) return effort;
  throw new Stop(
    EXIT.wrongCall,
    `--effort: ${text} is not a number from 0 to ${MOST_EFFORT}. Write 0 for the first sheets that are found, 20 for the usual search.`,
  );
}
