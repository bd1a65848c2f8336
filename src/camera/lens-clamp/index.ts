import type { TradeObject } from '../trade-object.js';
import { checkLensClamp } from './checks.js';
import { type FittedClamp, lensClampHardware, lensClampParts } from './parts.js';
import { lensClampSteps } from './steps.js';

export const lensClamp: TradeObject<FittedClamp> = {
  title: 'Lens clamp',
  parts: lensClampParts,
  hardware: lensClampHardware,
  steps: lensClampSteps,
  checks: [checkLensClamp],
};
