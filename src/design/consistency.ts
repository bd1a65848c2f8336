import { formatNamed } from '../standards/formats.js';
import { publishedHolderFor } from '../standards/holders.js';
import { mm } from '../units/print.js';
import type { Design } from './design.js';
import type { Fault } from './explain.js';
import type { Focus } from './focus-field.js';
import { imageFits } from './image-fits.js';
import { madeHoldersFit } from './made-holder-faults.js';
import { masksFit } from './mask-faults.js';
import { slugOf } from './names.js';
import type { Written, WrittenHolder } from './schema.js';
import { sittingFaults } from './sitting-faults.js';
import { type RemnantFiles, stockFaults } from './stock.js';
import { stopsFit } from './stops-faults.js';

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
    ...builtForFits(written),
    ...(written.holders ?? []).flatMap(holderAddsUp),
    ...madeHoldersFit(written),
    ...glassMeasured(written),
    ...holdersGiven(written),
    ...holderNamesDiffer(written),
    ...shutterByOne(written),
    ...masksFit(written),
    ...stopsFit(written),
    ...stockFaults(written, files),
    ...sittingFaults(written),
  ];
}

function barrelGiven({ lens }: Pick<Written, 'lens'>): readonly Fault[] {
  if (lens.mount.by !== 'clamp' || lens.barrel !== undefined) return [];
  return [
    fault(
      ['lens', 'barrel'],
      'It is not given, and the lens is clamped by it.',
      'Measure the lens and write barrel: { diameter: 58 mm, grip: 22 mm, front: 18 mm, rear: 31 mm, frontDiameter: 64 mm, rearDiameter: 52 mm }.',
    ),
  ];
}

/** Plies, glue and shims of a frame or a spacer that was drawn for one depth do not stray to another that is farther off, mm; a choice of ours. */
const STRAYS = 1;

function glassMeasured({ groundGlass: { depth, measured } }: Written): readonly Fault[] {
  if (depth === undefined || measured === undefined || Math.abs(measured - depth) <= STRAYS) return [];
  return [
    fault(
      ['groundGlass', 'measured'],
      `A frame that is drawn for ${mm(depth)} does not measure ${mm(measured)}.`,
      'Measure from the face that bears on the holder seat to the frosted face of the glass, on the frame alone, without a spacer.',
    ),
  ];
}

/**
 * A spacer that was measured, against the one that is drawn: the film of its holder and the glass say how thick that is.
 *
 * @param design of a file in which nothing else is wrong
 */
export function spacersMeasured({ groundGlass, holders }: Design): readonly Fault[] {
  const { depth, frosted, thickness, refractiveIndex } = groundGlass;
  // seen through the pane, the frosted face lies t (1 − 1/n) nearer
  const glass = frosted === 'lens' ? depth : depth - thickness * (1 - 1 / refractiveIndex);
  return holders.flatMap(({ name, filmDepth, spacer }, index) => {
    if (spacer === undefined) return [];
    const drawn = Math.abs(filmDepth - glass);
    if (drawn >= HARDLY_DEEPER && Math.abs(spacer.measured - drawn) <= STRAYS) return [];
    return [
      drawn < HARDLY_DEEPER
        ? fault(
            ['holders', index, 'spacer'],
            `The ${name} has no spacer: its film lies as deep as the ground glass.`,
            'Delete the key.',
            'key',
          )
        : fault(
            ['holders', index, 'spacer', 'measured'],
            `A spacer that is drawn ${mm(Math.round(drawn * 1000) / 1000)} thick does not measure ${mm(spacer.measured)}.`,
            'Measure the glued spacer alone, with the shims that are in it, at its four corners; neither frame nor holder.',
          ),
    ];
  });
}

/** Depths that differ by less need no spacer: as the camera has it. */
const HARDLY_DEEPER = 0.005;

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

