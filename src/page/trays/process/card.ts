import { html, nothing } from 'lit-html';
import type { App } from '../../app.js';
import { saveCard, showCard } from './deeds.js';

/** The card to lie beside the trays, as it will be printed: it stays on white. */
export function cardView(app: App) {
  const { card } = app.state().process;
  const answer = card?.answer ?? null;
  return html`
    <section aria-labelledby="process-card-title">
      <h3 id="process-card-title">The card</h3>
      <p class="help">Marks, boxes to tick and lines for temperatures, to print and lay beside the tank.</p>
      ${card === null ? html`<button type="button" @click=${() => showCard(app)}>Draw the card</button>` : nothing}
      ${card !== null && answer === null ? html`<p role="status">Drawing the card…</p>` : nothing}
      ${answer === null ? nothing : 'refused' in answer ? html`<p class="level-error" role="alert">${answer.refused}</p>` : drawn(app, answer.svg)}
    </section>
  `;
}

const drawn = (app: App, picture: string) => html`
  <p class="deeds">
    <button type="button" @click=${() => saveCard(app, 'svg')}>Save as SVG</button>
    <button type="button" @click=${() => saveCard(app, 'pdf')}>Save as PDF</button>
  </p>
  <div class="process-wide" role="region" aria-label="The card as it will be printed" tabindex="0">
    <img alt="Step sheet: for each step the marks at which to pour and drain" src=${`data:image/svg+xml,${encodeURIComponent(picture)}`} />
  </div>
`;
