import { html, render, svg } from 'lit-html';
import { guard } from 'lit-html/directives/guard.js';
import { ref } from 'lit-html/directives/ref.js';
import type { App } from '../app.js';
import { unbroken } from '../unbroken.js';
import type { Measure } from './dimension.js';
import { figuresAt, type SectionFigures } from './figures.js';
import { moving } from './moving.js';
import { boundsOf, type Paper, paperFor } from './paper.js';
import { still } from './still.js';
import { limit, sharp, spoken, subject } from './words.js';

/** What the section keeps from picture to picture: it has a life of its own, for it moves without the page being drawn anew. */
interface Easel {
  readonly hold: (element: Element | undefined) => void;
  readonly measure: Measure;
  size: { readonly width: number; readonly height: number };
  element: HTMLElement | null;
  /** For which set-up and parts it was drawn. */
  drawn: string;
  /** Until the figures are told. */
  wait: ReturnType<typeof setTimeout> | undefined;
}

const easels = new WeakMap<App, Easel>();

/** The camera cut along its axis, its lens to the left, moving with the slide. */
export function sectionView(app: App) {
  const { shown } = app.state();
  const { size } = easelOf(app);
  // the outlines come a moment after the figures, and until then the earlier ones stand as they were
  return guard([shown?.section ?? null, shown?.drawable, markOf(app), size], () => drawnSection(app));
}

function drawnSection(app: App) {
  const { shown } = app.state();
  const easel = easelOf(app);
  const figures = figuresNow(app);
  if (shown === null || !shown.drawable || figures === null || shown.section === null)
    return html`
      <div class="section-view">
        <h2>Section</h2>
        <p class="nothing">${shown?.drawable === false ? 'There is no camera to cut: the findings say why.' : ''}</p>
      </div>
    `;
  const { plan, section } = shown;
  const paper = paperNow(app, easel, figures);
  easel.drawn = markOf(app);
  queueMicrotask(() => move(app, easel));
  const choose = (event: Event) => {
    const part =
      event.target instanceof Element ? event.target.closest('[data-part]')?.getAttribute('data-part') : null;
    if (part !== null && part !== undefined) app.pose.change({ chosen: part === app.pose.now().chosen ? null : part });
  };
  return html`
    <div class="section-view">
      <div class="section-title">
        <h2 id="section-title">Section</h2>
        <p class="section-now number"></p>
      </div>
      <div class="section-sheet" ${ref(easel.hold)}>
        ${
          paper === null
            ? ''
            : html`
              <svg
                role="img"
                aria-labelledby="section-title"
                aria-describedby="section-words"
                viewBox=${`${paper.left} ${paper.top} ${paper.width * paper.px} ${paper.height * paper.px}`}
                @click=${choose}
              >
                ${still(section, figures, plan, paper, app.pose.now(), easel.measure)}
                <g class="section-moving"></g>
              </svg>
            `
        }
      </div>
      <p class=${paper?.namesAside === true ? 'section-limit aside' : 'section-limit'}>
        <span class="section-flag-sign" aria-hidden="true">▸</span> ${unbroken(limit(plan))}
      </p>
      <p class="unseen" id="section-words" aria-live="polite"></p>
    </div>
  `;
}

function easelOf(app: App): Easel {
  const known = easels.get(app);
  if (known !== undefined) return known;
  const asked = { move: false };
  const context = document.createElement('canvas').getContext('2d');
  const widths = new Map<string, number>();
  const watcher = new ResizeObserver(([entry]) => {
    const { width = 0, height = 0 } = entry?.contentRect ?? {};
    if (width === easel.size.width && height === easel.size.height) return;
    easel.size = { width, height };
    app.change(() => ({}));
  });
  const easel: Easel = {
    size: { width: 0, height: 0 },
    element: null,
    drawn: '',
    wait: undefined,
    hold: (element) => {
      if (easel.element !== null) watcher.unobserve(easel.element);
      easel.element = element instanceof HTMLElement ? element : null;
      if (element !== undefined) watcher.observe(element);
    },
    measure: (words) => {
      const known = widths.get(words);
      if (known !== undefined || context === null) return known ?? 0;
      if (widths.size > MOST_WORDS) widths.clear();
      context.font = `13px ${getComputedStyle(easel.element ?? document.body).fontFamily}`;
      const { width } = context.measureText(words);
      widths.set(words, width);
      return width;
    },
  };
  app.pose.watch(() => {
    if (asked.move) return;
    asked.move = true;
    requestAnimationFrame(() => {
      asked.move = false;
      if (easel.drawn !== markOf(app)) app.change(() => ({}));
      else move(app, easel);
    });
  });
  easels.set(app, easel);
  return easel;
}

/** So many widths of words are remembered. */
const MOST_WORDS = 2000;
/** The figures are told when the slide has been at rest for so long, ms. */
const SETTLED = 700;

const figuresNow = (app: App): SectionFigures | null => {
  const { shown } = app.state();
  return shown === null || shown.section === null ? null : figuresAt(shown.plan, shown.section, app.pose.now());
};

const markOf = (app: App): string => {
  const { setup, chosen, pointed } = app.pose.now();
  return JSON.stringify([setup, chosen, pointed]);
};

/** So much wider are the letters of the film that is in. */
const BOLD = 1.12;

function paperNow(app: App, { size, measure }: Easel, { planes }: SectionFigures): Paper | null {
  const { shown } = app.state();
  if (shown === null || shown.section === null || size.width < 1 || size.height < 1) return null;
  const { closest, farthest } = shown.plan.slide;
  const widest = BOLD * Math.max(...planes.map(({ names }) => measure(names.join(', '))));
  return paperFor(size, boundsOf(shown.section, farthest - closest), planes.length, widest);
}

/** What is different at another place of the slide. */
function move(app: App, easel: Easel): void {
  const { shown } = app.state();
  const figures = figuresNow(app);
  const view = easel.element?.parentElement;
  if (shown === null || figures === null || view === null || view === undefined) return;
  const paper = paperNow(app, easel, figures);
  const layer = view.querySelector<SVGElement>('.section-moving');
  if (paper === null || layer === null) return;
  easel.element?.style.setProperty('--px', String(paper.px));
  for (const slides of view.querySelectorAll('.section-slides'))
    slides.setAttribute('transform', `translate(${figures.rear})`);
  for (const drawn of view.querySelectorAll('.section-drawn'))
    drawn.setAttribute('transform', `translate(${figures.drawn})`);
  render(svg`${moving(figures, shown.plan, paper, easel.measure)}`, layer);
  const now = view.querySelector('.section-now');
  const plane = figures.planes.find(({ isIn }) => isIn);
  if (now !== null && plane !== undefined) {
    const far = subject(plane.magnification, shown.plan);
    now.textContent = unbroken(`${figures.setup.name}: ${sharp(plane)}${far === '' ? '' : `, ${far}`}`);
  }
  clearTimeout(easel.wait);
  easel.wait = setTimeout(() => tell(app, easel), SETTLED);
}

function tell(app: App, { element }: Easel): void {
  const { shown } = app.state();
  const figures = figuresNow(app);
  const words = element?.parentElement?.querySelector('#section-words');
  if (shown !== null && figures !== null && words !== null && words !== undefined)
    words.textContent = spoken(figures, shown.plan);
}
