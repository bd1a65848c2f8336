import { recordOf } from './compare/record.js';
import type { Design } from './design/design.js';
import type { BuiltCamera } from './model/built-camera.js';
import { type Planned, planCamera, planOf } from './pipeline.js';

/** The camera of a design as it would be built today. */
export const recordOfDesign = (design: Design): BuiltCamera => recordOfPlanned(planCamera(design));

/** The same of one that is planned already. */
export const recordOfPlanned = (planned: Planned): BuiltCamera => recordOf(planOf(planned), planned.build);
