import { parseLength } from '../units/length.js';
import { quoted, type Sign } from '../units/quantity.js';
import { nearestWord } from './nearest-word.js';
import type { Problem } from './problem.js';
import { designFile, type FileKind, problemAt, type Source, textProblem } from './source.js';
import { readYaml } from './yaml.js';

/** The readings of a test piece as they were written, mm; what was left empty is not there. */
export interface WrittenReadings {
  readonly cut?: {
    readonly kerf: number;
    readonly thickness: number;
    readonly fits: WrittenFits;
    readonly combSum: number;
  };
  readonly comb: { readonly x: readonly number[]; readonly y: readonly number[] };
  readonly thickness: readonly number[];
  readonly slot: number | null;
  readonly fits: Partial<WrittenFits>;
}

type WrittenFits = Readonly<Record<'press' | 'glueSlip' | 'slide' | 'dropIn', number>>;

/** Something wrong with a key of the readings, to be shown where it stands. */
interface Trouble {
  readonly path: string;
  /** Whether the key is at fault, not what stands after it. */
  readonly atKey?: true;
  readonly what: string;
  readonly accepted: string;
}

export type ReadReadings =
  | {
      readonly readings: WrittenReadings;
      /** Points at a key of the file. */
      readonly locate: (trouble: Trouble) => Problem;
    }
  | { readonly problems: readonly Problem[] };

/** How a key is written: a length alone, or one or several. */
type Kind = 'length' | 'lengths';

interface Key {
  readonly kind: Kind;
  readonly sign: Sign;
  readonly example: string;
}

const sum: Key = { kind: 'lengths', sign: 'positive', example: '78.5 mm' };
const mark = (example: string): Key => ({ kind: 'length', sign: 'any', example });
const size = (example: string): Key => ({ kind: 'length', sign: 'positive', example });

const KEYS: Readonly<Record<string, Key>> = {
  'cut.kerf': size('0.15 mm'),
  'cut.thickness': size('4.05 mm'),
  'cut.fits.press': mark('-0.02 mm'),
  'cut.fits.glueSlip': mark('0.08 mm'),
  'cut.fits.slide': mark('0.3 mm'),
  'cut.fits.dropIn': mark('0.6 mm'),
  'cut.combSum': size('80 mm'),
  'comb.x': sum,
  'comb.y': sum,
  thickness: { kind: 'lengths', sign: 'positive', example: '[4.02 mm, 4.05 mm]' },
  slot: size('4.05 mm'),
  'fits.press': mark('-0.02 mm'),
  'fits.glueSlip': mark('0.08 mm'),
  'fits.slide': mark('0.3 mm'),
  'fits.dropIn': mark('0.6 mm'),
};

const readingsFile: FileKind = {
  ...designFile,
  noun: 'form of readings',
  begin: 'Fill in the form that was written with the test piece.',
};

const GROUPS = ['cut', 'cut.fits', 'comb', 'fits'];
const NEEDED = ['comb.x', 'comb.y'];
const MOST = 100;

/** Reads what was measured on a test piece, or tells what is wrong with the file, each at its place. */
export function readReadings(text: string, file: string): ReadReadings {
  const source: Source = { file, text: text.replace(/^\ufeff/, ''), kind: readingsFile };
  const unreadable = textProblem(source);
  if (unreadable !== null) return { problems: [unreadable] };
  const outline = readYaml(source);
  if (!('value' in outline)) return outline;
  const { keySpans, valueSpans } = outline;
  const locate = ({ path, what, accepted, atKey }: Trouble): Problem => {
    const group = path.replace(/\.[^.]*$/, '');
    const span = (atKey ? undefined : valueSpans.get(path)) ?? keySpans.get(path) ?? keySpans.get(group) ?? null;
    return problemAt(source, span, { path, what, accepted });
  };
  const lengths = new Map<string, readonly number[]>();
  const troubles = collect(outline.value, '', lengths);
  const missing = NEEDED.filter((path) => !lengths.has(path) && !troubles.some((trouble) => trouble.path === path));
  for (const path of missing)
    troubles.push({
      path,
      atKey: true,
      what: 'It is not given.',
      accepted: `Write ${last(path)}: ${KEYS[path]?.example}.`,
    });
  const cut = cutOf(lengths, troubles);
  const problems = [...outline.problems, ...troubles.map(locate)];
  if (problems.length > 0) return { problems };
  const one = (path: string) => lengths.get(path)?.[0];
  return {
    readings: {
      ...(cut === null ? {} : { cut }),
      comb: { x: lengths.get('comb.x') ?? [], y: lengths.get('comb.y') ?? [] },
      thickness: lengths.get('thickness') ?? [],
      slot: one('slot') ?? null,
      fits: fitsOf('fits', one),
    },
    locate,
  };
}

