import { type Planned, planCamera } from '../../src/pipeline.js';
import { designOf } from '../design/reading.js';
import { heron } from '../design/worked-designs.js';

/** Heron with what is made only where somebody asks for it. */
export const heronWith = (...keys: readonly string[]): Planned => planCamera(designOf(`${heron}${keys.join('\n')}\n`));

/** For a lens whose barrel has a slot. */
export const STOPS =
  'stops: { fullAperture: 30 mm, marked: f/6.3, slot: [40 mm, 1 mm], series: [f/8, f/11, f/16, f/22] }';

/** All that goes ahead of a lens, a key each. */
export const AHEAD = ['filterHolder: {}', 'shutter: {}', 'hood: {}', 'cap: true'] as const;

/** All of the small parts, a key each. */
export const SMALL_PARTS = [
  'baffle: true',
  'handle: true',
  'masks: [{ name: square, image: [110 mm, 110 mm], corners: 5 mm }, { name: deep, format: quarter-plate, holder: processing holder }]',
  STOPS,
] as const;
