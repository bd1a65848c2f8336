import type { Back } from './back/size.js';
import type { Cords } from './cords/size.js';
import type { FrontBox } from './front-box/size.js';
import type { GroundGlassFrame } from './ground-glass-frame/size.js';
import type { HeldHolder } from './holder/size.js';
import type { MountedLens } from './lens/size.js';
import type { LensBoard } from './lens-board/size.js';
import type { FittedClamp } from './lens-clamp/parts.js';
import type { RearBox } from './rear-box/size.js';
import type { RearStandard } from './rear-standard/size.js';
import type { PlacedSpacer } from './spacer/size.js';
import type { Tailboard } from './tailboard/size.js';

/** One field a trade object; absent or empty where the design has none. */
export interface CameraObjects {
  readonly lensBoard: LensBoard;
  readonly lens: MountedLens;
  readonly lensClamp?: FittedClamp;
  readonly frontBox: FrontBox;
  readonly rearBox: RearBox;
  readonly rearStandard: RearStandard;
  readonly back: Back;
  readonly groundGlassFrame: GroundGlassFrame;
  readonly spacers: readonly PlacedSpacer[];
  readonly holders: readonly HeldHolder[];
  readonly cords: Cords;
  readonly tailboard: Tailboard;
}
