const FRONT_BOX = ['F2L', 'F2R', 'F3', 'F4'] as const;
const REAR_BOX = ['R1L', 'R1R', 'R2T', 'R2F'] as const;
const MIDDLE_BOX = ['C1L', 'C1R', 'C2T', 'C2F'] as const;
const BOXES = [...FRONT_BOX, ...MIDDLE_BOX, ...REAR_BOX] as const;
const LENS = ['lens-front', 'lens-barrel', 'lens-rear', 'lens-flange'] as const;
const SOLE = ['R4L', 'R4U'] as const;
const TAILBOARD = ['T1U', 'T1L'] as const;
const TRIPOD = ['T4', 'tripod-flange', 'tripod-barrel'] as const;
const SCALES = ['T3', 'T3S'] as const;
const HANDLE = ['F11', 'F12', 'F13'] as const;
const FENCES = ['B3', 'B4', 'fence-open'] as const;
const GLASS = ['G1', 'G2', 'ground-glass'] as const;

/** Whatever a design has of holders, bought or made. */
export const HOLDERS = 'holders';

/**
 * Where on the camera a rule looks that measures a whole object and names no part: ids of parts, a star for whatever a
 * design has of a kind. Rules that name their parts in every message, and those about what was typed, have no line.
 */
export const partsOfRule: Readonly<Record<string, readonly string[]>> = {
  // light
  'lens-covers': LENS,
  'corner-falloff': LENS,
  'cone-clear': ['F6', 'R3', 'B1'],
  'wall-flare': REAR_BOX,
  'baffle-room': ['R8'],
  'yaw-register': [...SOLE, 'T2'],
  'light-path': BOXES,
  // lens
  'lens-seat-known': ['F6', 'F7', ...LENS],
  'lens-goes-in': ['lens-clamp', ...LENS],
  'lens-passes-box': ['lens-clamp', ...REAR_BOX],
  'board-widens': ['F1', 'F6'],
  'board-in-opening': ['F1', 'F6'],
  'board-out': ['F1', 'F6'],
  'board-held': ['F6', 'F9'],
  'board-way': ['F6', 'F10'],
  'clamp-grip': ['lens-clamp'],
  'clamp-heat': ['lens-clamp'],
  // ahead of the lens
  'filter-clear': ['A1', 'FH1', 'D3', 'LH4', 'LH5'],
  'glass-clear': ['A1', ...LENS],
  'retainer-reach': ['A1', 'F9'],
  'frame-deep': ['A1'],
  'gel-covers': ['FH1'],
  'hood-shade': ['LH4', 'LH5'],
  'hood-depth': ['LH4', 'LH5'],
  'cap-covers': ['LC1', 'A1'],
  'cap-held': ['LC1', 'cap-peg'],
  'shutter-crosses': ['D4'],
  'shutter-time': ['D4'],
  'shutter-dark': ['D3', 'D4'],
  'shutter-falls': ['D4'],
  // slide
  'reach-near': [...BOXES, 'T5'],
  'reach-infinity': BOXES,
  'reach-reserve': [...SOLE, 'T5'],
  'boxes-as-built': BOXES,
  'infinity-left-out': BOXES,
  'middle-stopped': ['C3', 'C4', 'F14', 'R10'],
  'box-meets-panel': ['F1', ...REAR_BOX],
  'back-meets-box': ['R3', ...FRONT_BOX],
  'overlap-far': BOXES,
  // boxes and foot
  'box-clearance': BOXES,
  'felt-gap': ['felt-long', 'felt-side', 'felt-middle-long', 'felt-middle-side'],
  'felt-crossing': ['felt-long', 'felt-side'],
  damp: BOXES,
  'floor-scrape': ['F4', 'R2F'],
  'rib-under-floor': ['R5', 'F4'],
  'sole-meets-front': [...SOLE, 'F1'],
  'standard-over-rails': ['R3', 'T2'],
  racking: [...SOLE, 'T2'],
  'back-clears-sole': ['B1', 'R4U'],
  'button-clears': ['R6', 'R7'],
  'slot-length': [...TAILBOARD, 'lock-bolt'],
  'knob-clear': ['lock-knob', 'T4'],
  'tripod-hold': TRIPOD,
  balance: TRIPOD,
  'sag-tilt': TAILBOARD,
  'mass-tripod': TRIPOD,
  'handle-room': HANDLE,
  'handle-balance': HANDLE,
  'handle-strength': [...HANDLE, 'F3'],
  'thin-panel': FRONT_BOX,
  // back, holders, register
  'holder-clears': [HOLDERS],
  'back-square': ['B2'],
  'ring-width': ['B2'],
  'trap-land': ['B1', 'B2', 'R3'],
  'seat-flat': ['B1'],
  'register-soft': ['B1', 'R3'],
  'holder-depth': [HOLDERS],
  'holder-sheet': [HOLDERS],
  'slide-velvet': [HOLDERS],
  'holder-dark': [HOLDERS],
  'holder-rim': ['B1'],
  'well-fit': FENCES,
  'fence-below-slide': ['fence-open'],
  'raised-rim': ['fence-open'],
  'slide-path': [HOLDERS],
  'slide-lifts-holder': ['cord'],
  register: ['B1', ...GLASS],
  'register-budget': ['B1', ...GLASS],
  'cord-hold': ['B5', 'cord'],
  'depth-meaning': [HOLDERS],
  'frosted-side': ['ground-glass'],
  'glass-packing': GLASS,
  'spacer-shims': ['SP*'],
  'spacer-layers': ['SP*'],
  'spacer-held': ['SP*'],
  'stop-hole': ['WS*'],
  'stop-slot': ['WS*'],
  'mask-held': ['MK*', 'B6'],
  'mask-edge': ['MK*'],
  'tank-depth': [HOLDERS],
  'tank-liquid': [HOLDERS],
  'tank-shut': [HOLDERS],
  'scale-sense': [...SCALES, ...SOLE],
  shelf: ['felt-long', 'felt-side', HOLDERS],
};

/** What a message calls by one name though it is several parts. */
export const partsOfObject: Readonly<Record<string, readonly string[]>> = {
  'front box': FRONT_BOX,
  'rear box': REAR_BOX,
  tailboard: TAILBOARD,
  sole: SOLE,
};
