import { html, nothing } from 'lit-html';
import type { Finding } from '../../index.js';
import type { ShownBody } from '../../model/shown.js';
import { mm } from '../../units/print.js';
import type { App } from '../app.js';
import { brokenRules } from '../trays/take-away/build.js';
import { unbroken } from '../unbroken.js';
import { forgetRemnants, isMade, pickRemnants, saveAlone, typeThickness, waive } from './deeds.js';

/** To have one part once more, for a camera that stands: its files alone, from the sheet that is at hand now. */
export function partAlone(app: App, body: ShownBody) {
  if (!isMade(body)) return nothing;
  const { made, said, saving, despite } = app.state().spare;
  const known = made ?? said;
  const findings = known === null || 'refused' in known ? [] : known.findings;
  const begin = (event: Event) => {
    event.preventDefault();
    void saveAlone(app);
  };
  return html`
    <form class="spare" aria-labelledby="spare-title" @submit=${begin}>
      <h4 id="spare-title">${body.thickness === null ? 'Print it alone' : 'Cut it alone'}</h4>
      ${body.thickness === null ? nothing : [sheetAtHand(app, body.thickness), piecesAtHand(app)]}
      <button type="submit" ?disabled=${saving}>${saving ? 'Being made' : `Save ${body.part} alone`}</button>
      <div id="spare-said" role="status">
        ${known !== null && 'refused' in known ? html`<p class="level-error">${unbroken(known.refused)}</p>` : nothing}
        ${findings.map(entry)} ${outcome(app)}
      </div>
      ${brokenRules(findings).map(
        (rule) => html`
          <label class="spare-rule">
            <input
              type="checkbox"
              .checked=${despite.includes(rule)}
              @change=${(event: Event) => waive(app, rule, (event.target as HTMLInputElement).checked)}
            />
            Save despite <b>${rule}</b>
          </label>
        `,
      )}
    </form>
  `;
}

function sheetAtHand(app: App, drawn: number) {
  const { thickness, said } = app.state().spare;
  return html`
    <label class="spare-sheet">
      Sheet at hand, if it is not ${unbroken(mm(drawn))}
      <input
        type="text"
        size="7"
        placeholder=${mm(drawn)}
        .value=${thickness}
        aria-describedby="spare-said"
        aria-invalid=${said !== null && 'refused' in said ? 'true' : 'false'}
        @input=${(event: Event) => typeThickness(app, (event.target as HTMLInputElement).value)}
      />
    </label>
  `;
}

/** What is left of earlier jobs, for who would rather cut that than a new sheet. */
function piecesAtHand(app: App) {
  const { remnants } = app.state().spare;
  if (remnants.length === 0)
    return html`<button type="button" @click=${() => void pickRemnants(app)}>Cut it from a remnant</button>`;
  return html`
    <p>
      From ${remnants.map(({ name }) => name).join(', ')}
      <button type="button" class="quiet" @click=${() => forgetRemnants(app)}>Forget it</button>
    </p>
  `;
}

const entry = ({ level, message, hint = '' }: Finding) => html`
  <p class=${`level-${level}`}>${unbroken(message)} <span class="help">${unbroken(hint)}</span></p>
`;

/** What became of saving it. */
function outcome(app: App) {
  const { made, despite } = app.state().spare;
  if (made === null || 'refused' in made) return nothing;
  if (made.archive === null) {
    const rules = brokenRules(made.findings).filter((rule) => !despite.includes(rule));
    return rules.length === 0 ? nothing : html`<p>Not built, nothing written: <b>${rules.join(', ')}</b>.</p>`;
  }
  return html`
    <p class="level-good">Saved as ${made.archive.path}</p>
    ${made.summary.map((line) => html`<p class="help">${unbroken(line)}</p>`)}
  `;
}
