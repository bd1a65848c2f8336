/** A content of the design file, and the tag by which the program that serves it knows it again. */
export interface FileContent {
  readonly text: string;
  readonly tag: string;
}

/** The design file that the program serves with the page. */
export interface ServedState {
  readonly file: string;
  /** What the page last saw in the file: what it saves takes the place of that and of nothing else. */
  readonly tag: string;
  /** What somebody else wrote into the file while something here was unsaved; null where nobody did. */
  readonly theirs: FileContent | null;
  /** What became of the file last. */
  readonly said: string;
}
