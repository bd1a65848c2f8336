import type { Part } from './part.js';

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

/** What one person does in one go: a glue-up, a sub-assembly, a thing put in its place. */
export interface Step {
  /** Stable: the objects say by it what they have to say. */
  readonly key: string;
  readonly title: string;
  readonly acts: readonly Act[];
}

/** A step as one camera has it. */
export interface NumberedStep extends Step {
  readonly number: number;
}

/** The name under which all comes together in the end. */
export const CAMERA: Assembly = 'camera';

/** What hangs on the lens board, and comes off with it. */
export const ON_LENS_BOARD: readonly Assembly[] = [
  'lens board',
  'lens',
  'accessory frame',
  'filter holder',
  'shutter',
  'slide',
  'slide for times by hand',
  'peg',
  'hood',
  'cap',
  'cap peg',
];

const table = [
  {
    key: 'tripod-nut',
    title: 'Tripod doubler and tripod nut on the tailboard’s lower ply',
    acts: [
      { into: 'tailboard', each: ['T1L', 'T4'] },
      { into: 'tailboard', asOne: ['tripod-flange', 'tripod-barrel'] },
    ],
  },
  { key: 'tailboard', title: 'Upper ply on the tailboard', acts: [{ into: 'tailboard', each: ['T1U'] }] },
  { key: 'sole', title: 'The sole, of two plies', acts: [{ into: 'sole', each: ['R4L', 'R4U'] }] },
  { key: 'rails', title: 'Rails on the tailboard', acts: [{ into: 'tailboard', each: ['T2', 'rail-dowel-*'] }] },
  {
    key: 'keepers',
    title: 'Keepers on the rails',
    acts: [{ into: 'tailboard', each: ['rail-card', 'T3', 'T3S', 'keeper-screw'] }],
  },
  {
    key: 'front-box',
    title: 'Floor, sides and panel of the front box',
    acts: [{ into: 'front box', each: ['F2L', 'F4', 'F2R', 'F1'] }],
  },
  { key: 'front-box-top', title: 'Top of the front box', acts: [{ into: 'front box', each: ['F3'] }] },
  {
    key: 'corner-strips',
    title: 'Corner strips in the front box, and black inside',
    acts: [{ into: 'front box', each: ['F5'] }],
  },
  {
    key: 'legs',
    title: 'Front box on the tailboard',
    acts: [
      { into: CAMERA, whole: 'tailboard' },
      { into: CAMERA, whole: 'front box' },
    ],
  },
  { key: 'lens-board', title: 'Lens board', acts: [{ into: 'lens board', each: ['F6', 'F7', 'board-dowel-*'] }] },
  {
    key: 'retainer-packing',
    title: 'What the retainers slide on, round the lens board',
    acts: [{ into: CAMERA, each: ['retainer-card', 'F8', 'retainer-nut', 'retainer-pin', 'F10'] }],
  },
  {
    key: 'rear-box',
    title: 'Four walls of the rear box',
    acts: [{ into: 'rear box', each: ['R1L', 'R2T', 'R2F', 'R1R'] }],
  },
  {
    key: 'rear-standard',
    title: 'Rear box into the rear standard',
    acts: [
      { into: 'rear', each: ['R3'] },
      { into: 'rear', whole: 'rear box' },
    ],
  },
  {
    key: 'ribs',
    title: 'Ribs, and rear standard on the sole',
    acts: [
      { into: 'rear', each: ['R5'] },
      { into: 'rear', whole: 'sole' },
    ],
  },
  { key: 'baffle', title: 'Baffle in the rear box', acts: [{ into: 'rear', each: ['R9', 'R8'] }] },
  { key: 'turning-ring', title: 'Turning ring on the back plate', acts: [{ into: 'back', each: ['B1', 'B2'] }] },
  {
    key: 'mask-ledge',
    title: 'Ledge for masks on the turning ring',
    acts: [{ into: 'back', each: ['ledge-card', 'B7', 'B6'] }],
  },
  {
    key: 'fences',
    title: 'Fences, cord hooks and pins of the back',
    acts: [{ into: 'back', each: ['B3', 'B4', 'fence-open', 'B5', 'seat-pin-*'] }],
  },
  {
    key: 'middle-box',
    title: 'Middle box into its frame',
    acts: [
      { into: 'walls of the middle box', each: ['C1L', 'C2T', 'C2F', 'C1R'] },
      { into: 'middle box', each: ['C3'] },
      { into: 'middle box', whole: 'walls of the middle box' },
    ],
  },
  {
    key: 'felt',
    title: 'Black and felt on the rear box',
    acts: [{ into: 'rear', each: ['felt-long', 'felt-side'] }],
  },
  {
    key: 'middle-felt',
    title: 'Felt round the middle box, and its stop bars',
    acts: [{ into: 'middle box', each: ['felt-middle-long', 'felt-middle-side', 'C4'] }],
  },
  {
    key: 'middle-on',
    title: 'Middle box over the rear box, and the batten that draws it along',
    acts: [
      { into: 'rear', whole: 'middle box' },
      { into: 'rear', each: ['R10'] },
      { into: 'rear', asOne: ['batten-screw', 'batten-head'] },
    ],
  },
  {
    key: 'rear-in',
    title: 'Sliding rear into the camera, and its lock',
    acts: [
      { into: CAMERA, whole: 'rear' },
      { into: CAMERA, asOne: ['lock-head', 'lock-bolt'] },
      { into: CAMERA, each: ['lock-washer', 'lock-knob'] },
    ],
  },
  {
    key: 'end-stop',
    title: 'End stop on the tailboard, behind the slide',
    acts: [{ into: CAMERA, each: ['T5', 'stop-screw'] }],
  },
  {
    key: 'middle-stops',
    title: 'Stop blocks of the middle box on the sides of the front box',
    acts: [{ into: CAMERA, each: ['F14'] }],
  },
  {
    key: 'turn-buttons',
    title: 'Back on the camera, and the turn-buttons that hold it',
    acts: [
      { into: CAMERA, whole: 'back' },
      { into: CAMERA, each: ['button-card', 'R7', 'button-screw', 'R6', 'button-nut'] },
    ],
  },
  {
    key: 'handle',
    title: 'Handle on its plate',
    acts: [{ into: 'handle', each: ['F12', 'handle-washer', 'handle-nut', 'F13', 'F11', 'handle-screw'] }],
  },
  { key: 'handle-on', title: 'Handle on the top of the front box', acts: [{ into: CAMERA, whole: 'handle' }] },
  {
    key: 'stop-wallet',
    title: 'Wallet for the stops, on the side of the front box',
    acts: [
      { into: 'stop wallet', each: ['WW1', 'velvet-stops', 'WW2'] },
      { into: CAMERA, whole: 'stop wallet' },
    ],
  },
  { key: 'stops', title: 'Stops into their wallet', acts: [{ into: CAMERA, each: ['WS*'] }] },
  {
    key: 'lens',
    title: 'Lens on its board',
    acts: [
      { into: 'lens board', each: ['lens-clamp', 'clamp-screw', 'clamp-nut'] },
      { into: 'lens', asOne: ['lens-front', 'lens-barrel', 'lens-rear', 'lens-flange'] },
      { into: 'lens board', whole: 'lens' },
      { into: 'lens board', each: ['lens-ring', 'pinch-bolt', 'pinch-nut'] },
    ],
  },
  {
    key: 'accessory-frame',
    title: 'Accessory frame',
    acts: [{ into: 'accessory frame', each: ['A1', 'A2', 'channel-card', 'A3', 'rail-packing-card', 'A4', 'A5'] }],
  },
  {
    key: 'frame-on',
    title: 'Accessory frame on the lens board, round the lens',
    acts: [{ into: 'lens board', whole: 'accessory frame' }],
  },
  {
    key: 'board-in',
    title: 'Lens board into the camera, and the retainers over it',
    acts: [
      { into: CAMERA, whole: 'lens board' },
      { into: CAMERA, each: ['F9', 'retainer-washer', 'retainer-screw'] },
    ],
  },
  {
    key: 'filter-holder',
    title: 'Filter holder',
    acts: [{ into: 'filter holder', each: ['FH1', 'filter-card', 'FH2', 'FH3'] }],
  },
  {
    key: 'shutter',
    title: 'Guide of the drop shutter',
    acts: [{ into: 'shutter', each: ['D1', 'carrier-card', 'D2', 'D3', 'D8', 'guide-card', 'D9', 'stop-felt'] }],
  },
  {
    key: 'shutter-slides',
    title: 'Slides of the drop shutter, and their peg',
    acts: [
      { into: 'slide', each: ['D4', 'D6'] },
      { into: 'slide for times by hand', each: ['D5', 'D7'] },
      { into: 'peg', each: ['shutter-peg', 'D10'] },
    ],
  },
  {
    key: 'hood',
    title: 'Lens hood',
    acts: [{ into: 'hood', each: ['LH3', 'LH4', 'LH5', 'LH2', 'hood-card', 'LH1'] }],
  },
  {
    key: 'cap',
    title: 'Cap of the lens, and its peg',
    acts: [
      { into: 'cap', each: ['LC1', 'LC2'] },
      { into: 'cap peg', each: ['cap-peg', 'LC3'] },
    ],
  },
  {
    key: 'front-on',
    title: 'What hangs ahead of the lens, on the accessory frame',
    acts: [
      { into: CAMERA, whole: 'filter holder' },
      { into: CAMERA, whole: 'shutter' },
      { into: CAMERA, whole: 'slide' },
      { into: CAMERA, whole: 'peg' },
      { into: CAMERA, whole: 'slide for times by hand' },
      { into: CAMERA, whole: 'hood' },
      { into: CAMERA, whole: 'cap' },
      { into: CAMERA, whole: 'cap peg' },
    ],
  },
  {
    key: 'glass-frame',
    title: 'Frame of the ground glass',
    acts: [{ into: 'glass frame', each: ['G1', 'GP', 'GQ', 'glass-shim-*', 'G2'] }],
  },
  {
    key: 'ground-glass',
    title: 'Ground glass into its frame',
    acts: [{ into: 'glass frame', each: ['ground-glass', 'glass-pad', 'glass-clip'] }],
  },
  { key: 'spacers', title: 'Spacers', acts: [{ into: 'spacer', each: ['SP*'] }] },
  {
    key: 'holder-shell',
    title: 'Face, channel, lip and pocket of the holder',
    acts: [
      {
        into: 'paper holder',
        each: ['HF*', 'HG*', 'shim-*', 'HC*', 'velvet-face-*', 'velvet-side-*', 'HL*', 'velvet-lip-*', 'HP*', 'HB*'],
      },
    ],
  },
  {
    key: 'dark-slide',
    title: 'Dark slide of the holder',
    acts: [
      { into: 'dark slide', each: ['HS*', 'HU*'] },
      { into: 'paper holder', whole: 'dark slide' },
    ],
  },
  {
    key: 'holder-lid',
    title: 'Lid of the holder, and how it is loaded',
    acts: [
      { into: 'lid', each: ['HD*', 'HQ*', 'lid-felt-*'] },
      { into: 'insert', each: ['HR*', 'HM*'] },
      { into: 'paper holder', whole: 'insert' },
      { into: 'paper holder', each: ['sheet-*', 'insert-sheet-*'] },
      { into: 'paper holder', whole: 'lid' },
      { into: 'paper holder', each: ['HT*', 'lid-screw-*'] },
    ],
  },
  { key: 'masks', title: 'Masks', acts: [{ into: 'masks', each: ['MK*'] }] },
  {
    key: 'tank-chamber',
    title: 'Walls of the chamber of the processing holder',
    acts: [{ into: 'tank', each: ['KC*', 'KX*', 'KW*', 'KE*', 'KJ*'] }],
  },
  {
    key: 'tank-spout',
    title: 'Spout and vent in the wall of the chamber',
    acts: [{ into: 'tank', asOne: ['tank-spout-*', 'tank-vent-*', 'tank-cap-*', 'tank-seal-*'] }],
  },
  { key: 'tank-window', title: 'Window of the chamber', acts: [{ into: 'tank', each: ['tank-glass-*'] }] },
  {
    key: 'tank-front',
    title: 'Channel, dark slide and face before the window',
    acts: [
      {
        into: 'tank',
        each: ['KR*', 'tank-velvet-rear-*', 'KV*', 'tank-velvet-side-*', 'tank-velvet-face-*', 'KF*'],
      },
      { into: 'tank slide', each: ['KY*', 'KU*'] },
      { into: 'tank', whole: 'tank slide' },
    ],
  },
  {
    key: 'tank-rim',
    title: 'Lip and rim of the chamber',
    acts: [{ into: 'tank', each: ['KA*', 'KB*', 'tank-shim-*', 'KL*', 'KN*', 'tank-nut-*', 'KP*', 'KS*', 'KT*'] }],
  },
  {
    key: 'tank-lid',
    title: 'Lid of the processing holder',
    acts: [{ into: 'tank lid', each: ['KD*', 'KG*', 'tank-pad-*'] }],
  },
  {
    key: 'tank-shut',
    title: 'Gasket and lid on the chamber, and the test with water',
    acts: [
      { into: 'tank', each: ['tank-sheet-*', 'tank-cord-*'] },
      { into: 'tank', whole: 'tank lid' },
      { into: 'tank', each: ['tank-screw-*'] },
    ],
  },
  {
    key: 'glass-in',
    title: 'Glass or holder into the back, and the cords over it',
    acts: [
      { into: CAMERA, whole: 'spacer' },
      { into: CAMERA, whole: 'glass frame' },
      { into: CAMERA, whole: 'paper holder' },
      { into: CAMERA, whole: 'tank' },
      { into: CAMERA, each: ['holder-*', 'G3'] },
      { into: CAMERA, whole: 'masks' },
      { into: CAMERA, each: ['cord'] },
    ],
  },
] as const satisfies readonly Step[];

