import type { TradeObject } from '../trade-object.js';
import { rearBoxChecks } from './checks.js';
import { rearBoxHardware, rearBoxParts } from './parts.js';
import type { RearBox } from './size.js';
import { rearBoxSteps } from './steps.js';

export const rearBox: TradeObject<RearBox> = {
  title: 'Rear box',
  parts: rearBoxParts,
  hardware: rearBoxHardware,
  steps: rearBoxSteps,
  checks: rearBoxChecks,
};
