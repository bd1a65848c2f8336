import type { TradeObject } from '../trade-object.js';
import { baffleChecks } from './checks.js';
import { baffleParts } from './parts.js';
import type { Baffle } from './size.js';
import { baffleSteps } from './steps.js';

export const baffle: TradeObject<Baffle> = {
  title: 'Baffle',
  parts: baffleParts,
  hardware: () => [],
  steps: baffleSteps,
  checks: baffleChecks,
};
