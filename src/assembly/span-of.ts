import type { Build, Setup } from './build.js';
import { around, type Extent, slidBox } from './extent.js';
import { placedIn } from './placed-parts.js';
import { stands } from './setups.js';

/** Where the camera is looked at: how far it is drawn, and in which set-up. */
export interface When {
  /** How far the moving groups have slid. */
  readonly rear?: number;
  /** Left out: in all set-ups. */
  readonly setup?: Setup;
}

/** The upright box round all placements of a part; a part that is not in the build is a mistake of ours. */
export function spanOf(build: Build, id: string, when: When = {}): Extent {
  const all = spansOf(build, id, when);
  if (all.length === 0) throw new Error(`there is no ${id} in this build`);
  return around(all);
}

/** The boxes of a part's placements, one each; none where the part is not made. */
export function spansOf(build: Build, id: string, { rear = 0, setup }: When = {}): readonly Extent[] {
  const boxes = placedIn(build, id)?.boxes ?? [];
  const here = setup === undefined ? boxes : boxes.filter(({ placement }) => stands(placement, setup));
  return here.map((box) => (rear === 0 ? box.extent : slidBox(box, rear)));
}

/** Air between two upright boxes along the axis that parts them most; below 0 where they overlap. */
export const airBetween = (a: Extent, b: Extent): number => Math.max(apart(a.x, b.x), apart(a.y, b.y), apart(a.z, b.z));

type Stretch = readonly [from: number, to: number];

const apart = (a: Stretch, b: Stretch): number => Math.max(b[0] - a[1], a[0] - b[1]);
