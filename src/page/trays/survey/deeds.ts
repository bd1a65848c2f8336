import type { Sorting, SurveyPair } from '../../../index.js';
import type { App } from '../../app.js';
import { mayLeave } from '../../design/leaving.js';
import { pickFiles, saveFile } from '../../files.js';
import type { SurveyAsked, SurveyForm } from '../../worker/survey-asked.js';
import type { DrawerList, SurveyState } from './state.js';
import { surveyOnThreads } from './threads.js';

/** What can be done with lists of lenses. */

const put = (app: App, patch: Partial<SurveyState>): void =>
  app.change(({ survey }) => ({ survey: { ...survey, ...patch } }));

const asked = ({ lists, formats }: SurveyState): SurveyAsked => ({
  lists: lists.map(({ name, text }) => ({ file: name, text })),
  formats,
});

/** A list to begin with, for somebody who has none. */
const FRESH = `plywood: { thickness: 4.05 mm, sheet: [600 mm, 400 mm] }
formats: [4x5, 5x7]
focus: { nearest: 1:4 }

lenses:
  - { name: copying lens, focalLength: 214 mm, flangeDistance: 196 mm, maxAperture: f/9 }
`;

export async function openLists(app: App): Promise<void> {
  const picked = await pickFiles('.yaml,.yml', true);
  if (picked.length === 0) return;
  const names = picked.map(({ name }) => name);
  const { lists } = app.state().survey;
  if (!mayLose(lists.filter(({ name }) => names.includes(name)))) return;
  relist(app, [
    ...lists.filter(({ name }) => !names.includes(name)),
    ...picked.map((file) => ({ ...file, saved: file.text })),
  ]);
}

export function beginList(app: App): void {
  const { lists } = app.state().survey;
  const names = lists.map(({ name }) => name);
  const free = ['drawer.yaml', ...lists.map((_, i) => `drawer-${i + 2}.yaml`)].find((name) => !names.includes(name));
  relist(app, [...lists, { name: free ?? 'drawer.yaml', text: FRESH, saved: FRESH }]);
}

export const retypeList = (app: App, name: string, text: string): void =>
  relist(
    app,
    app.state().survey.lists.map((list) => (list.name === name ? { ...list, text } : list)),
  );

/** Whether a list has something that no file has yet. */
export const isListUnsaved = ({ text, saved }: DrawerList): boolean => text !== saved;

function mayLose(lists: readonly DrawerList[]): boolean {
  const unsaved = lists.filter(isListUnsaved).map(({ name }) => name);
  return unsaved.length === 0 || confirm(`Not saved: ${unsaved.join(', ')}. Lose what was typed?`);
}

export function saveList(app: App, { name, text }: DrawerList): void {
  saveFile(name, text, 'application/yaml');
  const { lists } = app.state().survey;
  put(app, { lists: lists.map((list) => (list.name === name ? { ...list, saved: text } : list)) });
}

export function putAway(app: App, list: DrawerList): void {
  if (!mayLose([list])) return;
  relist(
    app,
    app.state().survey.lists.filter(({ name }) => name !== list.name),
  );
}

function relist(app: App, lists: SurveyState['lists']): void {
  put(app, { lists, trouble: null, ...(lists.length === 0 ? { prepared: null, formats: [] } : {}) });
  if (lists.length > 0) void prepare(app);
}

export function askFormat(app: App, name: string, isAsked: boolean): void {
  const { formats } = app.state().survey;
  put(app, { formats: isAsked ? [...formats, name] : formats.filter((one) => one !== name) });
  void prepare(app);
}

async function prepare(app: App): Promise<void> {
  const of = asked(app.state().survey);
  const prepared = await app.ask('survey-lists', of, { rank: 1 });
  // the lists may all be put away by now
  if (JSON.stringify(of) === JSON.stringify(asked(app.state().survey))) put(app, { prepared });
}

/** Whether the survey that is shown is of these lists and formats. */
export const isCurrent = ({ surveyed, ...now }: SurveyState): boolean =>
  surveyed !== null && JSON.stringify(surveyed.of) === JSON.stringify(asked({ surveyed, ...now }));

export async function survey(app: App): Promise<void> {
  const { prepared, ...now } = app.state().survey;
  if (prepared === null || !('count' in prepared)) return;
  const { count } = prepared;
  const of = asked({ prepared, ...now });
  const running = surveyOnThreads(of, {
    count,
    onProgress: (done) =>
      app.change(({ survey: at }) =>
        at.running === null ? {} : { survey: { ...at, running: { ...at.running, done } } },
      ),
  });
  put(app, { running: { done: 0, count, stop: running.stop }, trouble: null });
  try {
    const pairs = await running.pairs;
    put(app, { running: null, ...(pairs === null ? {} : { surveyed: { of, pairs }, chosen: null }) });
    if (pairs !== null) await show(app);
  } catch (error) {
    put(app, {
      running: null,
      trouble: `The survey came to nothing: ${error instanceof Error ? error.message : error}`,
    });
  }
}

export function sortBy(app: App, sort: Sorting | null): void {
  put(app, { sort });
  void show(app);
}

async function show(app: App): Promise<void> {
  const { surveyed, sort } = app.state().survey;
  if (surveyed === null) return;
  const shown = await app.ask('survey-shown', { ...surveyed.of, pairs: surveyed.pairs, sort }, { rank: 0 });
  put(app, { shown });
}

const KINDS: Readonly<Record<SurveyForm, string>> = {
  csv: 'text/csv',
  json: 'application/json',
  svg: 'image/svg+xml',
};

export async function saveSurvey(app: App, as: SurveyForm): Promise<void> {
  const { surveyed, sort } = app.state().survey;
  if (surveyed === null) return;
  const files = await app.ask('survey-file', { ...surveyed.of, pairs: surveyed.pairs, sort, as }, { rank: 0 });
  for (const [i, text] of files.entries())
    saveFile(files.length === 1 ? `survey.${as}` : `survey-${i + 1}.${as}`, text, KINDS[as]);
}

export const choose = (app: App, chosen: SurveyState['chosen']): void => put(app, { chosen, trouble: null });

/** Makes a design of a pair, and opens it where nothing is lost by that. */
export async function planPair(app: App, pair: SurveyPair): Promise<void> {
  const { surveyed } = app.state().survey;
  if (surveyed === null) return;
  const text = await app.ask('survey-design', { ...surveyed.of, pair }, { rank: 0 });
  if (text === null)
    return put(app, { trouble: `The ${pair.lens} for ${pair.format} cannot be carried into a design.` });
  if (!(await mayLeave(app))) return;
  const name = `${pair.lens} ${pair.format}`.toLowerCase().replace(/[^\p{L}\p{M}\p{N}]+/gu, '-');
  app.begin({ file: `${name}.yaml`, text, beside: {} });
}
