import type { Design } from '../design/design.js';
import {
  type Camera,
  endOfSlide,
  markOut,
  type SetOutCamera,
  type Standing,
  setOutCamera,
  sizeCamera,
} from './camera.js';

/**
 * A new lens before boxes that stand. The old camera is sized once more, for the lens and the focus that it was built for,
 * and what follows from another lens is all that is left to choose: its board, its mount, its marks on the scale.
 *
 * How far the slide runs past both ends of the new focus is no wish any more but what is there; it may be less than nothing.
 */
interface AsItStands {
  /** With the slide that is there as its run past infinity and past the nearest. */
  readonly design: Design;
  readonly bench: SetOutCamera;
  readonly stands: Standing | null;
}

function setOutAsItStands(asked: Design): AsItStands {
  const { builtFor, ...rest } = asked;
  if (builtFor === undefined) return { design: asked, bench: setOutCamera(asked), stands: null };
  // plates for the slot of the new lens were not there
  const { stops: _stops, ...old } = rest;
  const camera = sizeCamera({ ...old, ...builtFor });
  const { closest, farthest, reserve } = camera.settingOut;
  const stands: Standing = { ...camera, end: farthest.value + reserve };
  const { rod } = setOutCamera(asked, stands);
  const design: Design = {
    ...asked,
    focus: {
      ...asked.focus,
      // each millimetre past infinity brings the seat one nearer to the panel
      pastInfinity: asked.focus.pastInfinity + rod.closest.value - closest.value,
      pastNearest: stands.end - rod.farthest.value,
    },
  };
  return { design, bench: setOutCamera(design, stands), stands };
}

/** The camera of a design, and that design with the slide that it has. */
export function sizeAsItStands(asked: Design): { readonly design: Design; readonly camera: Camera } {
  const { design, bench, stands } = setOutAsItStands(asked);
  return { design, camera: markOut(design, bench, stands) };
}

/**
 * The nearest focus of the camera as it is cut, at the end of its reserve, as a magnification. What two boxes *could*
 * reach is another thing: the slot of this tailboard ends before. The rod knows it, before anything is cut out.
 */
export function nearestFocus(asked: Design): number {
  const { design, bench } = setOutAsItStands(asked);
  return endOfSlide(design, bench.rod);
}
