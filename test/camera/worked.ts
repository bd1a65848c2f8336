import type { Build } from '../../src/assembly/build.js';
import type { Camera } from '../../src/camera/camera.js';
import { checkWhole } from '../../src/camera/check-whole.js';
import type { Design } from '../../src/design/design.js';
import type { ClosedPath } from '../../src/geometry/path.js';
import { compose, shift } from '../../src/geometry/placement.js';
import type { Finding } from '../../src/model/finding.js';
import type { Group } from '../../src/model/part.js';
import { type Planned, planCamera } from '../../src/pipeline.js';
import { designOf } from '../design/reading.js';
import { heron as heronText } from '../design/worked-designs.js';

/** The first of the two cameras worked out in the description; its figures stand beside each use. */
export const heron: Planned = planCamera(designOf(heronText));

/** What the rules that look at no wood say under one name, with some of the design or the camera put differently. */
export const toldOfWhole = (
  rule: string,
  { design = heron.design, camera = heron.camera }: Partial<{ design: Design; camera: Camera }>,
): readonly Finding[] => checkWhole(design, camera).filter((finding) => finding.rule === rule);

/** Heron with some shared lengths put differently. */
export const withRod = (lengths: Partial<Camera['settingOut']>): Camera => ({
  ...heron.camera,
  settingOut: { ...heron.camera.settingOut, ...lengths },
});

/** A shared length with another value. */
export const valued = <T extends { readonly value: number }>(length: T, value: number): T => ({ ...length, value });

interface Motion {
  readonly x?: number;
  readonly y?: number;
  readonly z?: number;
}

/** The build with one part moved from its place. */
export const moving = (id: string, { x = 0, y = 0, z = 0 }: Motion, build: Build = heron.build): Build =>
  changedPart(build, id, (part) => ({
    ...part,
    placements: part.placements.map((place) => ({ ...place, matrix: compose(shift(x, y, z), place.matrix) })),
  }));

/** The build with a flat part cut to another outline. */
export const recut = (id: string, outline: ClosedPath): Build =>
  changedPart(heron.build, id, (part) => {
    if (part.kind !== 'flat') throw new Error(`${id} is not cut from sheet`);
    return { ...part, outline };
  });

/** The build with a part that moves with another group. */
export const regrouped = (id: string, group: Group): Build =>
  changedPart(heron.build, id, (part) => ({
    ...part,
    placements: part.placements.map((place) => ({ ...place, group })),
  }));

export const without = (...ids: readonly string[]): Build => ({
  ...heron.build,
  parts: heron.build.parts.filter(({ id }) => !ids.includes(id)),
});

function changedPart(
  build: Build,
  id: string,
  change: (part: Build['parts'][number]) => Build['parts'][number],
): Build {
  if (!build.parts.some((part) => part.id === id)) throw new Error(`there is no ${id} in this build`);
  return { ...build, parts: build.parts.map((part) => (part.id === id ? change(part) : part)) };
}
