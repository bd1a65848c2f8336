import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { designJsonSchema } from '../../src/design/json-schema.js';
import { readToday } from '../../src/design/read-today.js';
import { variablesOf } from '../../src/design/variables.js';
import { designOf } from './reading.js';
import { heron } from './worked-designs.js';

const sitting = `
sitting:
  subject: 1.2 m
  headHeight: 230 mm
  aperture: f/16
  speed: 6
  filter: 2
  density: [0.3, 0.1]
  filterSet: warm
  filterSets:
    - { name: warm, filters: [{ name: straw gel, factor: 1.5 }, { density: 0.2 }] }
  flashEnergy: 1.2 kJ
  flashAperture: f/16
  flashDistance: 2 m
  flashSpeed: 100
  meterAperture: f/22
  lampDistance: 1.5 m
  flashMost: 1200 Ws
  reciprocity: [{ metered: 1 s, given: 1 s }, { metered: 2 min, given: 5 min }]
  process: reversal
  paper: glossy paper
  distances: [0.9 m, 1.2 m]
`;

const text = `${heron}${sitting}`;

test('a sitting is read in mm, s and J, and only what was said of it is there', () => {
  expect(designOf(text).sitting).toEqual({
    subject: 1200,
    headHeight: 230,
    aperture: 16,
    speed: 6,
    filter: [2],
    density: [0.3, 0.1],
    filterSet: 'warm',
    filterSets: [{ name: 'warm', filters: [{ name: 'straw gel', factor: 1.5 }, { density: 0.2 }] }],
    flashEnergy: 1200,
    flashAperture: 16,
    flashDistance: 2000,
    flashSpeed: 100,
    meterAperture: 22,
    lampDistance: 1500,
    flashMost: 1200,
    reciprocity: [
      { metered: 1, given: 1 },
      { metered: 120, given: 300 },
    ],
    process: 'reversal',
    paper: 'glossy paper',
    distances: [900, 1200],
  });
  expect(designOf(heron).sitting).toEqual({});
});

test('the published schema takes it, and an exponent in place of the table', () => {
  const accepts = new Ajv2020({ strict: false }).compile(designJsonSchema());
  for (const each of [text, text.replace(/reciprocity: .*/, 'reciprocity: 1.31')]) {
    accepts(parse(each));
    expect(accepts.errors).toBeNull();
  }
  expect(accepts(parse(text.replace('factor: 1.5', 'faktor: 1.5')))).toBe(false);
});

test('no figure of the camera hangs on it', () => {
  const paths = (design: string) => variablesOf(design).map(({ path }) => path);
  expect(paths(text)).toEqual(paths(heron));
});

describe('what is typed today', () => {
  test('is read as the file is', () =>
    expect(readToday({ head: '60%', filter: ['2', '1.5'], meterTime: '1/4s', meterSpeed: '100' })).toEqual({
      today: { head: { share: 0.6 }, filter: [2, 1.5], meterTime: 0.25, meterSpeed: 100 },
    }));

  test('names the flag that is at fault', () =>
    expect(readToday({ meterTime: 'soon' })).toEqual({
      refused: '--meter-time: "soon" is not a time. Write 1/4 s, 90 s or 2 min.',
    }));
});
