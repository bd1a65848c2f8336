import type { TradeObject } from '../trade-object.js';
import { cordHardware, cordParts } from './parts.js';
import type { Cords } from './size.js';
import { cordSteps } from './steps.js';

export const cords: TradeObject<Cords> = {
  title: 'Cords',
  parts: cordParts,
  hardware: cordHardware,
  steps: cordSteps,
  checks: [],
};
