import type { BenchSheet } from '../../../model/bench-sheet.js';
import type { App } from '../../app.js';
import { pickFiles, saveFile } from '../../files.js';
import type { BenchForm } from '../../worker/lens-asked.js';
import { filled } from './cells.js';
import type { LensState } from './state.js';

/** What can be done with the readings. */

const put = (app: App, patch: Partial<LensState>): void => app.change(({ lens }) => ({ lens: { ...lens, ...patch } }));

/** Whether there are readings that no file has yet: whoever took them at the bench took an hour. */
export const areReadingsUnsaved = ({ sheet, saved }: LensState): boolean =>
  filled(sheet).readings.length > 0 && JSON.stringify(filled(sheet)) !== JSON.stringify(filled(saved));

/** Changes the readings, and fits the lens anew. */
export function retype(app: App, patch: Partial<LensState>): void {
  put(app, { ...patch, written: null, trouble: null });
  void refit(app);
}

export const resheet = (app: App, to: (sheet: BenchSheet) => BenchSheet): void =>
  retype(app, { sheet: to(app.state().lens.sheet) });

async function refit(app: App): Promise<void> {
  const { sheet, at } = app.state().lens;
  const given = filled(sheet);
  if (given.readings.length === 0) return put(app, { fitted: null, faults: [] });
  const answer = await app.ask('lens', { sheet: given, at, design: null }, { rank: 0 });
  const now = app.state().lens;
  // where nothing is left to ask about, nothing took the place of this question
  if (now.sheet !== sheet || now.at !== at) return;
  put(app, answer.faults === null ? { fitted: answer.fitted, faults: [] } : { faults: answer.faults });
}

export async function openReadings(app: App): Promise<void> {
  const [picked] = await pickFiles('.csv,.tsv,.txt,.yaml,.yml');
  if (picked === undefined) return;
  const opened = await app.ask('bench-open', { file: picked.name, text: picked.text }, { rank: 0 });
  if ('trouble' in opened) return put(app, { trouble: opened.trouble });
  if (areReadingsUnsaved(app.state().lens) && !confirm('The readings here are not saved. Lose them?')) return;
  const { sheet } = opened;
  retype(app, {
    sheet,
    saved: sheet,
    file: picked.name.replace(/\.[^.]*$/, ''),
    sizes: sheet.readings.some((row) => row.magnification !== undefined) ? 'ratio' : 'lengths',
    doubts: sheet.readings.some((row) => Object.keys(row).some((key) => key.startsWith('u_'))),
    fitted: null,
  });
}

const KINDS: Readonly<Record<BenchForm, string>> = {
  csv: 'text/csv',
  yaml: 'application/yaml',
  svg: 'image/svg+xml',
};

export async function saveReadings(app: App, as: BenchForm): Promise<void> {
  const { sheet, at, file } = app.state().lens;
  const text = await app.ask('bench-save', { sheet: filled(sheet), at, as }, { rank: 0 });
  saveFile(`${file}.${as}`, text, KINDS[as]);
  if (as !== 'svg') put(app, { saved: sheet });
}

/** Puts the figures into the design, as `tailboard lens --write` does. */
export async function writeIntoDesign(app: App): Promise<void> {
  const { design, lens } = app.state();
  const answer = await app.ask(
    'lens',
    { sheet: filled(lens.sheet), at: lens.at, design },
    { rank: 0, topic: 'lens-into-design' },
  );
  if (answer.faults !== null)
    return put(app, { trouble: answer.faults.map(({ what, accepted }) => `${what} ${accepted}`.trim()).join('\n\n') });
  if (app.state().design.text !== design.text)
    return put(app, { trouble: 'The design was changed meanwhile. Put the figures in once more.' });
  if (answer.written !== null) {
    app.write(answer.written.text);
    put(app, { written: answer.written, trouble: null });
  }
}
