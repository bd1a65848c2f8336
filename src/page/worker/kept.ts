import {
  type Design,
  type Kernel,
  keepingReader,
  loadShown,
  type Planned,
  type Problem,
  readDesign,
  readRemnant,
} from '../../index.js';
import type { DesignText } from './questions.js';

/** A design that was read, and on first asking planned, for as long as the next questions are about the same text. */
interface Kept {
  readonly given: DesignText;
  readonly read: { readonly design: Design } | { readonly problems: readonly Problem[] };
  planned?: Planned;
}

/** Reads the texts of designs at this desk. */
export const reader = keepingReader();

/** What the desk has at hand: it lives as long as its worker. */
const desk: { kept: Kept | null; kernel: Promise<Kernel> | null } = { kept: null, kernel: null };

/** Reads a design, or remembers what was read. */
export function readKept(given: DesignText): Kept['read'] {
  const { kept } = desk;
  if (kept !== null && isSame(kept.given, given)) return kept.read;
  const read = readDesign(given.text, given.file, remnantsIn(given), reader);
  desk.kept = { given, read };
  return read;
}

/** The camera of a design; null where the text is no design. */
export async function planKept(given: DesignText): Promise<Planned | null> {
  const read = readKept(given);
  if ('problems' in read || desk.kept === null) return null;
  if (desk.kept.planned === undefined) {
    const { planCamera } = await loadShown();
    desk.kept.planned = planCamera(read.design);
  }
  return desk.kept.planned;
}

/** The solid kernel, started once. */
export async function kernelKept(): Promise<Kernel> {
  if (desk.kernel === null) {
    const { loadKernel } = await loadShown();
    desk.kernel = loadKernel(new URL('manifold.wasm', import.meta.url).href);
  }
  try {
    return await desk.kernel;
  } catch (error) {
    // a network that failed once is tried again when it is next asked for
    desk.kernel = null;
    throw error;
  }
}

const isSame = (a: DesignText, b: DesignText): boolean =>
  a.text === b.text && a.file === b.file && JSON.stringify(a.beside) === JSON.stringify(b.beside);

/** The remnants that lie beside a design. */
export const remnantsIn =
  ({ beside }: DesignText) =>
  (file: string): ReturnType<typeof readRemnant> => {
    // what was picked from a disk has lost its folder
    const name = [file, file.replace(/^.*\//, '')].find((one) => Object.hasOwn(beside, one));
    const text = name === undefined ? undefined : beside[name];
    return text === undefined
      ? { what: `${file} is not at hand.`, accepted: 'Open the file of the remnant together with the design.' }
      : readRemnant(text);
  };
