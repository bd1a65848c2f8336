import type { TradeObject } from '../trade-object.js';
import { groundGlassFrameChecks } from './checks.js';
import { groundGlassFrameHardware, groundGlassFrameParts } from './parts.js';
import type { GroundGlassFrame } from './size.js';
import { groundGlassFrameSteps } from './steps.js';

export const groundGlassFrame: TradeObject<GroundGlassFrame> = {
  title: 'Ground-glass frame',
  parts: groundGlassFrameParts,
  hardware: groundGlassFrameHardware,
  steps: groundGlassFrameSteps,
  checks: groundGlassFrameChecks,
};
