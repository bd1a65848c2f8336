import { loadBench, type Problem, parseMagnification, printProblem } from '../../index.js';
import { remnantsIn } from './kept.js';
import type { BenchOpened, CellFault, LensAnswer } from './lens-asked.js';
import type { Given } from './questions.js';

/** No file of this name is written: it tells the core that what it is given is YAML. */
const SHEET = 'readings.yaml';

/** A lens from the cells of its readings, and into a design where one is given. */
export async function lens({ sheet, at, design }: Given<'lens'>): Promise<LensAnswer> {
  const asked = magnificationsIn(at);
  if ('path' in asked) return { faults: [asked] };
  const bench = await loadBench();
  const taken = bench.takeLens(
    { file: SHEET, text: bench.benchYaml(sheet) },
    { at: asked, design: design === null ? null : { ...design, find: remnantsIn(design) } },
  );
  if ('problems' in taken) return { faults: taken.problems.map(faultOf) };
  return {
    faults: null,
    fitted: { lens: taken.lens, words: bench.lensWords(taken.lens), page: taken.page },
    written: taken.design,
  };
}

export async function benchOpen({ file, text }: Given<'bench-open'>): Promise<BenchOpened> {
  const { benchSheet } = await loadBench();
  const read = benchSheet(text, file);
  return 'sheet' in read ? read : { trouble: read.problems.map(printProblem).join('\n\n') };
}

/** The file of a sheet, or of the drawing of what its readings leave over. */
export async function benchSave({ sheet, at, as }: Given<'bench-save'>): Promise<string> {
  const { benchCsv, benchYaml, takeLens, pageSvg } = await loadBench();
  if (as !== 'svg') return as === 'csv' ? benchCsv(sheet) : benchYaml(sheet);
  const asked = magnificationsIn(at);
  const taken = takeLens({ file: SHEET, text: benchYaml(sheet) }, { at: 'path' in asked ? [] : asked, design: null });
  return 'problems' in taken ? '' : pageSvg(taken.page);
}

/** Magnifications between commas. */
function magnificationsIn(at: string): readonly number[] | CellFault {
  const values: number[] = [];
  for (const words of at.split(/[,;]/).filter((word) => word.trim() !== '')) {
    const reading = parseMagnification(words);
    if ('reason' in reading) return { path: 'at', what: reading.reason, accepted: reading.accepted };
    values.push(reading.value);
  }
  return values;
}

/** A problem of a design stands in another file: it is told with its place. */
const faultOf = (problem: Problem): CellFault =>
  problem.file === SHEET
    ? { path: problem.path, what: problem.what, accepted: problem.accepted }
    : { path: '', what: printProblem(problem), accepted: '' };
