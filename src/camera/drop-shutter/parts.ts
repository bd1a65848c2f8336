import { type ClosedPath, polygon } from '../../geometry/path.js';
import { across, frame } from '../../geometry/placement.js';
import { box, boxAt, circle, ledIn, rectangle } from '../../geometry/shapes.js';
import { boughtPlate, boughtRod, joined, plate, standing } from '../../joinery/plate.js';
import type { Hardware, Part } from '../../model/part.js';
import { BAR, type DropShutter, EAR, FELT, NOTCH } from './size.js';

/** Card, and felt that is pressed to it by its glue, kg/mm³. */
const CARD_DENSITY = 700e-9;
const FELT_DENSITY = 200e-9;
/** Card, doubled, behind the carrier, so that the guide clears the lips of the rails. */
export const CARRIER_CARD = 0.3;
/** A peg turns and slides in its holes, in all; a choice of ours. */
const PEG_PLAY = 0.2;
const KNOB = 16;

/** Cut off the lower corners of what goes in from above, and of the front plate, which is no back plate; a choice of ours. */
const LEAD_IN = 4;

/** In which set-ups the slide stands, and in which the one for times by hand. */
export interface PlacedShutter {
  readonly shutter: DropShutter;
  /** The ring that its plate rests on. */
  readonly restsOn: string;
  /** All of these, for what stands as long as the shutter does; left out, always. */
  readonly standing?: readonly string[];
  readonly exposing: readonly string[];
  readonly focusing: readonly string[];
}

export function dropShutterParts(own: PlacedShutter): readonly Part[] {
  const parts = allParts(own);
  const { standing: when } = own;
  if (when === undefined) return parts;
  return parts.map((part) => ({ ...part, placements: part.placements.map((place) => ({ when, ...place })) }));
}

function allParts({ shutter, restsOn, exposing, focusing }: PlacedShutter): readonly Part[] {
  const { wood, plate: rail, betweenLips, beyondLips, openings, guide, slide, timeSlide, peg, elastic } = shutter;
  const { ply } = wood;
  const t = ply.thickness;
  const slip = wood.fits.slide;
  const hole = (diameter: number) => [circle(0, 0, diameter)];
  const pegHole = circle(0, peg.y, peg.diameter + PEG_PLAY);
  const face = { ply, facing: 'rear', group: 'front', grain: 'y' } as const;
  const guideBox = box(-guide.half, guide.bottom, guide.half, guide.top);
  const carrier = rectangle(box(-betweenLips, rail.bottom, betweenLips, guide.top));
  const z = {
    carrier: beyondLips,
    back: beyondLips - t,
    slide: beyondLips - 2 * t,
    card: beyondLips - 2 * t - slip,
    front: beyondLips - 3 * t - slip,
  };
  const strip = guide.half - guide.strip / 2;
  const stripOutline = rectangle(box(-guide.strip / 2, guide.bottom, guide.strip / 2, guide.top));
  const strips = (low: number) => [1, -1].map((side) => standing('front', across(side * strip, 0, low)));
  const slideTop = slide.length - slide.lower - slide.slot / 2;
  const timeTop = timeSlide.length - timeSlide.below - timeSlide.opening / 2;
  const bar = (top: number) => barOutline(top, guide.half, elastic !== null);
  const when = (low: number, names: readonly string[]) => [standing('front', across(0, 0, low), names)];
  const sliding = joined('slide', 'D3', 'D9');
  return [
    plate({
      ...face,
      id: 'D1',
      name: 'rail plate of the shutter',
      low: rail.rear - t,
      outline: ledIn(box(-rail.width / 2, rail.bottom, rail.width / 2, guide.top), LEAD_IN),
      holes: hole(openings.rail),
      joins: [...joined('rest', restsOn), ...joined('slide', 'A4', 'A5')],
    }),
    boughtPlate({
      id: 'carrier-card',
      name: 'card behind the carrier of the guide',
      thickness: 2 * CARRIER_CARD,
      outline: carrier,
      holes: hole(openings.carrier),
      placements: [standing('front', across(0, 0, beyondLips + t))],
      joins: joined('glue', 'D1'),
      massKg: CARD_DENSITY * 2 * CARRIER_CARD * 2 * betweenLips * (guide.top - rail.bottom),
    }),
    plate({
      ...face,
      id: 'D2',
      name: 'carrier of the guide',
      low: z.carrier,
      outline: carrier,
      holes: hole(openings.carrier),
      joins: joined('glue', 'carrier-card'),
    }),
    plate({
      ...face,
      id: 'D3',
      name: 'back plate of the guide',
      low: z.back,
      outline: rectangle(guideBox),
      holes: [...hole(openings.back), pegHole],
      joins: joined('glue', 'D2'),
    }),
    plate({
      ...face,
      id: 'D8',
      name: 'strip of the guide',
      low: 0,
      outline: stripOutline,
      places: strips(z.slide),
      joins: joined('glue', 'D3'),
    }),
    boughtPlate({
      id: 'guide-card',
      name: 'card on the strips of the guide',
      thickness: slip,
      outline: stripOutline,
      placements: strips(z.card),
      joins: joined('glue', 'D8'),
      massKg: CARD_DENSITY * slip * guide.strip * (guide.top - guide.bottom),
    }),
    plate({
      ...face,
      id: 'D9',
      name: 'front plate of the guide',
      low: z.front,
      outline: frontOutline(guide, elastic !== null),
      holes: [...hole(openings.front), pegHole],
      joins: joined('glue', 'guide-card'),
    }),
    boughtPlate({
      id: 'stop-felt',
      name: 'felt that stops the slide',
      thickness: FELT,
      outline: rectangle(boxAt(0, 0, 2 * guide.half, t)),
      placements: [standing('front', frame([1, 0, 0], [0, 0, -1], [0, 1, 0], [0, guide.top, z.front + t / 2]))],
      joins: joined('glue', 'D9'),
      massKg: FELT_DENSITY * FELT * 2 * guide.half * t,
    }),
    plate({
      ...face,
      id: 'D4',
      name: 'slide of the shutter',
      low: z.slide,
      outline: ledIn(box(-slide.half, -slide.lower - slide.slot / 2, slide.half, slideTop), LEAD_IN),
      holes: [rectangle(boxAt(0, 0, slide.slotWidth, slide.slot))],
      places: when(z.slide, exposing),
      joins: sliding,
    }),
    plate({
      ...face,
      id: 'D6',
      name: 'bar of the slide',
      low: z.slide - t,
      grain: 'x',
      outline: bar(slideTop),
      places: when(z.slide - t, exposing),
      joins: joined('glue', 'D4'),
    }),
    plate({
      ...face,
      id: 'D5',
      name: 'slide for times by hand',
      low: z.slide,
      outline: ledIn(box(-slide.half, -timeSlide.below - timeSlide.opening / 2, slide.half, timeTop), LEAD_IN),
      holes: [rectangle(boxAt(0, 0, timeSlide.opening, timeSlide.opening))],
      places: when(z.slide, focusing),
      joins: [...sliding, ...joined('rest', 'shutter-peg')],
    }),
    plate({
      ...face,
      id: 'D7',
      name: 'bar of the slide for times by hand',
      low: z.slide - t,
      grain: 'x',
      outline: bar(timeTop),
      places: when(z.slide - t, focusing),
      joins: joined('glue', 'D5'),
    }),
    boughtRod({
      id: 'shutter-peg',
      name: 'peg that holds a slide',
      diameter: peg.diameter,
      length: 4 * t + slip,
      placements: [standing('front', across(0, peg.y, z.front - t), focusing)],
      joins: joined('slide', 'D3', 'D9'),
      massKg: 0.0004,
    }),
    plate({
      ...face,
      id: 'D10',
      name: 'knob of the peg',
      low: z.front - t,
      grain: 'any',
      outline: circle(0, peg.y, KNOB),
      holes: [circle(0, peg.y, peg.diameter)],
      places: when(z.front - t, focusing),
      joins: joined('glue', 'shutter-peg'),
    }),
  ];
}

