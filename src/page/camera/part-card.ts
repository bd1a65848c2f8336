import { html } from 'lit-html';
import type { App } from '../app.js';
import { goToPart } from '../go-to-part.js';
import { markOf } from '../mark-of.js';
import { partAlone } from '../spare/view.js';
import { unbroken } from '../unbroken.js';
import type { PanelNow } from './panel-now.js';
import { joinWords, materialWords, partWords, sizeWords } from './words.js';

/** What there is to know of the part that is chosen. */
export function partCard(app: App, { solids }: PanelNow) {
  const { chosen } = app.pose.now();
  const body = solids.bodies.find(({ part }) => part === chosen);
  if (body === undefined) return '';
  const step = solids.pieces.find(({ part }) => part === chosen)?.step ?? null;
  const title = solids.steps.find(({ number }) => number === step)?.title;
  const choose = (part: string) => app.pose.change({ chosen: part });
  const sheets = sheetsOf(app, body.part);
  const joints = joinWords(body, solids.bodies).filter(({ to }) => to.length > 0);
  return html`
    <section class="camera-card" aria-label=${`Part ${partWords(body)}`}>
      <button type="button" class="camera-card-away" aria-label="Let the part go" @click=${() => app.pose.change({ chosen: null })}>
        ×
      </button>
      <h3>${unbroken(partWords(body))}</h3>
      <dl>
        <dt>Size</dt>
        <dd class="number">${unbroken(sizeWords(body))}</dd>
        <dt>Of</dt>
        <dd>${unbroken(materialWords(body))}</dd>
        <dt>Pieces</dt>
        <dd class="number">${body.count}</dd>
        ${
          joints.length === 0
            ? ''
            : html`<dt>Joints</dt>
              <dd>
                ${joints.map(
                  ({ how, to }) => html`
                    <p>
                      ${how}
                      ${to.map(
                        (other) => html`
                          <button type="button" class="camera-link" title=${other.name} @click=${() => choose(other.part)}>${
                            partWords(other).startsWith(other.part) ? other.part : other.name
                          }</button>
                        `,
                      )}
                    </p>
                  `,
                )}
              </dd>`
        }
        ${sheets === '' ? '' : html`<dt>Cut from</dt> <dd>${sheets}</dd>`}
        ${title === undefined ? '' : html`<dt>Step ${step}</dt> <dd>${unbroken(title)}</dd>`}
      </dl>
      ${
        body.thickness === null
          ? ''
          : html`<button type="button" @click=${() => goToPart(app, body.part)}>Where it lies on the sheets</button>`
      }
      ${partAlone(app, body)}
    </section>
  `;
}

/** The sheets on which its pieces lie, each with how many where there are several; none while those of this camera are not laid out. */
function sheetsOf(app: App, part: string): string {
  const { shown, sheets } = app.state();
  if (shown === null || sheets.of !== markOf(shown.of)) return '';
  const lying = sheets.places.filter((place) => place.part === part).map(({ sheet }) => sheet);
  return [...new Set(lying)]
    .map((sheet) => {
      const count = lying.filter((one) => one === sheet).length;
      return count === 1 ? sheet : `${sheet} (${count})`;
    })
    .join(', ');
}
