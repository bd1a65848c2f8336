import type { Build } from '../assembly/build.js';
import { around, type PlacedBox, slidBox } from '../assembly/extent.js';
import { placedOf } from '../assembly/placed-parts.js';
import { stands } from '../assembly/setups.js';
import { pushedOnFrame } from '../model/assembly-steps.js';
import type { Part } from '../model/part.js';
import { claim, narrowest, widest } from './claim.js';
import { type Figure, type Formula, formula, measured, type Reason, told } from './figure.js';
import { atLeastOne } from './given-figures.js';

/** Outside sizes over everything but the lens, the holders, and what is pushed on ahead of the lens: these come off. */
export interface Outside {
  readonly width: Figure;
  readonly height: Figure;
  readonly depthClosed: Figure;
  readonly depthOpen: Figure;
}

interface OwnBoxes {
  readonly part: Part;
  readonly boxes: readonly PlacedBox[];
}

type Axis = 'x' | 'y' | 'z';

export function outsideOf(build: Build, travel: Figure): Outside {
  const [first] = build.setups;
  const owned = [...placedOf(build).byId.values()]
    .filter(({ part }) => (part.kind !== 'bought' || part.role === undefined) && !pushedOnFrame.includes(part.id))
    .map(({ part, boxes }): OwnBoxes => {
      const standing = boxes.filter(({ placement }) => first && stands(placement, first));
      return { part, boxes: standing };
    });
  const boxes = owned.flatMap((own) => own.boxes);
  const near = around(boxes.map((box) => slidBox(box, 0)));
  const far = around(boxes.map((box) => slidBox(box, travel.value)));
  const across = (what: string, axis: Axis, [from, to]: readonly [number, number], rear: number) =>
    told(axis.toUpperCase(), what, to - from, () => spanOf(owned, axis, rear));
  return {
    width: across('width over all', 'x', near.x, 0),
    height: across('height over all', 'y', near.y, 0),
    depthClosed: across('depth closed, over everything but the lens', 'z', near.z, 0),
    depthOpen: across('depth drawn out, over everything but the lens', 'z', far.z, travel.value),
  };
}

/** From the first to the last part along an axis, and which parts these are. */
function spanOf(owned: readonly OwnBoxes[], axis: Axis, rear: number): Formula {
  const ends = (end: 0 | 1): readonly [Reason, ...Reason[]] =>
    atLeastOne(
      owned
        .filter(({ boxes }) => boxes.length > 0)
        .map(({ part, boxes }) => {
          const all = around(boxes.map((box) => slidBox(box, rear)));
          const value = measured(`${axis}_p`, `${axis} of its end`, all[axis][end], PLACED);
          return claim(`the ${part.name} (${part.id})`, formula`${value}`, PLACED);
        }),
    );
  const low = narrowest(`${axis}_1`, `where the first part begins, ${axis}`, ends(0));
  const high = widest(`${axis}_2`, `where the last part ends, ${axis}`, ends(1));
  return formula`${high} - ${low}`;
}

const PLACED = 'measured on the placed parts';
