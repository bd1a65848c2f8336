import { html, nothing } from 'lit-html';
import type { App } from '../../app.js';
import { wideBox } from '../../wide-box.js';
import { saveCard, showCard } from './deeds.js';
import { inLabels } from './fields.js';

/** The card that rides with the camera, as it will be printed: it stays on white. */
export function cardView(app: App) {
  const { card } = app.state().sitting;
  const answer = card?.answer ?? null;
  return html`
    <section class="sitting-card" aria-labelledby="sitting-card-title">
      <h3 id="sitting-card-title">The card</h3>
      <p class="sitting-how">A row for each distance that the design has under sitting.distances, or one for the sitter of today; to print and keep in the
        camera's lid.</p>
      ${card === null ? html`<button type="button" @click=${() => showCard(app)}>Draw the card</button>` : nothing}
      ${card !== null && answer === null ? html`<p role="status">Drawing the card…</p>` : nothing}
      ${answer === null ? nothing : 'refused' in answer ? html`<p class="sitting-refused" role="alert">${inLabels(answer.refused)}</p>` : drawn(app, answer.svg)}
    </section>
  `;
}

const drawn = (app: App, picture: string) => html`
  <p class="sitting-deeds">
    <button type="button" @click=${() => saveCard(app, 'svg')}>Save as SVG</button>
    <button type="button" @click=${() => saveCard(app, 'pdf')}>Save as PDF</button>
  </p>
  ${wideBox('sitting-card-box', 'The card as it will be printed', html`<img alt="Exposure card: for each distance the scale and the setting" src=${`data:image/svg+xml,${encodeURIComponent(picture)}`} />`)}
`;
