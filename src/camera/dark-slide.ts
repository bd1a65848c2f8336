import { matrixOf } from '../geometry/facing.js';
import { lettering } from '../geometry/lettering.js';
import { type Box, polygon } from '../geometry/path.js';
import { across, compose, shift } from '../geometry/placement.js';
import { box, boxAt, circle, rectangle, stepped } from '../geometry/shapes.js';
import { boughtPlate, joined, type Ply, plate } from '../joinery/plate.js';
import type { Hardware, Mark, Part } from '../model/part.js';
import { madeHolder } from '../standards/made-holder.js';
import { plainNumber } from '../units/print.js';
import { inStances, type Stance } from './loose.js';

/**
 * The dark slide of a holder that is cut from the sheet, the channel that it runs in, and the velvet at the open end. It lies
 * between what stands ahead (a face) and a thin board behind it, in which the velvet has room.
 */
export interface DarkSlide {
  readonly name: string;
  readonly ids: {
    readonly channel: string;
    /** The thin board behind the channel. */
    readonly behind: string;
    readonly slide: string;
    readonly label: string;
    /** Velvet on what lies ahead, beside the slide, and behind it. */
    readonly velvet: { readonly ahead: string; readonly beside: string; readonly behind: string };
  };
  /** Ids of what the velvet is glued to: what lies ahead of the channel, and behind the thin board. */
  readonly between: { readonly ahead: string; readonly behind: string };
  /** What the thin board is called, and where the velvet behind the slide is. */
  readonly words: { readonly behind: string; readonly velvet: string };
  readonly boards: { readonly channel: Ply; readonly lip: Ply; readonly slide: Ply };
  readonly seat: number;
  /** From the holder's face to the channel. */
  readonly depth: number;
  readonly width: number;
  readonly closedExtent: number;
  readonly openExtent: number;
  readonly image: { readonly width: number; readonly height: number };
  readonly slide: SlideSize;
  /** Holes of pins that reach as deep as the channel. */
  readonly pinHoles: readonly { readonly x: number; readonly y: number; readonly diameter: number }[];
  readonly stance: Stance;
  /** Of the velvet, standing. */
  readonly pile: number;
}

export interface SlideSize {
  /** Across the image, and of its head, which stops at the open end. */
  readonly width: number;
  readonly head: number;
  /** What it runs in. */
  readonly channel: number;
  /** From the axis to the end of the channel, and to the slide's own end when it is closed. */
  readonly channelEnd: number;
  readonly tip: number;
  /** How far it is drawn for an exposure: its end stays in the velvet. */
  readonly drawn: number;
}

interface SlideGiven {
  readonly imageShort: number;
  readonly imageLong: number;
  readonly width: number;
  readonly openExtent: number;
  /** Of a slide in its channel, both sides together. */
  readonly play: number;
}

/** Of the velvet trap along the slide, and how much of it the end of a drawn slide stays in. */
export const TRAP = 12;
const STAYS = 10;
/** The channel is wider at the trap, each side, for the velvet turned up beside the slide. */
export const TURNED_UP = 0.5;
/** The slide's end stops short of the end of its channel. */
const SHORT = 0.5;
/** The head is narrower than the holder, both sides together, so that it passes between the fences. */
const HEAD_LESS = 4;
/** The slide's head, and the label on it, beyond whatever fence stands at the open end. */
export const SLIDE_HEAD = 27;
const LABEL = { from: 11, height: 12, width: 64, letters: 6, cut: 4 };
/** Corners cut off the slide's end, so that it finds its way. */
const LEAD_IN = 3;
const VELVET_DENSITY = 300e-9;

export function sizeSlide({ imageShort, imageLong, width, openExtent, play }: SlideGiven): SlideSize {
  const own = imageShort + madeHolder.slideWider.value;
  const tip = imageLong / 2 + madeHolder.slideWider.value / 2;
  return {
    width: own,
    head: width - HEAD_LESS,
    channel: own + play,
    channelEnd: channelEnd(imageLong),
    tip,
    drawn: openExtent - STAYS + tip,
  };
}

/** Where the channel of a slide ends at the closed end: what enters the face has to stand clear of it. */
export const channelEnd = (imageLong: number): number => imageLong / 2 + madeHolder.slideWider.value / 2 + SHORT;

