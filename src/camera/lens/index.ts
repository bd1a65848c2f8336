import type { TradeObject } from '../trade-object.js';
import { lensParts } from './parts.js';
import type { MountedLens } from './size.js';
import { lensSteps } from './steps.js';

export const lens: TradeObject<MountedLens> = {
  title: 'Lens',
  parts: lensParts,
  hardware: () => [],
  steps: lensSteps,
  checks: [],
};
