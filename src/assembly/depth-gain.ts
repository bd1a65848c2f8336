import { ROUNDING } from './limit.js';

/** What stands deepest behind the holder seat. */
export interface Deepest {
  /** The holders that are deepest, in words; null where the bare glass alone is deeper than all of them. */
  readonly holders: string | null;
  /** How much deeper a holder is than the next depth, mm: so far a millimetre off it counts twice. */
  readonly above: number;
}

/**
 * The slide reaches `(… − 2 p − 2 T_max + T_min) / f`: what is deepest counts twice, unless it is the shallowest, too; with
 * a third box it counts once more. A
 * holder that is shallower than the glass stands on a spacer, so its film lies as deep as the glass.
 *
 * @param glass effective depth of the ground glass, mm
 */
export function deepestOf(
  holders: readonly { readonly name: string; readonly filmDepth: number }[],
  glass: number,
): Deepest {
  const depths = [...holders.map(({ filmDepth }) => Math.max(filmDepth, glass)), glass];
  const most = Math.max(...depths);
  const others = depths.filter((depth) => depth < most - ROUNDING);
  const deepest = holders.filter(({ filmDepth }) => filmDepth > most - ROUNDING).map(({ name }) => name);
  return {
    holders: deepest.length === 0 ? null : deepest.join(' and the '),
    above: others.length === 0 ? 0 : most - Math.max(...others),
  };
}

/**
 * What a millimetre off a depth, or off the run past infinity, brings to the slide, as a sentence without its stop.
 *
 * @param boxes of two boxes both grow with what is won, of three all three: it counts as often
 * @param wanted what is missing, mm: where a holder can give less than that, it is said how long it counts twice
 * @param more what is said behind so many millimetres
 */
export function depthGain(
  { holders, above }: Deepest,
  boxes: 2 | 3,
  wanted: number,
  more = (_millimetres: number) => '',
): string {
  if (above > 0) {
    const most = boxes * above < wanted ? ', as long as nothing else is as deep' : '';
    return `each millimetre off the film depth of the ${holders}${most}, or off pastInfinity, brings ${boxes} mm${more(boxes)}`;
  }
  const depth =
    holders === null ? 'off the depth of the ground glass' : 'off the film depth of holder and glass together';
  return `each millimetre off pastInfinity brings ${boxes} mm${more(boxes)}; ${depth}, ${boxes - 1} mm`;
}
