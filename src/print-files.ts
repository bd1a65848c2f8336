import { BESIDE_CAMERA } from './camera/beside-camera.js';
import { threeMf } from './files/3mf.js';
import type { PrintedFile } from './files/parts-json.js';
import { stl } from './files/stl.js';
import { type Boundary, type Kernel, realise } from './geometry/kernel.js';
import { buildPrism } from './geometry/modelling.js';
import type { OutputFile } from './model/output-file.js';
import type { Part, PrintedPart } from './model/part.js';

export interface Print {
  readonly part: PrintedPart;
  readonly boundary: Boundary;
}

/** Where a print is written, without its ending: what has no place in the camera stands beside what belongs to it. */
export const printFile = ({ id, usedOn }: PrintedPart): string =>
  `${usedOn === undefined ? 'prints' : BESIDE_CAMERA}/${id}`;

/** The printed parts, each as the solid that the printer is given. */
export const printsOf = (parts: readonly Part[], kernel: Kernel): readonly Print[] =>
  parts.flatMap((part) =>
    part.kind === 'printed' ? [{ part, boundary: realise(kernel, part.solid, buildPrism) }] : [],
  );

/** Each print in both forms. */
export const printFiles = (prints: readonly Print[]): readonly OutputFile[] =>
  prints.flatMap(({ part, boundary }) => [
    { path: `${printFile(part)}.stl`, bytes: stl(boundary.mesh) },
    { path: `${printFile(part)}.3mf`, bytes: threeMf({ name: part.name, mesh: boundary.mesh }) },
  ]);

/** What parts.json says of each print. */
export const meshesOf = (prints: readonly Print[]): ReadonlyMap<string, PrintedFile> =>
  new Map(prints.map(({ part, boundary }) => [part.id, { mesh: `${printFile(part)}.stl`, volume: boundary.volume }]));
