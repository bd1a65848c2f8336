import type { ShownBody, ShownSolids } from '../../model/shown.js';
import type { App } from '../app.js';
import { pickFiles, saveFile } from '../files.js';
import { markOf } from '../mark-of.js';
import { standing } from '../trays/what-changed/state.js';
import type { Given } from '../worker/questions.js';
import { firstSpare, type SpareAsked, type SpareState } from './state.js';

/** What can be done with a part alone. */

const put = (app: App, patch: Partial<SpareState>): void =>
  app.change(({ spare }) => ({ spare: { ...spare, ...patch } }));

/** Whether a thing is cut or printed, and not bought. */
export const isMade = ({ material }: ShownBody): boolean => material !== null;

/** Keeps what is said of the part that is chosen after the design, the field, and the camera that it is for. */
export function attendSpare(app: App, { bodies }: ShownSolids): void {
  const { spare, shown } = app.state();
  const { chosen } = app.pose.now();
  const body = bodies.find(({ part }) => part === chosen);
  if (shown === null || body === undefined || !isMade(body)) {
    if (spare.asked !== null) put(app, firstSpare);
    return;
  }
  const { asked } = spare;
  const isOther = asked?.part !== body.part;
  const thickness = isOther ? '' : spare.thickness;
  const remnants = isOther ? firstSpare.remnants : spare.remnants;
  const wanted: SpareAsked = {
    of: markOf(shown.of),
    part: body.part,
    thickness,
    remnants,
    since: standing(app.state().whatChanged),
  };
  if (asked !== null && isSame(asked, wanted)) return;
  const isPlain = thickness.trim() === '' && remnants.length === 0 && wanted.since === null;
  put(app, {
    ...firstSpare,
    asked: wanted,
    thickness,
    remnants,
    // the words stay until others come
    said: isOther || isPlain ? null : spare.said,
  });
  // what is wrong with the design itself stands under the findings
  if (isPlain) return;
  void app
    .ask('part-said', givenOf(app, wanted), { rank: 4 })
    .catch(() => null)
    .then((said) => {
      if (app.state().spare.asked === wanted) put(app, { said });
    });
}

const isSame = (a: SpareAsked, b: SpareAsked): boolean =>
  a.of === b.of && a.part === b.part && a.thickness === b.thickness && a.remnants === b.remnants && a.since === b.since;

function givenOf(app: App, { part, thickness, remnants, since }: SpareAsked): Given<'part-said'> {
  const { shown } = app.state();
  if (shown === null) throw new Error('a part is asked for, and no camera is shown');
  return { of: shown.of, id: part, thickness, remnants, since };
}

export const typeThickness = (app: App, thickness: string): void => put(app, { thickness });

/** Lets the user pick the files of pieces at hand; the last ones stay where he thinks better of it. */
export async function pickRemnants(app: App): Promise<void> {
  const remnants = await pickFiles('.json', true);
  if (remnants.length > 0) put(app, { remnants });
}

export const forgetRemnants = (app: App): void => put(app, { remnants: firstSpare.remnants });

export function waive(app: App, rule: string, may: boolean): void {
  const others = app.state().spare.despite.filter((one) => one !== rule);
  put(app, { despite: may ? [...others, rule] : others });
}

/** Makes the files of the part that is chosen, and saves them in one archive. */
export async function saveAlone(app: App): Promise<void> {
  const { asked, despite } = app.state().spare;
  if (asked === null) return;
  put(app, { saving: true, made: null });
  const made = await app.ask('part-files', { ...givenOf(app, asked), despite }, { rank: 2 }).catch(() => null);
  if (app.state().spare.asked !== asked) return;
  put(app, { saving: false, made });
  if (made === null || 'refused' in made || made.archive === null) return;
  const { path, bytes } = made.archive;
  // what came over from a worker lies in memory of its own
  saveFile(path, bytes as Uint8Array<ArrayBuffer>, 'application/zip');
}
