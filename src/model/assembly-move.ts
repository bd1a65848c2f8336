export type Axis = 'x' | 'y' | 'z';

/** The way that a piece moves to its place. */
export interface Way {
  readonly axis: Axis;
  readonly sign: 1 | -1;
}

/** How a builder would say it, standing behind the camera. */
export const wordsFor = ({ axis, sign }: Way): string => {
  const words = { x: ['from the right', 'from the left'], y: ['from above', 'from below'] } as const;
  if (axis === 'z') return sign > 0 ? 'from the front' : 'from behind';
  return words[axis][sign > 0 ? 1 : 0];
};

/** A thing that was brought to its place: one piece, or what had been put together before. */
export interface Move {
  /** Its number among the steps that this camera has. */
  readonly step: number;
  readonly title: string;
  /** Under which name it has been put together, `camera` in the end. */
  readonly into: string;
  /** What it was called where it is a whole. */
  readonly whole?: string;
  /** Keys of its pieces. */
  readonly pieces: readonly string[];
  /** The way that it moves; null where it is the first of its assembly, and is laid down. */
  readonly way: Way | null;
}
