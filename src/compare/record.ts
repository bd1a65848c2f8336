import type { Build } from '../assembly/build.js';
import { countOf } from '../assembly/setups.js';
import { flatten } from '../geometry/path.js';
import type { BuiltCamera, BuiltPart, Edges } from '../model/built-camera.js';
import type { FlatPart } from '../model/part.js';
import type { PlanDocument } from '../model/plan.js';

/** A camera that is only planned, as if it had been built. */
export function recordOf(plan: PlanDocument, build: Pick<Build, 'parts' | 'setups'>): BuiltCamera {
  const made = new Map(build.parts.map((part) => [part.id, part]));
  return {
    plan,
    parts: plan.parts.map(({ id, name, count, material, thickness, shape, engraved }): BuiltPart => {
      const part = made.get(id);
      return {
        id,
        name,
        count: part ? countOf(part.placements, build.setups) : count,
        material,
        thickness,
        shape,
        engraved,
        edges: part?.kind === 'flat' ? edgesOf(part) : null,
        joins: part?.joins ?? [],
      };
    }),
  };
}

const edgesOf = ({ outline, holes }: FlatPart): Edges => ({
  outline: flatten(outline),
  holes: holes.map((hole) => flatten(hole)),
});
