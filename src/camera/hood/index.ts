import type { TradeObject } from '../trade-object.js';
import { hoodChecks } from './checks.js';
import { hoodHardware, hoodParts, type PlacedHood } from './parts.js';
import { hoodSteps } from './steps.js';

export const hood: TradeObject<PlacedHood> = {
  title: 'Lens hood',
  parts: hoodParts,
  hardware: hoodHardware,
  steps: hoodSteps,
  checks: hoodChecks,
};