/** Across the top of a slide; with ears beyond the guide where elastic is hung on it. */
function barOutline(top: number, half: number, ears: boolean): ClosedPath {
  if (!ears) return rectangle(box(-half, top - BAR, half, top));
  const [out, from, to] = [half + EAR, half + EAR / 2 - NOTCH / 2, half + EAR / 2 + NOTCH / 2];
  return polygon([
    [-out, top - BAR],
    [out, top - BAR],
    [out, top],
    [to, top],
    [to, top - NOTCH],
    [from, top - NOTCH],
    [from, top],
    [-from, top],
    [-from, top - NOTCH],
    [-to, top - NOTCH],
    [-to, top],
    [-out, top],
  ]);
}

/** The front plate; with ears at its lower corners where elastic is hung on it. */
function frontOutline({ half, bottom, top }: DropShutter['guide'], ears: boolean): ClosedPath {
  if (!ears) return ledIn(box(-half, bottom, half, top), LEAD_IN);
  const [out, from, to] = [half + EAR, half + EAR / 2 - NOTCH / 2, half + EAR / 2 + NOTCH / 2];
  const shoulder = bottom + BAR;
  return polygon([
    [-out, bottom],
    [-to, bottom],
    [-to, bottom + NOTCH],
    [-from, bottom + NOTCH],
    [-from, bottom],
    [from, bottom],
    [from, bottom + NOTCH],
    [to, bottom + NOTCH],
    [to, bottom],
    [out, bottom],
    [out, shoulder],
    [half, shoulder],
    [half, top],
    [-half, top],
    [-half, shoulder],
    [-out, shoulder],
  ]);
}

export const dropShutterHardware = ({ shutter }: PlacedShutter): readonly Hardware[] => {
  const { wood, guide, peg, elastic } = shutter;
  const cards = [...new Set([wood.fits.slide, CARRIER_CARD])].map((one) => `${one} mm`);
  return [
    {
      name: 'dowel',
      size: `${peg.diameter} × ${Math.ceil(4 * wood.ply.thickness)}`,
      count: 1,
      for: 'peg of the shutter',
    },
    {
      name: 'felt',
      size: `${FELT} mm, ${Math.ceil(wood.ply.thickness)} × ${Math.ceil(2 * guide.half)}`,
      count: 1,
      for: 'stop of the shutter’s slide',
    },
    { name: 'card', size: `${cards.join(' and ')} thick`, count: 1, for: 'guide of the shutter' },
    ...(elastic
      ? [
          {
            name: 'elastic',
            size: `pulls ${Math.round(500 * elastic.pullKg)} g when stretched by ${Math.round(elastic.over)} mm`,
            count: 2,
            for: 'the shutter’s slide; mind your eyes when you hang it on',
          },
        ]
      : []),
  ];
};
