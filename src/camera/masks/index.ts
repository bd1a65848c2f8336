import type { TradeObject } from '../trade-object.js';
import { maskChecks } from './checks.js';
import { maskHardware, maskParts } from './parts.js';
import type { Masks } from './size.js';
import { maskSteps } from './steps.js';

export const masks: TradeObject<Masks> = {
  title: 'Masks',
  parts: maskParts,
  hardware: maskHardware,
  steps: maskSteps,
  checks: maskChecks,
};
