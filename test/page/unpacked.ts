import { inflateRawSync } from 'node:zlib';

/**
 * The files of a zip archive by their paths, read from its central directory as APPNOTE.TXT describes it (sections 4.3.12
 * and 4.3.16), with Node's own inflating: what writes archives for the program has no part in it.
 */
export function unpacked(zip: Buffer): ReadonlyMap<string, Buffer> {
  const end = zip.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1'));
  if (end < 0) throw new Error('no end of a central directory');
  const files = new Map<string, Buffer>();
  let at = zip.readUInt32LE(end + 16);
  for (let left = zip.readUInt16LE(end + 10); left > 0; left--) {
    if (zip.readUInt32LE(at) !== 0x02014b50) throw new Error(`no entry of the central directory at ${at}`);
    const method = zip.readUInt16LE(at + 10);
    const packed = zip.readUInt32LE(at + 20);
    const size = zip.readUInt32LE(at + 24);
    const [name, extra, comment] = [zip.readUInt16LE(at + 28), zip.readUInt16LE(at + 30), zip.readUInt16LE(at + 32)];
    const local = zip.readUInt32LE(at + 42);
    const path = zip.toString('utf8', at + 46, at + 46 + name);
    // the local header's own lengths: its extra field may be another
    const from = local + 30 + zip.readUInt16LE(local + 26) + zip.readUInt16LE(local + 28);
    const raw = zip.subarray(from, from + packed);
    const bytes = method === 8 ? inflateRawSync(raw) : raw;
    if (bytes.length !== size) throw new Error(`${path} is not as long as it says`);
    files.set(path, bytes);
    at += 46 + name + extra + comment;
  }
  return files;
}