export type StepKey = (typeof table)[number]['key'];

/**
 * How a camera is put together. From which side each thing comes is not written here: the proof finds it.
 *
 * Rails and keepers come before the front box stands over them: its floor would leave their foremost screws and dowels
 * no room to be driven from above. The sole lies between the rails as their gauge, with 0.25 of card. The lens waits until
 * all sawing, gluing and painting is done.
 */
export const assemblySteps: readonly Step[] = table;

const idsIn = (...keys: readonly string[]): readonly string[] =>
  table.filter(({ key }) => keys.includes(key)).flatMap(({ acts }) => acts.flatMap((act) => idsOf(act)));

/** Ids of what is pushed onto the accessory frame, and comes off for the road; an object that goes there names its steps here. */
export const pushedOnFrame: readonly string[] = idsIn('filter-holder', 'shutter', 'shutter-slides', 'hood', 'cap');

/** Ids of what stands up over the camera: its handle, the slides of a shutter. */
export const overCamera: readonly string[] = idsIn('handle', 'shutter-slides');

/** Ids of all that hangs ahead of the lens. */
export const aheadOfLens: readonly string[] = [...idsIn('accessory-frame'), ...pushedOnFrame];

/** The steps of a camera with these parts, numbered from 1 without a gap: a step that brings nothing to it is passed over. */
export function stepsOfCamera(parts: readonly Part[], steps: readonly Step[] = assemblySteps): readonly NumberedStep[] {
  const placed = parts.filter(({ placements }) => placements.length > 0);
  const begun = new Set<Assembly>();
  const brings = (act: Act): boolean => {
    const something = 'whole' in act ? begun.has(act.whole) : placed.some(({ id }) => names(act, id));
    if (something) begun.add(act.into);
    return something;
  };
  return steps
    .filter(({ acts }) => acts.map(brings).includes(true))
    .map((step, i): NumberedStep => ({ ...step, number: i + 1 }));
}

/** Whether an act brings in the part of this id; what comes as part of a whole was brought to it before. */
export const names = (act: Act, id: string): boolean => idsOf(act).some((pattern) => matches(pattern, id));

export function idsOf(act: Act): readonly string[] {
  if ('each' in act) return act.each;
  return 'asOne' in act ? act.asOne : [];
}

export const matches = (pattern: string, id: string): boolean =>
  pattern.endsWith('*') ? id.startsWith(pattern.slice(0, -1)) : id === pattern;