const last = (path: string): string => path.replace(/^.*\./, '');

/** Every length of the file by its path; what is empty was not measured. */
function collect(value: unknown, path: string, lengths: Map<string, readonly number[]>): Trouble[] {
  if (value === null || value === undefined) return [];
  const key = KEYS[path];
  if (key !== undefined) return read(value, path, key, lengths);
  if (typeof value !== 'object' || Array.isArray(value)) {
    const known = keysOf(path).join(', ');
    return [{ path, what: `Here stands ${quoted(value)}.`, accepted: `Write the keys ${known}.` }];
  }
  return Object.entries(value).flatMap(([word, inner]) => {
    const here = path === '' ? word : `${path}.${word}`;
    if (GROUPS.includes(here) || here in KEYS) return collect(inner, here, lengths);
    const known = keysOf(path);
    const meant = nearestWord(word, known);
    const accepted = meant === undefined ? `Known here: ${known.join(', ')}.` : `Did you mean ${meant}?`;
    return [{ path: here, atKey: true, what: 'This key is not known here.', accepted }];
  });
}

const keysOf = (group: string): readonly string[] => {
  const lead = group === '' ? '' : `${group}.`;
  const under = [...GROUPS, ...Object.keys(KEYS)].filter((path) => path.startsWith(lead) && path !== group);
  return [...new Set(under.map((path) => path.slice(lead.length).replace(/\..*$/, '')))];
};

function read(
  value: unknown,
  path: string,
  { kind, sign, example }: Key,
  lengths: Map<string, readonly number[]>,
): Trouble[] {
  if (Array.isArray(value) && kind === 'length')
    return [{ path, what: 'Here stands a list.', accepted: `Write one length: ${last(path)}: ${example}.` }];
  const items: readonly unknown[] = Array.isArray(value) ? value : [value];
  if (items.length === 0 || items.length > MOST)
    return [
      {
        path,
        what: items.length === 0 ? 'The list is empty.' : `More than ${MOST} readings.`,
        accepted: `Write ${example}.`,
      },
    ];
  const troubles: Trouble[] = [];
  const values = items.map((item, i) => {
    const reading = parseLength(item, sign);
    if ('value' in reading) return reading.value;
    const at = Array.isArray(value) ? `${path}[${i}]` : path;
    troubles.push({ path: at, what: reading.reason, accepted: reading.accepted });
    return Number.NaN;
  });
  lengths.set(path, values);
  return troubles;
}

/** How the piece was drawn: all of it, or nothing where no mark of it was read, and then as the design is now. */
function cutOf(
  lengths: ReadonlyMap<string, readonly number[]>,
  troubles: Trouble[],
): NonNullable<WrittenReadings['cut']> | null {
  const paths = Object.keys(KEYS).filter((path) => path.startsWith('cut.'));
  const missing = paths.filter((path) => !lengths.has(path));
  if (missing.length === paths.length) {
    // the design is changed by the readings: taken a second time, its marks would be others
    const mark = [...lengths.keys()].find((path) => path === 'slot' || path.startsWith('fits.'));
    if (mark !== undefined)
      troubles.push({
        path: mark,
        atKey: true,
        what: 'Nobody knows what this mark meant: cut, which tells how the piece was drawn, is not given.',
        accepted: 'Copy cut from the form that was written with the piece.',
      });
    return null;
  }
  if (troubles.length === 0)
    for (const path of missing)
      troubles.push({
        path,
        what: 'It is missing here, though other keys of cut are given.',
        accepted: `Write ${last(path)}: ${KEYS[path]?.example}, as the form had it, or leave all of cut away where the design was not changed since.`,
      });
  const one = (path: string) => lengths.get(path)?.[0];
  const { press = 0, glueSlip = 0, slide = 0, dropIn = 0 } = fitsOf('cut.fits', one);
  return {
    kerf: one('cut.kerf') ?? 0,
    thickness: one('cut.thickness') ?? 0,
    fits: { press, glueSlip, slide, dropIn },
    combSum: one('cut.combSum') ?? 0,
  };
}

function fitsOf(group: string, one: (path: string) => number | undefined): Partial<WrittenFits> {
  const names = ['press', 'glueSlip', 'slide', 'dropIn'] as const;
  return Object.fromEntries(
    names.flatMap((name) => {
      const value = one(`${group}.${name}`);
      return value === undefined ? [] : [[name, value]];
    }),
  );
}
