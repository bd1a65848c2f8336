import { apertureDials, exactFNumber } from '../standards/aperture-numbers.js';
import type { AskedStops, Lens } from './design.js';
import { materialName } from './material-name.js';
import type { Written } from './schema.js';

type WrittenStops = NonNullable<Written['stops']>;

/** A plate is so much thinner than its slot. */
const PLAY = 0.2;
/** Thinner card bends on its way in. */
const THINNEST = 0.2;
const WHOLE_STOPS = 4;

export function completeStops(written: WrittenStops, lens: Pick<Lens, 'maxAperture' | 'barrel'>): AskedStops {
  const [width, thickness] = written.slot;
  const marked = written.marked ?? lens.maxAperture;
  const board = written.board ?? Math.max(THINNEST, Math.round((thickness - PLAY) * 1000) / 1000);
  return {
    fullAperture: written.fullAperture,
    marked,
    slot: { width, thickness },
    depth: written.depth ?? lens.barrel.diameter / 2,
    board: { material: materialName('board', board), thickness: board },
    series: [...(written.series ?? wholeStopsAfter(marked))].sort((a, b) => a - b),
  };
}

/** A whole stop or more smaller would leave a gap: the first is the next whole stop. */
const wholeStopsAfter = (marked: number): readonly number[] =>
  apertureDials.wholeStops.marks
    .filter(({ exact }) => exact > exactFNumber(marked) * HARDLY)
    .slice(0, WHOLE_STOPS)
    .map(({ mark }) => mark);

/** Less than a sixth of a stop is none. */
const HARDLY = 2 ** (1 / 12);
