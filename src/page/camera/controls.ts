import { html, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { ref } from 'lit-html/directives/ref.js';
import { plainNumber } from '../../units/print.js';
import type { App } from '../app.js';
import { markOf } from '../mark-of.js';
import type { Shown } from '../state.js';
import { unbroken } from '../unbroken.js';
import { stepAt } from './apart.js';
import {
  focusRange,
  focusWords,
  magnificationAt,
  outOfReach,
  rearFor,
  reserveWords,
  subjectDistance,
} from './focus.js';
import { farthest } from './follow-design.js';
import type { PanelNow } from './panel-now.js';
import { partCard } from './part-card.js';
import { type ViewName, viewNames } from './view-names.js';
import { partWords, setupWords } from './words.js';

/** The picture, beside it from where one looks and what is chosen, and what moves the camera under it: nothing covers it. */
export function controls(app: App, now: PanelNow | null, shown: Shown | null): TemplateResult {
  if (now === null)
    return html`<p class="camera-words">${
      shown?.drawable === false
        ? 'There is no camera to put together: the findings say why.'
        : 'The camera is being made.'
    }</p>`;
  return html`
    <div class="camera-top">${setupChoice(app, now)}${partChoice(app, now)}${
      now.stage === null
        ? ''
        : html`<button type="button" class="camera-save" @click=${now.savePicture}>Save picture</button>`
    }</div>
    <div class="camera-sight">
      ${viewButtons(now)}
      <div class="camera-picture">${sight(app, now)}${pointedStrip(app)}</div>
      ${partCard(app, now)}
    </div>
    <div class="camera-moves">${focus(app, now)}${apart(app, now)}</div>
    <span class="camera-paper" aria-hidden="true"></span>
  `;
}

function setupChoice({ pose }: App, { solids }: PanelNow) {
  const choose = ({ target }: Event) => {
    if (target instanceof HTMLSelectElement) pose.change({ setup: target.value });
  };
  const { setup } = pose.now();
  return html`
    <select class="camera-setup" aria-label="In the back" @change=${choose}>
        ${solids.setups.map(
          (one) => html`<option value=${one.name} ?selected=${one.name === setup}>${setupWords(one)}</option>`,
        )}
      </select>
  `;
}

/** Another way to choose a part than to point at it. */
function partChoice({ pose }: App, { solids }: PanelNow) {
  const { chosen, setup } = pose.now();
  const choose = ({ target }: Event) => {
    if (target instanceof HTMLSelectElement) pose.change({ chosen: target.value === '' ? null : target.value });
  };
  const standing = new Set(solids.pieces.filter(({ when }) => when.includes(setup)).map(({ part }) => part));
  const listed = solids.bodies.filter(({ part }) => standing.has(part) || part === chosen);
  return html`
    <select class="camera-parts" aria-label="Part" .value=${live(chosen ?? '')} @change=${choose}>
        <option value="" ?selected=${chosen === null}>No part chosen</option>
        ${listed.map(
          (body) => html`<option value=${body.part} ?selected=${body.part === chosen}>${partWords(body)}</option>`,
        )}
      </select>
  `;
}

/** So much of a turn for each press of an arrow, rad. */
const TURN = Math.PI / 24;
const NEARER = 0.85;
/** A press that moved no farther than this, px, was meant to choose. */
const STILL = 4;

function sight({ pose }: App, { sight: how, stage, touch, hold, solids, touched }: PanelNow) {
  if (how === 'none')
    return html`
      <p class="camera-words">
        This browser does not draw in three dimensions (it has no WebGL). The section below, figures, sheets and files are
        all here.
      </p>
    `;
  const onKey = (event: KeyboardEvent) => {
    const deeds: Readonly<Record<string, () => void>> = {
      ArrowLeft: () => stage?.turn(-TURN, 0),
      ArrowRight: () => stage?.turn(TURN, 0),
      ArrowUp: () => stage?.turn(0, TURN),
      ArrowDown: () => stage?.turn(0, -TURN),
      '+': () => stage?.approach(NEARER),
      '=': () => stage?.approach(NEARER),
      '-': () => stage?.approach(1 / NEARER),
    };
    const deed = event.ctrlKey || event.metaKey || event.altKey ? undefined : deeds[event.key];
    if (deed === undefined) return;
    event.preventDefault();
    deed();
  };
  const partUnder = (event: PointerEvent): string | null => {
    if (stage === null || !(event.currentTarget instanceof HTMLElement)) return null;
    const { left, top } = event.currentTarget.getBoundingClientRect();
    return stage.partAt(event.clientX - left, event.clientY - top);
  };
  const down = { x: 0, y: 0 };
  const touchedBody = solids.bodies.find(({ part }) => part === touched);
  return html`
    <canvas
      class="camera-canvas"
      tabindex="0"
      role="application"
      aria-label="The camera in three dimensions"
      aria-describedby="camera-help"
      ${ref(hold)}
      @keydown=${onKey}
      @pointerdown=${(event: PointerEvent) => {
        presses.set(event.currentTarget as object, { x: event.clientX, y: event.clientY });
      }}
      @pointermove=${(event: PointerEvent) => {
        if (event.buttons === 0 && event.pointerType === 'mouse') touch(partUnder(event));
      }}
      @pointerleave=${() => touch(null)}
      @pointerup=${(event: PointerEvent) => {
        const from = presses.get(event.currentTarget as object) ?? down;
        if (event.button !== 0 || Math.abs(event.clientX - from.x) + Math.abs(event.clientY - from.y) > STILL) return;
        pose.change({ chosen: partUnder(event) });
      }}
    ></canvas>
    <p class="unseen" id="camera-help">
      Arrow keys turn the camera, plus and minus come nearer and go back, Escape lets a chosen part go.
    </p>
    ${
      how === 'lost'
        ? html`<p class="camera-words camera-over">The drawing was interrupted by the browser. It comes back when it can.</p>`
        : how === 'coming'
          ? html`<p class="camera-words camera-over">The camera is being drawn.</p>`
          : ''
    }
    <p class="camera-touched">${touchedBody === undefined ? '' : unbroken(partWords(touchedBody))}</p>
  `;
}

/** Where a press on a canvas began. */
const presses = new WeakMap<object, { readonly x: number; readonly y: number }>();

const viewWords: Readonly<Record<ViewName, string>> = {
  corner: 'Corner',
  front: 'Front',
  behind: 'Behind',
  left: 'Left',
  right: 'Right',
  above: 'Above',
  below: 'Below',
};

const viewButtons = ({ stage }: PanelNow) =>
  stage === null
    ? ''
    : html`
      <div class="camera-views" role="group" aria-label="Look from">
        ${viewNames.map(
          (name) => html`<button type="button" @click=${() => stage.lookFrom(name)}>${viewWords[name]}</button>`,
        )}
      </div>
    `;

const pointedStrip = ({ pose }: App) =>
  pose.now().pointed.length === 0
    ? ''
    : html`
      <p class="camera-pointed">
        <button type="button" @click=${() => pose.change({ pointed: [] })}>Show all of the camera again</button>
      </p>
    `;

/** How far a key moves the slide, mm. */
const SLID: Readonly<Record<string, number>> = {
  ArrowLeft: -0.5,
  ArrowDown: -0.5,
  ArrowRight: 0.5,
  ArrowUp: 0.5,
  PageDown: -10,
  PageUp: 10,
};
/** Of that, with Shift. */
const FINELY = 0.2;

/** The slide from the closest station to the farthest, told by what is sharp on the film. */
function focus({ pose }: App, { plan, solids, reached }: PanelNow) {
  const { rear, setup, beyond } = pose.now();
  const holder = solids.setups.find(({ name }) => name === setup)?.holder ?? '';
  const { farEnd, nearest } = focusRange(plan, holder);
  const words = focusWords(plan, holder, rear);
  const most = farthest(solids);
  const { focalLength } = plan.optics;
  const distance = subjectDistance(focalLength, magnificationAt(plan, holder, rear));
  const toDistance = ({ target }: Event) => {
    if (!(target instanceof HTMLInputElement)) return;
    const wanted = target.valueAsNumber * 1000;
    if (!(wanted > 0)) return pose.change({ rear });
    // nothing is sharp within the focal length: as near as the slide goes
    const to = wanted > focalLength ? Math.max(0, Math.min(most, rearFor(plan, holder, wanted))) : most;
    const isWithin = outOfReach(plan, holder, wanted, most, reached) === '';
    pose.change({ rear: to, beyond: isWithin ? null : { distance: wanted, rear: to } });
  };
  const slide = ({ target }: Event) => {
    if (target instanceof HTMLInputElement) pose.change({ rear: Number(target.value) });
  };
  const onKey = (event: KeyboardEvent) => {
    const way = SLID[event.key];
    if (way === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    const to = pose.now().rear + way * (event.shiftKey ? FINELY : 1);
    pose.change({ rear: Math.min(most, Math.max(0, to)) });
  };
  const past = reserveWords(plan, reached);
  const remark =
    beyond !== null && beyond.rear === rear
      ? outOfReach(plan, holder, beyond.distance, most, reached)
      : past !== '' && rear > nearest - 0.01
        ? `The slide runs on ${past}.`
        : '';
  return html`
    <div class="camera-move">
      <label for="camera-focus">Focus</label>
      <button type="button" ?disabled=${Math.abs(rear - farEnd) < 0.01} @click=${() => pose.change({ rear: farEnd })}>
        ${plan.optics.farthest ? 'Farthest' : 'Infinity'}
      </button>
      <input
        id="camera-focus"
        type="range"
        min="0"
        max=${most}
        step="any"
        .value=${live(String(rear))}
        aria-valuetext=${words}
        @input=${slide}
        @keydown=${onKey}
      />
      <button type="button" ?disabled=${Math.abs(rear - nearest) < 0.01} @click=${() => pose.change({ rear: nearest })}>
        Nearest
      </button>
      <label class="camera-distance">
        Subject at
        <input
          type="number"
          min="0"
          step="0.05"
          .value=${live(distance === null ? '' : plainNumber(distance / 1000, 3))}
          @change=${toDistance}
        />
        m
      </label>
      <output class="camera-readout number" for="camera-focus">${unbroken(words)}</output>
      <p class="camera-remark" role="status">${unbroken(remark)}</p>
    </div>
  `;
}

function apart(app: App, { steps, solids, sight: how }: PanelNow) {
  const { pose } = app;
  const { explode, sawn, cone } = pose.now();
  const at = steps === null ? null : stepAt(steps, explode);
  const title = solids.steps.find(({ number }) => number === at?.number)?.title ?? '';
  const words =
    how === 'none'
      ? 'needs three dimensions'
      : steps === null
        ? waitingWords(app)
        : at === null
          ? 'together'
          : at.left === 0 && explode === 1
            ? 'all in parts'
            : `step ${at.number} is undone: ${title.charAt(0).toLowerCase()}${title.slice(1)}`;
  const slide = ({ target }: Event) => {
    if (target instanceof HTMLInputElement) pose.change({ explode: Number(target.value) });
  };
  return html`
    <div class="camera-move">
      <label for="camera-apart">Apart</label>
      <input
        id="camera-apart"
        type="range"
        min="0"
        max="1"
        step="0.002"
        .value=${live(String(explode))}
        aria-valuetext=${words}
        ?disabled=${steps === null || how === 'none'}
        @input=${slide}
      />
      <output class="camera-readout" for="camera-apart">${unbroken(words)}</output>
      <span class="camera-ticks">
        <label><input type="checkbox" .checked=${live(sawn)} @change=${() => pose.change({ sawn: !pose.now().sawn })} />Sawn open</label>
        <label><input type="checkbox" .checked=${live(cone)} @change=${() => pose.change({ cone: !pose.now().cone })} />Light</label>
      </span>
    </div>
  `;
}

function waitingWords(app: App): string {
  const { findings, shown } = app.state();
  const { proof } = findings;
  const isOfThis = 'of' in proof && shown !== null && proof.of === markOf(shown.of);
  if (isOfThis && proof.kind === 'failed') return 'the proof, which finds the ways, came to nothing';
  return isOfThis && proof.kind === 'done'
    ? 'the proof found no way to take it apart'
    : 'waits for the proof, which finds the ways';
}
