import { html, nothing } from 'lit-html';
import type { Clearance, Direction, Layer, ProofDocument } from '../../../model/proof.js';
import type { RegisterBudget, RegisterSpread } from '../../../model/register-budget.js';
import { mm, plainNumber, tenth } from '../../../units/print.js';

/** What was looked at, in figures, so that a builder can tell what a silent check stands for. */
export const provenView = (document: ProofDocument) => html`
  <h3>What was proven</h3>
  ${together(document)}
  <details class="proven">
    <summary>Air between what moves</summary>
    ${clearances(document.clearances)}
  </details>
  ${
    document.register.length === 0
      ? nothing
      : html`<details class="proven">
          <summary>Sharp on the glass, sharp on the film</summary>
          ${register(document.register)}
        </details>`
  }
  ${
    document.joints.length === 0
      ? nothing
      : html`<details class="proven">
          <summary>Ways in for light, each shut</summary>
          ${joints(document.joints)}
        </details>`
  }
`;

function together({ pieces, pairs, setups, assembly }: ProofDocument) {
  const brought = new Set(assembly.flatMap((move) => move.pieces)).size;
  const steps = new Set(assembly.map(({ step }) => step)).size;
  return html`
    <p>
      ${pieces} pieces were put together in ${setups.length} set-ups. ${pairs} pairs of them come near each other: each was
      looked at over the whole way of the slide. ${brought} pieces were brought in along straight lines, past those already
      there, in ${steps} steps.
    </p>
  `;
}

const clearances = (air: readonly Clearance[]) => html`
  <table class="figure-table">
    <thead>
      <tr>
        <th scope="col">What moves</th>
        <th scope="col">towards</th>
        <th scope="col" class="number">air</th>
        <th scope="col">meets</th>
      </tr>
    </thead>
    <tbody>
      ${air.map(
        ({ between: [, inner], direction, air: room, parts }) => html`
          <tr>
            <th scope="row">${MOVES[inner]}</th>
            <td>${WAYS[direction]}</td>
            <td class="number">${room === null ? 'none met' : mm(Math.round(room * 100) / 100)}</td>
            <td>${parts === null ? '' : parts[0]}</td>
          </tr>
        `,
      )}
    </tbody>
  </table>
`;

const MOVES: Readonly<Record<Layer, string>> = {
  front: 'Front',
  rear: 'Slide in the front',
  back: 'Back in the slide',
  seated: 'Glass and holders in the well',
};

const WAYS: Readonly<Record<Direction, string>> = { left: 'the left', right: 'the right', up: 'above', down: 'below' };

const register = (budgets: readonly RegisterBudget[]) => html`
  <p class="help">
    How far glass and film may stand apart in 19 of 20 cameras; + where the glass stands behind the film.
  </p>
  <table class="figure-table">
    <thead>
      <tr>
        <th scope="col">Holder</th>
        <th scope="col" class="number">allowed</th>
        <th scope="col" class="number">cut and glued</th>
        <th scope="col" class="number">measured, shimmed</th>
      </tr>
    </thead>
    <tbody>
      ${budgets.map(
        (budget) => html`
          <tr>
            <th scope="row">${budget.holder}${budget.at === 'edge' ? ', at the corner' : ''}</th>
            <td class="number">±${plainNumber(budget.tolerance, 2)} mm</td>
            <td class="number">${reach(budget, budget.tolerance)}</td>
            <td class="number">${reach(budget.measured, budget.tolerance)}</td>
          </tr>
        `,
      )}
    </tbody>
  </table>
  <ul class="proven-cures">
    ${[...new Set(budgets.map(({ toHalve }) => toHalve))].map((cure) => html`<li>To halve it: ${lower(cure)}</li>`)}
  </ul>
`;

/** A spread on two lines, and whether it keeps what is allowed: in words, not by colour. */
function reach({ interval95: [low, high] }: RegisterSpread, tolerance: number) {
  const fits = Math.max(Math.abs(low), Math.abs(high)) <= tolerance + ROUNDING;
  return html`${signed(low)} to ${signed(high)} <br />${fits ? 'fits' : html`<b>too far</b>`}`;
}

const ROUNDING = 1e-6;

/** Hundredths: finer than glue is spread. */
function signed(length: number): string {
  const text = plainNumber(length, 2);
  return text === '0' ? text : text.startsWith('-') ? text.replace('-', '−') : `+${text}`;
}

const lower = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;

const joints = (ways: ProofDocument['joints']) => html`
  <table class="figure-table">
    <thead>
      <tr>
        <th scope="col">Way in</th>
        <th scope="col" class="number">turns</th>
        <th scope="col" class="number">land</th>
        <th scope="col" class="number">least</th>
      </tr>
    </thead>
    <tbody>
      ${ways.map(
        ({ joint, turns, felt, land, needed }) => html`
          <tr>
            <th scope="row">${joint}</th>
            <td class="number">${felt > 1 ? `${felt} felts` : turns}</td>
            <td class="number">${mm(tenth(land))}</td>
            <td class="number">${needed.land > 0 ? mm(needed.land) : ''}</td>
          </tr>
        `,
      )}
    </tbody>
  </table>
`;
