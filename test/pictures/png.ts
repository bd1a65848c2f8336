import { crc32, deflateSync } from 'node:zlib';

/** A picture of three bytes a pixel (red, green, blue), row by row from the top. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** The picture as a PNG file: eight bits a channel, no transparency, rows unfiltered (ISO/IEC 15948, sections 9 to 11). */
export function png({ width, height, pixels }: Picture): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  const rows = Buffer.alloc(height * (3 * width + 1));
  for (let y = 0; y < height; y++) {
    rows.set(pixels.subarray(3 * width * y, 3 * width * (y + 1)), (3 * width + 1) * y + 1);
  }
  return Buffer.concat([
    Buffer.from(SIGNATURE),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(name: string, content: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), content]);
  const around = Buffer.alloc(8);
  around.writeUInt32BE(content.length, 0);
  around.writeUInt32BE(crc32(named), 4);
  return Buffer.concat([around.subarray(0, 4), named, around.subarray(4)]);
}
