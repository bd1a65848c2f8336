import { expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.js';
import { keepingReader, plainReader } from '../../src/design/reader.js';
import { designFile } from '../../src/design/source.js';
import { writeKeys } from '../../src/design/write-keys.js';
import { workedDesign } from './form-nodes.js';

const heron = workedDesign('heron');
const source = { file: 'heron.yaml', text: heron, kind: designFile };

test('a reader that remembers says what one says that does not', () => {
  const reader = keepingReader();
  for (const text of [heron, workedDesign('dunlin'), heron, 'name: [', '- 1'])
    expect(reader.outline({ ...source, text })).toEqual(plainReader.outline({ ...source, text }));
});

test('it reads the same text once, and the last two at most', () => {
  const reader = keepingReader();
  const first = reader.outline(source);
  const tree = reader.tree(heron);
  reader.outline({ ...source, text: 'name: A' });
  reader.tree('name: A');
  expect(reader.outline(source)).toBe(first);
  expect(reader.tree(heron)).toBe(tree);
  for (const text of ['name: B', 'name: C']) {
    reader.outline({ ...source, text });
    reader.tree(text);
  }
  expect(reader.outline(source)).not.toBe(first);
  expect(reader.tree(heron)).not.toBe(tree);
});

test('what is wrong is told of the file that has it', () => {
  const reader = keepingReader();
  for (const file of ['one.yaml', 'two.yaml']) {
    const outcome = readDesign('name: *nothing', file, undefined, reader);
    expect('problems' in outcome && outcome.problems.map((problem) => problem.file)).toContain(file);
  }
});

test('a change that is written leaves what was remembered as it was', () => {
  const reader = keepingReader();
  const before = structuredClone(reader.outline(source));
  const outcome = writeKeys(
    heron,
    'heron.yaml',
    [{ kind: 'write', path: 'lens.flangeDistance', value: '204 mm' }],
    reader,
  );
  expect(outcome).toEqual(
    writeKeys(heron, 'heron.yaml', [{ kind: 'write', path: 'lens.flangeDistance', value: '204 mm' }]),
  );
  expect(reader.outline(source)).toEqual(before);
});
