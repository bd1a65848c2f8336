/**
 * SHA-256 (FIPS 180-4, section 6.2). In a browser the machine's own is there for pages of trusted origin alone, and the
 * page may lie on any server.
 */
export function sha256(bytes: Uint8Array): string {
  const hash = new Uint32Array(FIRST);
  const words = new Uint32Array(64);
  const padded = withLength(bytes);
  const view = new DataView(padded.buffer);
  for (let at = 0; at < padded.length; at += 64) {
    for (let t = 0; t < 16; t++) words[t] = view.getUint32(at + 4 * t);
    compress(hash, words);
  }
  return [...hash].map((word) => word.toString(16).padStart(8, '0')).join('');
}

/** A one after the last bit, and the length in bits in the last eight bytes of the last block. */
function withLength(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const padded = new Uint8Array(64 * Math.ceil((bytes.length + 9) / 64));
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, bytes.length << 3);
  return padded;
}

/** One block, whose sixteen words stand at the beginning of `w`. */
function compress(hash: Uint32Array, w: Uint32Array): void {
  const word = (t: number): number => w[t] as number;
  for (let t = 16; t < 64; t++) {
    const [early, late] = [word(t - 15), word(t - 2)];
    const s0 = turned(early, 7) ^ turned(early, 18) ^ (early >>> 3);
    const s1 = turned(late, 17) ^ turned(late, 19) ^ (late >>> 10);
    w[t] = word(t - 16) + s0 + word(t - 7) + s1;
  }
  let [a, b, c, d, e, f, g, h] = hash as unknown as [number, number, number, number, number, number, number, number];
  for (let t = 0; t < 64; t++) {
    const choice = (e & f) ^ (~e & g);
    const first = (h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + choice + (ROUND[t] as number) + word(t)) | 0;
    const second = (turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + first) | 0, c, b, a, (first + second) | 0];
  }
  for (const [i, more] of [a, b, c, d, e, f, g, h].entries()) hash[i] = (hash[i] as number) + more;
}

const turned = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

/** The first 32 bits of the fractional parts of a root of the first primes, as the standard defines its constants. */
function fractions(count: number, root: (prime: bigint) => bigint): Uint32Array {
  const found: number[] = [];
  for (let n = 2n; found.length < count; n++) {
    let prime = true;
    for (let k = 2n; k * k <= n; k++) if (n % k === 0n) prime = false;
    if (prime) found.push(Number(BigInt.asUintN(32, root(n))));
  }
  return new Uint32Array(found);
}

/** The largest whole number whose power is no larger than a number. */
function wholeRoot(number: bigint, power: bigint): bigint {
  let [low, high] = [0n, 1n << 40n];
  while (high - low > 1n) {
    const middle = (low + high) / 2n;
    if (middle ** power <= number) low = middle;
    else high = middle;
  }
  return low;
}

const FIRST = fractions(8, (prime) => wholeRoot(prime << 64n, 2n));
const ROUND = fractions(64, (prime) => wholeRoot(prime << 96n, 3n));
