import type { App } from '../app.js';
import type { DesignText } from '../worker/questions.js';
import { writeTyped } from './text.js';

/**
 * Saves the design where it is kept, with a number that was just typed and is still on its way into the text.
 *
 * @returns whether that design is saved now
 */
export async function save(app: App): Promise<boolean> {
  writeTyped(app);
  const { design, edits, opened } = app.state();
  const whole =
    edits.length === 0
      ? Promise.resolve(design)
      : app
          .ask('reading', { ...design, edits }, { rank: 0, topic: 'saving' })
          .then(({ text }): DesignText => ({ ...design, text }));
  const kept = await app.keeping.save(whole);
  const isOpen = app.state().opened === opened;
  if ('why' in kept) {
    app.change(() => ({ notSaved: isOpen ? kept.why : `${design.file}: ${kept.why}` }));
    return false;
  }
  // where another one was opened meanwhile, this one is saved and the other is not
  if (!isOpen) return false;
  const { text } = await whole;
  app.change((now) => ({ saved: text, notSaved: null, design: { ...now.design, file: kept.file } }));
  return true;
}
