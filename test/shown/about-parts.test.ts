import { describe, expect, test } from 'vitest';
import { cutting } from '../../src/cutting.js';
import { type Design, readDesign } from '../../src/index.js';
import type { Finding } from '../../src/model/finding.js';
import { rules } from '../../src/model/rules.js';
import { type Planned, planCamera } from '../../src/pipeline.js';
import { webLeast } from '../../src/proof/web.js';
import { aboutParts } from '../../src/shown/about-parts.js';
import { HOLDERS, partsOfObject, partsOfRule } from '../../src/shown/rule-parts.js';
import { heronWith, SMALL_PARTS } from '../camera/asked-for.js';
import { bareHeronText, keptDesign, keptDesigns } from '../designs/kept-design.js';
import { heron, movePart, toldOf } from '../planted.js';

const text = bareHeronText();

function changed(from: string | RegExp, to: string): Design {
  const after = text.replace(from, to);
  if (after === text) throw new Error(`${from} is not in the design`);
  const read = readDesign(after, 'heron.yaml');
  if ('problems' in read) throw new Error(read.problems.map(({ what }) => what).join('\n'));
  return read.design;
}

/** One number typed wrong, or another material: what a builder does to a design. */
const variants: Readonly<Record<string, Design>> = {
  'flange distance of 130 mm': changed('flangeDistance: 203.5 mm', 'flangeDistance: 130 mm'),
  'sheet of 3 mm': changed('thickness: 4.05 mm', 'thickness: 3 mm'),
  'sheet of 9 mm': changed('thickness: 4.05 mm', 'thickness: 9 mm'),
  'sheets too small': changed('sheet: [600 mm, 400 mm]', 'sheet: [200 mm, 150 mm]'),
  'nearest of 1:1': changed('nearest: 1:2.5', 'nearest: 1:1'),
  'a narrow holder': changed('width: 150 mm', 'width: 131 mm'),
  'a lens of 4 kg': changed('mass: 640 g', 'mass: 4 kg'),
  'a lens that is wide behind': changed('rearDiameter: 52 mm', 'rearDiameter: 150 mm'),
  'no shims': changed('shims: [0.1 mm, 0.25 mm, 0.5 mm]', 'shims: []'),
  'a grip of 5 mm': changed('grip: 22 mm', 'grip: 5 mm'),
};

/** What is about the text, the tools or the stock, and has no place on the camera. */
const NO_PLACE: ReadonlySet<string> = new Set([
  ...rules.filter(({ home }) => /^(?:design|coupon|workshop|step-sheet)/.test(home)).map(({ id }) => id),
  'stock-idle',
  'kerf-once',
  // told by the commands for spare parts, which show no camera
  'not-as-built',
  'other-thickness',
]);

/** Every message of these names its parts by their ids. */
const NAMED: ReadonlySet<string> = new Set([
  'hole-in-dark',
  'web-least',
  'nut-edge',
  'corner-owner',
  'parts-collide',
  'parts-touch',
  'empty-hole',
  'groups-part',
  'assembly-order',
  'one-way',
  'part-on-bed',
  'parts-part',
  'small-part',
  'small-mark',
  'grain-long',
  'rail-held',
  'cap-dark',
  'mirror-text',
  'id-hidden',
  // or the box
  'finger-rule',
]);

const idsOf = ({ build }: Planned): readonly string[] => build.parts.map(({ id }) => id);

function pointsNowhere(planned: Planned, findings: readonly Finding[]): readonly string[] {
  const ids = idsOf(planned);
  return findings
    .filter(({ rule }) => !NO_PLACE.has(rule))
    .flatMap((finding) => {
      const { parts, setup, rear } = aboutParts(finding, planned.build);
      const wrong = [
        ...(parts.length === 0 ? ['points at nothing'] : []),
        ...parts.filter((id) => !ids.includes(id)).map((id) => `there is no ${id}`),
        ...(setup !== null && !planned.build.setups.some(({ name }) => name === setup) ? [`no set-up ${setup}`] : []),
        ...(rear !== null && !(rear >= 0) ? [`drawn out ${rear}`] : []),
      ];
      return wrong.map((what) => `${finding.rule}: ${what}: ${finding.message}`);
    });
}

const designs = [...keptDesigns.map((name) => [name, keptDesign(name)] as const), ...Object.entries(variants)];

