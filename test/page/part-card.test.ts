import { expect, test } from 'vitest';
import type { PlanDocument } from '../../src/model/plan.js';
import type { ShownBody, ShownSolids } from '../../src/model/shown.js';
import type { App } from '../../src/page/app.js';
import { partCard } from '../../src/page/camera/part-card.js';
import { firstState, type State } from '../../src/page/state.js';

const design = { file: 'heron.yaml', text: 'name: Heron', beside: {} };

const wall: ShownBody = {
  part: 'F2',
  name: 'front box, wall',
  stuff: 'plywood',
  material: 'plywood-4.05',
  size: [180, 90, 4.05],
  count: 4,
  joins: [],
  positions: new Float32Array(),
  normals: new Float32Array(),
  triangles: new Uint32Array(),
  edges: new Uint32Array(),
  scribed: new Float32Array(),
  thickness: 4.05,
  grain: 'x',
};
const solids: ShownSolids = {
  bodies: [wall],
  pieces: [],
  stations: [],
  setups: [],
  steps: [],
  light: { pupil: { z: 0, diameter: 30 }, image: { width: 127, height: 178 }, films: [] },
};

/** The words of a template, its markup left out. */
function wordsOf(template: unknown): string {
  if (Array.isArray(template)) return template.map(wordsOf).join(' ');
  if (typeof template !== 'object' || template === null) return typeof template === 'function' ? '' : String(template);
  const { strings, values } = template as { readonly strings: readonly string[]; readonly values: readonly unknown[] };
  return strings
    .map((markup, i) => `${markup} ${wordsOf(values[i] ?? '')}`)
    .join('')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');
}

/** The card of the wall, with sheets that were laid out for a text, and what lies on them. */
function cardWith(text: string, places: State['sheets']['places']): string {
  const first = firstState(design);
  // the card looks at nothing else of what is shown
  const shown = {
    of: design,
    plan: {} as PlanDocument,
    findings: [],
    drawable: true,
    reached: 0,
    solids,
    section: null,
  };
  const state: State = { ...first, shown, sheets: { ...first.sheets, of: text, places } };
  const app = { state: () => state, pose: { now: () => ({ chosen: 'F2' }) } } as unknown as App;
  return wordsOf(partCard(app, { solids } as Parameters<typeof partCard>[1]));
}

const on = (part: string, ...sheets: readonly string[]) => sheets.map((sheet, i) => ({ part, sheet, instance: i + 1 }));

test('each sheet is named once, in the order of the sheets, with how many pieces where there are several', () => {
  const places = [...on('F2', 'plywood-4.05-1', 'plywood-4.05-1', 'plywood-4.05-1'), ...on('F1', 'plywood-4.05-2'), ...on('F2', 'plywood-4.05-3')]; // biome-ignore format: one line
  expect(cardWith(design.text, places)).toContain('Cut from plywood-4.05-1 (3), plywood-4.05-3 ');
});

test('a part that lies on no sheet has no such row', () => {
  expect(cardWith(design.text, on('F1', 'plywood-4.05-2'))).not.toContain('Cut from');
});

test('sheets of another design tell nothing of this one', () => {
  expect(cardWith('name: Egret', on('F2', 'plywood-4.05-1'))).not.toContain('Cut from');
});