function focusInOrder({ lens, focus }: Pick<Written, 'lens' | 'focus'>): readonly Fault[] {
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

/** Lens and focus of the camera that stands. */
function builtForFits({ builtFor }: Written): readonly Fault[] {
  if (builtFor === undefined) return [];
  const own = [...barrelGiven(builtFor), ...flangeHoldsScrews(builtFor), ...focusInOrder(builtFor)];
  return own.map((each) => ({ ...each, path: ['builtFor', ...each.path] }));
}

/**
 * What is no wish any more once the boxes stand.
 *
 * @param typed the file as it was written, before defaults were filled in
 */
export function slideStands({ builtFor }: Written, typed: unknown): readonly Fault[] {
  if (builtFor === undefined || typeof typed !== 'object' || typed === null || !('focus' in typed)) return [];
  const { focus } = typed;
  if (typeof focus !== 'object' || focus === null) return [];
  return ['pastInfinity', 'pastNearest']
    .filter((key) => Object.hasOwn(focus, key))
    .map((key) =>
      fault(
        ['focus', key],
        'The slide of the camera that stands is as long as it is: how far it runs past the focus follows from that.',
        'Delete the key, or write it under builtFor.focus where the camera was built with it.',
        'key',
      ),
    );
}

function shutterByOne({ shutter }: Written): readonly Fault[] {
  if (shutter?.time === undefined || shutter.slot === undefined) return [];
  return [
    fault(
      ['shutter', 'slot'],
      'The shutter has a time and a slot, and one follows from the other.',
      'Leave out the slot to have it reckoned from the time, or the time to have that of the slot.',
      'key',
    ),
  ];
}

/** m = f/(u − f), for a subject at u from the front principal plane. */
export const magnificationAt = (focus: Focus, focalLength: number): number =>
  'magnification' in focus ? focus.magnification : focalLength / (focus.subjectDistance - focalLength);

const SIZES = { filmDepth: '5.8 mm', width: '150 mm', length: '210 mm', thickness: '13.9 mm' } as const;

export function holderAddsUp(holder: WrittenHolder, index: number): readonly Fault[] {
  const at = (key: string) => ['holders', index, key];
  const faults: Fault[] = [];
  const { depthTo, sheetThickness, filmDepth, thickness, locating, rib } = holder;
  if (holder.make === true) return madeAddsUp(holder, at);
  for (const key of ['filmDepth', 'width', 'length', 'thickness'] as const)
    if (holder[key] === undefined)
      faults.push({
        ...fault(at(key), 'It is not given, and it has no default.', `Write ${key}: ${SIZES[key]}.`),
        missing: true,
      });
  if (holder.measured !== undefined)
    faults.push(
      fault(
        at('measured'),
        'The film depth of a holder that is bought is what was measured.',
        `Write filmDepth: ${mm(holder.measured)}, and delete measured.`,
      ),
    );
  if (holder.insert !== undefined)
    faults.push(
      fault(
        at('insert'),
        'An insert is cut for a holder that is made.',
        'Write make: true beside it, or delete insert.',
      ),
    );
  if (depthTo === 'slot' && sheetThickness === undefined)
    faults.push(
      fault(
        at('depthTo'),
        'A depth to the back of the slot says nothing of the film without its thickness.',
        'Write sheetThickness: 0.18 mm beside it, or measure to the emulsion.',
      ),
    );
  if (filmDepth === undefined || thickness === undefined) return faults;
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

/** What a holder that is cut from the sheet has by its construction. */
function madeAddsUp(
  { depthTo, locating, rib, window, insert }: WrittenHolder,
  at: (key: string) => Fault['path'],
): readonly Fault[] {
  const says = (key: string, odd: boolean, what: string) => (odd ? [fault(at(key), what, 'Delete the key.')] : []);
  return [
    ...says('depthTo', depthTo === 'slot', 'A holder that is made has no slot: its film lies against a lip.'),
    ...says('rib', rib !== undefined, 'A holder that is made has no lock rib: it stands on the seat pins.'),
    ...says(
      'locating',
      rib === undefined && locating !== undefined && locating !== 'pins',
      'A holder that is made stands on the seat pins.',
    ),
    ...says(
      'insert',
      window !== undefined && insert !== undefined,
      'A holder in which the print is processed takes no insert: liquid would stand round it.',
    ),
  ];
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

export function holderNamesDiffer({
  holders = [],
}: {
  readonly holders?: readonly Pick<WrittenHolder, 'name'>[] | undefined;
}): readonly Fault[] {
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