export function darkSlideParts(own: DarkSlide): readonly Part[] {
  const { name, ids, between, boards, slide, openExtent, closedExtent, width, depth, image, stance } = own;
  const group = { holder: name };
  const at = (behindFace: number, y = 0) => inStances(group, across(0, y, own.seat + behindFace), [stance]);
  const outer: Box = box(-width / 2, -closedExtent, width / 2, openExtent);
  // the velvet on what lies ahead lifts it to the board behind
  const slideAt = depth + boards.channel.thickness - boards.slide.thickness;
  const slideRear = slideAt + boards.slide.thickness;
  const behindAt = depth + boards.channel.thickness;
  const rear = behindAt + boards.lip.thickness;
  const [half, trapHalf] = [slide.channel / 2, slide.channel / 2 + TURNED_UP];
  const trapFrom = openExtent - TRAP;
  const trap = boxAt(0, openExtent - TRAP / 2, 2 * trapHalf, TRAP);
  const beside = trapHalf - slide.width / 2;
  const layer = { facing: 'rear', low: 0, group, grain: 'any' } as const;
  const velvet = (of: 'ahead' | 'beside' | 'behind', where: string, thickness: number, to: string, outline: Box) => ({
    id: ids.velvet[of],
    name: `velvet of the ${name}, ${where}`,
    thickness,
    outline: rectangle(outline),
    joins: joined('glue', to),
    massKg: (outline.right - outline.left) * (outline.top - outline.bottom) * boards.slide.thickness * VELVET_DENSITY,
  });
  const end = openExtent + SLIDE_HEAD;
  const { head, tip, drawn } = slide;
  const labelAt = openExtent + LABEL.from + LABEL.height / 2;
  const labelEnd = openExtent + LABEL.from + LABEL.height;
  return [
    plate({
      ...layer,
      id: ids.channel,
      name: `${name}, channel of the slide`,
      ply: boards.channel,
      outline: polygon([
        [-width / 2, -closedExtent],
        [width / 2, -closedExtent],
        [width / 2, openExtent],
        [trapHalf, openExtent],
        [trapHalf, trapFrom],
        [half, trapFrom],
        [half, -slide.channelEnd],
        [-half, -slide.channelEnd],
        [-half, trapFrom],
        [-trapHalf, trapFrom],
        [-trapHalf, openExtent],
        [-width / 2, openExtent],
      ]),
      holes: own.pinHoles.map(({ x, y, diameter }) => circle(x, y, diameter + 0.2)),
      places: at(depth),
      joins: joined('glue', ids.behind),
    }),
    plate({
      ...layer,
      id: ids.behind,
      name: `${name}, ${own.words.behind}`,
      ply: boards.lip,
      outline: stepped(outer, { top: [{ from: -trapHalf, to: trapHalf, depth: -TRAP }] }),
      holes: [rectangle(boxAt(0, 0, image.width, image.height))],
      places: at(behindAt),
      joins: joined('glue', between.behind),
    }),
    boughtPlate({
      ...velvet('ahead', 'on its face', slideAt - depth, between.ahead, trap),
      placements: at(depth),
    }),
    boughtPlate({
      ...velvet(
        'beside',
        'turned up beside the slide',
        boards.slide.thickness,
        ids.channel,
        boxAt(0, openExtent - TRAP / 2, beside, TRAP),
      ),
      placements: [-1, 1].flatMap((sign) =>
        inStances(group, across(sign * (trapHalf - beside / 2), 0, own.seat + slideAt), [stance]),
      ),
    }),
    boughtPlate({
      ...velvet('behind', own.words.velvet, rear - slideRear, between.behind, trap),
      placements: at(slideRear),
    }),
    plate({
      id: ids.slide,
      name: `${name}, dark slide`,
      ply: boards.slide,
      facing: 'front',
      low: 0,
      group,
      grain: 'any',
      outline: polygon([
        [-slide.width / 2, LEAD_IN - tip],
        [LEAD_IN - slide.width / 2, -tip],
        [slide.width / 2 - LEAD_IN, -tip],
        [slide.width / 2, LEAD_IN - tip],
        [slide.width / 2, openExtent],
        [head / 2, openExtent],
        [head / 2, end - LEAD_IN],
        [head / 2 - LEAD_IN, end],
        [LEAD_IN - head / 2, end],
        [-head / 2, end - LEAD_IN],
        [-head / 2, openExtent],
        [-slide.width / 2, openExtent],
      ]),
      marks: [wordAt('EXPOSED', labelAt, 'front')],
      places: inStances(
        group,
        compose(shift(0, drawn, 0), matrixOf('front', own.seat + slideAt, boards.slide.thickness)),
        [stance],
      ),
      joins: joined('slide', ids.channel, ids.velvet.ahead, ids.velvet.behind),
    }),
    plate({
      ...layer,
      id: ids.label,
      name: `${name}, white label on the slide`,
      ply: boards.lip,
      // one corner is cut, as on a sheet of film: it lies to the right above the word
      outline: polygon([
        [-LABEL.width / 2, openExtent + LABEL.from],
        [LABEL.width / 2, openExtent + LABEL.from],
        [LABEL.width / 2, labelEnd - LABEL.cut],
        [LABEL.width / 2 - LABEL.cut, labelEnd],
        [-LABEL.width / 2, labelEnd],
      ]),
      marks: [wordAt('UNEXPOSED', labelAt, 'rear')],
      places: at(slideRear, drawn),
      joins: joined('glue', ids.slide),
    }),
  ];
}

/** A word with its middle on the axis, as it is read from the front or from behind. */
function wordAt(text: string, y: number, from: 'front' | 'rear'): Mark {
  const { letters: height } = LABEL;
  const half = lettering(text, height).width / 2;
  return { text, x: from === 'front' ? half : -half, y: y - height / 2, height, turn: 0 };
}

export const velvetHardware = ({ name, slide, pile }: Pick<DarkSlide, 'name' | 'slide' | 'pile'>): Hardware => ({
  name: 'black velvet',
  size: `${TRAP} wide, ${Math.ceil(2 * (slide.channel + 2 * TURNED_UP) + 4)} long, pile ${plainNumber(pile)} mm`,
  count: 1,
  for: `trap of the dark slide, ${name}`,
});
