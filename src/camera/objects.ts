import type { Build } from '../assembly/build.js';
import type { StepWords } from '../model/build-step.js';
import type { Finding } from '../model/finding.js';
import type { Hardware, Part } from '../model/part.js';
import { accessoryFrame } from './accessory-frame/index.js';
import { back } from './back/index.js';
import { baffle } from './baffle/index.js';
import type { CameraObjects } from './camera-objects.js';
import { cap } from './cap/index.js';
import { cords } from './cords/index.js';
import { dropShutter } from './drop-shutter/index.js';
import { filterHolder } from './filter-holder/index.js';
import { frontBox } from './front-box/index.js';
import { groundGlassFrame } from './ground-glass-frame/index.js';
import { handle } from './handle/index.js';
import { holder } from './holder/index.js';
import { hood } from './hood/index.js';
import { lens } from './lens/index.js';
import { lensBoard } from './lens-board/index.js';
import { lensClamp } from './lens-clamp/index.js';
import { masks } from './masks/index.js';
import { middleBox } from './middle-box/index.js';
import { paperHolder } from './paper-holder/index.js';
import { rearBox } from './rear-box/index.js';
import { rearStandard } from './rear-standard/index.js';
import { spacer } from './spacer/index.js';
import { stops } from './stops/index.js';
import { tailboard } from './tailboard/index.js';
import { tank } from './tank/index.js';
import { tankFittings } from './tank-fittings/index.js';
import type { TradeObject } from './trade-object.js';

type Own<T> = T extends readonly (infer One)[] ? One : T;

/** One entry for each field of the camera, or it does not compile. Order here is order in the parts list. */
export const objects: { readonly [K in keyof Required<CameraObjects>]: TradeObject<Own<Required<CameraObjects>[K]>> } =
  {
    frontBox,
    lensBoard,
    lensClamp,
    lens,
    accessoryFrame,
    filterHolder,
    dropShutter,
    hood,
    cap,
    middleBox,
    rearBox,
    baffle,
    rearStandard,
    back,
    groundGlassFrame,
    spacers: spacer,
    holders: holder,
    paperHolders: paperHolder,
    masks,
    tanks: tank,
    tankFittings,
    stops,
    cords,
    tailboard,
    handle,
  };

/** Every object with its own sizes, one pair for each spacer and holder. */
function walk<T>(
  sizes: Partial<CameraObjects>,
  visit: <Own>(object: TradeObject<Own>, own: Own) => readonly T[],
): readonly T[] {
  return Object.entries(objects).flatMap(([key, object]) => {
    const own = sizes[key as keyof CameraObjects];
    if (own === undefined) return [];
    const all: readonly unknown[] = Array.isArray(own) ? own : [own];
    // the table's type guarantees that object and sizes belong together; the compiler cannot follow a walk over it
    return all.flatMap((one) => visit(object as TradeObject<unknown>, one));
  });
}

/** The parts of every object that is given, placed. */
export const cutOut = (sizes: Partial<CameraObjects>): readonly Part[] =>
  walk(sizes, (object, own) => object.parts(own));

export const hardwareOf = (sizes: CameraObjects): readonly Hardware[] =>
  walk(sizes, (object, own) => object.hardware(own));

/** What is said at the bench of each object; the words of one step stand in the order of the parts list. */
export const stepsOf = (sizes: CameraObjects): readonly StepWords[] => walk(sizes, (object, own) => object.steps(own));

/** Each object's own rules, on the build. */
export const checkObjects = (sizes: CameraObjects, build: Build): readonly Finding[] =>
  walk(sizes, (object, own) => object.checks.flatMap((check) => check(own, build)));
