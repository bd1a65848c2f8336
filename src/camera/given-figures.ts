import { type Design, type Holder, windowTakes } from '../design/design.js';
import { madeHolder } from '../standards/made-holder.js';
import { tank } from '../standards/tank.js';
import { type Claimed, claim, widest } from './claim.js';
import { constant, type Figure, type Formula, formula, keyed, measured, PRACTICE, reckoned, told } from './figure.js';
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
  /** As it was read on the glued holder; null where nobody did. */
  readonly filmStands: Figure | null;
  readonly width: Figure;
  readonly length: Figure;
  readonly closedEnd: Figure | null;
}

export function givenFigures(design: Design): GivenFigures {
  const { plywood, workshop, lens, focus, format, groundGlass, holders } = design;
  const { coverage } = lens;
  const ply = keyed('t', 'thickness of the plywood, the thickest reading', 'plywood.thickness', plywood.thickness);
  const imageLong = keyed('i_h', 'long side of the image', 'format', format.image.long);
  return {
    ply,
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
    pastInfinity: design.builtFor
      ? measured('p', 'run past infinity', focus.pastInfinity, SLIDE_AS_BUILT)
      : keyed('p', 'run past infinity', 'focus.pastInfinity', focus.pastInfinity),
    pastNearest: design.builtFor
      ? measured('p_n', 'run past the nearest', focus.pastNearest ?? 0, SLIDE_AS_BUILT)
      : focus.pastNearest === null
        ? null
        : keyed('p_n', 'run past the nearest', 'focus.pastNearest', focus.pastNearest),
    imageShort: keyed('i_w', 'short side of the image', 'format', format.image.short),
    imageLong,
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
      const closedEnd =
        h.closedEnd === null
          ? null
          : keyed(`e_${mark}`, `closed end of the ${h.name}`, `${key}.closedEnd`, h.closedEnd);
      // what nobody wrote of a holder that is made comes from its construction
      const built = h.make !== undefined && closedEnd ? constructionOf(design, h, { ply, imageLong, closedEnd }) : null;
      const size = (symbol: string, what: string, name: 'filmDepth' | 'width' | 'length'): Figure =>
        built !== null && design.defaulted.includes(`${key}.${name}`)
          ? told(`${symbol}_${mark}`, `${what} of the ${h.name}`, h[name], built[name], { source: PRACTICE })
          : keyed(`${symbol}_${mark}`, `${what} of the ${h.name}`, `${key}.${name}`, h[name]);
      return {
        name: h.name,
        filmDepth: size('T', 'film depth', 'filmDepth'),
        filmStands: standsAt(design, h, mark, key),
        width: size('w', 'width', 'width'),
        length: size('l', 'length', 'length'),
        closedEnd,
      };
    }),
  };
}

/** Where the film of a holder works that was measured; null where nobody did. */
function standsAt({ groundGlass }: Design, { name, measured: read, window }: Holder, mark: number, key: string) {
  if (read === undefined) return null;
  const depth = keyed(`T_m${mark}`, `film depth of the ${name} as measured`, `${key}.measured`, read);
  if (window === null) return depth;
  const shift = windowTakes(window, groundGlass.refractiveIndex);
  const deeper = constant('d_w', 'how much deeper the film looks through the window', shift, 'thickness × (1 − 1/n)');
  return reckoned(
    `T_w${mark}`,
    `film depth of the ${name} as measured, through its window`,
    formula`${depth} - ${deeper}`,
  );
}

const SLIDE_AS_BUILT = 'what the slide of the camera as it was built leaves this lens';

interface Construction {
  readonly filmDepth: () => Formula;
  readonly width: () => Formula;
  readonly length: () => Formula;
}

/** How the sizes of a holder come about that is cut from the sheet. */
function constructionOf(
  { workshop: { boards }, groundGlass }: Design,
  { make, window, filmDepth }: Holder,
  { ply, imageLong, closedEnd }: { readonly ply: Figure; readonly imageLong: Figure; readonly closedEnd: Figure },
): Construction {
  const { pocketPlay, rim, openEnd } = madeHolder;
  const channel = keyed('b_c', 'board that the slide runs in', 'workshop.boards.channel', boards.channel);
  const lip = keyed('b_l', 'lip that the film lies against', 'workshop.boards.lip', boards.lip);
  const sheet = keyed('s_w', 'width of the sheet that lies in it', 'format', make?.sheet.width ?? 0);
  const trap = constant('s_o', 'from the image to the open end', openEnd.value.usual, openEnd.source);
  const length = () => formula`${imageLong} + ${closedEnd} + ${trap}`;
  if (window === null) {
    const play = constant('s_p', 'play of the sheet in its pocket', pocketPlay.value, pocketPlay.source);
    const wood = constant('s_r', 'wood beside the pocket', rim.value, rim.source);
    return {
      filmDepth: () => formula`${ply} + ${channel} + ${lip}`,
      width: () => formula`${sheet} + ${play} + 2 ${wood}`,
      length,
    };
  }
  const { chamberMore, glassMore, rim: round } = tank;
  const shift = windowTakes(window, groundGlass.refractiveIndex);
  const front = ply.value + boards.channel + boards.lip;
  const behind = Math.round((filmDepth + shift - front - boards.lip) / ply.value);
  const plies = constant('k_c', 'plies of window and chamber, deep enough to process in', behind, PRACTICE, 'times');
  const deeper = constant('d_w', 'how much deeper the film looks through the window', shift, 'thickness × (1 − 1/n)');
  const chamber = constant('s_c', 'chamber wider than the sheet', chamberMore.value, chamberMore.source);
  const glass = constant('s_g', 'window wider than the chamber', glassMore.value, glassMore.source);
  const wood = constant('s_r', 'wood beside the window', round.value, round.source);
  return {
    filmDepth: () => formula`${ply} + ${channel} + ${lip} + ${plies} ${ply} + ${lip} - ${deeper}`,
    width: () => formula`${sheet} + ${chamber} + ${glass} + 2 ${wood}`,
    length,
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
