import fc from 'fast-check';
import { vi } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { flatten } from '../../src/geometry/path.js';
import { apply, type Point3 } from '../../src/geometry/placement.js';
import type { Finding } from '../../src/model/finding.js';
import type { FlatPart, Placement } from '../../src/model/part.js';
import { type Planned, planCamera } from '../../src/pipeline.js';
import { nutEdge } from '../../src/proof/edges.js';
import { webLeast } from '../../src/proof/web.js';
import { designOf } from '../design/reading.js';
import { randomDesign } from '../random-design.js';

/** Hundreds of cameras take seconds; a busy machine must not be taken for a broken law. */
vi.setConfig({ testTimeout: 120_000 });

const known = new Map<string, Planned>();

/** A random text is planned once, however many laws look at it. */
function plannedFrom(text: string): Planned {
  const before = known.get(text);
  if (before) return before;
  const planned = planCamera(designOf(text));
  known.set(text, planned);
  return planned;
}

type Holds = (planned: Planned) => void;

/** Laws over random designs. Each file has its own seed and so its own cameras; a failure prints the design, shrunk. */
export function lawsFrom(seed: number) {
  /** Something that holds for every camera, buildable or not. */
  const law = (numRuns: number, holds: Holds): void =>
    fc.assert(
      fc.property(randomDesign, (text) => holds(plannedFrom(text))),
      { seed, numRuns },
    );
  /** The same with one more number drawn, from 0 to 1000. */
  const lawWith = (numRuns: number, holds: (planned: Planned, drawn: number) => void): void =>
    fc.assert(
      fc.property(randomDesign, fc.integer({ min: 0, max: 1000 }), (text, drawn) => holds(plannedFrom(text), drawn)),
      { seed, numRuns },
    );
  /** Something that holds for every camera against which nothing speaks; others are drawn until there are enough. */
  const lawOfSoundCameras = (numRuns: number, holds: Holds): void =>
    law(numRuns, (planned) => {
      const { design, build, findings } = planned;
      const said = () => [...findings, ...webLeast(design, build), ...nutEdge(design, build)];
      fc.pre(!findings.some(broken) && !said().some(broken));
      holds(planned);
    });
  return { law, lawWith, lawOfSoundCameras };
}

const broken = ({ level }: Finding): boolean => level === 'error';

export const withDesign = (design: Design, change: Partial<Design>): Planned => planCamera({ ...design, ...change });

export function flatPart({ parts }: Planned, id: string): FlatPart {
  const part = parts.find((p) => p.id === id);
  if (part?.kind !== 'flat') throw new Error(`${id} is no part cut from sheet`);
  return part;
}

export type Span = readonly [number, number];

/** From where to where a flat part reaches along each axis of the camera, closed: its outline's points, both faces. */
export function spanOf(
  planned: Planned,
  id: string,
  place = 0,
): { readonly x: Span; readonly y: Span; readonly z: Span } {
  const part = flatPart(planned, id);
  const { matrix } = part.placements[place] as Placement;
  const points = flatten(part.outline).flatMap(({ x, y }) =>
    [0, part.thickness].map((z) => apply(matrix, { x, y, z })),
  );
  const along = (axis: keyof Point3): Span => [
    Math.min(...points.map((p) => p[axis])),
    Math.max(...points.map((p) => p[axis])),
  ];
  return { x: along('x'), y: along('y'), z: along('z') };
}

/** A point of the camera in the part's own frame: the motion is rigid, so its turn is undone by its transpose. */
export function inOwnFrame({ matrix }: Placement, { x, y, z }: Point3): Point3 {
  const at = (i: number) => matrix[i] as number;
  const [dx, dy, dz] = [x - at(12), y - at(13), z - at(14)];
  const along = (column: number) => at(4 * column) * dx + at(4 * column + 1) * dy + at(4 * column + 2) * dz;
  return { x: along(0), y: along(1), z: along(2) };
}
