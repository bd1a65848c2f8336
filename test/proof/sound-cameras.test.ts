import { expect, test } from 'vitest';
import { loadKernel } from '../../src/geometry/kernel.js';
import { cornerOwners } from '../../src/proof/corner-owner.js';
import { oneWayRules } from '../../src/proof/one-way.js';
import { proveOrder } from '../../src/proof/order.js';
import { lawsFrom } from '../laws/law.js';

const kernel = await loadKernel();
const { lawOfSoundCameras } = lawsFrom(4711);

test('cameras against which nothing speaks go together, one way, with one owner for every corner', () =>
  lawOfSoundCameras(10, ({ build }) => {
    expect(proveOrder(build, kernel)).toEqual([]);
    expect(oneWayRules(build)).toEqual([]);
    expect(cornerOwners(build)).toEqual([]);
  }));
