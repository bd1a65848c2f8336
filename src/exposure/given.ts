import type { Design, Sitting } from '../design/design.js';
import type { ExposureGiven, GivenFilter, Reciprocity } from '../model/exposure.js';
import type { Assumed } from '../model/sitting.js';
import { magnificationAt } from '../optics/conjugates.js';
import { circleOfConfusion } from '../optics/depth.js';
import { diagonal } from '../optics/image-circle.js';
import { askUnit } from '../units/length.js';
import { fNumber, mm, plainNumber } from '../units/print.js';
import { factorOfDensity } from './filters.js';
import { HEAD, magnificationOfHead } from './head.js';
import { layOver, tested } from './lay-over.js';
import { readingOf } from './reading.js';
import { refuse, type SittingRefused } from './refused.js';

/** What a sitting is reckoned from, and what had to be taken for granted. */
export interface SittingGiven {
  /** The design's sitting with today's laid over it. */
  readonly sitting: Sitting;
  readonly given: ExposureGiven;
  /** Whether the reading was found by a test with the camera, and not by a meter. */
  readonly tested: boolean;
  readonly assumed: readonly Assumed[];
  /** What would have to be said for an energy or a time; empty where one is reckoned. */
  readonly wanting: readonly string[];
}

/** Resolves what the design and today's flags say into what an exposure is reckoned from. */
export function exposureGiven(design: Design, today: Sitting = {}): SittingGiven | SittingRefused {
  const sitting = layOver(design.sitting, today);
  const { lens, format } = design;
  const place = placeOf(design, sitting);
  if ('refused' in place) return place;
  const widest = design.lens.maxAperture;
  if (sitting.aperture !== undefined && sitting.aperture < widest)
    return refuse(
      `${fNumber(sitting.aperture)} is wider than the lens opens.`,
      `Set ${fNumber(widest)} or a smaller stop; lens.maxAperture says how wide it opens.`,
    );
  const filters = filtersOf(sitting, sitting.filterSet ?? null);
  if (filters === null)
    return refuse(
      `No filter set is called "${sitting.filterSet}".`,
      `The design has ${(sitting.filterSets ?? []).map(({ name }) => name).join(', ') || 'none'}.`,
    );
  const reciprocity = reciprocityOf(sitting);
  const found = readingOf(sitting, today, reciprocity);
  if ('refused' in found) return found;
  const assumed: readonly (Assumed | null)[] = [
    ...place.assumed,
    sitting.aperture === undefined
      ? { key: 'aperture', message: `The stop is ${fNumber(widest)}, the widest of the lens.` }
      : null,
    design.defaulted.includes('lens.pupilMagnification')
      ? {
          key: 'lens.pupilMagnification',
          message: 'The pupil magnification is 1, as of a lens that looks alike from both ends.',
        }
      : null,
    ...found.assumed,
    {
      key: 'circleOfConfusion',
      message: `A point is sharp up to ${mm(round(circle(format)))} across, the diagonal over 1500.`,
    },
  ];
  const given: ExposureGiven = {
    lens: { focalLength: lens.focalLength, pupilMagnification: lens.pupilMagnification },
    circleOfConfusion: circle(format),
    magnification: place.magnification,
    aperture: sitting.aperture ?? widest,
    speed: sitting.speed ?? null,
    filters,
    reading: found.reading,
    lampDistance: sitting.lampDistance ?? null,
    flashMost: sitting.flashMost ?? null,
    reciprocity,
  };
  return {
    sitting,
    given,
    tested: found.reading !== null && tested(sitting),
    assumed: assumed.filter((each) => each !== null),
    wanting: found.wanting,
  };
}

/** A thousandth is finer than anyone's eye. */
const round = (value: number): number => Math.round(value * 1000) / 1000;

const circle = ({ image }: Design['format']): number =>
  circleOfConfusion(diagonal({ width: image.short, height: image.long }));

/** Life size twenty times over: nearer no camera of this kind works, and the file takes no such magnification either. */
const LARGEST = 20;

/** How large the sitter is to be, by whichever of the three ways was said. */
function placeOf(
  { lens, format }: Design,
  { subject, magnification: m, head, headHeight }: Sitting,
): { readonly magnification: number; readonly assumed: readonly Assumed[] } | SittingRefused {
  if (m !== undefined) return { magnification: m, assumed: [] };
  if (subject !== undefined) {
    const at = magnificationAt(lens.focalLength, subject);
    if (at !== null && at > LARGEST)
      return refuse(
        `A subject at ${mm(subject)} lies so near the focal length of ${mm(lens.focalLength)} that its image would be ${plainNumber(at, 0)} times life size.`,
        'Give a longer distance from the front principal plane, such as --subject 1.2m.',
      );
    if (at !== null) return { magnification: at, assumed: [] };
    return refuse(
      `A subject at ${mm(subject)} lies within the focal length of ${mm(lens.focalLength)}: it has no image.`,
      `${askUnit(subject)}Give a longer distance from the front principal plane, such as --subject 1.2m.`,
    );
  }
  if (head === undefined)
    return refuse(
      'Nobody says where the sitter is.',
      'Give --subject 1.2m, --magnification 1:4 or --head 90mm, or write one of them under sitting in the design.',
    );
  const onGlass = 'height' in head ? head.height : head.share * format.image.long;
  const at = magnificationOfHead(onGlass, headHeight);
  if (at > LARGEST)
    return refuse(
      `A head of ${mm(headHeight ?? HEAD)} that is ${mm(round(onGlass))} high on the glass is ${plainNumber(at, 0)} times life size.`,
      'Give its height on the glass, such as --head 90mm, and in life, such as --head-height 250mm.',
    );
  const assumed: readonly (Assumed | null)[] = [
    headHeight === undefined
      ? { key: 'headHeight', message: `The head is ${mm(HEAD)} high in life, chin to crown.` }
      : null,
    'share' in head
      ? {
          key: 'head',
          message: `The picture stands upright, ${mm(format.image.long)} high, so the head is ${mm(round(onGlass))} on the glass.`,
        }
      : null,
  ];
  return {
    magnification: at,
    assumed: assumed.filter((each) => each !== null),
  };
}

/**
 * What stands in the light: the single factors and densities, and a set by its name.
 *
 * @returns null where no set has that name
 */
export function filtersOf(
  { filter = [], density = [], filterSets = [] }: Sitting,
  setName: string | null,
): readonly GivenFilter[] | null {
  const set =
    setName === null || setName === 'none' ? { filters: [] } : filterSets.find(({ name }) => name === setName);
  if (set === undefined) return null;
  const all = [
    ...set.filters,
    ...filter.map((factor) => ({ factor })),
    ...density.map((each) => ({ density: each })),
  ].map(
    (each: {
      readonly name?: string | undefined;
      readonly factor?: number | undefined;
      readonly density?: number | undefined;
    }): GivenFilter =>
      each.density === undefined
        ? { name: each.name ?? `factor ${plainNumber(each.factor ?? 1)}`, factor: each.factor ?? 1 }
        : { name: each.name ?? `density ${plainNumber(each.density)}`, factor: factorOfDensity(each.density) },
  );
  // what takes no light is not there: so a filter of the file is taken out for a day
  return all.filter(({ factor }) => factor !== 1);
}

const reciprocityOf = ({ reciprocity }: Sitting): Reciprocity | null =>
  reciprocity === undefined
    ? null
    : typeof reciprocity === 'number'
      ? { exponent: reciprocity }
      : { table: reciprocity };
