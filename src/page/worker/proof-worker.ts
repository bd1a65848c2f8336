import {
  type BuildOptions,
  type CheckResult,
  type Design,
  type LightProof,
  loadArchive,
  loadDocuments,
  loadPrices,
  loadTakenOut,
  loadWorkshop,
  printProblem,
} from '../../index.js';
import { archiveOf } from './archive.js';
import { cameraOf } from './camera-text.js';
import { planKept, readKept } from './kept.js';
import { placed } from './places.js';
import type { DesignText } from './questions.js';
import { thread } from './thread.js';
import type { FromWorkbench, ToWorkbench } from './workbench-tasks.js';

/** Proves a camera, and builds what its makers take away: what takes seconds, one after another. */
const page = thread<ToWorkbench, FromWorkbench>();
const beside = (name: string): string => new URL(name, import.meta.url).href;
// begun before anything is asked, so that the first answer need not wait for it
const loaded = loadWorkshop(beside('manifold.wasm'));

/** A check that waits for the light. */
const begun: { check: { readonly given: DesignText; readonly end: (light?: () => LightProof) => CheckResult } | null } =
  {
    check: null,
  };

const onProgress = ({ stage, done }: { readonly stage: string; readonly done: number }): void =>
  page.postMessage({ kind: 'progress', stage, done });

page.onmessage = async ({ data }) => {
  try {
    if (data.kind === 'light') await endCheck(data.light);
    else {
      const read = readKept(data.given);
      if ('problems' in read) throw new Error(`${data.given.file} is no design`);
      if (data.kind === 'build') await build(read.design, data);
      else {
        const { beginCheck } = await loaded;
        begun.check = { given: data.given, end: beginCheck(read.design, { onProgress }) };
        onProgress({ stage: 'looking for light', done: 1 });
        page.postMessage({ kind: 'ready' });
      }
    }
  } catch (error) {
    page.postMessage({ kind: 'mistake', words: error instanceof Error ? error.message : String(error) });
  }
};

async function endCheck(light: LightProof | null): Promise<void> {
  if (begun.check === null) throw new Error('light came before the check had begun');
  const { given, end } = begun.check;
  begun.check = null;
  const { findings, proof, leaks, moves } = end(...(light === null ? [] : [() => light]));
  const planned = proof === null ? null : await planKept(given);
  const apart = planned === null ? null : (await loadTakenOut())(planned, moves);
  page.postMessage({
    kind: 'checked',
    checked: { findings: await placed(given, findings, proof?.joints), document: proof, apart, leaks },
  });
}

async function build(
  design: Design,
  { despite, kits, since: earlier, light }: Extract<ToWorkbench, { kind: 'build' }>,
): Promise<void> {
  onProgress({ stage: 'sizing', done: 0 });
  const { readPrices, runSlug } = await loadPrices();
  const read = kits?.prices ? readPrices(kits.prices.text, kits.prices.file) : { prices: null };
  if ('problems' in read) {
    page.postMessage({ kind: 'refused', problems: read.problems.map(printProblem) });
    return;
  }
  const since = earlier === null ? null : await cameraOf(earlier);
  if (since !== null && 'refused' in since) throw new Error('a camera that cannot be read was to be built on');
  const [workshop, { pagePdf }, { laserCaution }, regular, bold] = await Promise.all([
    loaded,
    loadDocuments(),
    loadArchive(),
    letters('DejaVuSans.ttf'),
    letters('DejaVuSans-Bold.ttf'),
  ]);
  const options: BuildOptions = {
    despite,
    onProgress: ({ stage, done }) => onProgress({ stage, done: 0.95 * done }),
    writeDocument: (pages, about) => pagePdf(pages, { regular, bold }, about),
    ...(light === null ? {} : { lightOf: () => light }),
  };
  const { files, findings, summary } =
    kits === null
      ? workshop.build(design, { ...options, ...(since === null ? {} : { since }) })
      : workshop.kits(design, { ...options, copies: kits.copies, prices: read.prices });
  onProgress({ stage: 'packing the archive', done: 0.95 });
  const slug =
    kits !== null
      ? runSlug(design.slug, kits.copies)
      : since === null
        ? design.slug
        : `${design.slug}-since-${since.plan.revision}`;
  const { folder, archive } = await archiveOf(slug, files);
  page.postMessage({ kind: 'built', built: { files: folder, archive, findings, summary, laserCaution } });
}

async function letters(file: string): Promise<Uint8Array> {
  const answer = await fetch(beside(file));
  if (!answer.ok) throw new Error(`${file} is missing beside the page`);
  return new Uint8Array(await answer.arrayBuffer());
}
