import type { TankFigures } from '../model/step-sheet.js';

/** A holder as the plan of a camera has it. */
interface PlannedHolder {
  readonly name: string;
  /** Of one in which prints are processed. */
  readonly tank?: TankFigures;
}

const BY_HAND = 'or fill your tank with water and empty it by the watch, and give --fill and --drain.';

/**
 * What a tank of a camera does to times and volumes; or why there is none to take.
 *
 * @param wanted name of a holder; the only one that is a tank where left out
 */
export function tankOf(
  holders: readonly PlannedHolder[],
  wanted?: string,
): { readonly tank: TankFigures } | { readonly refused: string } {
  const tanks = holders.flatMap(({ name, tank }) => (tank === undefined ? [] : [{ name, tank }]));
  const names = tanks.map(({ name }) => name);
  if (wanted !== undefined) {
    const holder = holders.find(({ name }) => name === wanted);
    if (holder === undefined)
      return {
        refused: `The design has no holder "${wanted}". It has: ${holders.map(({ name }) => name).join(', ')}.`,
      };
    if (holder.tank !== undefined) return { tank: holder.tank };
    return {
      refused: `The ${wanted} is no tank that the design knows.${names.length > 0 ? ` Tanks of it: ${names.join(', ')};` : ' Write make: true and a window at it,'} ${BY_HAND}`,
    };
  }
  const [only] = tanks;
  if (only === undefined)
    return {
      refused: `No holder of the design is a tank: one that is made, with a window. Write make: true and a window at it, ${BY_HAND}`,
    };
  return tanks.length === 1
    ? { tank: only.tank }
    : { refused: `Several holders of the design are tanks: name one with --holder: ${names.join(', ')}.` };
}
