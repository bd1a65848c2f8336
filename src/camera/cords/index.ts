import type { TradeObject } from '../trade-object.js';
import { cordHardware, cordParts } from './parts.js';
import type { Cords } from './size.js';

export const cords: TradeObject<Cords> = {
  title: 'Cords',
  parts: cordParts,
  hardware: cordHardware,
  checks: [],
};
