import { Vector3 } from 'three';
import type { ViewName } from './view-names.js';

export type { ViewName };

/** Where the eye is, seen from the camera: x to the right and y up for who stands behind it, z towards him. */
export const directions: Readonly<Record<ViewName, Vector3>> = {
  corner: new Vector3(-0.72, 0.46, -0.72),
  front: new Vector3(0, 0, -1),
  behind: new Vector3(0, 0, 1),
  left: new Vector3(-1, 0, 0),
  right: new Vector3(1, 0, 0),
  above: new Vector3(0, 1, 0.0001),
  below: new Vector3(0, -1, 0.0001),
};
