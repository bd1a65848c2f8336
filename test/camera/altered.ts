import type { Build } from '../../src/assembly/build.js';
import type { ClosedPath } from '../../src/geometry/path.js';
import { reversed } from '../../src/geometry/path.js';
import { compose, shift } from '../../src/geometry/placement.js';
import type { FlatPart, Part, Placement } from '../../src/model/part.js';

/** Faults planted in a build: one part put, cut or counted differently, all others as they were. */

/** The build with one part changed. */
export function altered(build: Build, id: string, change: (part: Part) => Part): Build {
  if (!build.parts.some((part) => part.id === id)) throw new Error(`there is no ${id} in this build`);
  return { ...build, parts: build.parts.map((part) => (part.id === id ? change(part) : part)) };
}

/** A part cut from sheet, to other lines; loops are drawn in the part's own frame. */
export const cutTo = (build: Build, id: string, change: (part: FlatPart) => Partial<FlatPart>): Build =>
  altered(build, id, (part) => {
    if (part.kind !== 'flat') throw new Error(`${id} is not cut from sheet`);
    return { ...part, ...change(part) };
  });

/** Holes run clockwise. */
export const hole = (loop: ClosedPath): ClosedPath => reversed(loop);

/** A part whose places are put elsewhere, each by itself. */
export const replaced = (
  build: Build,
  id: string,
  change: (places: readonly Placement[]) => readonly Placement[],
): Build => altered(build, id, (part) => ({ ...part, placements: change(part.placements) }));

/** Each place shifted away from the middle plane by so much. */
export const spreadAcross = (build: Build, id: string, by: number): Build =>
  replaced(build, id, (places) =>
    places.map((place) => ({
      ...place,
      matrix: compose(shift(Math.sign(place.matrix[12] ?? 0) * by, 0, 0), place.matrix),
    })),
  );

/** A bought plate with another outline or thickness. */
export const bought = (
  build: Build,
  id: string,
  change: Partial<{ outline: ClosedPath; thickness: number; diameter: number; length: number }>,
): Build =>
  altered(build, id, (part) => {
    if (part.kind !== 'bought') throw new Error(`${id} is not bought`);
    return { ...part, shape: { ...part.shape, ...change } };
  });

export const without = (build: Build, ...ids: readonly string[]): Build => ({
  ...build,
  parts: build.parts.filter(({ id }) => !ids.includes(id)),
});
