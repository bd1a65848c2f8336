import { html, nothing, type TemplateResult } from 'lit-html';
import type { PlanDocument } from '../../../index.js';
import { mm, plainNumber } from '../../../units/print.js';
import { unbroken } from '../../unbroken.js';

/** What is bought beside the sheets: the hardware, each thing once with the count for the whole camera. */
export const hardwareTable = ({ hardware }: PlanDocument) =>
  countedTable(
    ['What', 'For'],
    hardware.map((line) => ({
      count: line.count,
      what: html`${line.name}${line.size === '' ? '' : html`, ${unbroken(line.size)}`}`,
      more: unbroken(line.for),
    })),
  );

/** What is printed, or had printed: the parts of a plan that lie on no sheet. */
export function printedTable({ parts }: PlanDocument, sheetMaterials: readonly string[]) {
  const printed = parts.filter(({ material }) => !sheetMaterials.includes(material));
  if (printed.length === 0) return nothing;
  return countedTable(
    ['Printed', 'Size'],
    printed.map(({ name, count, material, width, height, thickness }) => ({
      count,
      what: html`${name}, ${material}`,
      more: `${plainNumber(width, 1)} × ${plainNumber(height, 1)} × ${unbroken(mm(thickness))}`,
    })),
  );
}

interface CountedRow {
  readonly count: number;
  readonly what: TemplateResult;
  readonly more: string;
}

const countedTable = ([what, more]: readonly [string, string], rows: readonly CountedRow[]) => html`
  <table class="figure-table">
    <thead>
      <tr>
        <th scope="col" class="number">Count</th>
        <th scope="col">${what}</th>
        <th scope="col">${more}</th>
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (row) => html`
          <tr>
            <td class="number">${row.count}</td>
            <th scope="row">${row.what}</th>
            <td>${row.more}</td>
          </tr>
        `,
      )}
    </tbody>
  </table>
`;
