import { flangeHoldsScrews, holderAddsUp, holderNamesDiffer, magnificationAt } from '../design/consistency.js';
import type { Fault } from '../design/explain.js';
import { imageFits } from '../design/image-fits.js';
import type { Problem } from '../design/problem.js';
import { type ReadDocument, readDocument } from '../design/read-document.js';
import { problemAt } from '../design/source.js';
import { formatNamed, formatsLike } from '../standards/formats.js';
import { mm } from '../units/print.js';
import { lensesFile, lensesSchema, type SurveyedFormat, type WrittenLenses } from './lenses.js';

interface TextFile {
  readonly file: string;
  readonly text: string;
}

/** A list of lenses, and the file that it stands in. */
export interface Drawer extends WrittenLenses {
  readonly file: string;
  /** Whether the list says nothing of a nearest focus. */
  readonly nearestAssumed: boolean;
}

/** Reads lists of lenses, each complete in itself; or what is wrong, file by file. */
export function readLenses(
  files: readonly TextFile[],
): { readonly drawers: readonly Drawer[] } | { readonly problems: readonly Problem[] } {
  const twice = givenTwice(files);
  if (twice.length > 0) return { problems: twice };
  const described = { schema: lensesSchema, kind: lensesFile, firstKey: 'plywood: { thickness: 4.05 mm }', check };
  const read = files.map(({ file, text }) => ({ file, outcome: readDocument(text, file, described) }));
  const problems = read.flatMap(({ outcome }) => ('problems' in outcome ? outcome.problems : []));
  if (problems.length > 0) return { problems };
  const lists = read.flatMap(({ file, outcome }) => ('problems' in outcome ? [] : [{ file, ...outcome }]));
  const clashes = acrossFiles(lists);
  if (clashes.length > 0) return { problems: clashes };
  return {
    drawers: lists.map(({ file, value, written }) => ({ file, ...value, nearestAssumed: !saysNearest(written) })),
  };
}

/** The same list once more, under its own name or as a copy: one message, not one for each lens of it. */
function givenTwice(files: readonly TextFile[]): readonly Problem[] {
  const told = new Set<string>();
  return files.flatMap(({ file, text }, i) => {
    const first = files.findIndex((one) => one.file === file || one.text === text);
    if (first === i || told.has(file)) return [];
    told.add(file);
    const before = files[first]?.file ?? file;
    return [
      problemAt({ file, text }, null, {
        path: '',
        what: before === file ? 'This list is given twice.' : `This is the same list as ${before}.`,
        accepted: 'Give each list once.',
      }),
    ];
  });
}

/** @param written as the YAML has it */
function saysNearest(written: unknown): boolean {
  if (typeof written !== 'object' || written === null || !('focus' in written)) return false;
  const { focus } = written;
  return typeof focus === 'object' && focus !== null && 'nearest' in focus;
}

/** As the design file names it, or as its own name says. */
export const formatName = (format: SurveyedFormat): string => (typeof format === 'string' ? format : format.name);

const fault = (path: Fault['path'], what: string, accepted: string): Fault => ({ path, at: 'value', what, accepted });

/** What cannot be true of two keys together, though each of them could be. */
function check(written: WrittenLenses): readonly Fault[] {
  return [
    ...formatsDiffer(written),
    ...holdersHaveFormats(written),
    ...(written.holders ?? []).flatMap(holderAddsUp),
    ...holderNames(written),
    ...focusInOrder(written),
    ...namesDiffer(written),
    ...written.lenses.flatMap((lens, i) => moved(flangeHoldsScrews({ lens }), ['lenses', i])),
  ];
}

/** Faults of a group of a design, at the place where the group stands here. */
const moved = (faults: readonly Fault[], place: Fault['path']): readonly Fault[] =>
  faults.map((one) => ({ ...one, path: [...place, ...one.path.slice(1)] }));

function formatsDiffer({ formats = [] }: WrittenLenses): readonly Fault[] {
  const names = formats.map((format) => folded(formatName(format)));
  return formats.flatMap((format, i) => {
    if (typeof format !== 'string' && formatNamed(format.name) !== undefined)
      return [
        fault(
          ['formats', i, 'name'],
          `${format.name} is a size of the table already.`,
          `Write ${format.name} without a size, or give yours another name.`,
        ),
      ];
    const first = names.indexOf(folded(formatName(format)));
    if (first < i)
      return [
        fault(['formats', i], `Format ${first + 1} of the list is called so already.`, 'Write each format once.'),
      ];
    return typeof format === 'string' ? [] : moved(imageFits({ format }), ['formats', i]);
  });
}

