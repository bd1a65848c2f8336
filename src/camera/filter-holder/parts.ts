import { matrixOf } from '../../geometry/facing.js';
import { polygon } from '../../geometry/path.js';
import { across } from '../../geometry/placement.js';
import { box, circle, ledIn, rectangle } from '../../geometry/shapes.js';
import { boughtPlate, joined, plate, standing } from '../../joinery/plate.js';
import type { Hardware, Part } from '../../model/part.js';
import { plainNumber } from '../../units/print.js';
import type { FilterHolder } from './size.js';

/** Of card, kg/mm³. */
const CARD_DENSITY = 700e-9;

/** Cut off its lower corners; a choice of ours. */
const LEAD_IN = 5;

export function filterHolderParts(own: FilterHolder): readonly Part[] {
  const { wood, width, bottom, rest, handle, handleWidth, rear, card, opening, pocket } = own;
  const { ply } = wood;
  const t = ply.thickness;
  const [half, top] = [width / 2, rest + handle];
  const face = { ply, group: 'front', grain: 'y', outline: ledIn(box(-half, bottom, half, top), LEAD_IN) } as const;
  const holes = [circle(0, 0, opening)];
  const front = rear - 2 * t - card;
  return [
    plate({
      ...face,
      id: 'FH1',
      name: 'rear ply of the filter holder',
      facing: 'front',
      low: rear - t,
      holes,
      joins: joined('slide', 'A2'),
    }),
    boughtPlate({
      id: 'filter-card',
      name: 'card between the plies of the filter holder',
      thickness: card,
      // round the gels on three sides
      outline: polygon([
        [LEAD_IN - half, bottom],
        [half - LEAD_IN, bottom],
        [half, bottom + LEAD_IN],
        [half, -pocket],
        [-pocket, -pocket],
        [-pocket, pocket],
        [half, pocket],
        [half, top],
        [-half, top],
        [-half, bottom + LEAD_IN],
      ]),
      placements: [standing('front', across(0, 0, front + t))],
      joins: joined('glue', 'FH1'),
      massKg: CARD_DENSITY * card * (width * (top - bottom) - 2 * pocket * (half + pocket)),
    }),
    plate({
      ...face,
      id: 'FH2',
      name: 'front ply of the filter holder',
      facing: 'rear',
      low: front,
      holes,
      joins: joined('glue', 'filter-card'),
    }),
    plate({
      id: 'FH3',
      name: 'cheek of its handle',
      ply,
      facing: 'rear',
      low: 0,
      group: 'front',
      grain: 'x',
      outline: rectangle(box(-handleWidth / 2, rest, handleWidth / 2, top)),
      places: [standing('front', matrixOf('front', rear, t)), standing('front', matrixOf('rear', front - t, t))],
      joins: [...joined('glue', 'FH1', 'FH2'), ...joined('rest', 'A1', 'A3')],
    }),
  ];
}

export const filterHolderHardware = ({ card, gels, gel }: FilterHolder): readonly Hardware[] => [
  {
    name: 'card',
    size: `to make up ${plainNumber(card, 2)} mm`,
    count: 1,
    for: 'between the plies of the filter holder',
  },
  {
    name: 'filter gels',
    size: `${plainNumber(gel)} × ${plainNumber(gel)}, at most ${gels} at once`,
    count: gels,
    for: 'the filter holder, as the picture asks',
  },
];
