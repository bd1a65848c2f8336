import { describe, expect, test } from 'vitest';
import { type Colour, findingsPage, planPage } from '../../src/files/plan-page.js';
import { heron } from './heron-plan.js';

const asItIs = (text: string) => text;
const plain: Colour = { heading: asItIs, faint: asItIs, error: asItIs, warning: asItIs, note: asItIs };
const page = (plan = heron, width = 100) => planPage(plan, { width, colour: plain });

describe('the plan as a page', () => {
  test.each([
    { what: 'focal length', says: '210 mm, f/6.3 wide open' },
    { what: 'flange distance, and from where', says: '203.5 mm from the lens seat' },
    {
      what: 'image circle against what is needed',
      says: '210 mm at infinity, 294 mm at the nearest; 209.58 mm needed',
    },
    { what: 'nearest focus', says: '1:2.5, film 287.5 mm behind the lens seat' },
    { what: 'subject distance', says: '735 mm ahead of the lens' },
    { what: 'exposure', says: '1.96 × the metered one (0.97 stops); wide open it works as f/8.82' },
    { what: 'reach', says: '1:2.15' },
    { what: 'reach from the other side of the board', says: '1:3.1' },
    { what: 'travel', says: 'z 175.5 mm closed to 281.7 mm drawn out: 106.2 mm of travel' },
    { what: 'overlap', says: '53.15 mm; 39.25 mm needed' },
    { what: 'packing of the glass', says: '1.75 mm: 3 shims of 0.5 mm + 1 shim of 0.25 mm, 0 mm left' },
    {
      what: 'spacer',
      says: '18.2 mm under the ground glass: 4 plies of 4.05 mm + 4 shims of 0.5 mm, 0 mm left, ±0.22 mm',
    },
    { what: 'index of the deeper holder', says: '+18.2 mm' },
    { what: 'tripod nut', says: 'at z 128 mm' },
    { what: 'mass', says: '3 kg without a holder' },
    { what: 'pieces', says: 'Parts to make: 9 pieces' },
    { what: 'a length to buy', says: '2 mm, 15 mm wide, 785 mm long' },
  ])('tells the $what', ({ says }) => expect(page().replace(/\s+/g, ' ')).toContain(says));

  test.each([
    { remainder: 0.3, add: [0.25], takeOut: [], says: '0.3 mm too thin: add 1 shim of 0.25 mm' },
    { remainder: -0.5, add: [], takeOut: [0.5], says: '0.5 mm too thick: take out 1 shim of 0.5 mm' },
    // what is too thick is not told to take one more
    {
      remainder: -0.3,
      add: [0.1, 0.1],
      takeOut: [0.5],
      says: '0.3 mm too thick: take out 1 shim of 0.5 mm, add 2 shims of 0.1 mm',
    },
  ])('a measured spacer that is off by $remainder mm: $says', ({ says, remainder, ...mended }) => {
    const spacers = heron.spacers.map((one) =>
      one.under === 'none' ? one : { ...one, ...mended, remainder, measured: one.thickness - remainder },
    );
    expect(page({ ...heron, spacers }).replace(/\s+/g, ' ')).toContain(says);
  });

  test('boxes that do not close reach no focus, and no magnification is made up for them', () => {
    const slide = { ...heron.slide, reachableMagnification: -3.3, reachableOtherSide: -3.4, slack: -778.1 };
    const text = page({ ...heron, slide }).replace(/\s+/g, ' ');
    expect(text).toContain('Could reach no focus, not even infinity, 778.1 mm of draw short');
    expect(text).toContain('with the lens mounted there it would reach no focus');
    expect(text).not.toContain('1:-');
  });

  test('puts the most serious finding first, with value, limit, unit and cure', () => {
    const text = page();
    const places = ['overlap-far', 'wall-flare', 'corner-falloff'].map((rule) => text.indexOf(rule));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(text).toContain('measured 38.25 mm, limit 39.25 mm');
    expect(text).toContain('Ask for 1:2.6 instead of 1:2.5.');
    expect(text.trimEnd().endsWith('limit 1 stops')).toBe(true);
  });

  test('groups parts by what they move with', () => {
    const lines = page().split('\n');
    const line = (start: string) => lines.findIndex((l) => l.trim().startsWith(start));
    expect(line('Front, fixed')).toBeLessThan(line('F1'));
    expect(line('F2')).toBeLessThan(line('Rear, slides'));
    expect(line('Rear, slides')).toBeLessThan(line('R3'));
  });

  test.each([80, 100])('fits %i columns, whatever the names', (width) => {
    const name = 'holder for glass plates with a very long name that somebody once wrote on its lid in pencil';
    const holders = heron.holders.map((holder) => ({ ...holder, name }));
    const spacers = heron.spacers.map((spacer) => ({ ...spacer, holder: name }));
    const parts = heron.parts.map((part) => ({ ...part, group: name, name: `${part.name} ${name}` }));
    const widest = Math.max(
      ...page({ ...heron, holders, spacers, parts }, width)
        .split('\n')
        .map((line) => line.length),
    );
    expect(widest).toBeLessThanOrEqual(width);
  });

  test('says that coverage is not known, rather than printing null', () => {
    const optics = {
      ...heron.optics,
      coversFrom: null,
      imageCircle: { infinity: null, nearest: null, required: 209.58 },
    };
    const text = page({ ...heron, optics });
    expect(text).toContain('the design does not give lens.coverage');
    expect(text).not.toMatch(/null|NaN|undefined/);
  });

  test('colours only what it is told to colour, and nothing in its lengths', () => {
    const marked: Colour = { ...plain, error: (text) => `<${text}>` };
    const text = planPage(heron, { width: 100, colour: marked });
    expect(text.replace('<error>', 'error')).toBe(page());
  });

  test('leaves out what there is none of', () => {
    const text = page({ ...heron, findings: [], hardware: [] });
    expect(text).not.toContain('Findings');
    expect(text).not.toContain('To buy');
  });
});

test('no findings make no page of findings', () => expect(findingsPage([], { width: 100, colour: plain })).toBe(''));
