import type { AccessoryFrame } from './accessory-frame/size.js';
import type { Back } from './back/size.js';
import type { Baffle } from './baffle/size.js';
import type { PlacedCap } from './cap/parts.js';
import type { Cords } from './cords/size.js';
import type { PlacedShutter } from './drop-shutter/parts.js';
import type { FilterHolder } from './filter-holder/size.js';
import type { FrontBox } from './front-box/size.js';
import type { GroundGlassFrame } from './ground-glass-frame/size.js';
import type { Handle } from './handle/size.js';
import type { HeldHolder } from './holder/size.js';
import type { PlacedHood } from './hood/parts.js';
import type { MountedLens } from './lens/size.js';
import type { LensBoard } from './lens-board/size.js';
import type { FittedClamp } from './lens-clamp/parts.js';
import type { Masks } from './masks/size.js';
import type { MiddleBox } from './middle-box/size.js';
import type { PaperHolder } from './paper-holder/size.js';
import type { RearBox } from './rear-box/size.js';
import type { RearStandard } from './rear-standard/size.js';
import type { PlacedSpacer } from './spacer/size.js';
import type { Stops } from './stops/size.js';
import type { Tailboard } from './tailboard/size.js';
import type { Tank } from './tank/size.js';
import type { FittedTank } from './tank-fittings/parts.js';

/** One field a trade object; absent or empty where the design has none. */
export interface CameraObjects {
  readonly lensBoard: LensBoard;
  readonly lens: MountedLens;
  readonly lensClamp?: FittedClamp;
  readonly accessoryFrame?: AccessoryFrame;
  readonly filterHolder?: FilterHolder;
  readonly dropShutter?: PlacedShutter;
  readonly hood?: PlacedHood;
  readonly cap?: PlacedCap;
  readonly frontBox: FrontBox;
  readonly middleBox?: MiddleBox;
  readonly rearBox: RearBox;
  readonly baffle?: Baffle;
  readonly rearStandard: RearStandard;
  readonly back: Back;
  readonly groundGlassFrame: GroundGlassFrame;
  readonly spacers: readonly PlacedSpacer[];
  readonly holders: readonly HeldHolder[];
  /** Those that are cut from the sheet. */
  readonly paperHolders: readonly PaperHolder[];
  readonly masks?: Masks;
  /** Those in which the print is processed too. */
  readonly tanks: readonly Tank[];
  readonly tankFittings: readonly FittedTank[];
  readonly stops?: Stops;
  readonly cords: Cords;
  readonly tailboard: Tailboard;
  readonly handle?: Handle;
}
