import type { TradeObject } from '../trade-object.js';
import { stopsChecks } from './checks.js';
import { stopsHardware, stopsParts } from './parts.js';
import type { Stops } from './size.js';
import { stopsSteps } from './steps.js';

export const stops: TradeObject<Stops> = {
  title: 'Stops',
  parts: stopsParts,
  hardware: stopsHardware,
  steps: stopsSteps,
  checks: stopsChecks,
};
