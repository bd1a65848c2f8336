import { render } from 'lit-html';
import { cache } from 'lit-html/directives/cache.js';
import type { PlanDocument } from '../../model/plan.js';
import type { ShownSolids, TakenStep } from '../../model/shown.js';
import type { App } from '../app.js';
import { saveFile } from '../files.js';
import { markOf } from '../mark-of.js';
import type { Pose } from '../pose.js';
import { attendSpare } from '../spare/deeds.js';
import type { DesignText } from '../worker/questions.js';
import { apartAt } from './apart.js';
import { controls } from './controls.js';
import { followDesign } from './follow-design.js';
import type { PanelNow, Sight } from './panel-now.js';
import type { Stage } from './stage.js';

/** What the panel keeps beside the state and the pose. */
export interface Panel {
  readonly element: HTMLElement;
  /** Looks at the state again. */
  readonly follow: () => void;
}

const panels = new WeakMap<App, Panel>();

export function panelOf(app: App): Panel {
  const known = panels.get(app);
  if (known !== undefined) return known;
  const made = newPanel(app);
  panels.set(app, made);
  return made;
}

function newPanel(app: App): Panel {
  const element = document.createElement('div');
  element.className = 'camera';
  const own = {
    sight: 'coming' as Sight,
    canvas: null as HTMLCanvasElement | null,
    stage: null as Stage | null,
    /** What the stage shows. */
    on: { solids: null as ShownSolids | null, setup: '', opened: null as DesignText | null },
    /** What was met so last. */
    met: { solids: null as ShownSolids | null, plan: null as PlanDocument | null },
    touched: null as string | null,
    pointed: app.pose.now().pointed,
    /** How all stands on the stage. */
    stood: null as { pose: Pose; steps: readonly TakenStep[] | null; touched: string | null } | null,
    asked: false,
    /** What the controls were drawn from last. */
    seen: [] as readonly unknown[],
  };

  /** A camera that is new here is met as the one before it was left. */
  function meet(): void {
    const { shown } = app.state();
    const solids = shown?.solids ?? null;
    if (shown === null || solids === null || shown.plan === own.met.plan || solids === own.met.solids) return;
    const patch = followDesign(app.pose.now(), { plan: shown.plan, solids }, own.met.plan);
    own.met = { plan: shown.plan, solids };
    app.pose.change(patch);
  }

  /** Controls and canvas as they should be now. */
  function draw(): void {
    // the state may have changed since this was asked for, and nobody has looked at it yet
    meet();
    const { shown } = app.state();
    const solids = shown?.solids ?? null;
    if (shown === null || solids === null) {
      own.seen = [];
      // put by and not thrown away: the canvas with all that is on it comes back with the next camera
      render(cache(controls(app, null, shown)), element);
      return;
    }
    const pose = app.pose.now();
    const steps = stepsNow(pose.setup);
    const now: PanelNow = {
      sight: own.sight,
      plan: shown.plan,
      solids,
      reached: shown.reached,
      steps,
      touched: own.touched,
      stage: own.stage,
      hold,
      touch,
      savePicture,
    };
    // not for the figures alone: the solids that go with them come a moment later, and until then all stands as it was
    const { sheets, findings, spare, whatChanged } = app.state();
    const proof = findings.proof.kind === 'running' ? null : findings.proof;
    const seen = [
      solids,
      shown.reached,
      pose,
      steps,
      own.touched,
      own.sight,
      own.stage,
      sheets.places,
      proof,
      spare,
      whatChanged,
    ];
    if (seen.some((one, i) => one !== own.seen[i])) render(cache(controls(app, now, shown)), element);
    own.seen = seen;
    attendSpare(app, solids);
    if (own.stage === null) return;
    stand(own.stage, { pose, steps, touched: own.touched });
    if (own.on.solids !== solids || own.on.setup !== pose.setup) {
      const { opened } = app.state();
      own.stage.show(solids, pose.setup, own.on.opened !== opened);
      own.on = { solids, setup: pose.setup, opened };
    }
    if (own.pointed !== pose.pointed) {
      const before = own.pointed;
      own.pointed = pose.pointed;
      if (pose.pointed.length > 0) own.stage.turnTo(pose.pointed);
      else if (before.length > 0) own.stage.showAll();
    }
  }

  /** Only where something moves: the state changes with every per cent of a proof, and a picture costs what a frame has. */
  function stand(stage: Stage, to: NonNullable<typeof own.stood>): void {
    const { pose, steps, touched } = to;
    const { stood } = own;
    const taken = pose.explode === 0 ? null : steps;
    if (stood !== null && stood.pose === pose && stood.steps === taken && stood.touched === touched) return;
    own.stood = { pose, steps: taken, touched };
    const out = taken === null ? new Map() : apartAt(taken, pose.explode);
    stage.stand({ ...pose, out, touched });
  }

  function ask(): void {
    if (own.asked) return;
    own.asked = true;
    requestAnimationFrame(() => {
      own.asked = false;
      draw();
    });
  }

  /** Of the camera that is shown: a proof of an earlier text says nothing of it. */
  function stepsNow(setup: string): readonly TakenStep[] | null {
    const { findings, shown } = app.state();
    const { proof } = findings;
    return proof.kind === 'done' && shown !== null && proof.of === markOf(shown.of)
      ? (proof.apart?.[setup] ?? null)
      : null;
  }

  function hold(found: Element | undefined): void {
    if (!(found instanceof HTMLCanvasElement) || own.canvas === found) return;
    own.canvas = found;
    void open(found);
  }

  async function open(canvas: HTMLCanvasElement): Promise<void> {
    // asked before the library is fetched, which would be of no use
    if (document.createElement('canvas').getContext('webgl2') === null) {
      own.sight = 'none';
      ask();
      return;
    }
    const { openStage } = await import('./stage.js');
    try {
      own.stage = openStage(canvas);
      own.sight = 'there';
    } catch {
      own.sight = 'none';
    }
    canvas.addEventListener('webglcontextlost', (event) => {
      // so that the browser may give it back
      event.preventDefault();
      own.sight = 'lost';
      ask();
    });
    canvas.addEventListener('webglcontextrestored', () => {
      own.sight = 'there';
      ask();
    });
    ask();
  }

  function touch(part: string | null): void {
    if (own.touched === part) return;
    own.touched = part;
    ask();
  }

  async function savePicture(): Promise<void> {
    const { shown } = app.state();
    const swatch = element.querySelector('.camera-paper');
    const picture = await own.stage?.picture(swatch === null ? 'white' : getComputedStyle(swatch).backgroundColor);
    if (picture === null || picture === undefined || shown === null) return;
    saveFile(`${shown.of.file.replace(/\.ya?ml$/, '')}-camera.png`, picture, 'image/png');
  }

  element.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') app.pose.change({ chosen: null, pointed: [] });
  });
  app.pose.watch(ask);
  return {
    element,
    follow: () => {
      meet();
      ask();
    },
  };
}
