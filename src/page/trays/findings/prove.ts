import type { App } from '../../app.js';
import { markOf } from '../../mark-of.js';
import type { Checked } from '../../worker/workbench-tasks.js';
import { beginWhenProven, forgetKeptRules } from '../take-away/build.js';
import { pointAt } from './point-at.js';
import type { FindingsState } from './state.js';

/** Keeps the proof after the design. */
export interface ProofKeeper {
  /** A change is coming: what is under way is of no use any more, and its threads are wanted. */
  readonly hold: () => void;
  /** A change has been read: the proof begins when no other follows at once. */
  readonly follow: () => void;
}

/** A change has settled when no other came for so long, ms: less than one waits for, more than between two strokes. */
const SETTLED = 700;

export function keepProof(app: App): ProofKeeper {
  const { state, change, ask, workbench } = app;
  const at: { timer: number } = { timer: 0 };
  const put = (patch: Partial<FindingsState>) => change(({ findings }) => ({ findings: { ...findings, ...patch } }));

  async function prove(): Promise<void> {
    const { shown } = state();
    if (shown === null) return;
    const of = markOf(shown.of);
    put({ proof: { kind: 'running', of, stage: 'sizing', done: 0 } });
    let checked: Checked | null = null;
    try {
      checked = await workbench.check(shown.of, ({ stage, done }) =>
        put({ proof: { kind: 'running', of, stage, done } }),
      );
    } catch {
      put({ proof: { kind: 'failed', of } });
      beginWhenProven(app);
      return;
    }
    const { proof } = state().findings;
    if (checked !== null) {
      put({ proof: { kind: 'done', of, ...checked } });
      forgetKeptRules(app);
      beginWhenProven(app);
    }
    // put aside half-way, and nothing newer begun since
    else if (proof.kind === 'running' && proof.of === of) put({ proof: { kind: 'none' } });
  }

  // the view of the camera can let go of what it points at
  app.pose.watch(({ pointed }) => {
    if (pointed.length === 0 && state().findings.shown !== null) put({ shown: null });
  });

  return {
    hold: () => {
      clearTimeout(at.timer);
      workbench.putAside();
    },
    follow: () => {
      clearTimeout(at.timer);
      // what waits for the proof of an earlier text waits in vain
      beginWhenProven(app);
      const { shown, findings } = state();
      if (shown === null) return;
      const of = markOf(shown.of);
      // what the camera points at may be cured by now
      if (findings.shown !== null && findings.planned?.of !== of) pointAt(app, null);
      if (findings.planned?.of !== of)
        void ask('places', shown.of, { rank: 3 }).then((placed) => put({ planned: { of, findings: placed } }));
      if (findings.proof.kind === 'done' && findings.proof.of === of) return;
      at.timer = window.setTimeout(() => void prove(), SETTLED);
    },
  };
}
