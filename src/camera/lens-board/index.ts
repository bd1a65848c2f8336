import type { TradeObject } from '../trade-object.js';
import { lensBoardChecks } from './checks.js';
import { lensBoardHardware, lensBoardParts } from './parts.js';
import type { LensBoard } from './size.js';
import { lensBoardSteps } from './steps.js';

export const lensBoard: TradeObject<LensBoard> = {
  title: 'Lens board',
  parts: lensBoardParts,
  hardware: lensBoardHardware,
  steps: lensBoardSteps,
  checks: lensBoardChecks,
};
