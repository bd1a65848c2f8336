import type { ColourPack, ResultEntry, SettingEntry } from '../model/sitting-log.js';
import { energy, fNumber, mm, plainNumber, scale, seconds } from '../units/print.js';

/** At the head of a log that is begun. */
export const LOG_HEAD = [
  '# Sitting log: what was exposed, and what came out. Entries are only ever added at the end.',
  '# Each stands between a line --- and a line ...; write your own the same way, and comments as you like.',
  '',
].join('\n');

/** Any text so that YAML reads it back as it was: plain where it is plain words, else in double quotes. */
const scalar = (text: string): string =>
  /^[A-Za-z][\w./°%()+-]*(?:,? [\w./°%()+-]+)*$/.test(text) && !/^(?:true|false|null|yes|no|on|off)$/i.test(text)
    ? text
    : JSON.stringify(text);

type Line = readonly [key: string, value: string | null];

/** One entry, from the line that begins it to the line that ends it. */
function entryText(kind: 'setting' | 'result', lines: readonly Line[]): string {
  const written = lines.flatMap(([key, value]) => (value === null ? [] : [`  ${key}: ${value}\n`]));
  return `---\n${kind}:\n${written.join('')}...\n`;
}

/** Stops to a ten-thousandth: a log must give back what was dialled in. */
const exact = (value: number): string => plainNumber(value, 4);

const printed = <Value>(value: Value | null, print: (value: Value) => string): string | null =>
  value === null ? null : print(value);

const list = (values: readonly number[]): string | null =>
  values.length === 0 ? null : `[${values.map(exact).join(', ')}]`;

/** `{ energy: 700 J }`; null where there is nothing in it. */
function group(lines: readonly Line[]): string | null {
  const written = lines.flatMap(([key, value]) => (value === null ? [] : [`${key}: ${value}`]));
  return written.length === 0 ? null : `{ ${written.join(', ')} }`;
}

const density = (value: number): string | null => (value === 0 ? null : plainNumber(value, 2));

const pack = ({ cyan, magenta, yellow }: ColourPack): string | null =>
  group([
    ['cyan', density(cyan)],
    ['magenta', density(magenta)],
    ['yellow', density(yellow)],
  ]);

export const settingText = (setting: SettingEntry): string =>
  entryText('setting', [
    ['sheet', plainNumber(setting.sheet)],
    ['at', printed(setting.at, stamp)],
    ['process', setting.process],
    ['paper', printed(setting.paper, scalar)],
    ['batch', printed(setting.batch, scalar)],
    ['dialled', exact(setting.dialled)],
    ['strips', list(setting.strips)],
    ['colourFilters', pack(setting.colourPack)],
    ['magnification', magnificationText(setting.magnification)],
    ['aperture', fNumber(setting.aperture)],
    ['speed', printed(setting.speed, plainNumber)],
    ['filterFactor', plainNumber(setting.filterFactor)],
    ['energy', printed(setting.energy, energy)],
    ['pops', printed(setting.pops, plainNumber)],
    ['lampDistance', printed(setting.lampDistance, mm)],
    ['time', printed(setting.time, seconds)],
  ]);

export const resultText = (result: ResultEntry): string =>
  entryText('result', [
    ['sheet', plainNumber(result.sheet)],
    ['at', printed(result.at, stamp)],
    ['looks', result.looks],
    ['by', printed(result.by, plainNumber)],
    ['strip', printed(result.strip, plainNumber)],
    ['density', printed(result.density, plainNumber)],
    ['densities', list(result.densities)],
    ['wanted', printed(result.wanted, plainNumber)],
    ['cast', result.cast],
    ['castBy', printed(result.castBy, plainNumber)],
    [
      'gave',
      group([
        ['energy', printed(result.gave.energy, energy)],
        ['time', printed(result.gave.time, seconds)],
      ]),
    ],
    [
      'bath',
      group([
        ['start', printed(result.bath.start, celsius)],
        ['end', printed(result.bath.end, celsius)],
      ]),
    ],
    ['note', printed(result.note, scalar)],
  ]);

const magnificationText = (m: number): string => scale(m);

const celsius = (value: number): string => `${plainNumber(value, 1)} C`;

/** Plain as it stands where it is a date and a time of day. */
const stamp = (at: string): string => (/^[\d-]+ [\d:]+$/.test(at) ? at : scalar(at));
