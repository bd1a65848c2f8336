import type { TradeObject } from '../trade-object.js';
import { paperHolderChecks } from './checks.js';
import { paperHolderHardware, paperHolderParts } from './parts.js';
import type { PaperHolder } from './size.js';
import { paperHolderSteps } from './steps.js';

export const paperHolder: TradeObject<PaperHolder> = {
  title: 'Paper holder',
  parts: paperHolderParts,
  hardware: paperHolderHardware,
  steps: paperHolderSteps,
  checks: paperHolderChecks,
};
