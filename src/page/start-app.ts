import type { App } from './app.js';
import { downloads, type Keeping } from './design/keeping.js';
import { openDesk } from './desk.js';
import { markOf } from './mark-of.js';
import { markAsked, markDrawn } from './moments.js';
import { poseBox } from './pose.js';
import { type Burst, firstState, type Shown, type State } from './state.js';
import { keepProof } from './trays/findings/prove.js';
import { withTraysLeft } from './trays/left-at.js';
import { runClock } from './trays/process/run-clock.js';
import { keepSheets } from './trays/sheets/keep.js';
import { trays } from './trays/table.js';
import { openWorkbench } from './workbench.js';
import type { DesignText, Reading } from './worker/questions.js';

/** So many steps can be undone. */
const MOST_STEPS = 200;

/**
 * The page at work: a change of the design is read at the desk, and what becomes of the camera comes in the order in which
 * a builder wants it: figures and findings, solids, section. A newer change takes the place of an older one.
 *
 * @param draw shows a state
 * @param keeping saves the design
 */
export function startApp(design: DesignText, draw: (app: App) => void, keeping: Keeping = downloads): App {
  let state = firstState(design);
  const asked = { draw: false };
  const drawn: { state: State | null } = { state: null };
  const drawTrays = withTraysLeft(() => draw(app));
  const pose = poseBox();
  const mistakes = new Map<string, string>();
  const onMistake = (words: string, topic?: string) => {
    const notice = /imported module|importing a module/i.test(words)
      ? 'A part of the page cannot be had: what the page comes from does not answer.'
      : `The page made a mistake of its own: ${words.split('\n')[0]}`;
    if (topic !== undefined) mistakes.set(topic, notice);
    change(() => ({ notice }));
  };
  // what was told of a question is over when it is answered
  const onAnswer = (topic: string) => {
    const told = mistakes.get(topic);
    mistakes.delete(topic);
    if (told !== undefined && state.notice === told) change(() => ({ notice: null }));
  };
  const desk = openDesk(onMistake, onAnswer);

  const change: App['change'] = (to) => {
    state = { ...state, ...to(state) };
    if (asked.draw) return;
    asked.draw = true;
    requestAnimationFrame(() => {
      asked.draw = false;
      drawTrays(state);
      trays[state.tray].attend?.(app);
      clock.follow();
      markDrawn(drawn.state, state);
      drawn.state = state;
    });
  };

  /** Reads the newest text with the edits that are still to be made in it. */
  async function follow(): Promise<void> {
    markAsked();
    const { design: given, edits } = state;
    proof.hold();
    sheets.hold();
    // a mistake of ours loses the edits, or each later one would make it again
    const reading = await desk.ask('reading', { ...given, edits }, { rank: 0 }).catch(() => null);
    if (reading === null) {
      change(() => ({ edits: [] }));
      return;
    }
    if (reading.refused.length > 0) {
      // a field shows what was typed for a moment at least, or it would not be drawn anew with what the text has
      await new Promise(requestAnimationFrame);
      if (state.edits !== edits || state.design !== given) return;
    }
    const of = { ...given, text: reading.text };
    change((now) => ({ ...stepTo(now, of), edits: [], reading, ...shownBy(now, of, reading), ...toldOf(reading) }));
    proof.follow();
    if (reading.problems !== null) return;
    // the section is there long before the solids, and where these cannot be had
    // and where either comes to nothing, no earlier one stands beside the new figures
    const none = () => null;
    const sectionOf = desk.ask('section', of, { rank: 1 }).catch(none);
    const solidsOf = desk.ask('solids', of, { rank: 1 }).catch(none);
    void sectionOf.then((section) => change((now) => withShown(now, of, { section })));
    void solidsOf.then((solids) => change((now) => withShown(now, of, { solids })));
    sheets.follow(of);
  }

  /** Another design in place of this one. */
  function take(opened: DesignText, saved: string | null): void {
    change(({ designView, takeAway, lens }) => ({
      served: null,
      notSaved: null,
      design: opened,
      opened,
      saved,
      // what was still being typed, allowed or told was of the one before
      designView: { ...designView, typed: null },
      takeAway: { ...takeAway, despite: [], onlyChanged: false },
      lens: { ...lens, written: null },
      past: [],
      future: [],
      edits: [],
      burst: null,
    }));
    void follow();
  }

  const app: App = {
    state: () => state,
    change,
    pose,
    ask: desk.ask,
    workbench: openWorkbench(onMistake),
    edit: (edits, stepped) => {
      const at = performance.now();
      change((now) => ({ edits: [...now.edits, ...edits], burst: burstAt(now, stepped, at) }));
      void follow();
    },
    write: (text) => {
      if (text === state.design.text) return;
      change((now) => ({ burst: null, ...stepTo({ ...now, burst: null }, { ...now.design, text }) }));
      void follow();
    },
    open: (opened) => take(opened, opened.text),
    begin: (opened) => take(opened, null),
    layBeside: (beside) => {
      change(({ design: now }) => ({ design: { ...now, beside } }));
      void follow();
    },
    keeping,
    undo: () => {
      const before = state.past.at(-1);
      if (state.edits.length > 0) {
        // what was not written yet is undone by not writing it
        change(() => ({ edits: [], burst: null }));
        void follow();
        return;
      }
      if (before === undefined) return;
      change(({ design: now, past, future }) => ({
        design: { ...now, text: before },
        past: past.slice(0, -1),
        future: [now.text, ...future],
        burst: null,
      }));
      void follow();
    },
    redo: () => {
      const [after, ...future] = state.future;
      if (after === undefined) return;
      change(({ design: now, past }) => ({
        design: { ...now, text: after },
        past: [...past, now.text],
        future,
        edits: [],
        burst: null,
      }));
      void follow();
    },
    turnTo: (tray) => change(() => (tray === 'design' ? { atDesign: true } : { tray, atDesign: false })),
  };
  const proof = keepProof(app);
  const sheets = keepSheets(app, onMistake);
  const clock = runClock(app);
  change(() => ({}));
  void follow();
  return app;
}

