import { across } from '../../geometry/placement.js';
import { box, boxAt, circle, rectangle } from '../../geometry/shapes.js';
import { boughtPlate, boughtRod, joined, type Ply, plate } from '../../joinery/plate.js';
import type { Hardware, Part } from '../../model/part.js';
import { plainNumber } from '../../units/print.js';
import { inStances } from '../loose.js';
import type { PlacedSpacer } from './size.js';

export const PIN_PROUD = 3;
const SHIM_DENSITY = 1400e-9;

/** From the seat outwards: shims, glued plies; the last ply carries the spacer's own pins. */
export function spacerParts(own: PlacedSpacer): readonly Part[] {
  const { spacer, wood, width, extent, opening, seatPins, ownPins, extra, stance, seat } = own;
  const { plies, shims } = spacer.made;
  if (spacer.under === 'none') return [];
  const outline = rectangle(box(-width / 2, -extent.closed, width / 2, extent.open));
  const window = rectangle(boxAt(0, 0, opening.width, opening.height));
  const seatHoles = seatPins.map((p) => circle(p.x, p.y, p.diameter + 0.2));
  const pinHoles = ownPins.map((p) => circle(p.x, p.y, p.diameter));
  const layers = [
    ...shims.map((s) => ({
      id: `${spacer.id}-shim-${Math.round(s * 1000)}`,
      name: `shim ${s} mm, ${spacer.holder}`,
      ply: null as Ply | null,
      thickness: s,
      last: false,
    })),
    ...plies.map((s, i) => {
      const last = i === plies.length - 1;
      const other = extra.find((e) => e.thickness === s && s !== wood.ply.thickness);
      const role = last ? 'T' : '';
      return {
        id: `${spacer.id}${role}`,
        name: `spacer for ${spacer.holder}${last ? ', last ply' : ''}`,
        ply: other ?? wood.ply,
        thickness: s,
        last,
      };
    }),
  ];
  const ids = layers.map((l) => l.id).filter((id, i, all) => all.indexOf(id) === i);
  const starts = layers.map((_, i) => seat + layers.slice(0, i).reduce((sum, l) => sum + l.thickness, 0));
  const parts = ids.map((id, k): Part => {
    const layer = layers.find((l) => l.id === id) as (typeof layers)[number];
    const places = layers.flatMap((l, i) =>
      l.id === id ? inStances('loose', across(0, 0, starts[i] as number), [stance]) : [],
    );
    const next = ids[k + 1];
    const joins = [
      ...(k === 0 ? joined('rest', 'B1') : []),
      ...(next ? joined('glue', next) : []),
      ...(layers.filter((l) => l.id === id).length > 1 ? joined('glue', id) : []),
    ];
    const common = {
      id,
      name: layer.name,
      outline,
      holes: [window, ...seatHoles, ...(layer.last ? pinHoles : [])],
      joins,
    };
    return layer.ply
      ? plate({ ...common, ply: layer.ply, facing: 'rear', low: 0, group: 'loose', grain: 'any', places })
      : boughtPlate({
          ...common,
          thickness: layer.thickness,
          placements: places,
          massKg: 8000 * layer.thickness * SHIM_DENSITY,
        });
  });
  const lastStart = starts.at(-1);
  const last = layers.at(-1);
  if (!last?.last || lastStart === undefined) return parts;
  return [
    ...parts,
    ...ownPins.map((pin) =>
      boughtRod({
        id: `${spacer.id}-pin-${pin.diameter}`,
        name: `pin ${pin.diameter} mm of the spacer for ${spacer.holder}`,
        diameter: pin.diameter,
        length: last.thickness + PIN_PROUD,
        placements: inStances('loose', across(pin.x, pin.y, lastStart), [stance]),
        joins: joined('press', last.id),
        massKg: 0.0002,
      }),
    ),
  ];
}

export const spacerHardware = (own: PlacedSpacer): readonly Hardware[] => {
  const { made, holder, under } = own.spacer;
  if (under === 'none') return [];
  return [
    ...made.shims
      .filter((s, i, all) => all.indexOf(s) === i)
      .map((s) => ({
        name: 'shim',
        size: `${s} thick, ${own.width.toFixed(0)} × ${(own.extent.closed + own.extent.open).toFixed(0)} frame`,
        count: made.shims.filter((x) => x === s).length,
        for: `spacer for ${holder}`,
      })),
    ...(made.plies.length > 0
      ? own.ownPins.map((p) => ({
          name: 'dowel',
          size: `${p.diameter} × ${Math.ceil((made.plies.at(-1) ?? 0) + PIN_PROUD)}`,
          count: 1,
          for: `pin of the spacer for ${holder}, cut to ${plainNumber((made.plies.at(-1) ?? 0) + PIN_PROUD, 2)}`,
        }))
      : []),
  ];
};
