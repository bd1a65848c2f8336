import type { TradeObject } from '../trade-object.js';
import { tailboardChecks } from './checks.js';
import { tailboardHardware, tailboardParts } from './parts.js';
import type { Tailboard } from './size.js';
import { tailboardSteps } from './steps.js';

export const tailboard: TradeObject<Tailboard> = {
  title: 'Tailboard',
  parts: tailboardParts,
  hardware: tailboardHardware,
  steps: tailboardSteps,
  checks: tailboardChecks,
};
