import type { TradeObject } from '../trade-object.js';
import { holderParts } from './parts.js';
import type { HeldHolder } from './size.js';

export const holder: TradeObject<HeldHolder> = {
  title: 'Holder',
  parts: holderParts,
  hardware: () => [],
  checks: [],
};
