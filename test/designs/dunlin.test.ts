import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { sittingDocument } from '../../src/exposure/sitting.js';
import { planDesign } from '../../src/index.js';
import { designOf } from '../design/reading.js';

const design = designOf(readFileSync(join(import.meta.dirname, '../../designs/dunlin/dunlin.yaml'), 'utf8'));

test('Dunlin is a camera for portraits: far away its corners are dark, and nothing else is wrong with it', () => {
  const { plan, findings } = planDesign(design);
  expect(findings.filter(({ level }) => level !== 'note').map(({ rule }) => rule)).toEqual(['lens-covers']);
  expect(plan.optics.coversFrom).toBeLessThan(1 / 20);
  expect(plan.slide.reachableMagnification).toBeGreaterThan(1 / 3);
});

test('its sitting needs no more than where the sitter is', () => {
  const outcome = sittingDocument(design, { magnification: 0.25 }, 1 / 3);
  if ('refused' in outcome) throw new Error(outcome.refused.what);
  // W = W0 (N/N0)² (d/d0)² (S0/S) (1 + m/P)² [checks of flash exposure; common practice, no source]
  const wanted = 400 * (11 / 16) ** 2 * (0.9 / 2) ** 2 * (100 / 6) * (1 + 0.25 / 0.973) ** 2;
  expect(outcome.energy).toBeCloseTo(wanted, 6);
  expect(outcome.pops).toBe(1);
  for (const { name } of design.sitting.filterSets ?? [])
    expect(sittingDocument(design, { magnification: 0.25, filterSet: name }, 1 / 3)).toHaveProperty('filters');
});
