import type { TradeObject } from '../trade-object.js';
import { capChecks } from './checks.js';
import { capHardware, capParts, type PlacedCap } from './parts.js';
import { capSteps } from './steps.js';

export const cap: TradeObject<PlacedCap> = {
  title: 'Cap of the lens',
  parts: capParts,
  hardware: capHardware,
  steps: capSteps,
  checks: capChecks,
};
