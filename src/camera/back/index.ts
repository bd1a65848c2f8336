import type { TradeObject } from '../trade-object.js';
import { backChecks } from './checks.js';
import { backHardware, backParts } from './parts.js';
import type { Back } from './size.js';
import { backSteps } from './steps.js';

export const back: TradeObject<Back> = {
  title: 'Back',
  parts: backParts,
  hardware: backHardware,
  steps: backSteps,
  checks: backChecks,
};
