import { begunDesign } from '../design/begun-design.js';
import type { Design } from '../design/design.js';
import { readDesign } from '../design/read.js';
import { readYaml } from '../design/yaml.js';
import { lensesFile } from '../forms/lenses.js';
import { type Drawer, formatName } from '../forms/read-lenses.js';
import type { SurveyPair } from '../model/survey.js';
import { formatNamed } from '../standards/formats.js';
import { magnification, mm } from '../units/print.js';
import { type SurveyGiven, surveyedDesign } from './survey.js';

interface TextFile {
  readonly file: string;
  readonly text: string;
}

type Keys = Readonly<Record<string, unknown>>;

/**
 * A design for a pair of a survey: the keys of its list as they are written there, and behind what nobody said what the
 * survey took for it. It is the camera that the survey has figures of.
 *
 * @returns null where the list cannot be carried into a design
 */
export function pairDesign(lists: readonly TextFile[], given: SurveyGiven, pair: SurveyPair): string | null {
  const drawer = given.drawers.find(({ lenses }) => lenses.some(({ name }) => name === pair.lens));
  const list = lists.find(({ file }) => file === drawer?.file);
  if (drawer === undefined || list === undefined) return null;
  const outline = readYaml({ file: list.file, text: list.text.replace(/^\ufeff/, ''), kind: lensesFile });
  if (!('value' in outline) || pair.nearest === null) return null;
  const written = keysOf(outline.value);
  const lens = listOf(written.lenses)[drawer.lenses.findIndex(({ name }) => name === pair.lens)];
  const surveyed = surveyedDesign(given, pair);
  if (lens === undefined || surveyed === null) return null;
  const text = begunDesign({
    name: `${pair.lens} ${pair.format}`,
    format: formatOf(drawer, written, pair),
    ...lensOf(lens, pair, surveyed.lens),
    focus: focusOf(written, pair, pair.nearest),
    plywood: written.plywood,
    groundGlass: written.groundGlass,
    ...holdersOf(written, pair),
    workshop: written.workshop,
  });
  return 'problems' in readDesign(text, 'pair.yaml') ? null : text;
}

const keysOf = (value: unknown): Keys => (typeof value === 'object' && value !== null ? (value as Keys) : {}); // seen here
const listOf = (value: unknown): readonly Keys[] => (Array.isArray(value) ? value.map(keysOf) : []);

function formatOf(drawer: Drawer, written: Keys, { format }: SurveyPair): unknown {
  if (formatNamed(format) !== undefined) return format;
  const place = (drawer.formats ?? []).findIndex((one) => formatName(one) === format);
  const formats = Array.isArray(written.formats) ? written.formats : [];
  const { name: _, ...size } = keysOf(formats[place]);
  return size;
}

const NOT_MEASURED = 'NOT MEASURED';

function lensOf(written: Keys, { assumed, mount }: SurveyPair, { barrel }: Design['lens']) {
  const { mount: ofList, ...keys } = written;
  const isGuessed = (key: string) => assumed.some((one) => one === key);
  return {
    lens: {
      ...keys,
      ...(isGuessed('flangeDistance') ? { flangeDistance: written.focalLength } : {}),
      ...(isGuessed('maxAperture') ? { maxAperture: 'f/8' } : {}),
      ...(isGuessed('barrel') ? { barrel: barrelText(barrel) } : {}),
      mount: { ...keysOf(ofList), ...mount },
    },
    guessed: {
      ...(isGuessed('flangeDistance') ? { flangeDistance: `${NOT_MEASURED}: as long as the focal length` } : {}),
      ...(isGuessed('maxAperture') ? { maxAperture: NOT_MEASURED } : {}),
      ...(isGuessed('barrel') ? { barrel: `${NOT_MEASURED}: a stand-in` } : {}),
    },
  };
}

/** The nearest that is asked for as the list has it; else the one that is reached. */
function focusOf(written: Keys, { asked }: SurveyPair, nearest: number): Keys {
  const focus = keysOf(written.focus);
  return asked !== null && nearest === asked && focus.nearest !== undefined
    ? focus
    : { ...focus, nearest: magnification(nearest) };
}

function holdersOf(written: Keys, { format, assumed }: SurveyPair) {
  if (assumed.includes('holder'))
    return { holders: [HOME_MADE], holdersGuessed: 'cut from the same sheet; once it is made, measure its film depth' };
  const own = listOf(written.holders).filter((holder) => holder.format === format);
  return { holders: own.map(({ format: _, ...holder }) => holder), holdersGuessed: '' };
}

/** The holder that the survey took for granted, as parts to cut. */
const HOME_MADE = { name: 'paper holder', make: true };

const barrelText = ({ massKg: _, ...sizes }: Design['lens']['barrel']): Keys => inMm(sizes);

const inMm = (sizes: Readonly<Record<string, number>>): Keys =>
  Object.fromEntries(Object.entries(sizes).map(([key, length]) => [key, mm(length)]));
