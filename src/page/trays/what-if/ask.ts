import type { WhatIfPoint } from '../../../model/what-if.js';
import type { App } from '../../app.js';
import { markOf } from '../../mark-of.js';
import type { DesignText } from '../../worker/questions.js';
import { NOW, type Stop, stopsOf, type WhatIfState } from './state.js';

const put = ({ change }: App, patch: Partial<WhatIfState>): void =>
  change(({ whatIf }) => ({ whatIf: { ...whatIf, ...patch } }));

/** Asks what may be tried of a design that is new, and what becomes of the camera at each value. */
export function attendWhatIf(app: App): void {
  const { shown, whatIf } = app.state();
  if (shown === null) return;
  const { of } = shown;
  const mark = markOf(of);
  if (whatIf.of !== mark) {
    put(app, { of: mark, points: {}, at: NOW, asking: false });
    void app.ask('what-if-inputs', of, { rank: 4 }).then((inputs) => {
      if (app.state().whatIf.of !== mark) return;
      const { path } = app.state().whatIf;
      const known = inputs.some((input) => input.path === path);
      put(app, { inputs, path: known ? path : (inputs[0]?.path ?? null) });
    });
    return;
  }
  if (whatIf.path !== null && !whatIf.asking && jobs(whatIf).length > 0) {
    put(app, { asking: true });
    void pursue(app, of, whatIf.path);
  }
}

/** Tries another number. */
export const tryInput = (app: App, path: string): void => put(app, { path, points: {}, at: NOW, asking: false });

/** Reads out a value; one that is not known yet is asked for before the others. */
export function readOut(app: App, { key, value, written }: Stop): void {
  put(app, { at: key });
  const { shown, whatIf } = app.state();
  if (shown === null || whatIf.path === null || isWhole(whatIf.points[key])) return;
  const { path } = whatIf;
  void app
    .ask(
      'what-if-point',
      { of: shown.of, path, tried: { value, written }, sheets: 'counted' },
      { rank: 6, topic: 'what-if-read' },
    )
    .then((point) => keep(app, shown.of, path, key, point));
}

interface Job {
  readonly stop: Stop;
  readonly sheets: 'counted' | 'left out';
}

/** One question a point, so that a change of the design never waits for more than one of them. */
async function pursue(app: App, of: DesignText, path: string): Promise<void> {
  for (;;) {
    const { whatIf, tray } = app.state();
    if (whatIf.of !== markOf(of) || whatIf.path !== path) return;
    const [job] = tray === 'what-if' ? jobs(whatIf) : [];
    if (job === undefined) {
      put(app, { asking: false });
      return;
    }
    const { value, written, key } = job.stop;
    const given = { of, path, tried: { value, written }, sheets: job.sheets };
    // one that the desk cannot do is none, or it would be asked for again and again
    const point = await app
      .ask('what-if-point', given, { rank: 8 })
      .catch((): WhatIfPoint => ({ kind: 'none', value, why: 'The page made a mistake here.' }));
    keep(app, of, path, key, point);
  }
}

function keep(app: App, of: DesignText, path: string, key: string, point: WhatIfPoint): void {
  const { whatIf } = app.state();
  if (whatIf.of !== markOf(of) || whatIf.path !== path || isWhole(whatIf.points[key])) return;
  put(app, { points: { ...whatIf.points, [key]: point } });
}

/** Whether nothing more is to be known of a value. */
const isWhole = (point: WhatIfPoint | undefined): boolean =>
  point !== undefined && (point.kind === 'none' || point.sheets !== null);

/** What is still to be asked: the present and every other value first, their sheets, and then the values between. */
export function jobs(whatIf: WhatIfState): readonly Job[] {
  const stops = stopsOf(whatIf);
  const now = stops.filter(({ key }) => key === NOW);
  const tried = stops.filter(({ key }) => key !== NOW);
  const [coarse, between] = [0, 1].map((odd) => tried.filter((_, i) => i % 2 === odd)) as [Stop[], Stop[]];
  return [[...now, ...coarse], between].flatMap((round) => [
    ...round.filter(({ key }) => whatIf.points[key] === undefined).map((stop): Job => ({ stop, sheets: 'left out' })),
    ...round.filter(({ key }) => !isWhole(whatIf.points[key])).map((stop): Job => ({ stop, sheets: 'counted' })),
  ]);
}
