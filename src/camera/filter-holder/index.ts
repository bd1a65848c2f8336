import type { TradeObject } from '../trade-object.js';
import { filterHolderChecks } from './checks.js';
import { filterHolderHardware, filterHolderParts } from './parts.js';
import type { FilterHolder } from './size.js';
import { filterHolderSteps } from './steps.js';

export const filterHolder: TradeObject<FilterHolder> = {
  title: 'Filter holder',
  parts: filterHolderParts,
  hardware: filterHolderHardware,
  steps: filterHolderSteps,
  checks: filterHolderChecks,
};
