import { html, nothing } from 'lit-html';
import { plainNumber } from '../../../units/print.js';
import type { App } from '../../app.js';
import { isChanged } from '../../design/changed.js';
import { madeUpList } from '../../design/made-up.js';
import { save } from '../../design/save.js';
import { markOf } from '../../mark-of.js';
import { isStale, type State } from '../../state.js';
import { findingsNow } from '../findings/now.js';
import { standing } from '../what-changed/state.js';
import {
  askForBuild,
  brokenRules,
  copiesOf,
  cutOnlyChanged,
  dropPrices,
  inTheWay,
  MOST_COPIES,
  openPrices,
  sinceOf,
  stopBuild,
  typeCopies,
} from './build.js';
import type { BuildJob, FileAtHand, Harvest } from './state.js';

export function view(app: App) {
  const state = app.state();
  const { shown, takeAway } = state;
  if (shown === null) return html`<p class="nothing">There is no camera to take away yet.</p>`;
  return html`
    <p>
      Everything that the workshop needs: sheets for the laser, prints, drawings, the book, and the figures. Unpacked, it
      is the folder that <code>tailboard build</code> writes, byte for byte.
    </p>
    ${isStale(state) ? html`<p class="help">The newest text is no design: what is built is the last that could be read.</p>` : nothing}
    <p>
      What to buy for it stands under
      <button type="button" class="take-away-why" @click=${() => app.turnTo('sheets')}>Sheets</button>
    </p>
    ${madeUpList(app)} ${designFile(app)} ${kitsWanted(app)} ${cameraThatStands(app)} ${waivers(app)} ${deeds(app)}
    ${takeAway.harvest === null ? nothing : harvestView(takeAway.harvest, isOfShown(state))}
  `;
}

/** The folder is made from the design, and does not hold it. */
function designFile(app: App) {
  return html`
    <p class="take-away-design">
      The design file itself is not in it: keep <b>${app.state().design.file}</b> beside it.
      <button type="button" @click=${() => void save(app)}>
        ${isChanged(app) ? 'Save the design' : 'Save the design again'}
      </button>
    </p>
  `;
}

/** For who hands kits to a class: how many, and what things cost. */
function kitsWanted(app: App) {
  const { kits, job } = app.state().takeAway;
  const copies = copiesOf(kits);
  const isWrong = copies !== null && Number.isNaN(copies);
  const isBusy = job.kind === 'waiting' || job.kind === 'running';
  return html`
    <fieldset class="take-away-kits" ?disabled=${isBusy}>
      <legend>Kits for a class</legend>
      <label>
        Kits
        <input
          type="text"
          inputmode="numeric"
          size="4"
          .value=${kits.copies}
          aria-describedby="take-away-kits-help"
          aria-invalid=${isWrong ? 'true' : 'false'}
          @input=${(event: Event) => typeCopies(app, (event.target as HTMLInputElement).value)}
        />
      </label>
      <span id="take-away-kits-help" class=${isWrong ? 'level-error' : 'help'}>
        ${isWrong ? `Write a whole number from 1 to ${MOST_COPIES}.` : 'Left empty, the folder of one camera is built.'}
      </span>
      <p>
        ${
          kits.prices === null
            ? html`<button type="button" @click=${() => void openPrices(app)}>Open a price file</button>
                <span class="help">Without one nothing is priced.</span>`
            : html`Priced by <b>${kits.prices.file}</b>
                <button type="button" @click=${() => void openPrices(app)}>Open another</button>
                <button type="button" @click=${() => dropPrices(app)}>Without prices</button>`
        }
      </p>
    </fieldset>
  `;
}