/** Another text of the design, and the one before it to go back to: once for all steps of a burst. */
function stepTo({ design, past, burst }: State, { text }: DesignText): Partial<State> {
  if (design.text === text) return {};
  const begun = burst !== null && past.at(-1) === burst.from;
  return {
    design: { ...design, text },
    past: begun ? past : [...past, design.text].slice(-MOST_STEPS),
    future: [],
  };
}

/** Steps of the same field within a second are one change to whoever undoes it. */
const BURST_MS = 1000;

function burstAt({ burst, design }: State, of: string | undefined, at: number): Burst | null {
  if (of === undefined) return null;
  return { of, at, from: burst?.of === of && at - burst.at < BURST_MS ? burst.from : design.text };
}

/** The last good solids stay until the new ones are there, so that nothing flickers. */
function shownBy({ shown }: State, of: DesignText, reading: Reading): Partial<State> {
  if (reading.problems !== null) return {};
  const { plan, findings, drawable, reached } = reading;
  const before = drawable
    ? { solids: shown?.solids ?? null, section: shown?.section ?? null }
    : { solids: null, section: null };
  return { shown: { of, plan, findings, drawable, reached, ...before } };
}

const withShown = ({ shown }: State, of: DesignText, more: Partial<Shown>): Partial<State> =>
  shown === null || markOf(shown.of) !== markOf(of) ? {} : { shown: { ...shown, ...more } };

/** Why something that was typed is not in the text. */
function toldOf({ refused: [first] }: Reading): Partial<State> {
  if (first === undefined) return {};
  const { line, path, what, accepted } = first;
  return { notice: `Not written: ${path}, line ${line} of the text. ${what} ${accepted}` };
}
