import { html, nothing } from 'lit-html';
import { Directive, type DirectiveParameters, directive, type ElementPart } from 'lit-html/directive.js';
import { ifDefined } from 'lit-html/directives/if-defined.js';
import type { Problem } from '../../index.js';
import type { App } from '../app.js';
import { DESIGN_TEXT } from './go-to.js';
import { pathAndWords } from './said.js';

/** What is typed is read when the keys have rested so long. */
const REST_MS = 250;

/** Puts what was typed in place of the design, without waiting for the rest. */
export function writeTyped(app: App): void {
  const { typed } = app.state().designView;
  if (typed === null) return;
  app.change(({ designView }) => ({ designView: { ...designView, typed: null } }));
  app.write(typed);
}

function type(app: App, shown: string): void {
  // a text area knows one kind of line end; the file keeps its own
  const typed = app.state().design.text.includes('\r\n') ? shown.replaceAll('\n', '\r\n') : shown;
  app.change(({ designView }) => ({ designView: { ...designView, typed } }));
  setTimeout(() => {
    if (app.state().designView.typed === typed) writeTyped(app);
  }, REST_MS);
}

/** The text of the design file, its lines numbered, what is wrong marked in it and told beneath. */
export function textView(app: App) {
  const { design, reading, designView } = app.state();
  const text = (designView.typed ?? design.text).replaceAll('\r\n', '\n');
  const problems = reading?.problems ?? [];
  const lines = text.split('\n');
  // marks of an earlier text would stand in the wrong places
  const marked = reading?.text === design.text && designView.typed === null ? problems : [];
  const wrongLines = new Set(marked.map(({ line }) => line));
  return html`
    <div class="design-paper">
      <pre class="design-lines" aria-hidden="true">${lines.map((_, i) =>
        wrongLines.has(i + 1) ? html`<b>✕ ${i + 1}</b>\n` : `${i + 1}\n`,
      )}</pre>
      <div class="design-sheet">
        <pre class="design-marks" aria-hidden="true">${lines.map((line, i) => [markedLine(line, at(marked, i + 1)), '\n'])}</pre>
        <textarea
          id=${DESIGN_TEXT}
          aria-label="Text of the design"
          aria-describedby=${ifDefined(problems.length > 0 ? 'design-problems' : undefined)}
          aria-invalid=${ifDefined(problems.length > 0 ? 'true' : undefined)}
          spellcheck="false"
          autocomplete="off"
          autocapitalize="off"
          wrap="off"
          rows=${lines.length}
          cols=${Math.max(...lines.map(({ length }) => length)) + 2}
          @input=${(event: Event) => type(app, (event.currentTarget as HTMLTextAreaElement).value)}
          @blur=${() => writeTyped(app)}
          ${holding(text)}
        ></textarea>
      </div>
    </div>
    <div id="design-problems" role="status">
      ${
        problems.length === 0
          ? nothing
          : html`
              <ul class="design-said">
                ${problems.map((problem) => html`<li class="design-wrong">${pathAndWords(app, problem)}</li>`)}
              </ul>
            `
      }
    </div>
  `;
}

const at = (problems: readonly Problem[], line: number): Problem | undefined =>
  problems.find((problem) => problem.line === line);

/** The line once more behind the text, for nothing but the stroke under the token at fault. */
function markedLine(line: string, problem: Problem | undefined) {
  if (problem === undefined) return '';
  const from = problem.column - 1;
  const to = from + Math.max(1, problem.length);
  return html`${line.slice(0, from)}<mark>${line.slice(from, to).padEnd(to - from)}</mark>`;
}

/** Keeps a text area at a text. Where another text comes from elsewhere, only what differs is replaced: the caret stays with it. */
class Holding extends Directive {
  render(_text: string) {
    return nothing;
  }

  override update({ element }: ElementPart, [text]: DirectiveParameters<this>) {
    const area = element as HTMLTextAreaElement; // the directive stands on no other element
    if (area.value === text) return nothing;
    const [from, to] = differing(area.value, text);
    area.setRangeText(text.slice(from, text.length - (area.value.length - to)), from, to, 'end');
    return nothing;
  }
}

const holding = directive(Holding);

/** Where the old text differs from the new: from the first character that is another to the last. */
function differing(before: string, after: string): readonly [from: number, to: number] {
  const most = Math.min(before.length, after.length);
  let from = 0;
  while (from < most && before[from] === after[from]) from += 1;
  let end = 0;
  while (end < most - from && before.at(-1 - end) === after.at(-1 - end)) end += 1;
  return [from, before.length - end];
}