/** For who has the camera already, as it was made from an earlier design. */
function cameraThatStands(app: App) {
  const state = app.state();
  const { before } = state.whatChanged;
  if (standing(state.whatChanged) === null || before === null) return nothing;
  const { job, onlyChanged } = state.takeAway;
  return html`
    <fieldset class="take-away-since" ?disabled=${job.kind === 'waiting' || job.kind === 'running'}>
      <legend>For a camera that stands</legend>
      <label>
        <input
          type="checkbox"
          .checked=${onlyChanged}
          aria-describedby="take-away-since-help"
          @change=${(event: Event) => cutOnlyChanged(app, (event.target as HTMLInputElement).checked)}
        />
        Cut only what <b>${before.name}</b> does not have
      </label>
      <span id="take-away-since-help" class=${clashes(state) ? 'level-error' : 'help'}>
        ${
          clashes(state)
            ? 'This is for one camera that stands, and kits are for new ones: take one of the two away.'
            : html`What that is stands under
                <button type="button" class="take-away-why" @click=${() => app.turnTo('what-changed')}>What changed</button>`
        }
      </span>
    </fieldset>
  `;
}

/** Kits are for new cameras. */
const clashes = (state: State): boolean => sinceOf(state) !== null && copiesOf(state.takeAway.kits) !== null;

/** Whether what was built is of the camera that is shown, and as many as are asked for. */
function isOfShown(state: State): boolean {
  const { shown, takeAway } = state;
  const { harvest, kits } = takeAway;
  if (harvest === null || shown === null || harvest.of !== markOf(shown.of)) return false;
  if (harvest.since !== sinceOf(state)) return false;
  return harvest.kits.copies.trim() === kits.copies.trim() && harvest.kits.prices === kits.prices;
}

/** Each broken rule is waived by a word of its own, as on the command line. */
function waivers(app: App) {
  const state = app.state();
  const { findings } = findingsNow(state);
  const rules = brokenRules(findings);
  if (rules.length === 0) return nothing;
  const { despite } = state.takeAway;
  const errors = findings.filter(({ level }) => level === 'error').length;
  const waive = (rule: string, may: boolean) =>
    app.change(({ takeAway }) => ({
      takeAway: {
        ...takeAway,
        despite: may ? [...takeAway.despite, rule] : takeAway.despite.filter((one) => one !== rule),
      },
    }));
  return html`
    <fieldset class="take-away-despite">
      <legend class="level-error">Broken, and nothing is built until it is cured</legend>
      <p>
        ${errors === 1 ? '1 error stops' : `${errors} errors stop`} the build:
        <button type="button" class="take-away-why" @click=${() => app.turnTo('findings')}>
          see ${errors === 1 ? 'it' : 'them'} under Findings
        </button>
      </p>
      <p>
        What is built despite a broken rule will not do what it is made for. Every sheet then bears the words “built despite”
        and the rule.
      </p>
      ${rules.map(
        (rule) => html`
          <label class="take-away-rule">
            <input
              type="checkbox"
              .checked=${despite.includes(rule)}
              @change=${(event: Event) => waive(rule, (event.target as HTMLInputElement).checked)}
            />
            Build despite <b>${rule}</b>
          </label>
        `,
      )}
    </fieldset>
  `;
}

function deeds(app: App) {
  const state = app.state();
  const { job } = state.takeAway;
  if (job.kind === 'waiting' || job.kind === 'running') {
    const now = findingsNow(state);
    const { stage, done } = job.kind === 'running' ? job : (now.running ?? { stage: 'sizing', done: 0 });
    return html`
      <div class="take-away-progress">
        <p id="take-away-stage">${job.kind === 'waiting' ? `Being proven first: ${stage}` : `Building: ${stage}`}</p>
        <progress aria-labelledby="take-away-stage" max="1" .value=${done}></progress>
        <button type="button" @click=${() => stopBuild(app)}>Stop</button>
      </div>
    `;
  }
  const rules = inTheWay(state);
  const isNewest = isOfShown(state);
  const copies = copiesOf(state.takeAway.kits);
  return html`
    <p role="status" class="take-away-said">${said(job)}</p>
    <p class="deeds">
      <button
        type="button"
        class=${isNewest ? '' : 'main'}
        ?disabled=${rules.length > 0 || Number.isNaN(copies) || clashes(state)}
        @click=${() => askForBuild(app)}
      >
        ${isNewest ? 'Build it again' : copies === null ? 'Build the folder' : 'Build the kits'}
      </button>
      ${rules.length > 0 ? html`<span class="help">In the way: ${rules.join(', ')}</span>` : nothing}
    </p>
  `;
}

