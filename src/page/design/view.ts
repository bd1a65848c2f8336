import { html } from 'lit-html';
import type { App } from '../app.js';
import { filesView } from './files.js';
import { formView } from './form.js';
import { newDesignDialog } from './new-design.js';
import { textView, writeTyped } from './text.js';

/** The design, as a form or as the text of its file; both always say the same, for the text is all there is. */
export function designView(app: App) {
  const { as } = app.state().designView;
  const turn = (to: 'form' | 'text') => () => {
    writeTyped(app);
    app.change(({ designView }) => ({ designView: { ...designView, as: to } }));
  };
  return html`
    <div class="design-head">
      ${filesView(app)}
      <div class="design-as" role="group" aria-label="The design as">
        <button type="button" aria-pressed=${String(as === 'form')} @click=${turn('form')}>Form</button>
        <button type="button" aria-pressed=${String(as === 'text')} @click=${turn('text')}>Text</button>
      </div>
    </div>
    ${as === 'form' ? formView(app) : textView(app)}
    ${newDesignDialog(app)}
  `;
}
