import type { Drawing } from '../model/page.js';
import { coverDrawing } from './cover.js';
import { elevationDrawings } from './elevation.js';
import { explodedDrawings } from './exploded.js';
import { lightTrapDrawing } from './light-trap.js';
import { pouringDrawings } from './pouring.js';
import { farEnd, sectionDrawing } from './section.js';
import { type StepGiven, stepDrawing } from './step-drawing.js';

/** Every drawing of a camera. */
export interface CameraDrawings {
  readonly sections: readonly Drawing[];
  readonly elevations: readonly Drawing[];
  readonly lightTrap: Drawing;
  readonly exploded: readonly Drawing[];
  /** Of each holder that is poured into. */
  readonly pouring: readonly Drawing[];
  readonly cover: Drawing;
  /** By the numbers of the steps, from the first. */
  readonly steps: readonly { readonly number: number; readonly drawing: Drawing }[];
}

/** @param onDrawn is told of each step that is drawn, as a share of all of them */
export function drawCamera(given: StepGiven, onDrawn: (share: number) => void = () => {}): CameraDrawings {
  const numbers = [...new Set(given.moves.map(({ step }) => step))].sort((a, b) => a - b);
  return {
    cover: coverDrawing(given),
    sections: [sectionDrawing(given, farEnd(given.plan)), sectionDrawing(given, 'nearest')],
    elevations: elevationDrawings(given),
    lightTrap: lightTrapDrawing(given),
    exploded: explodedDrawings(given),
    pouring: pouringDrawings(given),
    steps: numbers.map((number, i) => {
      const drawing = stepDrawing(given, number);
      onDrawn((i + 1) / numbers.length);
      return { number, drawing };
    }),
  };
}
