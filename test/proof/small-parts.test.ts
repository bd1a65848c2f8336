import { expect, test } from 'vitest';
import { loadWorkshop } from '../../src/index.js';
import { heronWith, SMALL_PARTS } from '../camera/asked-for.js';
import { bareHeron } from '../designs/kept-design.js';

const { check } = await loadWorkshop();

test('with baffle, handle, masks and stops Heron goes together, focuses and keeps out light as before', {
  timeout: 240_000,
}, () => {
  const { masks = [], stops } = heronWith(...SMALL_PARTS).design;
  if (stops === undefined) throw new Error('Heron was asked for stops');
  const design = { ...bareHeron(), baffle: true, handle: true, masks, stops } as const;
  const { findings, leaks, moves } = check(design, { onProgress: () => {} });
  const spoken = findings.filter(({ level }) => level !== 'note').map(({ rule, message }) => `${rule}: ${message}`);
  expect(spoken).toEqual([]);
  expect(leaks).toEqual([]);
  // two masks, each with its soft edge
  expect(findings.filter(({ rule }) => rule === 'mask-edge')).toHaveLength(2);
  const brought = moves.flatMap(({ pieces }) => pieces).join();
  for (const id of ['R8', 'R9', 'F11', 'F12', 'F13', 'B6', 'MK1', 'MK2', 'WW1', 'WW2', 'WS1', 'WS4'])
    expect(brought, id).toMatch(new RegExp(`\\b${id}\\b`));
});
