import { budgetPage, findingsPage, planDesign, proofPage } from '../index.js';
import { work } from './in-worker.js';
import { refuseUnknownRules } from './known-rules.js';
import { withProgress } from './progress.js';
import { readDesignFile } from './read-design-file.js';
import { EXIT } from './stop.js';
import type { Terminal } from './terminal.js';
import { refuseForeign, writeFolder } from './write-folder.js';

export interface CheckOptions {
  readonly only: readonly string[];
  readonly json?: boolean;
  readonly register?: boolean;
  /** Folder for a drawing of each leak. */
  readonly leaks?: string;
}

/** Prints what the proof of the virtual build found; the exit code tells whether a rule of level error is broken. */
export async function check(
  file: string,
  { only, json = false, register = false, leaks: folder }: CheckOptions,
  terminal: Terminal,
): Promise<number> {
  refuseUnknownRules('--only', only);
  const design = readDesignFile(file);
  if (folder !== undefined) refuseForeign(folder);
  const { name, revision } = planDesign(design).plan;
  const { findings: all, proof, leaks } = await withProgress(terminal, (show) => work({ kind: 'check', design }, show));
  const findings = only.length === 0 ? all : all.filter(({ rule }) => only.includes(rule));
  const errors = findings.filter(({ level }) => level === 'error').length;
  if (json) await terminal.out(`${JSON.stringify({ schema: 1, name, revision, findings, proof }, null, 2)}\n`);
  else {
    const verdict = errors === 0 ? 'no rule of level error is broken' : `errors: ${errors}`;
    const pages = [
      findingsPage(findings, terminal),
      register && proof !== null ? budgetPage(proof.register, terminal) : '',
      proof !== null && only.length === 0 ? proofPage(proof, terminal) : '',
      `${name}, revision ${revision}: ${verdict}${among(only)}.\n`,
    ];
    await terminal.out(pages.filter((page) => page !== '').join('\n'));
  }
  if (folder !== undefined) {
    if (leaks.length > 0) await writeFolder(folder, leaks);
    await terminal.err(
      leaks.length > 0
        ? `Drew ${leaks.length} ${leaks.length === 1 ? 'leak' : 'leaks'} into ${folder}.\n`
        : 'No leak to draw.\n',
    );
  }
  return errors === 0 ? EXIT.done : EXIT.ruleBroken;
}

const among = (only: readonly string[]): string => (only.length === 0 ? '' : ` (looked at ${only.join(', ')} alone)`);
