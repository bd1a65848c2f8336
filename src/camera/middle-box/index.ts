import type { TradeObject } from '../trade-object.js';
import { middleBoxChecks } from './checks.js';
import { middleBoxHardware, middleBoxParts } from './parts.js';
import type { MiddleBox } from './size.js';
import { middleBoxSteps } from './steps.js';

export const middleBox: TradeObject<MiddleBox> = {
  title: 'Middle box',
  parts: middleBoxParts,
  hardware: middleBoxHardware,
  steps: middleBoxSteps,
  checks: middleBoxChecks,
};
