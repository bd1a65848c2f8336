import type { TradeObject } from '../trade-object.js';
import { frontBoxChecks } from './checks.js';
import { frontBoxParts } from './parts.js';
import type { FrontBox } from './size.js';
import { frontBoxSteps } from './steps.js';

export const frontBox: TradeObject<FrontBox> = {
  title: 'Front box',
  parts: frontBoxParts,
  hardware: () => [
    {
      name: 'matte black',
      size: 'water-based stain or paint, 100 ml',
      count: 1,
      for: 'everything inside, both boxes and the back',
    },
    { name: 'wood glue', size: '100 g', count: 1, for: 'boxes, laminations' },
  ],
  steps: frontBoxSteps,
  checks: frontBoxChecks,
};
