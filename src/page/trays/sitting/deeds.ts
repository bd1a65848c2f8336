import type { App } from '../../app.js';
import { pickFiles, saveFile } from '../../files.js';
import type { DesignText } from '../../worker/questions.js';
import type { CardAnswer } from '../../worker/sitting-asked.js';
import { resultGroup, typedTexts } from './fields.js';
import type { SittingState } from './state.js';

/** What can be done with a sitting. */

const put = (app: App, patch: Partial<SittingState>): void =>
  app.change(({ sitting }) => ({ sitting: { ...sitting, ...patch } }));

export const type = (app: App, key: string, text: string): void =>
  put(app, { typed: { ...app.state().sitting.typed, [key]: text } });

export const asIsDesigned = (app: App): void => put(app, { typed: {} });

/** The design that a sitting is of: where the newest text is none, the last that was. */
const designOf = (app: App): DesignText | null => app.state().shown?.of ?? null;

/** Asks for the exposure, and for the card where it is open, if anything has changed since. */
export function keepUp(app: App): void {
  const design = designOf(app);
  if (design === null) return;
  const { typed, log, asked, card } = app.state().sitting;
  const texts = typedTexts(typed);
  const wanted = JSON.stringify([design.text, texts, log?.text]);
  if (wanted !== asked) {
    put(app, { asked: wanted });
    const given = log === null ? null : { file: log.file, text: log.text, at: localTime(new Date()) };
    void app
      .ask('sitting', { design, typed: texts, log: given }, { rank: 0 })
      // an earlier exposure must not stand beside what is typed now
      .catch(() => null)
      .then((answer) => put(app, { answer }));
  }
  const ofCard = JSON.stringify([design.text, forToday(app)]);
  if (card === null || card.asked === ofCard) return;
  put(app, { card: { ...card, asked: ofCard } });
  void app
    .ask('card', { design, typed: forToday(app) }, { rank: 6 })
    .catch((): CardAnswer => ({ refused: 'The page made a mistake here: there is no card.' }))
    .then((answer) => put(app, { card: { asked: ofCard, answer } }));
}

/** Without what only a log knows. */
function forToday(app: App): ReturnType<typeof typedTexts> {
  const ofLog = ['batch', 'strip', 'steps', ...resultGroup.fields.map(({ key }) => key)];
  return Object.fromEntries(
    Object.entries(typedTexts(app.state().sitting.typed)).filter(([key]) => !ofLog.includes(key)),
  );
}

export const showCard = (app: App): void => put(app, { card: { asked: '', answer: null } });

export function saveCard(app: App, as: 'svg' | 'pdf'): void {
  const answer = app.state().sitting.card?.answer;
  if (!answer || 'refused' in answer) return;
  if (as === 'svg') saveFile('exposure-card.svg', answer.svg, 'image/svg+xml');
  else saveFile('exposure-card.pdf', answer.pdf, 'application/pdf');
}

export async function openLog(app: App): Promise<void> {
  const [picked] = await pickFiles('.yaml,.yml');
  if (picked !== undefined && mayLeave(app))
    put(app, { log: { file: picked.name, text: picked.text, saved: picked.text } });
}

export function beginLog(app: App): void {
  if (mayLeave(app)) put(app, { log: { file: 'sitting.yaml', text: '', saved: '' } });
}

export function closeLog(app: App): void {
  if (mayLeave(app)) put(app, { log: null });
}

function mayLeave(app: App): boolean {
  const { log } = app.state().sitting;
  return (
    log === null ||
    !isLogUnsaved(app.state().sitting) ||
    confirm(`${log.file} has entries that are not saved. Lose them?`)
  );
}

/** Adds the result and the next setting to the log: nothing of what stood there is touched. */
export async function writeIntoLog(app: App): Promise<void> {
  const design = designOf(app);
  const { log, typed } = app.state().sitting;
  if (design === null || log === null) return;
  const given = { file: log.file, text: log.text, at: localTime(new Date()) };
  const answer = await app.ask(
    'sitting',
    { design, typed: typedTexts(typed), log: given },
    { rank: 0, topic: 'sitting-into-log' },
  );
  const append = answer.exposure?.append ?? '';
  if (append === '' || app.state().sitting.log !== log) return;
  put(app, {
    log: { ...log, text: log.text + append },
    // a result is told once
    typed: Object.fromEntries(
      Object.entries(typed).filter(([key]) => !resultGroup.fields.some((field) => field.key === key)),
    ),
  });
}

export function saveLog(app: App): void {
  const { log } = app.state().sitting;
  if (log === null) return;
  saveFile(log.file, log.text, 'application/yaml');
  put(app, { log: { ...log, saved: log.text } });
}

/** Whether a log has entries that no file has yet. */
export const isLogUnsaved = ({ log }: SittingState): boolean => log !== null && log.text !== log.saved;

/** `2026-11-29 14:03` */
function localTime(now: Date): string {
  const two = (count: number) => String(count).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())} ${two(now.getHours())}:${two(now.getMinutes())}`;
}
