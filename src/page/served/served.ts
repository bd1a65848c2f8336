import type { App } from '../app.js';
import type { Beginning } from '../beginning.js';
import { isChanged } from '../design/changed.js';
import { downloads, type Keeping } from '../design/keeping.js';
import type { State } from '../state.js';
import { fetchDesign, fetchRemnants, putDesign } from './server.js';
import type { FileContent, ServedState } from './state.js';

/** How often the file is looked at while the page is, ms; where nobody answers, less often. */
const LOOK = 1000;
const LOOK_AGAIN = 10000;

/** The design that the program serves under this name, kept in its file; in words where it cannot be had. */
export async function fetchServed(file: string): Promise<Beginning | string> {
  const [reply, { beside, missing }] = await Promise.all([fetchDesign(), fetchRemnants()]);
  if (reply.kind !== 'content') return reply.kind === 'failed' ? reply.words : `${file} cannot be read.`;
  const { text, tag } = reply.content;
  const at: { app: App | null; tag: string } = { app: null, tag };
  // one after the other: the next says which content it replaces by the tag that the one before came to
  let before: Promise<unknown> = Promise.resolve();
  return {
    design: { file, text, beside },
    keeping: {
      save: async (design) => {
        const { app } = at;
        if (app === null || app.state().served === null) return downloads.save(design);
        const { text } = await design;
        const saving = before.then(() => {
          // another design that is opened meanwhile takes nothing from this one: it goes into its file
          at.tag = app.state().served?.tag ?? at.tag;
          return saveServed(app, file, text, at);
        });
        before = saving;
        return saving;
      },
    },
    attend: (app) => {
      at.app = app;
      app.change((now) => ({ served: { file, tag, theirs: null, said: '' }, ...withMissing(now, missing) }));
      watchFile(app);
    },
  };
}

/** Into the file that the program serves, where that still holds what the page last saw in it. */
async function saveServed(app: App, file: string, text: string, at: { tag: string }): ReturnType<Keeping['save']> {
  const reply = await putDesign(text, at.tag);
  if (reply.kind === 'theirs' && reply.content.text !== text) {
    app.change((now) => withServed(now, { theirs: reply.content, said: '' }));
    return { why: `Not saved: ${file} was changed by somebody else meanwhile.` };
  }
  // the file may hold this very text already, from a saving whose answer was lost
  const tag = reply.kind === 'saved' ? reply.tag : reply.kind === 'theirs' ? reply.content.tag : null;
  if (tag === null) return { why: reply.kind === 'failed' ? `Not saved. ${reply.words}` : 'Not saved.' };
  at.tag = tag;
  app.change((now) => ({ notice: null, ...withServed(now, { tag, theirs: null, said: '' }) }));
  void fetchBeside(app);
  return { file };
}

/** Knowingly keeps what is here in place of what somebody else wrote: the next saving writes over that. */
export function keepMine(app: App, { tag }: FileContent): void {
  app.change((now) => withServed(now, { tag, theirs: null }));
}

/** Puts what stands in the file in place of what is here; undoing brings that back. */
export function takeTheirs(app: App, { text, tag }: FileContent): void {
  const { served, designView } = app.state();
  app.change((now) => ({
    edits: [],
    designView: { ...designView, typed: null },
    saved: text,
    notice: null,
    notSaved: null,
    ...withServed(now, {
      tag,
      theirs: null,
      said: `${served?.file} as it is in the file. Undo brings back what was here.`,
    }),
  }));
  app.write(text);
  void fetchBeside(app);
}

/** Notices what others write into the file. */
function watchFile(app: App): void {
  const look: { next?: ReturnType<typeof setTimeout>; underway: boolean } = { underway: false };
  const lookNow = async () => {
    clearTimeout(look.next);
    const { served } = app.state();
    // where another design was opened, the file is no business of the page any more
    if (served === null || look.underway) return;
    look.underway = true;
    const answered = document.hidden || (await lookOnce(app, served));
    look.underway = false;
    look.next = setTimeout(lookNow, answered ? LOOK : LOOK_AGAIN);
  };
  addEventListener('focus', () => void lookNow());
  document.addEventListener('visibilitychange', () => void lookNow());
  look.next = setTimeout(lookNow, LOOK);
}

/** Whether anybody answered. */
async function lookOnce(app: App, { tag, theirs, file }: ServedState): Promise<boolean> {
  const known = theirs?.tag ?? tag;
  const reply = await fetchDesign(known);
  const { served, design, saved } = app.state();
  // what was asked before a saving says nothing of the file after it
  const isOld = served === null || (served.theirs?.tag ?? served.tag) !== known;
  if (isOld) return true;
  if (reply.kind === 'failed') {
    if (served.said !== reply.words) app.change((now) => withServed(now, { said: reply.words }));
    return false;
  }
  if (reply.kind !== 'content') return true;
  const { content } = reply;
  if (content.text === design.text || content.text === saved)
    app.change((now) => ({ saved: content.text, ...withServed(now, { tag: content.tag, theirs: null }) }));
  else if (isChanged(app)) app.change((now) => withServed(now, { theirs: content, said: '' }));
  else {
    takeTheirs(app, content);
    const said = `${file} was changed outside and is shown as it is now. Undo brings back what was here.`;
    app.change((now) => withServed(now, { said }));
  }
  return true;
}

/** The remnants that the file names now. */
async function fetchBeside(app: App): Promise<void> {
  const { beside, missing } = await fetchRemnants();
  // another design that was opened meanwhile has remnants of its own
  if (app.state().served === null) return;
  app.change((now) => withMissing(now, missing));
  if (JSON.stringify(beside) !== JSON.stringify(app.state().design.beside)) app.layBeside(beside);
}

const withMissing = ({ notice }: State, missing: readonly string[]): Partial<State> => ({
  notice: missing.length === 0 ? notice : missing.join(' '),
});

const withServed = ({ served }: State, more: Partial<ServedState>): Partial<State> =>
  served === null ? {} : { served: { ...served, ...more } };
