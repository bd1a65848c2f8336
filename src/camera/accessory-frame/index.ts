import type { TradeObject } from '../trade-object.js';
import { accessoryFrameChecks } from './checks.js';
import { accessoryFrameHardware, accessoryFrameParts } from './parts.js';
import type { AccessoryFrame } from './size.js';
import { accessoryFrameSteps } from './steps.js';

export const accessoryFrame: TradeObject<AccessoryFrame> = {
  title: 'Accessory frame',
  parts: accessoryFrameParts,
  hardware: accessoryFrameHardware,
  steps: accessoryFrameSteps,
  checks: accessoryFrameChecks,
};
