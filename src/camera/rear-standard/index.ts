import type { TradeObject } from '../trade-object.js';
import { rearStandardChecks } from './checks.js';
import { rearStandardHardware, rearStandardParts } from './parts.js';
import type { RearStandard } from './size.js';
import { rearStandardSteps } from './steps.js';

export const rearStandard: TradeObject<RearStandard> = {
  title: 'Rear standard and sole',
  parts: rearStandardParts,
  hardware: rearStandardHardware,
  steps: rearStandardSteps,
  checks: rearStandardChecks,
};
