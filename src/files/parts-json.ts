import type { Build } from '../assembly/build.js';
import { roleOf } from '../assembly/holders.js';
import { countOf } from '../assembly/setups.js';
import { type ClosedPath, flatten, type Path } from '../geometry/path.js';
import type { Part } from '../model/part.js';

/** What a printed part turned out to be: its file and its true volume, mm³. */
export interface PrintedFile {
  readonly mesh: string;
  readonly volume: number;
}

/**
 * parts.json: every part with its finished shape and its place, so that others can check the assembly. What is used away from
 * the camera, such as a funnel, has no place in it.
 */
export function partsJson(build: Build, revision: string, prints: ReadonlyMap<string, PrintedFile>): string {
  const placed = build.parts.filter(({ placements }) => placements.length > 0);
  const known = new Set(placed.map((part) => part.id));
  const document = {
    schema: 1,
    revision,
    stations: build.stations.map(({ name, rear }) => ({ name, rear: exact(rear) })),
    gate: { z: exact(build.gate.z), width: exact(build.gate.width), height: exact(build.gate.height) },
    opening: { z: exact(build.opening.z), diameter: exact(build.opening.diameter) },
    parts: placed.map((part) => ({
      id: part.id,
      name: part.name,
      kind: part.kind,
      ...(roleOf(part) ? { role: roleOf(part) } : {}),
      count: countOf(part.placements, build.setups),
      ...shapeOf(part, prints),
      placements: part.placements.map(({ group, matrix, drawnFrom, when }) => ({
        group: typeof group === 'string' ? group : group.holder,
        matrix: matrix.map((v) => round(v, 1e9)),
        ...(drawnFrom === undefined ? {} : { drawnFrom: exact(drawnFrom) }),
        ...(when ? { when } : {}),
      })),
      joins: part.joins.filter((join) => known.has(join.to)),
    })),
    setups: build.setups,
  };
  return `${JSON.stringify(document).replaceAll('{"id":', '\n{"id":').replace('"setups":', '\n"setups":')}\n`;
}

function shapeOf(part: Part, prints: ReadonlyMap<string, PrintedFile>) {
  if (part.kind === 'printed') {
    const print = prints.get(part.id);
    return { material: part.material, ...(print ? { mesh: print.mesh, volume: round(print.volume, 1e3) } : {}) };
  }
  if (part.kind === 'flat')
    return {
      material: part.material,
      thickness: part.thickness,
      outline: loop(part.outline),
      holes: part.holes.map(loop),
      engraving: part.engraving.map(stroke),
    };
  if (part.shape.form === 'cylinder')
    return { cylinder: { diameter: exact(part.shape.diameter), length: exact(part.shape.length) } };
  return {
    thickness: exact(part.shape.thickness),
    outline: loop(part.shape.outline),
    holes: part.shape.holes.map(loop),
  };
}

const loop = (path: ClosedPath) => flatten(path).map(({ x, y }) => [exact(x), exact(y)]);

const stroke = ({ vertices, closed }: Path) => {
  const points = flatten(vertices, undefined, closed).map(({ x, y }) => [exact(x), exact(y)]);
  return closed ? [...points, points[0]] : points;
};

const round = (value: number, to: number): number => Math.round(value * to) / to || 0;
/** To a tenth of a micrometre: the grid of the sheets. */
const exact = (value: number): number => round(value, 1e4);
