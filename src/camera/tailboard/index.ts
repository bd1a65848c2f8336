import type { TradeObject } from '../trade-object.js';
import { tailboardChecks } from './checks.js';
import { tailboardHardware, tailboardParts } from './parts.js';
import type { Tailboard } from './size.js';

export const tailboard: TradeObject<Tailboard> = {
  title: 'Tailboard',
  parts: tailboardParts,
  hardware: tailboardHardware,
  checks: tailboardChecks,
};