test.each(designs)('%s: every finding about wood points at wood that is there', (_name, design) => {
  const planned = planCamera(design);
  if (!planned.drawable) return;
  const findings = [
    ...planned.findings,
    ...cutting(planned, planned.parts).findings,
    ...webLeast(design, planned.build),
  ];
  expect(findings.length).toBeGreaterThan(0);
  expect(pointsNowhere(planned, findings)).toEqual([]);
});

test('the variants break many rules, so that this looks at many', () => {
  const told = new Set(
    Object.values(variants).flatMap((design) => planCamera(design).findings.map(({ rule }) => rule)),
  );
  expect(told.size).toBeGreaterThan(12);
});

test('every rule either names its parts, or has its place in the table, or has no place at all', () => {
  const places = new Set([...Object.keys(partsOfRule), ...NAMED, ...NO_PLACE]);
  expect(rules.map(({ id }) => id).filter((id) => !places.has(id))).toEqual([]);
  const known = new Set(rules.map(({ id }) => id));
  expect(Object.keys(partsOfRule).filter((id) => !known.has(id))).toEqual([]);
});

test('the table names nothing that no camera has', () => {
  const all = [
    ...keptDesigns.map((name) => planCamera(keptDesign(name))),
    heronWith(...SMALL_PARTS, 'filterHolder: {}', 'shutter: {}', 'hood: {}', 'cap: true'),
  ].flatMap(idsOf);
  const named = [...Object.values(partsOfRule), ...Object.values(partsOfObject)]
    .flat()
    .filter((one) => one !== HOLDERS);
  const missing = named.filter((one) =>
    one.endsWith('*') ? !all.some((id) => id.startsWith(one.slice(0, -1))) : !all.includes(one),
  );
  expect([...new Set(missing)]).toEqual([]);
});

describe('what a message says is what is meant', () => {
  const about = (message: string, rule = 'parts-collide') => aboutParts({ rule, level: 'error', message }, heron.build);

  test('numbers are whole words: R4L is not R4U, F1 is not F10', () => {
    expect(about('F10 (corner block) and R4L (sole, lower ply) lie in each other.').parts).toEqual(['F10', 'R4L']);
    expect(about('F1 (front panel) hangs in the air.').parts).toEqual(['F1']);
  });

  test('a set-up by the longest name that is told, and the draw with it', () => {
    const place = about('F1 and B1 touch; glass for paper holder, upright, drawn out 53.1 mm.');
    expect(place).toMatchObject({ setup: 'glass for paper holder, upright', rear: 53.1 });
  });

  test('a station behind its set-up', () => {
    const farthest = Math.max(...heron.build.stations.map(({ rear }) => rear));
    expect(about('B1 (back plate); as it is cut, with processing holder, lengthwise, farthest.')).toMatchObject({
      setup: 'processing holder, lengthwise',
      rear: farthest,
    });
  });

  test('a holder by its name has its pictures taken there', () =>
    expect(about('Hills stay soft: with processing holder the slide stops short.', 'reach-infinity')).toMatchObject({
      setup: 'processing holder, upright',
    }));

  test('a box by its name is its four walls', () =>
    expect(about('front box, top left edge: 3 fingers do not hold.', 'finger-rule').parts).toEqual([
      'F2L',
      'F2R',
      'F3',
      'F4',
    ]));

  test('a way in for light by the joint that it takes', () => {
    const joint = {
      joint: 'seam of front box and panel',
      parts: ['F1', 'F5'],
      turns: 1,
      land: 1,
      needed: { turns: 2, land: 0 },
      shutBy: '',
      setup: '',
      felt: 0,
    };
    const finding: Finding = {
      rule: 'light-path',
      level: 'error',
      message: `Fog along the ${joint.joint} (F1, F5): light.`,
    };
    expect(aboutParts(finding, heron.build, [joint]).parts).toEqual(['F1', 'F5']);
  });
});

test('planted faults are found, and pointed at', () => {
  const planned = { ...heron, build: movePart(movePart(heron.build, 'R3', { z: 3 }), 'ground-glass', { z: 1 }) };
  const findings = toldOf(planned.build);
  expect(findings.length).toBeGreaterThan(0);
  expect(pointsNowhere(planned, findings)).toEqual([]);
});
