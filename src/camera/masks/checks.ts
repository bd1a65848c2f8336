import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { holeRound, partOf, platesIn, type StandingPlate } from '../../assembly/measure.js';
import { spanOf } from '../../assembly/span-of.js';
import { boundsOfPoints } from '../../geometry/path.js';
import type { Finding } from '../../model/finding.js';
import { softEdge } from '../../optics/light-cone.js';
import { fNumber, mm, tenth } from '../../units/print.js';
import type { FilmMask, Masks } from './size.js';

interface Lying {
  readonly mask: FilmMask;
  /** Seat to the rear face of the mask in its place on the ledge; below 0 it stands proud. */
  readonly below: number;
  /** How far it lies on the ledge at its long sides and at its short ones, pushed to the other side. */
  readonly bears: { readonly beside: number; readonly above: number };
}

/** Each mask put into the back: it is packed elsewhere, and so its place is reckoned from the parts that make it. */
function lying({ masks }: Masks, build: Build): readonly Lying[] {
  const deep = spanOf(build, 'B1').z[1] - spanOf(build, 'B6').z[1];
  const [ledge, back] = ['B6', 'B1'].map((id) => openingOf(platesIn(partOf(build, id))[0]));
  return masks.map((mask) => {
    const plates = platesIn(partOf(build, mask.id));
    const thick = Math.max(...plates.map(({ high }) => high)) - Math.min(...plates.map(({ low }) => low));
    const { left, right, bottom, top } = boundsOfPoints(plates[0]?.outline ?? [{ x: 0, y: 0 }]);
    const bears = (own: number, inner: number, whole: number) => (own - inner) / 2 - Math.max(0, (whole - own) / 2);
    return {
      mask,
      below: deep - thick,
      bears: {
        beside: bears(right - left, ledge?.width ?? 0, back?.width ?? 0),
        above: bears(top - bottom, ledge?.height ?? 0, back?.height ?? 0),
      },
    };
  });
}

/** A plate's opening round the axis. */
function openingOf(plate: StandingPlate | undefined) {
  const hole = plate && holeRound(plate);
  if (!hole) return { width: 0, height: 0 };
  const { left, right, bottom, top } = boundsOfPoints(hole);
  return { width: right - left, height: top - bottom };
}

/** Below the seat: more than what plies and glue stray, less than rattles. Wood under a mask at two sides. Choices of ours. */
const BELOW = { least: 0.1, most: 0.5 };
const BEARING = 0.8;

/** mask-held: a mask bears on its ledge at two sides at least, and lies below the seat, where the holder keeps it. */
export const maskHeld = (own: Masks, build: Build): readonly Finding[] =>
  lying(own, build).flatMap(({ mask, below, bears }) => {
    const rule = { rule: 'mask-held', level: 'error', unit: 'mm', about: 'masks' } as const;
    const bearing = Math.max(bears.beside, bears.above);
    const proud = below < BELOW.least - ROUNDING;
    return [
      ...unless(!proud && below <= BELOW.most + ROUNDING, {
        ...rule,
        value: below,
        limit: proud ? BELOW.least : BELOW.most,
        message: proud
          ? `The mask ${mask.name} (${mask.id}) lies ${mm(tenth(below))} below the seat: by what plies and glue stray it stands proud, and the holder rocks on it.`
          : `The mask ${mask.name} (${mask.id}) lies ${mm(tenth(below))} below the seat: it falls against the film.`,
        hint: proud ? 'Lay more card under the ledge B6.' : 'Lay less card under the ledge B6.',
      }),
      ...unless(bearing >= BEARING - ROUNDING, {
        ...rule,
        value: bearing,
        limit: BEARING,
        message: `The mask ${mask.name} (${mask.id}) has ${mm(tenth(bearing))} of ledge under it: it falls through into the box. The light to the film leaves no more.`,
        hint: 'Leave masks out, and lay black paper on the film.',
      }),
    ];
  });

/** A stop at which portraits are taken, to show what stopping down does to a border. */
const STOPPED = 22;

/** mask-edge: how soft the border of each picture is, at the farthest focus, where the pupil is nearest. */
export const maskEdge = (own: Masks, build: Build): readonly Finding[] =>
  lying(own, build).map(({ mask: { id, name, holder, image, optics }, below }) => {
    const { filmDepth, farthest, nearest, pupil, maxAperture } = optics;
    const distance = filmDepth + below;
    const soft = (aperture: number) =>
      softEdge({ distance, pupil: (pupil * maxAperture) / aperture, pupilDistance: farthest });
    const opening = openingOf(platesIn(partOf(build, id))[0]);
    const pictureAt = (from: number) => opening.width / (1 - distance / from);
    const wide = soft(maxAperture);
    return {
      rule: 'mask-edge',
      level: 'note',
      value: wide,
      unit: 'mm',
      about: 'masks',
      message: `The border of the mask ${name} (${id}) is soft over ${mm(tenth(wide))} at ${fNumber(maxAperture)} and ${mm(tenth(soft(STOPPED)))} at ${fNumber(STOPPED)}, ${mm(tenth(distance))} ahead of the film of the ${holder}. The picture is ${mm(tenth(pictureAt(farthest)))} wide at the farthest focus and ${mm(tenth(pictureAt(nearest)))} at the nearest; ${mm(tenth(image.width))} were asked.`,
      hint: 'Stop down for a crisp border; a holder with less depth gives a crisper one.',
    };
  });

export const maskChecks = [maskHeld, maskEdge];
