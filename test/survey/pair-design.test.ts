import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { outsideOf } from '../../src/camera/outside.js';
import { readDesign } from '../../src/design/read.js';
import { readLenses } from '../../src/forms/read-lenses.js';
import { planCamera } from '../../src/pipeline.js';
import { pairDesign } from '../../src/survey/pair-design.js';
import { prepareSurvey } from '../../src/survey/survey.js';

const drawer = readFileSync(join(import.meta.dirname, '../../designs/dunlin/drawer.yaml'), 'utf8');

const others = `
plywood: { thickness: [4.02 mm, 4.05 mm], sheet: [600 mm, 400 mm], material: birch plywood }
formats: [4x5, { name: 6x9, width: 60 mm, height: 90 mm, image: [56 mm, 84 mm] }]
holders: [{ format: 4x5, name: "wooden: old", filmDepth: 5 mm, width: 130 mm, length: 170 mm, thickness: 12 mm }]
focus: { nearest: 1.2 m, pastInfinity: 2 mm }
groundGlass: { thickness: 3 mm }
lenses:
  - { name: "lens: 'the third'", focalLength: 6 in, maxAperture: 6.3, mount: { screws: 3 } }
  - name: flanged
    focalLength: 135
    flangeDistance: 130
    flange: { diameter: 70 mm, boltCircle: 60 mm, screws: 3, thickness: 3 mm }
    barrel: { diameter: 40 mm, grip: 12 mm, front: 20 mm, rear: 10 mm, frontDiameter: 44 mm, rearDiameter: 38 mm }
`;

test.each([
  ['the drawer of the story', drawer],
  ['a drawer with what is rare', others],
])('the design of a pair is the camera that the survey has figures of: %s', (_, text) => {
  const lists = [{ file: 'drawer.yaml', text }];
  const read = readLenses(lists);
  if ('problems' in read) throw new Error(read.problems.map(({ what }) => what).join(' '));
  const given = { drawers: read.drawers, formats: null };
  const survey = prepareSurvey(given);
  const pairs = survey.pairs(0, survey.count).filter(({ camera }) => camera !== null);
  expect(pairs.length).toBeGreaterThan(3);
  for (const pair of pairs) {
    const design = pairDesign(lists, given, pair);
    const outcome = readDesign(design ?? '', 'pair.yaml');
    if ('problems' in outcome) throw new Error(`${design}\n${outcome.problems.map(({ what }) => what).join(' ')}`);
    const { camera, build } = planCamera(outcome.design);
    const surveyed = pair.camera;
    const outside = outsideOf(build, camera.settingOut.figures.travel);
    // stand-ins are written to the micrometre; where less is reached than is asked for, the nearest in two decimals
    const digits = pair.nearest === pair.asked ? 2 : 0;
    const called = `${pair.lens} ${pair.format}`;
    expect(camera.settingOut.travel, called).toBeCloseTo(surveyed?.travel ?? 0, digits);
    expect(outside.width.value, called).toBeCloseTo(surveyed?.width ?? 0, digits);
    expect(outside.height.value, called).toBeCloseTo(surveyed?.height ?? 0, digits);
    expect(outside.depthClosed.value, called).toBeCloseTo(surveyed?.depthClosed ?? 0, digits);
    expect(camera.balance.massKg, called).toBeCloseTo(surveyed?.mass ?? 0, digits === 2 ? 4 : 1);
    expect(outcome.design.lens.mount.side).toBe(pair.mount.side);
  }
});
