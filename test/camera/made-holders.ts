import { type Planned, planCamera } from '../../src/pipeline.js';
import { changed, designOf } from '../design/reading.js';
import { bareHeronText } from '../designs/kept-design.js';

/** Heron's text, with its paper holder cut from the same sheet: every size that the construction gives is left out. */
export const heronMade = (keys = ''): string =>
  changed(
    bareHeronText(),
    'filmDepth: 5.8 mm, depthTo: emulsion, width: 150 mm, length: 210 mm, thickness: 13.9 mm, mass: 330 g',
    `make: true${keys}`,
  );

export const planned = (text: string): Planned => planCamera(designOf(text));

/** A film holder for 4x5, as the only holder of a small camera. */
export const fourByFive = `name: Sandpiper
format: 4x5
lens:
  focalLength: 150 mm
  flangeDistance: 141.5 mm
  maxAperture: f/5.6
  barrel: { diameter: 48 mm, grip: 14 mm, front: 12 mm, rear: 16 mm, frontDiameter: 52 mm, rearDiameter: 42 mm }
plywood: { thickness: 4.05 mm }
laser: { kerf: 0.15 mm }
holders:
  - { name: film holder, make: true, sheetThickness: 0.18 mm }
`;