function said(job: BuildJob) {
  if (job.kind === 'stopped') return job.because;
  if (job.kind === 'misread')
    return html`The price file cannot be read, so nothing was built.
      ${job.problems.map((problem) => html`<pre class="take-away-problem">${problem}</pre>`)}`;
  if (job.kind === 'refused') return html`Not built, nothing written: <b>${job.rules.join(', ')}</b>.`;
  return nothing;
}

function harvestView({ archive, files, summary, laserCaution }: Harvest, isNewest: boolean) {
  const book = files.find(({ path }) => path === 'book.pdf');
  const papers = files.find(({ path }) => path === 'kits.pdf');
  return html`
    ${isNewest ? nothing : html`<p class="level-warning">This is not what is shown and asked for now: it was built before.</p>`}
    <p class="deeds">
      <a class="take-away-archive" href=${archive.url} download=${archive.path}>Save ${archive.path}</a>
      <span class="caption">${files.length} files, packed into ${size(archive.size)}</span>
      ${book === undefined ? nothing : html`<a href=${book.url} target="_blank" rel="noopener">Look into the book</a>`}
      ${papers === undefined ? nothing : html`<a href=${papers.url} target="_blank" rel="noopener">Look into the papers of the kits</a>`}
    </p>
    ${summary.map((line) => html`<p class="take-away-summary">${line}</p>`)}
    ${groups(laserCaution).map(({ title, of, caution }) =>
      fileGroup(
        title,
        files.filter(({ path }) => of.test(path)),
        caution,
      ),
    )}
  `;
}

interface FileGroup {
  readonly title: string;
  readonly of: RegExp;
  readonly caution?: string;
}

/** In the order in which a builder takes them up. */
const groups = (laserCaution: string): readonly FileGroup[] => [
  { title: 'The book', of: /^book\.pdf$/ },
  { title: 'Papers of the kits', of: /^kits\.pdf$/ },
  {
    title: 'Sheets for the laser',
    of: /^sheets\//,
    caution: laserCaution,
  },
  {
    title: 'Prints',
    of: /^prints(?:-beside)?\//,
    caution:
      'What holds the lens must not creep: print it in a material that stays stiff at 70 °C, as a car in the sun is hot.',
  },
  { title: 'Drawings', of: /^drawings\// },
  { title: 'What is left of the sheets', of: /^remnants\// },
  { title: 'Figures', of: /^(?:plan|parts|kits|changes|\.tailboard)\.json$/ },
];

function fileGroup(title: string, files: readonly FileAtHand[], caution?: string) {
  if (files.length === 0) return nothing;
  const total = files.reduce((sum, file) => sum + file.size, 0);
  return html`
    <details class="take-away-group">
      <summary>${title} <span class="caption">${files.length === 1 ? '' : `${files.length} files, `}${size(total)}</span></summary>
      ${caution === undefined ? nothing : html`<p class="help">${caution}</p>`}
      <table class="figure-table">
        <caption class="unseen">${title}</caption>
        <tbody>
          ${files.map(
            (file) => html`
              <tr>
                <th scope="row">
                  <a class="take-away-file" href=${file.url} download=${nameOf(file)}>${file.path}</a>
                </th>
                <td class="number">${size(file.size)}</td>
              </tr>
            `,
          )}
        </tbody>
      </table>
    </details>
  `;
}

/** A file that is taken alone lies in no folder. */
const nameOf = ({ path }: FileAtHand): string => path.split('/').at(-1) ?? path;

function size(bytes: number): string {
  if (bytes >= 1e6) return `${plainNumber(bytes / 1e6, 1)} MB`;
  return bytes >= 1000 ? `${plainNumber(bytes / 1000, 0)} kB` : `${bytes} bytes`;
}
