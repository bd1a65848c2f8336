import { unbroken } from '../../unbroken.js';

/** What may differ from one sitting to the next, grouped as a photographer comes to it. */

export interface SittingField {
  /** Key of the design's `sitting`, or of what came out. */
  readonly key: string;
  readonly label: string;
  readonly example: string;
  /** The words that it may be; any text where left out. */
  readonly options?: readonly string[];
  /** Whether several may stand there, between commas. */
  readonly several?: true;
  readonly help?: string;
}

export interface SittingGroup {
  readonly title: string;
  readonly fields: readonly SittingField[];
}

export const whereGroup: SittingGroup = {
  title: 'Where the sitter is',
  fields: [
    {
      key: 'subject',
      label: 'Distance to the eyes',
      example: '1.2 m',
      help: 'from the front principal plane of the lens',
    },
    { key: 'magnification', label: 'or the scale', example: '1:4' },
    {
      key: 'head',
      label: 'or the head on the glass',
      example: '90 mm or 60 %',
      help: 'its height there, or its share of the picture',
    },
    { key: 'headHeight', label: 'Head in life', example: '250 mm' },
  ],
};

export const setGroup: SittingGroup = {
  title: 'What is set, and what is in the light',
  fields: [
    { key: 'aperture', label: 'Stop', example: 'f/16' },
    { key: 'speed', label: 'Speed of paper or film', example: '6' },
    {
      key: 'filter',
      label: 'Filter factors',
      example: '2, 1.5',
      several: true,
      help: 'several between commas; a third of a stop is a factor of 1.26, or a density of 0.1',
    },
    {
      key: 'density',
      label: 'Densities',
      example: '0.3',
      several: true,
      help: 'of filters and diffusers, several between commas',
    },
    { key: 'filterSet', label: 'Filter set', example: 'none', options: ['none'] },
    { key: 'lampDistance', label: 'Lamp to the sitter', example: '1.5 m' },
    { key: 'flashMost', label: 'One pop at full power', example: '1200 J' },
    { key: 'reciprocity', label: 'Reciprocity exponent', example: '1.31', help: 'what a long exposure loses' },
    { key: 'process', label: 'Process', example: 'negative', options: ['negative', 'reversal'] },
    { key: 'paper', label: 'Paper or film', example: 'glossy, grade 2' },
  ],
};

export const readingGroup: SittingGroup = {
  title: 'One setting that is known to be right',
  fields: [
    { key: 'meterTime', label: 'Meter: its time', example: '1/4 s' },
    { key: 'meterAperture', label: 'Meter: its stop', example: 'f/16' },
    { key: 'meterSpeed', label: 'Meter: speed set on it', example: '100' },
    { key: 'flashEnergy', label: 'Flash: its energy', example: '400 J' },
    { key: 'flashAperture', label: 'Flash: its stop', example: 'f/16' },
    { key: 'flashDistance', label: 'Flash: lamp to the meter', example: '2 m' },
    { key: 'flashSpeed', label: 'Flash: for the speed', example: '100' },
    {
      key: 'testMagnification',
      label: 'Test: at the scale',
      example: '1:4',
      help: 'where the reading was found by a test with the camera',
    },
    { key: 'testFilter', label: 'Test: factor in the light', example: '2' },
  ],
};

export const logGroup: SittingGroup = {
  title: 'The next sheet',
  fields: [
    { key: 'batch', label: 'Batch of the paper', example: 'H 2207' },
    {
      key: 'strip',
      label: 'Test strip',
      example: 'whole',
      options: ['whole', 'half'],
      help: 'stops from strip to strip',
    },
    { key: 'steps', label: 'Strips of it', example: '5' },
  ],
};

export const resultGroup: SittingGroup = {
  title: 'What came out of the sheet that waits',
  fields: [
    { key: 'result', label: 'It looks', example: 'right', options: ['too dark', 'too light', 'right', 'void'] },
    { key: 'by', label: 'by how many stops', example: '1.5' },
    { key: 'bestStrip', label: 'Best strip', example: '3', help: 'counted from the one that got least' },
    { key: 'readDensity', label: 'Density read on it', example: '0.7' },
    { key: 'stripDensity', label: 'Densities of the strips', example: '0.2, 0.5, 0.9', several: true },
    { key: 'wanted', label: 'Density wanted there', example: '0.6' },
    {
      key: 'cast',
      label: 'Colour cast',
      example: 'red',
      options: ['red', 'green', 'blue', 'cyan', 'magenta', 'yellow'],
    },
    { key: 'castBy', label: 'Strength of the cast', example: '0.1' },
    { key: 'gaveEnergy', label: 'Energy really given', example: '500 J' },
    { key: 'gaveTime', label: 'Time really given', example: '10 s' },
    { key: 'bathStart', label: 'Developer at first', example: '24 C' },
    { key: 'bathEnd', label: 'Developer at last', example: '23 C' },
    { key: 'note', label: 'Note', example: 'the dog moved' },
  ],
};

const all = [whereGroup, setGroup, readingGroup, logGroup, resultGroup].flatMap(({ fields }) => fields);

const labels: ReadonlyMap<string, string> = new Map(all.map(({ key, label }) => [flagOf(key), label]));

/** `meterTime` as the command line has it: `--meter-time`. */
function flagOf(key: string): string {
  return `--${key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
}

const FLAG = /--[a-z]+(?:-[a-z]+)*/g;

/** A value as it is typed behind a flag, without room for its unit. */
const TIGHT = /(\d)(mm|cm|m|s|kJ|J)\b/g;

/** The words of the command line with the labels of the fields in place of its flags, as they are said on the page. */
export const inLabels = (words: string): string =>
  unbroken(
    words
      .replace(FLAG, (flag) => {
        const label = labels.get(flag);
        // a label that goes on from the one above it has another beginning in a sentence
        return label === undefined ? flag : `“${label.replace(/^or /, '')}”`;
      })
      .replace(TIGHT, '$1 $2')
      .replace(/`([^`]*)`/g, '“$1”'),
  );

/** What is refused, and the field that it is about: the first that the words name. */
export function refusalAt(refused: string): { readonly key: string | null; readonly words: string } {
  const flag = refused.match(FLAG)?.find((one) => labels.has(one));
  const key = all.find((field) => flagOf(field.key) === flag)?.key ?? null;
  return { key, words: inLabels(refused.replace(/^--[a-z-]+: /, '')) };
}

/** What is typed, without what is empty; lists apart at their commas. */
export const typedTexts = (
  typed: Readonly<Record<string, string>>,
): Readonly<Record<string, string | readonly string[]>> =>
  Object.fromEntries(
    all.flatMap(({ key, several }): readonly (readonly [string, string | readonly string[]])[] => {
      const text = (typed[key] ?? '').trim();
      if (text === '') return [];
      return [
        [
          key,
          several
            ? text
                .split(/[,;]/)
                .map((one) => one.trim())
                .filter((one) => one !== '')
            : text,
        ],
      ];
    }),
  );
