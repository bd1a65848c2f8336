import { serializeBinary } from '@jscad/stl-serializer/CSGToStlb.js';
import type { Mesh } from '../geometry/mesh.js';

/**
 * A printed part as binary STL, mm. The package's front door snaps corners to a grid of its own and drops small
 * triangles, which opens what was closed; its inner writer takes the triangles as they are.
 */
export function stl({ positions, triangles }: Mesh): Uint8Array {
  // the format stores 32-bit floats: normals are taken from those, so that they agree with the faces as read back
  const corner = (index: number) => [0, 1, 2].map((axis) => Math.fround(positions[3 * index + axis] as number));
  const polygons = Array.from({ length: triangles.length / 3 }, (_, i) => ({
    vertices: triangles.slice(3 * i, 3 * i + 3).map(corner),
  }));
  const chunks = serializeBinary([{ polygons, transforms: UNMOVED }], {}).map((chunk) => new Uint8Array(chunk));
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let end = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, end);
    end += chunk.length;
  }
  return bytes;
}

const UNMOVED = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];
