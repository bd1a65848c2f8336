import type { TradeObject } from '../trade-object.js';
import { tankChecks } from './checks.js';
import { tankHardware, tankParts } from './parts.js';
import type { Tank } from './size.js';
import { tankSteps } from './steps.js';

export const tank: TradeObject<Tank> = {
  title: 'Processing holder',
  parts: tankParts,
  hardware: tankHardware,
  steps: tankSteps,
  checks: tankChecks,
};
