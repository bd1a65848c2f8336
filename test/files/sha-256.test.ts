import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { sha256 } from '../../src/files/sha-256.js';

const bytes = (length: number): Uint8Array => Uint8Array.from({ length }, (_, i) => (i * 7 + (i >> 8)) & 255);

test('digests are those of Node, at every length around the ends of blocks', () => {
  const lengths = [...Array(200).keys(), 1000, 4095, 65_537];
  for (const length of lengths)
    expect(sha256(bytes(length)), `${length} bytes`).toBe(createHash('sha256').update(bytes(length)).digest('hex'));
});

test('abc has the digest that the standard prints', () =>
  expect(sha256(new TextEncoder().encode('abc'))).toBe(
    'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
  ));
