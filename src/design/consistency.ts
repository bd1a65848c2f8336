import { FILM_REBATE, formatNamed } from '../standards/formats.js';
import { publishedHolderFor } from '../standards/holders.js';
import { mm } from '../units/print.js';
import type { Fault } from './explain.js';
import type { Focus } from './focus-field.js';
import { slugOf } from './names.js';
import type { Written, WrittenHolder } from './schema.js';
import { sittingFaults } from './sitting-faults.js';
import { type RemnantFiles, stockFaults } from './stock.js';

/** Names that the virtual build gives to its own groups of parts. */
const GROUPS = ['front', 'rear', 'back', 'loose'];

const fault = (path: Fault['path'], what: string, accepted: string, at: Fault['at'] = 'value'): Fault => ({
  path,
  at,
  what,
  accepted,
});

/** What cannot be true of two keys together, though each of them could be. */
export function inconsistencies(written: Written, files: RemnantFiles): readonly Fault[] {
  return [
    ...imageFits(written),
    ...barrelGiven(written),
    ...flangeHoldsScrews(written),
    ...focusInOrder(written),
    ...(written.holders ?? []).flatMap(holderAddsUp),
    ...holdersGiven(written),
    ...holderNamesDiffer(written),
    ...stockFaults(written, files),
    ...sittingFaults(written),
  ];
}

export function imageFits({ format }: Pick<Written, 'format'>): readonly Fault[] {
  if (typeof format === 'string') return [];
  if (format.image === undefined && Math.min(format.width, format.height) <= FILM_REBATE)
    return [
      fault(
        ['format'],
        `A format ${mm(format.width)} by ${mm(format.height)} is hidden by its holder whole.`,
        'Write the unit if inches were meant, such as { width: 5 in, height: 7 in }.',
      ),
    ];
  if (format.image === undefined) return [];
  const [short, long] = [Math.min(...format.image), Math.max(...format.image)];
  const [width, height] = [Math.min(format.width, format.height), Math.max(format.width, format.height)];
  if (short <= width && long <= height) return [];
  return [
    fault(
      ['format', 'image'],
      `The image, ${mm(short)} by ${mm(long)}, is larger than the format.`,
      `Write what the film receives, at most [${mm(width)}, ${mm(height)}].`,
    ),
  ];
}

function barrelGiven({ lens }: Written): readonly Fault[] {
  if (lens.mount.by !== 'clamp' || lens.barrel !== undefined) return [];
  return [
    fault(
      ['lens', 'barrel'],
      'It is not given, and the lens is clamped by it.',
      'Measure the lens and write barrel: { diameter: 58 mm, grip: 22 mm, front: 18 mm, rear: 31 mm, frontDiameter: 64 mm, rearDiameter: 52 mm }.',
    ),
  ];
}

export function flangeHoldsScrews({
  lens: { flange },
}: {
  readonly lens: Pick<Written['lens'], 'flange'>;
}): readonly Fault[] {
  if (flange === undefined || flange.boltCircle < flange.diameter) return [];
  return [
    fault(
      ['lens', 'flange', 'boltCircle'],
      `A bolt circle of ${mm(flange.boltCircle)} lies outside a flange of ${mm(flange.diameter)}.`,
      'Write the diameter of the circle on which the screws stand.',
    ),
  ];
}

function focusInOrder({ lens, focus }: Written): readonly Fault[] {
  const f = lens.focalLength;
  const faults = (['nearest', 'farthest'] as const).flatMap((key) => {
    const where = focus[key];
    if ('magnification' in where || where.subjectDistance > f) return [];
    return [
      fault(
        ['focus', key],
        `A subject at ${mm(where.subjectDistance)} lies within the focal length of ${mm(f)}: it has no image.`,
        'Write a longer distance from the front principal plane, or a magnification such as 1:2.5.',
      ),
    ];
  });
  if (faults.length > 0 || magnificationAt(focus.nearest, f) > magnificationAt(focus.farthest, f)) return faults;
  return [
    fault(
      ['focus', 'nearest'],
      'The nearest focus is not nearer than the farthest.',
      'Write the closer of the two as nearest, such as nearest: 1:2.5.',
    ),
  ];
}

/** m = f/(u − f), for a subject at u from the front principal plane. */
export const magnificationAt = (focus: Focus, focalLength: number): number =>
  'magnification' in focus ? focus.magnification : focalLength / (focus.subjectDistance - focalLength);

export function holderAddsUp(holder: WrittenHolder, index: number): readonly Fault[] {
  const at = (key: string) => ['holders', index, key];
  const faults: Fault[] = [];
  const { depthTo, sheetThickness, filmDepth, thickness, locating, rib } = holder;
  if (depthTo === 'slot' && sheetThickness === undefined)
    faults.push(
      fault(
        at('depthTo'),
        'A depth to the back of the slot says nothing of the film without its thickness.',
        'Write sheetThickness: 0.18 mm beside it, or measure to the emulsion.',
      ),
    );
  if (depthTo === 'slot' && sheetThickness !== undefined && sheetThickness >= filmDepth)
    faults.push(
      fault(
        at('sheetThickness'),
        `A sheet of ${mm(sheetThickness)} fills the whole depth.`,
        'Write the thickness of one sheet, such as 0.18 mm.',
      ),
    );
  if (filmDepth >= thickness)
    faults.push(
      fault(
        at('filmDepth'),
        `A film ${mm(filmDepth)} deep lies behind a holder that is ${mm(thickness)} thick.`,
        'Measure from the face that bears on the camera to the film, and the holder from front to back.',
      ),
    );
  if (locating === 'rib' && rib === undefined)
    faults.push(
      fault(
        at('locating'),
        'The rib is not given.',
        'Write rib: { fromAxis: 98 mm, width: 4 mm, height: 1.5 mm }, or locating: pins.',
      ),
    );
  return faults;
}

function holdersGiven({ format, holders }: Written): readonly Fault[] {
  if (holders !== undefined || (typeof format === 'string' && publishedHolderFor(format) !== undefined)) return [];
  const asked = typeof format === 'string' ? (formatNamed(format)?.title ?? format) : 'a format of your own';
  return [
    fault(
      ['holders'],
      `They are not given, and no published holder is known for ${asked}.`,
      'Write holders: [{ name: paper holder, filmDepth: 5.8 mm, width: 150 mm, length: 210 mm, thickness: 13.9 mm }].',
    ),
  ];
}

export function holderNamesDiffer({ holders = [] }: Pick<Written, 'holders'>): readonly Fault[] {
  const slugs = holders.map(({ name }) => slugOf(name));
  return slugs.flatMap((slug, index) => {
    const path = ['holders', index, 'name'];
    if (GROUPS.includes(slug))
      return [
        fault(
          path,
          `"${slug}" is the name of a part of the camera itself.`,
          'Write another name, such as paper holder.',
        ),
      ];
    const first = slugs.indexOf(slug);
    if (first === index) return [];
    return [fault(path, `Holder ${first + 1} has this name already.`, 'Give each holder its own name.')];
  });
}
