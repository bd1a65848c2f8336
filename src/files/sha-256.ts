/**
 * SHA-256 (FIPS 180-4, section 6.2). In a browser the machine's own is there for pages of trusted origin alone, and the
 * page may lie on any server.
 */
export function sha256(bytes: Uint8Array): string {
  const hash = new Int32Array(FIRST);
  const words = new Int32Array(64);
  const padded = withLength(bytes);
  const view = new DataView(padded.buffer);
  for (let at = 0; at < padded.length; at += 64) {
    for (let t = 0; t < 16; t++) words[t] = view.getUint32(at + 4 * t);
    compress(hash, words);
  }
  return [...hash].map((word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
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

/** One block, whose sixteen words stand at the beginning of `w`. Written for speed: every part of every plan has its digest. */
function compress(hash: Int32Array, w: Int32Array): void {
  for (let t = 16; t < 64; t++) {
    const early = w[t - 15] as number;
    const late = w[t - 2] as number;
    const s0 = turned(early, 7) ^ turned(early, 18) ^ (early >>> 3);
    const s1 = turned(late, 17) ^ turned(late, 19) ^ (late >>> 10);
    w[t] = ((w[t - 16] as number) + s0 + (w[t - 7] as number) + s1) | 0;
  }
  let a = hash[0] as number;
  let b = hash[1] as number;
  let c = hash[2] as number;
  let d = hash[3] as number;
  let e = hash[4] as number;
  let f = hash[5] as number;
  let g = hash[6] as number;
  let h = hash[7] as number;
  for (let t = 0; t < 64; t++) {
    const choice = (e & f) ^ (~e & g);
    const sum1 = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
    const first = (h + sum1 + choice + (ROUND[t] as number) + (w[t] as number)) | 0;
    const second = ((turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + first) | 0;
    d = c;
    c = b;
    b = a;
    a = (first + second) | 0;
  }
  // what is kept in a list of whole numbers of 32 bits wraps round by itself
  hash[0] = (hash[0] as number) + a;
  hash[1] = (hash[1] as number) + b;
  hash[2] = (hash[2] as number) + c;
  hash[3] = (hash[3] as number) + d;
  hash[4] = (hash[4] as number) + e;
  hash[5] = (hash[5] as number) + f;
  hash[6] = (hash[6] as number) + g;
  hash[7] = (hash[7] as number) + h;
}

const turned = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

/** The first 32 bits of the fractional parts of a root of the first primes, as the standard defines its constants. */
function fractions(count: number, root: (prime: bigint) => bigint): Int32Array {
  const found: number[] = [];
  for (let n = 2n; found.length < count; n++) {
    let prime = true;
    for (let k = 2n; k * k <= n; k++) if (n % k === 0n) prime = false;
    if (prime) found.push(Number(BigInt.asIntN(32, root(n))));
  }
  return new Int32Array(found);
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
