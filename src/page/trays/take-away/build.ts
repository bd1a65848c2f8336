import type { Finding, OutputFile } from '../../../index.js';
import type { App } from '../../app.js';
import { pickFiles } from '../../files.js';
import { markOf } from '../../mark-of.js';
import type { State } from '../../state.js';
import type { CameraText } from '../../worker/camera-asked.js';
import type { Built } from '../../worker/workbench-tasks.js';
import { findingsNow } from '../findings/now.js';
import { standing } from '../what-changed/state.js';
import type { FileAtHand, Harvest, Kits, TakeAwayState } from './state.js';

/** The rules of level error that are broken, and may be waived. */
export const brokenRules = (findings: readonly Finding[]): readonly string[] => [
  ...new Set(findings.filter(({ level }) => level === 'error').map(({ rule }) => rule)),
];

/**
 * A rule that a build may find kept though the check found it broken: it looks longer for a layout of the sheets than a
 * check does.
 */
const MAY_FIND_ROOM = 'part-on-bed';

/** The broken rules that stand in the way: nothing is built until they are cured or waived. */
export function inTheWay(state: State): readonly string[] {
  const { findings } = findingsNow(state);
  return brokenRules(findings).filter((rule) => rule !== MAY_FIND_ROOM && !state.takeAway.despite.includes(rule));
}

/** A word given for a rule ends when the rule is kept: broken anew, it is asked for anew. */
export function forgetKeptRules(app: App): void {
  const broken = brokenRules(findingsNow(app.state()).findings);
  put(app, { despite: app.state().takeAway.despite.filter((rule) => broken.includes(rule)) });
}

const put = (app: App, patch: Partial<TakeAwayState>): void =>
  app.change(({ takeAway }) => ({ takeAway: { ...takeAway, ...patch } }));

/** Builds the camera that is shown, when it is proven. */
export function askForBuild(app: App): void {
  const { shown } = app.state();
  if (shown === null) return;
  put(app, { job: { kind: 'waiting', of: markOf(shown.of) } });
  beginWhenProven(app);
}

/** Begins the build that waits, if its proof is there and nothing is in the way. */
export function beginWhenProven(app: App): void {
  const state = app.state();
  const { job, despite } = state.takeAway;
  const { shown } = state;
  if (job.kind !== 'waiting') return;
  if (shown === null || markOf(shown.of) !== job.of) {
    put(app, { job: { kind: 'stopped', because: CHANGED } });
    return;
  }
  const { proof } = state.findings;
  if (proof.kind === 'failed' && proof.of === job.of) {
    loseBuild(app);
    return;
  }
  const { proven, findings } = findingsNow(state);
  if (!proven) return;
  const rules = inTheWay(state);
  if (rules.length > 0) put(app, { job: { kind: 'refused', rules } });
  else {
    const waived = brokenRules(findings).filter((rule) => despite.includes(rule));
    void build(app, markOf(shown.of), waived);
  }
}

/** As many as the command line takes. */
export const MOST_COPIES = 100;

/** How many kits are asked for; null for one camera, NaN for what is no such number. */
export function copiesOf({ copies }: Kits): number | null {
  const typed = copies.trim();
  if (typed === '') return null;
  const count = /^\d+$/.test(typed) ? Number(typed) : Number.NaN;
  return count >= 1 && count <= MOST_COPIES ? count : Number.NaN;
}

export const typeCopies = (app: App, copies: string): void =>
  put(app, { kits: { ...app.state().takeAway.kits, copies } });

export async function openPrices(app: App): Promise<void> {
  const [picked] = await pickFiles('.yaml,.yml');
  if (picked === undefined) return;
  const { kits } = app.state().takeAway;
  put(app, { kits: { ...kits, prices: { file: picked.name, text: picked.text } } });
}

export const dropPrices = (app: App): void => put(app, { kits: { ...app.state().takeAway.kits, prices: null } });

/** The camera of which only the rest is cut, where that is asked for and one was opened. */
export const sinceOf = (state: State): CameraText | null =>
  state.takeAway.onlyChanged ? standing(state.whatChanged) : null;

export const cutOnlyChanged = (app: App, onlyChanged: boolean): void => put(app, { onlyChanged });

const CHANGED = 'The design was changed meanwhile.';

async function build(app: App, of: string, despite: readonly string[]): Promise<void> {
  const { shown } = app.state();
  if (shown === null) return;
  put(app, { job: { kind: 'running', of, stage: 'sizing', done: 0 } });
  const { kits } = app.state().takeAway;
  const copies = copiesOf(kits);
  const since = sinceOf(app.state());
  let built: Built | { readonly problems: readonly string[] } | null;
  try {
    const wanted = copies === null ? null : { copies, prices: kits.prices };
    built = await app.workbench.build(shown.of, { despite, kits: wanted, since }, ({ stage, done }) =>
      put(app, { job: { kind: 'running', of, stage, done } }),
    );
  } catch {
    loseBuild(app);
    return;
  }
  if (built === null) {
    // the user's own word stands where he stopped it
    if (app.state().takeAway.job.kind === 'running') put(app, { job: { kind: 'stopped', because: CHANGED } });
    return;
  }
  if ('problems' in built) {
    put(app, { job: { kind: 'misread', problems: built.problems } });
    return;
  }
  const rules = brokenRules(built.findings).filter((rule) => !despite.includes(rule));
  if (rules.length > 0) {
    put(app, { job: { kind: 'refused', rules } });
    return;
  }
  const before = app.state().takeAway.harvest;
  for (const { url } of before === null ? [] : [...before.files, before.archive]) URL.revokeObjectURL(url);
  put(app, { job: { kind: 'none' }, harvest: harvestOf(built, { of, kits, since }) });
}

/** Ends a build, or its waiting for the proof, that came to nothing by a mistake of ours. */
function loseBuild(app: App): void {
  const { kind } = app.state().takeAway.job;
  if (kind === 'waiting' || kind === 'running')
    put(app, {
      job: { kind: 'stopped', because: 'It came to nothing by a mistake of the page: nothing was written.' },
    });
}

/** Puts a build aside, whether it waits or runs. */
export function stopBuild(app: App): void {
  const { kind } = app.state().takeAway.job;
  put(app, { job: { kind: 'stopped', because: 'Stopped: nothing was written.' } });
  if (kind === 'running') app.workbench.putAside();
}

function harvestOf(
  { files, archive, summary, laserCaution }: Built,
  asked: Pick<Harvest, 'of' | 'kits' | 'since'>,
): Harvest {
  return {
    ...asked,
    files: files.map(atHand),
    archive: atHand(archive),
    summary,
    laserCaution,
  };
}

function atHand({ path, bytes }: OutputFile): FileAtHand {
  const type = KINDS[path.split('.').at(-1) ?? ''] ?? 'application/octet-stream';
  // what came over from a worker lies in memory of its own
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
  return { path, size: bytes.length, url };
}

const KINDS: Readonly<Record<string, string>> = {
  pdf: 'application/pdf',
  svg: 'image/svg+xml',
  json: 'application/json',
  zip: 'application/zip',
};
