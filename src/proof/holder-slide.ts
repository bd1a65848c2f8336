import { bodiesOf } from '../assembly/bodies.js';
import type { Build, Setup } from '../assembly/build.js';
import { isDarkSlide, isHolderFace, isOfHolder } from '../assembly/holders.js';
import { placedIn } from '../assembly/placed-parts.js';
import { stands } from '../assembly/setups.js';
import type { Design, Holder } from '../design/design.js';
import { flatten } from '../geometry/path.js';
import { apply, compose, shift } from '../geometry/placement.js';
import type { Way } from '../model/assembly-move.js';
import type { Finding } from '../model/finding.js';
import type { Part } from '../model/part.js';
import { mm, tenth } from '../units/print.js';
import { exposing } from './landmarks.js';
import { type Block, blocksOf, inTheWay } from './straight-line.js';

/** A holder that is made, with its dark slide drawn for an exposure, as it lies upright and without an insert. */
export interface HolderWithSlide {
  readonly holder: Holder;
  readonly setup: Setup;
  /** All but the slide, the shell first; and the slide with what is glued to it. Each part in its one place alone. */
  readonly shell: readonly Part[];
  readonly slide: readonly Part[];
  /** How far the slide is pushed in, downwards, until its head stops it. */
  readonly drawn: number;
}

export function holdersWithSlides({ holders }: Design, build: Build): readonly HolderWithSlide[] {
  return holders.flatMap((holder) => {
    const setup = exposing(build, holder).find((one) => one.orientation === 'upright' && one.insert === undefined);
    const own = build.parts.filter((part) => isOfHolder(part, holder.name));
    const face = own.find(isHolderFace);
    const sliding = own.find(isDarkSlide);
    if (setup === undefined || face === undefined || sliding === undefined) return [];
    const standing = [face, ...own.filter((part) => part !== face)].flatMap((part): readonly Part[] => {
      const placements = part.placements.filter((one) => stands(one, setup));
      return placements.length === 0 ? [] : [{ ...part, placements }];
    });
    const bodies = bodiesOf(standing);
    const isSlide = ({ id }: Part) => bodies.of(id) === bodies.of(sliding.id);
    const end = placedIn(build, face.id)?.boxes.find(({ placement }) => stands(placement, setup))?.extent.y[1] ?? 0;
    return [
      {
        holder,
        setup,
        shell: standing.filter((part) => !isSlide(part)),
        slide: standing.filter(isSlide),
        drawn: Math.max(0, shoulderOf(standing.find(({ id }) => id === sliding.id)) - end),
      },
    ];
  });
}

/** y of the shoulder of a slide's head: the lowest corner of where it is widest. */
function shoulderOf(slide: Part | undefined): number {
  if (slide?.kind !== 'flat') return 0;
  const [place] = slide.placements;
  if (place === undefined) return 0;
  const corners = flatten(slide.outline).map((point) => apply(place.matrix, { ...point, z: 0 }));
  const widest = Math.max(...corners.map(({ x }) => Math.abs(x)));
  return Math.min(...corners.filter(({ x }) => Math.abs(x) > widest - SAME).map(({ y }) => y));
}

/** Corners as far out as this are of one edge, mm. */
const SAME = 0.5;

/** Parts shifted along the way of a slide, inwards. */
export const pushedIn = (parts: readonly Part[], by: number): readonly Part[] =>
  parts.map((part) => ({
    ...part,
    placements: part.placements.map((one) => ({ ...one, matrix: compose(shift(0, -by, 0), one.matrix) })),
  }));

/** The slide comes to its place from the open end, which lies upwards. */
const INWARDS: Way = { axis: 'y', sign: -1 };

/** slide-path: the dark slide of a holder that is made, from outside to where its head stops it, past all that the holder is made of. */
export const slidesRun = (design: Design, build: Build): readonly Finding[] =>
  holdersWithSlides(design, build).flatMap(({ holder, shell, slide, drawn }): readonly Finding[] => {
    const still = blocksOf(shell).filter(isPrism);
    const met = blocksOf(pushedIn(slide, drawn))
      .filter(isPrism)
      .flatMap((moving) =>
        still.filter((one) => inTheWay(moving, one, INWARDS)).map((one) => ({ moving, still: one })),
      );
    const [first] = met;
    if (first === undefined) return [];
    const free = Math.max(0, first.moving.extent.y[0] + drawn - first.still.extent.y[0]);
    return [
      {
        rule: 'slide-path',
        level: 'error',
        value: free,
        limit: drawn,
        unit: 'mm',
        about: 'workshop.boards.slide',
        message: `The dark slide of the ${holder.name} does not close: ${first.moving.piece.part.id} (${first.moving.piece.part.name}) meets ${first.still.piece.part.id} (${first.still.piece.part.name}) on its way of ${mm(tenth(drawn))}.`,
        hint: `Make the channel wider or deeper than the slide, or keep ${first.still.piece.part.id} out of it.`,
      },
    ];
  });

const isPrism = ({ prism }: Block): boolean => prism !== null;
