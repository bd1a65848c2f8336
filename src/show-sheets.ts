import { cutting, cuttingAtOnce, FIRE } from './cutting.js';
import { type Labels, sheetsShown } from './files/sheets-shown.js';
import type { ShownSheets } from './model/shown-sheets.js';
import type { Planned } from './pipeline.js';
import { EFFORT } from './sheets/lay-out.js';

/**
 * The sheets as they are first found, for who has just changed a number and waits.
 *
 * @param known what came with the sheets of the last camera
 */
export function sheetsAtOnce(
  planned: Planned,
  known: Labels = new Map(),
): { readonly sheets: ShownSheets; readonly labels: Labels } {
  const { cut, pieces } = cuttingAtOnce(planned);
  const { laser } = planned.design;
  const { shown, labels } = sheetsShown({ layout: 'at once', cut, pieces, laser, labels: known });
  return { sheets: { ...shown, findings: cut.findings, caution: FIRE }, labels };
}

/** The sheets as `build` writes them: that takes seconds. */
export function sheetsSought(planned: Planned, onProgress: (done: number) => void): ShownSheets {
  const { cut, pieces, findings } = cutting(planned, planned.parts, { effort: EFFORT, onProgress });
  const { shown } = sheetsShown({ layout: 'sought', cut, pieces, laser: planned.design.laser });
  return { ...shown, findings, caution: FIRE };
}
