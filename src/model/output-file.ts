/** A file of the output folder. */
export interface OutputFile {
  /** Relative to the output folder, steps parted by `/`. */
  readonly path: string;
  readonly bytes: Uint8Array;
}
