import { describe, expect, test } from 'vitest';
import type { Sitting } from '../../src/design/design.js';
import { readDesign } from '../../src/design/read.js';
import { exposureCard } from '../../src/exposure/card.js';
import { heron } from '../design/worked-designs.js';

const read = readDesign(heron, 'heron.yaml');
if ('problems' in read) throw new Error('Heron cannot be read');

/** Heron reaches 1:2.5, a sitter at 735 mm. */
const card = (sitting: Sitting, today: Sitting = {}) => {
  const made = exposureCard({ ...read.design, sitting }, today, { revision: 'ABC123', reaches: 1 / 2.5 });
  if ('refused' in made) throw new Error(made.refused.what);
  return made;
};
const distancesOf = ({ rows }: ReturnType<typeof card>) =>
  rows.map(({ exposures: [first] }) => Math.round(first?.subjectDistance ?? Number.NaN));

const flash = { flashEnergy: 400, flashAperture: 16, flashDistance: 2000, flashSpeed: 100, speed: 100 };
const filterSets = [
  { name: 'yellow', filters: [{ factor: 2 }] },
  { name: 'five', filters: Array.from({ length: 5 }, () => ({ factor: 1.1 })) },
];

describe('the rows and columns of a card', () => {
  test('are the distances of the design, nearest first and each once, and its sets after none', () => {
    const made = card({ ...flash, filterSets, distances: [2000, 900, 2000, 1200] });
    expect(distancesOf(made)).toEqual([900, 1200, 2000]);
    expect(made.sets).toEqual([null, 'yellow', 'five']);
    for (const { exposures } of made.rows) expect(exposures.map(({ filters }) => filters.length)).toEqual([0, 1, 5]);
  });

  test('one row where the sitter is, where no distance is listed', () =>
    expect(distancesOf(card({ ...flash, subject: 1100 }))).toEqual([1100]));

  test.each<{ today: Sitting; at: number }>([
    { today: { subject: 1500 }, at: 1500 },
    // at 1:4 a subject is five focal lengths away (V1.08: 10 in lens, 50 in)
    { today: { magnification: 0.25 }, at: 1050 },
  ])('one row where today says that he is: $at mm', ({ today, at }) =>
    expect(distancesOf(card({ ...flash, distances: [900, 1200] }, today))).toEqual([at]),
  );

  test('a set that is in the light today is a column like the others', () => {
    const sitting = { ...flash, filterSets, distances: [1200] };
    expect(card({ ...sitting, filterSet: 'yellow' }, { filterSet: 'five' }).rows).toEqual(card(sitting).rows);
  });

  test('a sitting that cannot be reckoned is refused as ever', () => {
    const made = exposureCard({ ...read.design, sitting: flash }, {}, { revision: 'ABC123', reaches: 0.4 });
    expect(made).toEqual({ refused: expect.objectContaining({ what: 'Nobody says where the sitter is.' }) });
  });
});

describe('what stands on a card beside its figures', () => {
  test('each warning once, with the distances that it is for', () => {
    const { warnings } = card({ ...flash, aperture: 16, filterSets, distances: [650, 700, 900, 3000] });
    expect(warnings.filter((text) => text.includes('nearer than the camera reaches'))).toEqual([
      'At 0.65 m to 0.7 m: nearer than the camera reaches.',
    ]);
    expect(warnings.filter((text) => text.startsWith('More than four gels'))).toHaveLength(1);
    expect(new Set(warnings).size).toBe(warnings.length);
  });

  test('by weight, whichever distance or set raised them first', () => {
    const { warnings } = card({
      ...flash,
      speed: 6,
      flashMost: 1200,
      aperture: 16,
      filterSets,
      distances: [650, 3000],
    });
    const at = [
      'nearer than the camera',
      'more than one pop',
      'too little is sharp',
      'more than four gels',
      'carried over',
    ];
    const places = at.map((text) => warnings.findIndex((warning) => warning.toLowerCase().includes(text)));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test('distances apart are named apart', () => {
    const times = { meterTime: 0.17, meterAperture: 16, meterSpeed: 100, speed: 100, aperture: 16 };
    const { warnings } = card({ ...times, distances: [800, 5000] });
    expect(warnings.find((text) => text.includes('hold still'))).toMatch(/^At 0\.8 m: the sitter must/);
  });

  test('what was taken for granted, but for the place of the lamp, which is on the card', () => {
    const { assumed } = card({ ...flash, distances: [900, 1200] });
    expect(assumed.join(' ')).toContain('widest of the lens');
    expect(assumed.join(' ')).not.toContain('lamp');
    expect(new Set(assumed).size).toBe(assumed.length);
  });
});
