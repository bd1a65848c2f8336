import { html, nothing } from 'lit-html';
import { mm } from '../../../units/print.js';
import type { App } from '../../app.js';
import { unbroken } from '../../unbroken.js';
import { saveSpacer, typeHolder } from './holder-deeds.js';
import type { HolderTyped } from './holder-state.js';

/** A holder that turned up later: its spacer, its index line, and what the camera reaches with it. */
export function oneMoreHolder(app: App) {
  const { oneMore, shown } = app.state();
  const { made } = oneMore;
  const answer = made !== null && 'summary' in made ? made : null;
  const sheet = shown?.plan.parts.find(({ id }) => id === 'F1')?.thickness ?? null;
  return html`
    <form
      class="one-more"
      aria-labelledby="one-more-title"
      @submit=${(event: Event) => {
        event.preventDefault();
        saveSpacer(app);
      }}
    >
      <h3 id="one-more-title">One more holder</h3>
      <p class="help">
        A holder that turned up later: the spacer that puts glass and film in one plane, where its index line is scribed,
        and how far the camera focuses with it. The camera stays as it is.
      </p>
      ${field(app, 'depth', 'From its face to the film', '12.5 mm')} ${field(app, 'name', 'What you call it', 'holder')}
      ${field(app, 'thickness', 'Sheet at hand, if it is another', sheet === null ? '' : mm(sheet))}
      <div id="one-more-said" role="status">
        ${made !== null && 'refused' in made ? html`<p class="level-error">${unbroken(made.refused)}</p>` : nothing}
        ${answer?.findings.map(
          ({ level, message, hint = '' }) =>
            html`<p class=${`level-${level}`}>${unbroken(message)} <span class="help">${unbroken(hint)}</span></p>`,
        )}
        ${answer?.summary.map((line) => html`<p>${unbroken(line)}</p>`)}
      </div>
      ${answer === null || answer.archive === null ? nothing : html`<button type="submit">Save ${answer.archive.path}</button>`}
    </form>
  `;
}

const field = (app: App, key: keyof HolderTyped, label: string, placeholder: string) => html`
  <label>
    ${label}
    <input
      type="text"
      size="12"
      placeholder=${placeholder}
      .value=${app.state().oneMore[key]}
      aria-describedby="one-more-said"
      @input=${(event: Event) => typeHolder(app, { [key]: (event.target as HTMLInputElement).value })}
    />
  </label>
`;
