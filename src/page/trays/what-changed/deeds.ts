import type { App } from '../../app.js';
import { type PickedFile, pick, readFiles } from '../../files.js';
import { markOf } from '../../mark-of.js';
import type { CameraText } from '../../worker/camera-asked.js';
import { cutOnlyChanged } from '../take-away/build.js';
import { attendOneMore } from './holder-deeds.js';
import type { Before, WhatChangedState } from './state.js';

/** What can be done with two cameras. */

const put = (app: App, patch: Partial<WhatChangedState>): void =>
  app.change(({ whatChanged }) => ({ whatChanged: { ...whatChanged, ...patch } }));

/** Holds the design against the earlier camera anew when either has changed, and makes the spacer that is asked for. */
export function attendWhatChanged(app: App): void {
  attendOneMore(app);
  const { shown, whatChanged } = app.state();
  const { before, asked } = whatChanged;
  if (shown === null || before === null) return;
  const { camera } = before;
  const of = markOf(shown.of);
  if (asked !== null && asked.camera === camera && asked.of === of) return;
  put(app, { asked: { camera, of } });
  void app
    .ask('compare', { before: camera, after: shown.of }, { rank: 4 })
    // what was found before the last change must not stand beside the design
    .catch(() => null)
    .then((answer) => put(app, { answer }));
}

const setAgainst = (app: App, before: Before): void => put(app, { before, trouble: null, asked: null, answer: null });

export async function openEarlier(app: App): Promise<void> {
  const files = await pick('.json,.yaml,.yml,.zip', true);
  if (files.length === 0) return;
  const camera = await cameraOf(app, files);
  if (typeof camera === 'string') put(app, { trouble: camera });
  else setAgainst(app, { camera, name: camera.file });
}

export function openAsOpened(app: App): void {
  const { opened } = app.state();
  setAgainst(app, { camera: opened, name: `${opened.file} as it was opened` });
}

const ARCHIVE = /\.zip$/i;
const DESIGN = /\.ya?ml$/i;
/** What a browser saves twice it calls parts (1).json. */
const SHAPES = /^parts\b.*\.json$/i;

/** An archive stands for what a build wrote into it: the page saves whole folders. */
async function cameraOf(app: App, files: readonly File[]): Promise<CameraText | string> {
  const picked: PickedFile[] = [];
  for (const file of files) {
    const bytes = ARCHIVE.test(file.name) ? new Uint8Array(await file.arrayBuffer()) : null;
    const records = bytes === null ? await readFiles([file]) : await app.ask('archived', { bytes }, { rank: 2 });
    if (records.length === 0)
      return `${file.name} is no archive of a camera: it holds no plan.json that can be read. Open one that Take away saved.`;
    picked.push(...records);
  }
  return cameraIn(picked);
}

/** The camera in some files, or what else should be picked. */
export function cameraIn(picked: readonly PickedFile[]): CameraText | string {
  const [design, secondDesign] = picked.filter(({ name }) => DESIGN.test(name));
  const records = picked.filter(({ name }) => /\.json$/i.test(name));
  if (secondDesign !== undefined) return 'Open one design at a time, with the remnants that it names.';
  if (design !== undefined)
    return {
      file: design.name,
      text: design.text,
      beside: Object.fromEntries(records.map(({ name, text }) => [name, text])),
    };
  const shapes = records.find(({ name }) => SHAPES.test(name));
  const [plan, secondPlan] = records.filter((file) => file !== shapes);
  if (plan === undefined || secondPlan !== undefined)
    return 'Open the plan.json that a build wrote, with the parts.json of the same folder or without it; the archive of that folder; or a design file.';
  return { file: plan.name, text: plan.text, beside: shapes === undefined ? {} : { 'parts.json': shapes.text } };
}

/** On to the build of what must be cut. */
export function buildOnlyThat(app: App): void {
  cutOnlyChanged(app, true);
  app.turnTo('take-away');
  // the button that had the focus is gone with its tray
  requestAnimationFrame(() => document.getElementById('tab-take-away')?.focus({ preventScroll: true }));
}
