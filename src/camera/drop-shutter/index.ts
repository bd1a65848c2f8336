import type { TradeObject } from '../trade-object.js';
import { dropShutterChecks } from './checks.js';
import { dropShutterHardware, dropShutterParts, type PlacedShutter } from './parts.js';
import { dropShutterSteps } from './steps.js';

export const dropShutter: TradeObject<PlacedShutter> = {
  title: 'Drop shutter',
  parts: dropShutterParts,
  hardware: dropShutterHardware,
  steps: dropShutterSteps,
  checks: dropShutterChecks,
};
