import { lettering } from '../../geometry/lettering.js';
import { across, frame } from '../../geometry/placement.js';
import { boxAt, rectangle, rounded } from '../../geometry/shapes.js';
import { boughtPlate, joined, plate } from '../../joinery/plate.js';
import type { Hardware, Mark, Part } from '../../model/part.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import { inStances } from '../loose.js';
import type { FilmMask, Masks } from './size.js';

const CARD_DENSITY = 700e-9;

export function maskParts(own: Masks): readonly Part[] {
  const { wood, seat, opening, plies, ledge, card, turns, masks } = own;
  const t = wood.ply.thickness;
  const cardZ = seat - 2 * t - card.thickness;
  const packing = plies - 2;
  // in the middle of the wood that ledge and ring share on each side
  const beside = (opening.width + ledge.width) / 4;
  const above = (opening.height + ledge.height) / 4;
  return [
    boughtPlate({
      id: 'ledge-card',
      name: 'card under the ledge for masks',
      thickness: card.thickness,
      outline: rectangle(boxAt(0, 0, card.length, card.width)),
      placements: [
        across(0, above, cardZ),
        across(0, -above, cardZ),
        frame([0, 1, 0], [-1, 0, 0], [0, 0, 1], [beside, 0, cardZ]),
        frame([0, 1, 0], [-1, 0, 0], [0, 0, 1], [-beside, 0, cardZ]),
      ].flatMap((matrix) => inStances('back', matrix, [turns])),
      joins: joined('glue', 'B2'),
      massKg: card.length * card.width * card.thickness * CARD_DENSITY,
    }),
    ...(packing > 0
      ? [
          plate({
            id: 'B7',
            name: 'packing for the ledge for masks',
            ply: wood.ply,
            facing: 'rear',
            low: 0,
            group: 'back',
            grain: 'any',
            outline: rectangle(boxAt(0, 0, ledge.width, ledge.height)),
            holes: [rectangle(boxAt(0, 0, opening.width, opening.height))],
            places: Array.from({ length: packing }, (_, k) =>
              inStances('back', across(0, 0, cardZ - (k + 1) * t), [turns]),
            ).flat(),
            joins: joined('glue', 'ledge-card', ...(packing > 1 ? ['B7'] : [])),
          }),
        ]
      : []),
    plate({
      id: 'B6',
      name: 'ledge for masks',
      ply: wood.ply,
      facing: 'rear',
      low: 0,
      group: 'back',
      grain: 'any',
      outline: rectangle(boxAt(0, 0, ledge.width, ledge.height)),
      holes: [rectangle(boxAt(0, 0, ledge.opening.width, ledge.opening.height))],
      places: inStances('back', across(0, 0, cardZ - (packing + 1) * t), [turns]),
      joins: joined('glue', packing > 0 ? 'B7' : 'ledge-card'),
    }),
    ...masks.map((mask, i) => maskOf(own, mask, i)),
  ];
}

/** The plies of one mask, packed for the road on what lies below it. */
function maskOf({ wood, seat, plies, packed, on, masks }: Masks, mask: FilmMask, i: number): Part {
  const { outside, opening, cornerRadius } = mask;
  const t = wood.ply.thickness;
  const window = boxAt(0, 0, opening.width, opening.height);
  return plate({
    id: mask.id,
    name: `mask ${mask.name}`,
    ply: wood.ply,
    facing: 'rear',
    low: 0,
    group: 'loose',
    grain: 'any',
    outline: rectangle(boxAt(0, 0, outside.width, outside.height)),
    holes: [cornerRadius > 0 ? rounded(window, cornerRadius) : rectangle(window)],
    marks: sizeMark(mask),
    kept: true,
    places: Array.from({ length: plies }, (_, k) =>
      inStances('loose', across(0, 0, seat + (plies * i + k) * t), [packed]),
    ).flat(),
    joins: [...joined('rest', masks[i - 1]?.id ?? on), ...joined('glue', mask.id)],
  });
}

/** Letters that can be read, and wood round them, mm. */
const LETTERS = { tallest: 4, least: 2.5, clear: 2 };

/** How large the picture is (without an x, which on wood marks waste), on the wider of the bars below and beside the opening; nowhere where both are narrow. */
function sizeMark({ outside, opening, image }: FilmMask): readonly Mark[] {
  const below = (outside.height - opening.height) / 2;
  const beside = (outside.width - opening.width) / 2;
  const turned = beside > below;
  const bar = Math.max(below, beside);
  const height = Math.min(LETTERS.tallest, bar - 2 * LETTERS.clear);
  const text = [image.width, image.height].map((side) => plainNumber(tenth(side))).join(' by ');
  const { width } = lettering(text, height);
  if (height < LETTERS.least || width > (turned ? outside.height : outside.width) - 2 * LETTERS.clear) return [];
  const off = (bar - height) / 2;
  return [
    turned
      ? { text, x: -outside.width / 2 + off + height, y: -width / 2, height, turn: Math.PI / 2 }
      : { text, x: -width / 2, y: -outside.height / 2 + off, height, turn: 0 },
  ];
}

export const maskHardware = ({ card }: Masks): readonly Hardware[] => [
  {
    name: 'card strip',
    size: `${plainNumber(card.thickness)} thick, 4 of ${mm(card.length)} × ${mm(card.width)}`,
    count: 1,
    for: 'under the ledge for masks',
  },
];
