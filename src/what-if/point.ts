import { cuttingAtOnce } from '../cutting.js';
import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';
import { rules } from '../model/rules.js';
import type { WhatIfCamera, WhatIfPoint } from '../model/what-if.js';
import { planCamera, planOf } from '../pipeline.js';

interface PointGiven {
  /** Of the number that is tried. */
  readonly value: number;
  /** Sheets take longer than all the rest. */
  readonly sheets: 'counted' | 'left out';
}

/** What becomes of the camera of a design in which one number was changed. */
export function whatIfPoint(design: Design, { value, sheets }: PointGiven): WhatIfPoint {
  const planned = planCamera(design);
  if (!planned.drawable) {
    const [worst] = planned.findings;
    return { kind: 'none', value, why: worst?.message ?? 'There is no room for the boxes.' };
  }
  const { slide, camera } = planOf(planned);
  const cut = sheets === 'counted' ? cuttingAtOnce(planned).cut : null;
  return {
    kind: 'camera',
    value,
    reach: slide.reachableMagnification,
    mass: camera.mass,
    sheets: cut === null ? null : cut.sheets.length,
    broken: errorsOf([...planned.findings, ...(cut?.findings ?? [])]),
  };
}

function errorsOf(findings: readonly Finding[]): WhatIfCamera['broken'] {
  const broken = new Set(findings.filter(({ level }) => level === 'error').map(({ rule }) => rule));
  return rules.filter(({ id }) => broken.has(id)).map(({ id, protects }) => ({ rule: id, protects }));
}
