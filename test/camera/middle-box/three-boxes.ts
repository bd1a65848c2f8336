import { type Planned, planCamera } from '../../../src/pipeline.js';
import { keptDesign } from '../../designs/kept-design.js';

/** A 4x5 round a lens of 150 mm with 143 mm of flange distance, from infinity to life size: two boxes reach 1:1.85. */
export const godwit: Planned = planCamera(keptDesign('godwit'));
