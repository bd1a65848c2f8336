import type { StepSheet, TankFigures } from '../../../model/step-sheet.js';
import type { App } from '../../app.js';
import { pickFiles, saveFile } from '../../files.js';
import type { ProcessCardAnswer } from '../../worker/process-asked.js';
import { type Act, back, forward, goneOn, movedTo, paused, type StepClock, started } from './reckon.js';
import type { ProcessState } from './state.js';

/** What can be done with a process and its clock. */

const put = (app: App, patch: Partial<ProcessState>): void =>
  app.change(({ process }) => ({ process: { ...process, ...patch } }));

/** The process that a page has at hand for somebody who has none. */
const SAMPLE = 'process.yaml';

/** Holders of the camera in which prints are processed. */
export function tanksOf(app: App): readonly { readonly name: string; readonly tank: TankFigures }[] {
  const holders: readonly { readonly name: string; readonly tank?: TankFigures }[] =
    app.state().shown?.plan.holders ?? [];
  return holders.flatMap(({ name, tank }) => (tank === undefined ? [] : [{ name, tank }]));
}

export const chooseTank = (app: App, name: string): void => put(app, { holder: name === '' ? null : name });

/** Asks for the sheet, and for the card where it is open, if anything has changed since. */
export function keepUp(app: App): void {
  const { open, holder, asked, card } = app.state().process;
  if (open === null) return;
  const tank = tanksOf(app).find(({ name }) => name === holder)?.tank ?? null;
  const given = { file: open.file, text: open.text, tank };
  const wanted = JSON.stringify(given);
  if (wanted !== asked) {
    put(app, { asked: wanted });
    void app
      .ask('process', given, { rank: 0 })
      // an earlier sheet must not stand beside what is typed now
      .catch(() => null)
      .then((answer) => put(app, { answer }));
  }
  if (card === null || card.asked === wanted) return;
  put(app, { card: { ...card, asked: wanted } });
  void app
    .ask('process-card', given, { rank: 6 })
    .catch((): ProcessCardAnswer => ({ refused: 'The page made a mistake here: there is no card.' }))
    .then((answer) => put(app, { card: { asked: wanted, answer } }));
}

/** Whether something was typed that no file has yet. */
export const isProcessUnsaved = ({ open }: ProcessState): boolean => open !== null && open.text !== open.saved;

const mayLose = (app: App): boolean =>
  !isProcessUnsaved(app.state().process) || confirm('The process here is not saved. Lose what was typed?');

export async function openProcess(app: App): Promise<void> {
  const [picked] = await pickFiles('.yaml,.yml');
  if (picked === undefined || !mayLose(app)) return;
  put(app, { open: { file: picked.name, text: picked.text, saved: picked.text } });
}

export async function beginProcess(app: App): Promise<void> {
  const reply = await fetch(new URL(SAMPLE, document.baseURI)).catch(() => null);
  if (reply === null || !reply.ok)
    return app.change(() => ({ notice: 'The sample cannot be had: what the page comes from does not answer.' }));
  const text = await reply.text();
  if (mayLose(app)) put(app, { open: { file: SAMPLE, text, saved: text } });
}

export function retype(app: App, text: string): void {
  const { open } = app.state().process;
  if (open !== null) put(app, { open: { ...open, text } });
}

export function saveProcess(app: App): void {
  const { open } = app.state().process;
  if (open === null) return;
  saveFile(open.file, open.text, 'application/yaml');
  put(app, { open: { ...open, saved: open.text } });
}

export const showCard = (app: App): void => put(app, { card: { asked: '', answer: null } });

export function saveCard(app: App, as: 'svg' | 'pdf'): void {
  const answer = app.state().process.card?.answer;
  if (!answer || 'refused' in answer) return;
  if (as === 'svg') saveFile('process-card.svg', answer.svg, 'image/svg+xml');
  else saveFile('process-card.pdf', answer.pdf, 'application/pdf');
}

/** The moment of a key or a touch: what the clock shows then is what was meant. */
const change = (app: App, to: (clock: StepClock, now: number) => StepClock): void =>
  app.change(({ process }) => {
    const now = Date.now();
    return process.clock === null ? {} : { process: { ...process, now, clock: to(process.clock, now) } };
  });

export function startClock(app: App, sheet: Pick<StepSheet, 'name' | 'prints' | 'steps'>, print = 1): void {
  const now = Date.now();
  put(app, { clock: started(sheet, print, now), now, atClock: true, missed: null });
}

/** The same steps once more, for the next print. */
export function startNext(app: App): void {
  const { clock } = app.state().process;
  if (clock !== null) startClock(app, clock, clock.print + 1);
}

export const toClock = (app: App): void => put(app, { atClock: true });
export const leaveClock = (app: App): void => put(app, { atClock: false });
export const endClock = (app: App): void => put(app, { clock: null, atClock: false, missed: null });

export const pauseOrGoOn = (app: App): void =>
  change(app, (clock, now) => (clock.pausedAt === null ? paused(clock, now) : goneOn(clock, now)));

export function stepBack(app: App): void {
  put(app, { missed: null });
  change(app, back);
}

export function stepForward(app: App): void {
  put(app, { missed: null });
  change(app, forward);
}

export const forgetMissed = (app: App): void => put(app, { missed: null });

/** What was missed is done only now: all that follows is so much later. */
export function goOnFrom(app: App, act: Act): void {
  put(app, { missed: null });
  change(app, (clock, now) => movedTo(clock, act.at, now));
}

export const changeLook = (app: App): void =>
  put(app, { look: app.state().process.look === 'paper' ? 'safelight' : 'paper' });

export const changeTone = (app: App): void => put(app, { tone: !app.state().process.tone });
