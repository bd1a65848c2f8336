import type { TradeObject } from '../trade-object.js';
import { holderParts } from './parts.js';
import type { HeldHolder } from './size.js';
import { holderSteps } from './steps.js';

export const holder: TradeObject<HeldHolder> = {
  title: 'Holder',
  parts: holderParts,
  hardware: () => [],
  steps: holderSteps,
  checks: [],
};
