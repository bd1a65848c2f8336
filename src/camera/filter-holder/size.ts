import { type LightAhead, openingAt } from '../light-ahead.js';
import type { Wood } from '../wood.js';

/**
 * A frame for a stack of gels, which goes into the channel of the accessory frame from above. Two plies with card between
 * them, in which the gels lie, open to the right; at the top a handle of four plies, whose cheeks hang it on the rings and
 * cover the slot that it stands in.
 */
export interface FilterHolder {
  readonly wood: Wood;
  readonly width: number;
  readonly bottom: number;
  /** Where the cheeks of the handle rest. */
  readonly rest: number;
  readonly handle: number;
  /** Of the cheeks. */
  readonly handleWidth: number;
  /** z of its rear face. */
  readonly rear: number;
  /** Between its plies: the room of the gels. */
  readonly card: number;
  readonly opening: number;
  /** How many gels it takes, and their side. */
  readonly gels: number;
  readonly gel: number;
  /** Half of the room for the gels. */
  readonly pocket: number;
}

export interface FilterHolderGiven {
  readonly wood: Wood;
  readonly gels: number;
  readonly gel: number;
  /** Side of the room for them. */
  readonly gelRoom: number;
  /** The channel that it goes into. */
  readonly channel: { readonly rear: number; readonly width: number; readonly floor: number };
  /** Side of the rings on which it hangs. */
  readonly rings: number;
  readonly light: LightAhead;
}

/** Room of one gel, which is 0.1 thick and never quite flat; a choice of ours. */
const GEL_ROOM = 0.2;
/** Height of the handle: two fingers; a choice of ours. */
const HANDLE = 14;

/** The card between the plies for so many gels. */
export const gelCard = (gels: number): number => GEL_ROOM * gels;

export function sizeFilterHolder(given: FilterHolderGiven): FilterHolder {
  const { wood, gels, gel, gelRoom, channel, rings, light } = given;
  const card = gelCard(gels);
  const { dropIn } = wood.fits;
  return {
    wood,
    width: channel.width - dropIn,
    bottom: channel.floor + dropIn,
    rest: rings / 2,
    handle: HANDLE,
    handleWidth: rings,
    rear: channel.rear,
    card,
    opening: openingAt(light, channel.rear - 2 * wood.ply.thickness - card),
    gels,
    gel,
    pocket: gelRoom / 2,
  };
}
