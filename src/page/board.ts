import { html, type TemplateResult } from 'lit-html';
import { classMap } from 'lit-html/directives/class-map.js';
import { repeat } from 'lit-html/directives/repeat.js';
import type { App } from './app.js';
import { cameraView } from './camera/view.js';
import { leavingDialog } from './design/leaving.js';
import { designView } from './design/view.js';
import { heading } from './heading.js';
import { sectionView } from './section/view.js';
import { changedMeanwhile, saidOfFile } from './served/view.js';
import { isStale, type State, type TrayName, trayNames } from './state.js';
import { clockDialog, clockStrip } from './trays/process/clock.js';
import { trays } from './trays/table.js';

/**
 * The whole page: what the camera is made from on the left, the camera itself in the middle, the trays on the right. Where
 * there is room for one column alone the camera comes first and the design is one of the trays.
 */
export function board(app: App) {
  const { spread, notice, notSaved, narrow, atDesign } = app.state();
  return html`
    <a class="skip" href="#camera">To the camera</a>
    <a class="skip" href=${`#tab-${openTab(app.state())}`}>To the trays</a>
    <a class="skip" href=${narrow ? '#tab-design' : '#design'}>To the design</a>
    ${heading(app)}
    ${notSaved === null ? '' : noticeStrip(notSaved, () => app.change(() => ({ notSaved: null })))}
    ${notice === null ? '' : noticeStrip(notice, () => app.change(() => ({ notice: null })))}
    ${saidOfFile(app)}${changedMeanwhile(app)}${clockStrip(app)}
    <main
      class=${classMap({ board: true, spread, stale: isStale(app.state()), 'at-design': narrow && atDesign })}
    >
      ${
        // moved, never made anew: the order in which one reads is the order on the screen
        repeat(
          narrow ? (['drawing', 'trays', 'design'] as const) : (['design', 'drawing', 'trays'] as const),
          (name) => name,
          (name) => fields[name](app),
        )
      }
    </main>
    <footer class="foot">
      <span>Nothing that is done here leaves this machine.</span>
      <a href="licences.txt">Licences of what it is made of</a>
    </footer>
    ${leavingDialog(app)}${clockDialog(app)}
  `;
}

const fields: Readonly<Record<'design' | 'drawing' | 'trays', (app: App) => TemplateResult>> = {
  design: (app) => html`
    <section
      class="design"
      id="design"
      tabindex="-1"
      role=${app.state().narrow ? 'tabpanel' : 'region'}
      aria-labelledby=${app.state().narrow ? 'tab-design' : 'design-title'}
    >
      <h2 id="design-title">Design</h2>
      ${designView(app)}
    </section>
  `,
  drawing: (app) => html`
    <section class="drawing" id="camera" aria-label="The camera" tabindex="-1">
      ${
        isStale(app.state())
          ? html`<p class="stale-strip" role="status">Shown: the last camera that could be planned</p>`
          : ''
      }
      <div class="camera-place">${cameraView(app)}</div>
      <div class="section-place">${sectionView(app)}</div>
    </section>
  `,
  trays: (app) => html`
    <section class="trays" aria-label="Trays">
      ${trayTabs(app)}
      <div class="tray" id="tray" role="tabpanel" aria-labelledby=${`tab-${app.state().tray}`} tabindex="0">
        ${trays[app.state().tray].view(app)}
      </div>
    </section>
  `,
};

const noticeStrip = (words: string, putAway: () => void) => html`
  <p class="notice" role="alert">
    ${words} <button type="button" @click=${putAway}>Put away</button>
  </p>
`;

const tabNames = ({ narrow }: State) => (narrow ? (['design', ...trayNames] as const) : trayNames);

const openTab = ({ narrow, atDesign, tray }: State) => (narrow && atDesign ? 'design' : tray);

/** In one column the camera is far above what one reads. */
function goToCamera(): void {
  const camera = document.getElementById('camera');
  camera?.scrollIntoView({ block: 'start' });
  camera?.focus({ preventScroll: true });
}

/** One of them is open; arrows go from one to the next, as in any list of tabs. */
function trayTabs(app: App) {
  const names: readonly ('design' | TrayName)[] = tabNames(app.state());
  const open = openTab(app.state());
  const goTo = (name: (typeof names)[number]) => {
    app.turnTo(name);
    requestAnimationFrame(() => {
      const tab = document.getElementById(`tab-${name}`);
      tab?.focus({ preventScroll: true });
      tab?.scrollIntoView({ block: 'nearest', inline: 'center' });
    });
  };
  // one that was half hidden comes into sight when it is chosen
  const press = (name: (typeof names)[number]) => {
    app.turnTo(name);
    requestAnimationFrame(() =>
      document.getElementById(`tab-${name}`)?.scrollIntoView({ block: 'nearest', inline: 'center' }),
    );
  };
  const onKey = (event: KeyboardEvent) => {
    const to = {
      ArrowRight: names.indexOf(open) + 1,
      ArrowLeft: names.indexOf(open) - 1,
      Home: 0,
      End: names.length - 1,
    }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const next = names[(to + names.length) % names.length];
    if (next !== undefined) goTo(next);
  };
  const { spread } = app.state();
  return html`
    <div class="tabs">
      <button
        type="button"
        class="spread-out"
        aria-pressed=${String(spread)}
        @click=${() => app.change((now) => ({ spread: !now.spread }))}
      >
        Spread out
      </button>
      <button type="button" class="to-camera" @click=${goToCamera}><span class="unseen">To the </span>camera</button>
      <div role="tablist" aria-label="Trays" @keydown=${onKey}>
        ${repeat(
          names,
          (name) => name,
          (name) => html`
            <button
              type="button"
              role="tab"
              id=${`tab-${name}`}
              aria-controls=${name === 'design' ? 'design' : 'tray'}
              aria-selected=${String(name === open)}
              tabindex=${name === open ? 0 : -1}
              @click=${() => press(name)}
            >
              ${name === 'design' ? 'Design' : trays[name].title}
            </button>
          `,
        )}
      </div>
    </div>
  `;
}
