import type { TradeObject } from '../trade-object.js';
import { spacerChecks } from './checks.js';
import { spacerHardware, spacerParts } from './parts.js';
import type { PlacedSpacer } from './size.js';
import { spacerSteps } from './steps.js';

export const spacer: TradeObject<PlacedSpacer> = {
  title: 'Spacer',
  parts: spacerParts,
  hardware: spacerHardware,
  steps: spacerSteps,
  checks: spacerChecks,
};
