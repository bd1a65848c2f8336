import type { Design } from '../design/design.js';
import { type Claimed, claim, widest } from './claim.js';
import { type Figure, formula, keyed, measured, told } from './figure.js';
import type { LensOnBoard } from './lens-board/size.js';

/** What the user gave, or left to its default, under the symbols of the trade. */
export interface GivenFigures {
  readonly ply: Figure;
  readonly clearance: Figure;
  readonly railPlay: Figure;
  readonly focalLength: Figure;
  readonly flangeDistance: Figure;
  readonly maxAperture: Figure;
  readonly pupilMagnification: Figure;
  readonly coverage: { readonly diameter: Figure; readonly at: Figure } | null;
  readonly nearest: Figure;
  readonly farthest: Figure;
  readonly pastInfinity: Figure;
  readonly pastNearest: Figure | null;
  readonly imageShort: Figure;
  readonly imageLong: Figure;
  readonly modulus: Figure;
  readonly glass: { readonly depth: Figure; readonly thickness: Figure; readonly index: Figure };
  readonly holders: readonly HolderFigures[];
}

export interface HolderFigures {
  readonly name: string;
  readonly filmDepth: Figure;
  readonly width: Figure;
  readonly length: Figure;
  readonly closedEnd: Figure | null;
}

export function givenFigures({ plywood, workshop, lens, focus, format, groundGlass, holders }: Design): GivenFigures {
  const { coverage } = lens;
  return {
    ply: keyed('t', 'thickness of the plywood, the thickest reading', 'plywood.thickness', plywood.thickness),
    clearance: keyed(
      'c',
      'slide clearance a side between the boxes',
      'workshop.slideClearance',
      workshop.slideClearance,
    ),
    railPlay: keyed('y_r', 'play a side between sole and rails', 'workshop.railPlay', workshop.railPlay),
    focalLength: keyed('f', 'focal length', 'lens.focalLength', lens.focalLength),
    flangeDistance: keyed(
      'V',
      'flange distance, lens seat to film at infinity',
      'lens.flangeDistance',
      lens.flangeDistance,
    ),
    maxAperture: keyed('N', 'widest stop', 'lens.maxAperture', lens.maxAperture, 'f-number'),
    pupilMagnification: keyed(
      'P',
      'pupil magnification, exit over entrance pupil',
      'lens.pupilMagnification',
      lens.pupilMagnification,
      'times',
    ),
    coverage: coverage && {
      diameter: keyed('D', 'image circle as stated', 'lens.coverage.diameter', coverage.diameter),
      at: keyed('m_0', 'magnification that it is stated for', 'lens.coverage.at', coverage.at, 'magnification'),
    },
    nearest: keyed(
      'm_near',
      'nearest focus asked, as a magnification',
      'focus.nearest',
      focus.nearest,
      'magnification',
    ),
    farthest: keyed('m_far', 'farthest focus, as a magnification', 'focus.farthest', focus.farthest, 'magnification'),
    pastInfinity: keyed('p', 'run past infinity', 'focus.pastInfinity', focus.pastInfinity),
    pastNearest:
      focus.pastNearest === null ? null : keyed('p_n', 'run past the nearest', 'focus.pastNearest', focus.pastNearest),
    imageShort: keyed('i_w', 'short side of the image', 'format', format.image.short),
    imageLong: keyed('i_h', 'long side of the image', 'format', format.image.long),
    modulus: keyed('E', 'modulus of elasticity of the sheet', 'workshop.modulus', workshop.modulus, 'N/mm²'),
    glass: {
      depth: keyed('T_f', 'holder seat to the frosted face, physical', 'groundGlass.depth', groundGlass.depth),
      thickness: keyed('t_g', 'thickness of the ground glass', 'groundGlass.thickness', groundGlass.thickness),
      index: keyed(
        'n',
        'refractive index of the glass',
        'groundGlass.refractiveIndex',
        groundGlass.refractiveIndex,
        'times',
      ),
    },
    holders: holders.map((h, i): HolderFigures => {
      const key = `holders[${i}]`;
      const mark = i + 1;
      return {
        name: h.name,
        filmDepth: keyed(`T_${mark}`, `film depth of the ${h.name}`, `${key}.filmDepth`, h.filmDepth),
        width: keyed(`w_${mark}`, `width of the ${h.name}`, `${key}.width`, h.width),
        length: keyed(`l_${mark}`, `length of the ${h.name}`, `${key}.length`, h.length),
        closedEnd:
          h.closedEnd === null
            ? null
            : keyed(`e_${mark}`, `closed end of the ${h.name}`, `${key}.closedEnd`, h.closedEnd),
      };
    }),
  };
}

/** The greatest closed end from the axis, over all holders; `extents` as the back knows them. */
export function closedExtentOf(
  { holders, imageLong }: GivenFigures,
  extents: readonly { readonly closedExtent: number }[],
): Claimed {
  const claims = holders.map(({ name, length, closedEnd }, i) => {
    const own = told(
      `E_${i + 1}`,
      `closed end of the ${name}, from the axis`,
      extents[i]?.closedExtent ?? 0,
      closedEnd
        ? () => formula`${imageLong} / 2 + ${closedEnd}`
        : () => formula`${imageLong} / 2 + min(20, (${length} - ${imageLong}) / 2)`,
    );
    return claim(`the ${name}`, formula`${own}`);
  });
  return widest('E_max', 'greatest closed end of a holder, from the axis', atLeastOne(claims));
}

export const widestHolder = ({ holders }: GivenFigures): Claimed =>
  widest(
    'w_h',
    'width of the widest holder',
    atLeastOne(holders.map(({ name, width }) => claim(`the ${name}`, formula`${width}`))),
  );

/** A design has at least one holder. */
export const atLeastOne = <T>(items: readonly T[]): readonly [T, ...T[]] => {
  const [first, ...others] = items;
  if (first === undefined) throw new Error('a list that cannot be empty is');
  return [first, ...others];
};

/** A clamp as the lens board sees it. */
interface ClampSizes {
  readonly length: number;
  readonly leastGrip: number;
  readonly flangeDiameter: number;
}

/** The lens on its board; `clamp` where one holds it. */
export function lensOnBoard({ lens }: Design, ply: Figure, clamp: ClampSizes | null): LensOnBoard {
  const { barrel, flange, mount } = lens;
  const grip = keyed('a_g', 'length of the barrel that can be gripped', 'lens.barrel.grip', barrel.grip);
  return {
    ply,
    grip,
    diameter: keyed('D_b', 'diameter of the barrel', 'lens.barrel.diameter', barrel.diameter),
    rear: keyed('a_r', 'length of the barrel behind the grip', 'lens.barrel.rear', barrel.rear),
    rearDiameter: keyed('D_r', 'diameter of the rear rim', 'lens.barrel.rearDiameter', barrel.rearDiameter),
    disc: clamp
      ? measured('D_c', 'the flange of the clamp', clamp.flangeDiameter, 'the clamp, sized round the barrel')
      : flange && mount.by === 'flange'
        ? keyed('D_f', 'the flange of the lens', 'lens.flange.diameter', flange.diameter)
        : null,
    clampLength: clamp && clampLength(grip, clamp.leastGrip),
  };
}

const clampLength = (grip: Figure, leastGrip: number): Figure =>
  widest('l_c', 'length of the clamp', [
    claim('what it grips of the barrel', formula`${grip}`),
    claim(
      'what its pinch bolts need',
      formula`${measured('l_p', 'least length of the clamp', leastGrip, 'flange, nuts and what stands round them')}`,
    ),
  ]);
