import { completeDesign } from './complete.js';
import type { Design } from './design.js';
import { designSchema, type Written } from './schema.js';

/** What a camera is sized from; all else of a design keeps its defaults. */
export type TrialGiven = Pick<
  Written,
  'name' | 'format' | 'lens' | 'focus' | 'plywood' | 'groundGlass' | 'holders' | 'workshop'
>;

/**
 * Completes designs that are sized and looked at, but never cut: their laser is never asked, for no figure of the sizing
 * hangs on it. The other defaults are read once and hold for all of them.
 */
export function trialDesigns(): (given: TrialGiven, defaulted: readonly string[]) => Design {
  const rest = designSchema.parse(
    {
      name: 'trial',
      format: '4x5',
      lens: { focalLength: '150 mm', flangeDistance: '150 mm' },
      plywood: { thickness: '4 mm' },
      laser: { kerf: '0.15 mm' },
    },
    { jitless: true },
  );
  return (given, defaulted) => completeDesign({ ...rest, ...given }, defaulted, new Map());
}
