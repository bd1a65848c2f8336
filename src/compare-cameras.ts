import { recordOf } from './compare/record.js';
import type { Design } from './design/design.js';
import type { BuiltCamera } from './model/built-camera.js';
import { planCamera, planOf } from './pipeline.js';

/** The camera of a design as it would be built today. */
export function recordOfDesign(design: Design): BuiltCamera {
  const planned = planCamera(design);
  return recordOf(planOf(planned), planned.build);
}