function holdersHaveFormats({ formats = [], holders = [] }: WrittenLenses): readonly Fault[] {
  const known = formats.map(formatName);
  return holders.flatMap(({ format }, i) => {
    if (known.includes(format) || formatNamed(format) !== undefined) return [];
    const like = formatsLike(format);
    return [
      fault(
        ['holders', i, 'format'],
        `No format is called ${JSON.stringify(format)}.`,
        like.length > 0
          ? `Write ${like.join(' or ')}.`
          : 'Write a name of the list formats, or of the table, such as 5x7.',
      ),
    ];
  });
}

/** Two holders of one camera must not be called alike. */
function holderNames({ holders = [] }: WrittenLenses): readonly Fault[] {
  const known = [...new Set(holders.map(({ format }) => format))];
  return known.flatMap((format) => {
    const places = holders.flatMap((holder, i) => (holder.format === format ? [i] : []));
    const own = places.flatMap((i) => holders[i] ?? []);
    return holderNamesDiffer({ holders: own }).map((one) => {
      const [, i = 0, ...rest] = one.path;
      return { ...one, path: ['holders', places[Number(i)] ?? 0, ...rest] };
    });
  });
}

/**
 * A nearest focus within the focal length of some lens asks of that one for as near as it goes. A farthest focus must be
 * one for every lens of the list.
 */
function focusInOrder({ focus, lenses }: WrittenLenses): readonly Fault[] {
  const { nearest, farthest } = focus;
  for (const { name, focalLength: f } of lenses) {
    if ('subjectDistance' in farthest && farthest.subjectDistance <= f)
      return [
        fault(
          ['focus', 'farthest'],
          `A subject at ${mm(farthest.subjectDistance)} lies within the ${mm(f)} of the ${name}: it has no image.`,
          'Write infinity, or a distance beyond the focal length of every lens.',
        ),
      ];
    const within = 'subjectDistance' in nearest && nearest.subjectDistance <= f;
    if (!within && magnificationAt(nearest, f) <= magnificationAt(farthest, f))
      return [
        fault(
          ['focus', 'nearest'],
          `With the ${name} the nearest focus is not nearer than the farthest.`,
          'Write the closer of the two as nearest, such as nearest: 1:4.',
        ),
      ];
  }
  return [];
}

const folded = (name: string): string => name.normalize('NFC').trim().toLowerCase();

function namesDiffer({ lenses }: WrittenLenses): readonly Fault[] {
  const first = new Map<string, number>();
  return lenses.flatMap(({ name }, i) => {
    const known = first.get(folded(name));
    if (known === undefined) {
      first.set(folded(name), i);
      return [];
    }
    return [
      fault(
        ['lenses', i, 'name'],
        `Lens ${known + 1} of the list has this name already.`,
        'Give each lens its own name, such as "150 mm enlarging lens, the dented one".',
      ),
    ];
  });
}

type ReadList = ReadDocument<WrittenLenses> & Pick<Drawer, 'file'>;

/** Lists that are put together must not call two lenses alike, nor two sizes. */
function acrossFiles(lists: readonly ReadList[]): readonly Problem[] {
  const lenses = new Map<string, string>();
  const sizes = new Map<string, { readonly file: string; readonly size: string }>();
  return lists.flatMap(({ file, value, locate }) => [
    ...value.lenses.flatMap(({ name }, i) => {
      const known = lenses.get(folded(name));
      lenses.set(folded(name), file);
      if (known === undefined) return [];
      return [
        locate(fault(['lenses', i, 'name'], `${known} has a lens of this name.`, 'Give each lens its own name.')),
      ];
    }),
    ...(value.formats ?? []).flatMap((format, i) => {
      const size = JSON.stringify(format);
      const known = sizes.get(folded(formatName(format)));
      if (known === undefined) sizes.set(folded(formatName(format)), { file, size });
      if (known === undefined || known.size === size) return [];
      return [
        locate(fault(['formats', i], `In ${known.file} this name is another size.`, 'Give each size its own name.')),
      ];
    }),
  ]);
}
