import { html, nothing } from 'lit-html';
import type { Finding, Problem } from '../../index.js';
import type { App } from '../app.js';
import { unbroken } from '../unbroken.js';
import { goToLine } from './go-to.js';
import { withCode } from './with-code.js';

const LEVELS = {
  error: { sign: '✕', word: 'Will not do' },
  warning: { sign: '▲', word: 'Take care' },
  note: { sign: '○', word: 'Note' },
} as const;

interface Said {
  readonly id: string;
  readonly problems: readonly Problem[];
  readonly findings: readonly Finding[];
}

/** What is the matter; what more there is to say of it is told once, in the tray of the findings. */
const firstSentence = (message: string): string => /^.*?[.!?](?=\s)/.exec(message)?.[0] ?? message;

/** What is said of a key, beneath it. */
export const said = (app: App, { id, problems, findings }: Said) =>
  problems.length + findings.length === 0
    ? nothing
    : html`
        <ul class="design-said" id=${id}>
          ${problems.map((problem) => html`<li class="design-wrong">${problemWords(app, problem)}</li>`)}
          ${findings.map(
            ({ level, message, hint }) => html`
              <li class=${`design-${level}`}>
                <span aria-hidden="true">${LEVELS[level].sign}</span> <b>${LEVELS[level].word}:</b>
                ${unbroken(firstSentence(message))} ${unbroken(hint ?? '')}
                ${
                  firstSentence(message) === message
                    ? nothing
                    : html`<button type="button" class="design-way" @click=${() => app.turnTo('findings')}>
                        More under Findings
                      </button>`
                }
              </li>
            `,
          )}
        </ul>
      `;

/** What is wrong, what would be taken, and the way to its line. */
export const problemWords = (app: App, problem: Problem) => html`
  <span aria-hidden="true">✕</span> <b>Not taken:</b> ${withCode(problem.what)} ${withCode(problem.accepted)}
  <button type="button" class="design-way" @click=${() => goToLine(app, problem)}>
    ${app.state().designView.as === 'text' ? `line ${problem.line}, column ${problem.column}` : 'See it in the text'}
  </button>
`;

/** The same, where it does not stand at its key. */
export const pathAndWords = (app: App, problem: Problem) => html`
  ${problem.path === '' ? nothing : html`<code>${problem.path}</code>`} ${problemWords(app, problem)}
`;
