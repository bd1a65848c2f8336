import type { TradeObject } from '../trade-object.js';
import { handleChecks } from './checks.js';
import { handleHardware, handleParts } from './parts.js';
import type { Handle } from './size.js';
import { handleSteps } from './steps.js';

export const handle: TradeObject<Handle> = {
  title: 'Carrying handle',
  parts: handleParts,
  hardware: handleHardware,
  steps: handleSteps,
  checks: handleChecks,
};
