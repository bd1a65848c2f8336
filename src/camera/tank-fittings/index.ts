import type { TradeObject } from '../trade-object.js';
import { checkTankFittings } from './checks.js';
import { type FittedTank, tankFittingHardware, tankFittingParts } from './parts.js';
import { tankFittingSteps } from './steps.js';

export const tankFittings: TradeObject<FittedTank> = {
  title: 'Spout and vent of the processing holder',
  parts: tankFittingParts,
  hardware: tankFittingHardware,
  steps: tankFittingSteps,
  checks: [checkTankFittings],
};
