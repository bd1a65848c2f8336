import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readJson } from '../../src/model/json-text.js';

const told = (text: string) => {
  const read = readJson(text);
  return 'what' in read ? read.what : 'JSON';
};

describe('a text that is no JSON is told with line and column', () => {
  test.each([
    ['nothing', '', 1, 1],
    ['a key without quotes', '{\n  schema: 1\n}', 2, 3],
    ['a comma at the end', '{ "a": [1, 2,] }', 1, 14],
    ['a comma that is missing', '{\n  "a": 1\n  "b": 2 }', 3, 3],
    ['a colon that is missing', '{ "a" 1 }', 1, 7],
    ['a bracket of the other kind', '[[1, 2}]', 1, 7],
    ['a bracket that is not closed', '{ "a": [1, 2]', 1, 14],
    ['a quote that is not closed', '{\n"a": "b\n}', 2, 6],
    ['a decimal comma', '{ "thickness": 4,05 }', 1, 18],
    ['a unit', '{ "thickness": 4.05 mm }', 1, 21],
    ['more behind its end', '{} {}', 1, 4],
    ['single quotes', "{ 'a': 1 }", 1, 3],
    ['a number that begins with a nought', '[007]', 1, 3],
  ])('%s', (_, text, line, column) =>
    expect(told(text)).toBe(`It is not JSON from line ${line}, column ${column} on.`),
  );

  test('behind the mark that some editors put first, the columns count from the text', () =>
    expect([told('\ufeff[1]'), told('\ufeff[x]')]).toEqual(['JSON', 'It is not JSON from line 1, column 2 on.']));
});

// outside: the reader of the engine, which stops within a string or a number, where this tells its beginning
test('a text is refused where the engine refuses it, at the sign that it names', () => {
  const slip = fc
    .tuple(fc.json({ maxDepth: 3 }), fc.nat(), fc.constantFrom('', ',', ':', '"', ']', '}', 'x', '0', '\n'))
    .map(([text, n, sign]) => {
      const at = n % text.length;
      return text.slice(0, at) + sign + text.slice(at + 1);
    });
  let compared = 0;
  fc.assert(
    fc.property(slip, (text) => {
      let said: string | null = null;
      try {
        JSON.parse(text);
      } catch (error) {
        said = (error as Error).message;
      }
      expect(told(text) === 'JSON').toBe(said === null);
      const position = /at position (\d+)/.exec(said ?? '')?.[1];
      if (position === undefined) return;
      const [, line, column] = /line (\d+), column (\d+)/.exec(told(text)) ?? [];
      const lines = text.split('\n');
      const here = lines.slice(0, Number(line) - 1).reduce((sum, one) => sum + one.length + 1, 0) + Number(column) - 1;
      expect(here).toBeLessThanOrEqual(Number(position));
      expect(text.slice(here, Number(position))).toMatch(/^(?:"(?:[^"\\]|\\.?)*|[\d.eE+-]*|[a-z]*)$/s);
      compared++;
    }),
    { numRuns: 2000, seed: 1906 },
  );
  expect(compared).toBeGreaterThan(500);
});
