import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { rules } from '../../src/model/rules.js';
import { planCamera } from '../../src/pipeline.js';
import { changed, designOf } from '../design/reading.js';
import { bittern, fewest, heron } from '../design/worked-designs.js';

const src = join(import.meta.dirname, '../../src');
const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.ts') && path !== join('model', 'rules.ts'))
  .map((path) => ({ path: path.replaceAll('\\', '/'), text: readFileSync(join(src, path), 'utf8') }));

const raisedIn = (text: string): readonly string[] =>
  [...text.matchAll(/\b(?:rule(?::| =)|RULE =) '([a-z-]+)'/g)].flatMap(([, id]) => id ?? []);
const known = rules.map(({ id }) => id);

describe('the table of rules', () => {
  test('names each rule once, in kebab-case', () => {
    expect(new Set(known).size).toBe(known.length);
    expect(known.filter((id) => !/^[a-z]+(-[a-z]+)*$/.test(id))).toEqual([]);
  });

  test('knows every rule that is raised anywhere', () => {
    const raised = files.flatMap(({ text }) => raisedIn(text));
    expect(raised.length).toBeGreaterThan(60);
    expect(raised.filter((id) => !known.includes(id))).toEqual([]);
  });

  test.each(rules)('$id is raised in $home', ({ id, home }) =>
    expect(raisedIn(files.find(({ path }) => path === `${home}.ts`)?.text ?? '')).toContain(id),
  );

  // a rule of which no test speaks could be one that never fails
  test.each(rules.map((rule) => ({ id: rule.id, shownIn: rule.test })))(
    '$id is shown in test/$shownIn',
    ({ id, shownIn }) => {
      const text = readFileSync(join(import.meta.dirname, '..', `${shownIn}.test.ts`), 'utf8');
      expect(new RegExp(`(?<![a-z-])${id}(?![a-z-])`).test(text)).toBe(true);
    },
  );
});

/** Designs that break many rules at once. */
const broken = [
  heron,
  bittern,
  fewest,
  changed(heron, 'nearest: 1:2.5', 'nearest: 1:1'),
  changed(heron, '203.5 mm', '80 mm'),
  changed(heron, 'diameter: 420 mm', 'diameter: 200 mm'),
  changed(heron, '4.05 mm', '2.5 mm'),
  changed(heron, '4.05 mm', '9.1 mm'),
  changed(heron, 'width: 150 mm', 'width: 136 mm'),
  changed(heron, 'shims: [0.1 mm, 0.25 mm, 0.5 mm]', 'shims: [0.9 mm]'),
  changed(heron, 'shims:', 'workshop: { slideClearance: 0.4 mm, railPlay: 0.9 mm, friction: 0.9 }\nshims:'),
  changed(heron, 'mass: 640 g', 'mass: 3 kg'),
];

test('every finding of a broken design is one of the table, at a level of the table, with its cure', () => {
  const found = broken.flatMap((text) => planCamera(designOf(text)).findings);
  for (const { rule, level, message, hint, value, limit } of found) {
    expect(rules.find(({ id }) => id === rule)?.levels, rule).toContain(level);
    expect(message, rule).toMatch(/\.$/);
    expect(message, `${rule} rounds its figures`).not.toMatch(/\d\.\d{4}/);
    expect(hint, rule).toMatch(/\S/);
    if (level === 'note' || (rule === 'lens-seat-known' && value === undefined)) continue;
    expect(Number.isFinite(value), rule).toBe(true);
    expect(Number.isFinite(limit), rule).toBe(true);
  }
  expect(new Set(found.map(({ rule }) => rule)).size).toBeGreaterThan(25);
});
