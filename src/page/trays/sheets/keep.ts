import type { ShownSheets } from '../../../model/shown-sheets.js';
import type { App } from '../../app.js';
import { markOf } from '../../mark-of.js';
import type { DesignText } from '../../worker/questions.js';
import type { FromSheets, ToSheets } from '../../worker/sheets-tasks.js';
import { mistakeIn } from '../../worker-mistake.js';
import { seeking } from './seek.js';
import type { SheetsState } from './state.js';

/** Keeps the sheets after the design. */
export interface SheetsKeeper {
  /** A change is coming: what is looked for is of no use any more. */
  readonly hold: () => void;
  /** A change has been read: the first layout is asked for at once, a better one when no other change follows. */
  readonly follow: (of: DesignText) => void;
}

/** A change has settled when no other came for so long, ms; the proof, which takes longer, goes first. */
const SETTLED = 900;

export function keepSheets({ state, change, ask, pose }: App, onMistake: (words: string) => void): SheetsKeeper {
  // the worker stays warm from one layout to the next; only one that is ended half-way costs a new one
  const at: { timer: number; worker: Worker | null; busy: boolean; chosen: string | null } = {
    timer: 0,
    worker: null,
    busy: false,
    chosen: null,
  };
  const put = (patch: Partial<SheetsState>) => change(({ sheets }) => ({ sheets: { ...sheets, ...patch } }));
  const show = (of: DesignText, shown: ShownSheets | null, search: number | null) =>
    put({ of: markOf(of), shown, places: placesOf(shown), search });

  // what is chosen in another view is marked on its sheet
  pose.watch(({ chosen }) => {
    if (chosen === at.chosen) return;
    at.chosen = chosen;
    change((now) => ({ sheets: seeking(now, chosen) }));
  });

  const end = () => {
    at.worker?.terminate();
    Object.assign(at, { worker: null, busy: false });
  };

  function search(of: DesignText): void {
    const worker = at.worker ?? newWorker();
    Object.assign(at, { worker, busy: true });
    const fail = (words: string) => {
      end();
      put({ search: null });
      onMistake(words);
    };
    worker.onerror = (event) => fail(mistakeIn(event));
    worker.onmessage = ({ data }: MessageEvent<FromSheets>) => {
      if (data.kind === 'progress') put({ search: data.done });
      else if (data.kind === 'mistake') fail(data.words);
      else {
        at.busy = false;
        show(of, data.sheets, null);
      }
    };
    worker.postMessage(of satisfies ToSheets);
  }

  function hold(): void {
    clearTimeout(at.timer);
    if (!at.busy) return;
    end();
    put({ search: null });
  }

  return {
    hold,
    follow: (of) => {
      hold();
      // where they come to nothing, those of an earlier camera do not stay
      const sheetsOf = ask('sheets', of, { rank: 3 }).catch(() => null);
      void sheetsOf.then((shown) => {
        const now = state().shown;
        if (now === null || markOf(now.of) !== markOf(of)) return;
        show(of, shown, shown === null ? null : 0);
        if (shown !== null) at.timer = window.setTimeout(() => search(of), SETTLED);
      });
    },
  };
}

const newWorker = (): Worker => new Worker(new URL('sheets-worker.js', import.meta.url), { type: 'module' });

const placesOf = (shown: ShownSheets | null): SheetsState['places'] =>
  (shown?.sheets ?? []).flatMap(({ name, parts }) =>
    parts.map(({ part, instance }) => ({ sheet: name, part, instance })),
  );
