/** What is put together is given a name, so that it can be brought in as a whole later on. */
type Assembly = string;

/**
 * One act at the bench. Ids may end in `*`, which stands for whatever follows; what a camera does not have is passed over.
 *
 * - `each`: these parts one after another, in this order, every piece along a line of its own
 * - `asOne`: these parts as one thing, such as the barrel of a nut and its flange
 * - `whole`: all that was put together under that name
 */
export type Act = { readonly into: Assembly } & (
  | { readonly each: readonly string[] }
  | { readonly asOne: readonly string[] }
  | { readonly whole: Assembly }
);

export interface Step {
  readonly number: number;
  readonly title: string;
  readonly acts: readonly Act[];
}

/** The name under which all comes together in the end. */
export const CAMERA: Assembly = 'camera';

/**
 * How the camera is put together. From which side each thing comes is not written here: the proof finds it.
 *
 * Rails and keepers come before the front box stands over them: its floor would leave their foremost screws and dowels
 * no room to be driven from above. The bare sole lies between the rails as their gauge then, with 0.25 of card.
 */
export const assemblySteps: readonly Step[] = [
  {
    number: 1,
    title: 'Tailboard, tripod nut, rails and keepers; the front box’s floor into its left side',
    acts: [
      { into: 'tailboard', each: ['T1L', 'T4'] },
      { into: 'tailboard', asOne: ['tripod-flange', 'tripod-barrel'] },
      { into: 'tailboard', each: ['T1U'] },
      { into: 'tailboard', each: ['T2'] },
      { into: 'tailboard', each: ['rail-dowel'] },
      { into: 'tailboard', each: ['rail-card', 'T3', 'T3S'] },
      { into: 'tailboard', each: ['keeper-screw'] },
      { into: 'front box', each: ['F2L', 'F4'] },
    ],
  },
  {
    number: 2,
    title: 'Other side and panel of the front box, on a flat board, its diagonals equal',
    acts: [{ into: 'front box', each: ['F2R', 'F1'] }],
  },
  {
    number: 3,
    title: 'Top of the front box, then its legs into the tailboard',
    acts: [
      { into: 'front box', each: ['F3'] },
      { into: CAMERA, whole: 'tailboard' },
      { into: CAMERA, whole: 'front box' },
    ],
  },
  { number: 4, title: 'Corner strips, paint inside', acts: [{ into: CAMERA, each: ['F5'] }] },
  {
    number: 5,
    title: 'Lens board with its lens, and what holds it',
    acts: [
      { into: 'lens board', each: ['F6', 'F7', 'board-dowel-*'] },
      { into: 'lens board', each: ['lens-clamp'] },
      { into: 'lens board', each: ['clamp-screw', 'clamp-nut'] },
      { into: 'lens', asOne: ['lens-front', 'lens-barrel', 'lens-rear', 'lens-flange'] },
      { into: 'lens board', whole: 'lens' },
      { into: 'lens board', each: ['lens-ring', 'pinch-bolt', 'pinch-nut'] },
      { into: CAMERA, each: ['retainer-card', 'F8', 'retainer-nut', 'retainer-pin', 'F10'] },
      { into: CAMERA, whole: 'lens board' },
      { into: CAMERA, each: ['F9', 'retainer-screw'] },
    ],
  },
  {
    number: 6,
    title: 'Rear box, square on the standard’s opening',
    acts: [
      { into: 'rear box', each: ['R1L', 'R2T', 'R2F', 'R1R'] },
      { into: 'rear', each: ['R3'] },
      { into: 'rear', whole: 'rear box' },
    ],
  },
  {
    number: 7,
    title: 'Ribs into the standard, then both down into the sole, square to the box',
    acts: [
      { into: 'rear', each: ['R5'] },
      { into: 'sole', each: ['R4L', 'R4U'] },
      { into: 'rear', whole: 'sole' },
    ],
  },
  {
    number: 8,
    title: 'Back',
    acts: [{ into: 'back', each: ['B1', 'B2', 'B3', 'B4', 'fence-open', 'B5', 'seat-pin-*'] }],
  },
  {
    number: 9,
    title: 'Felt round the rear box, slide it in from the rear, bolt, back, turn-buttons, end stop',
    acts: [
      { into: 'rear', each: ['felt-long', 'felt-side'] },
      { into: CAMERA, whole: 'rear' },
      { into: CAMERA, asOne: ['lock-head', 'lock-bolt'] },
      { into: CAMERA, each: ['lock-washer', 'lock-knob'] },
      { into: CAMERA, whole: 'back' },
      { into: CAMERA, each: ['button-card', 'R7', 'button-screw', 'R6', 'button-nut'] },
      { into: CAMERA, each: ['T5', 'stop-screw'] },
    ],
  },
  {
    number: 10,
    title: 'Glass and spacers; measure the register, and shim',
    acts: [
      { into: 'spacer', each: ['SP*'] },
      {
        into: 'glass frame',
        each: ['G1', 'glass-shim-*', 'GP', 'GQ', 'G2', 'ground-glass', 'glass-pad', 'glass-clip'],
      },
      { into: CAMERA, whole: 'spacer' },
      { into: CAMERA, whole: 'glass frame' },
      { into: CAMERA, each: ['holder-*', 'G3'] },
      { into: CAMERA, each: ['cord'] },
    ],
  },
];
