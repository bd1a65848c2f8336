import type { Finding } from './finding.js';

/** A rule of the project: what it spares the builder, and where it is looked after. */
export interface Rule {
  /** Stable: `check --only` and `build --despite` take it. */
  readonly id: string;
  /** The levels at which it is raised. */
  readonly levels: readonly Finding['level'][];
  /** What the builder would meet. */
  readonly protects: string;
  /** Where its formula and its limit come from; `common practice` has no source and may be overridden. */
  readonly source: string;
  /** File that raises it, under src; where several do, the first to look at. Null: it waits for what `awaits` names. */
  readonly home: string | null;
  readonly awaits?: Waiting;
}

/** Solids put together, an object that is not made yet, the test piece, or the build book. */
type Waiting = 'solids' | 'optional object' | 'test piece' | 'book';

type Levels = keyof typeof LEVELS;
const LEVELS = {
  E: ['error'],
  W: ['warning'],
  N: ['note'],
  EW: ['error', 'warning'],
  EN: ['error', 'note'],
  WN: ['warning', 'note'],
} as const satisfies Record<string, readonly Finding['level'][]>;

const raised = (id: string, levels: Levels, protects: string, source: string, home: string): Rule => ({
  id,
  levels: LEVELS[levels],
  protects,
  source,
  home,
});

const waiting = (id: string, levels: Levels, protects: string, source: string, awaits: Waiting): Rule => ({
  id,
  levels: LEVELS[levels],
  protects,
  source,
  home: null,
  awaits,
});

const PRACTICE = 'common practice';

/** Every rule, by what it looks at. */
export const rules: readonly Rule[] = [
  // Light
  raised(
    'lens-covers',
    'EW',
    'dark corners',
    'growth of the image circle: optics/image-circle; limit derived',
    'camera/light-rules',
  ),
  raised(
    'corner-falloff',
    'N',
    'corners a stop down',
    `cos⁴ law: optics/illumination; limit ${PRACTICE}`,
    'camera/light-rules',
  ),
  raised('cone-clear', 'EW', 'straight dark edges', `similar triangles, derived; room ${PRACTICE}`, 'proof/light-cone'),
  raised('wall-flare', 'W', 'veiled shadows', PRACTICE, 'proof/light-cone'),
  raised(
    'yaw-register',
    'W',
    'one side of the picture soft',
    `depth of focus: optics/depth; half of it ${PRACTICE}`,
    'proof/foot',
  ),
  raised(
    'light-path',
    'E',
    'fog streaks',
    `straight lines derived; two turns or felt, and land, ${PRACTICE}`,
    'proof/light',
  ),
  raised('hole-in-dark', 'E', 'a screw hole that shines into the box', 'derived', 'proof/hole-in-dark'),
  // Lens
  raised(
    'flange-plausible',
    'W',
    'a flange distance typed for the focal length, or inches for mm',
    PRACTICE,
    'design/plausible-lens',
  ),
  raised(
    'lens-seat-known',
    'EW',
    'a board made before anyone knew where the lens sits',
    'derived',
    'design/plausible-lens',
  ),
  raised('lens-goes-in', 'E', 'a lens whose rear does not pass its clamp', 'derived', 'design/plausible-lens'),
  raised('lens-reversed', 'W', 'a lens in back to front', PRACTICE, 'design/plausible-lens'),
  raised(
    'lens-passes-box',
    'W',
    'reach lost to a mount that is wider than the rear box',
    `derived; air ${PRACTICE}`,
    'camera/slide-rules',
  ),
  raised('board-widens', 'N', 'boxes wider than the picture asks', 'derived', 'camera/slide-rules'),
  raised('board-out', 'E', 'a lens that must be dismounted to change boards', PRACTICE, 'camera/lens-board/checks'),
  raised('board-held', 'E', 'a board that falls out, or does not come out', PRACTICE, 'camera/lens-board/checks'),
  raised('board-way', 'W', 'a board upside down, a lens turned', PRACTICE, 'camera/lens-board/checks'),
  raised(
    'clamp-grip',
    'EW',
    'a lens that slips on a tilted tripod',
    `2πμnF, derived; ratio and wall ${PRACTICE}`,
    'camera/lens-clamp/checks',
  ),
  raised(
    'clamp-heat',
    'N',
    'a clamp that creeps in a hot car',
    'makers’ data sheets of filament',
    'camera/lens-clamp/checks',
  ),
  // Slide
  raised(
    'reach-near',
    'E',
    'a portrait that cannot be focused',
    'inequalities of the slide, derived',
    'camera/slide-rules',
  ),
  raised(
    'reach-infinity',
    'E',
    'hills that stay soft with one holder',
    'inequalities of the slide, derived',
    'proof/slide',
  ),
  raised('reach-reserve', 'W', 'a true focal length longer than the engraved one', PRACTICE, 'camera/slide-rules'),
  raised(
    'box-meets-panel',
    'E',
    'a rear box that hits clamp or strips',
    'inequalities of the slide, derived',
    'proof/slide',
  ),
  raised(
    'back-meets-box',
    'E',
    'a back that stops short of infinity',
    'inequalities of the slide, derived',
    'proof/slide',
  ),
  raised(
    'overlap-far',
    'E',
    'light and wobble at full draw',
    `inequalities of the slide, derived; overlap ${PRACTICE}`,
    'proof/slide',
  ),
  // Boxes and foot
  raised('box-clearance', 'EW', 'boxes that scrape in damp weather, or leak', PRACTICE, 'camera/rear-box/checks'),
  raised('felt-gap', 'W', 'felt that drags or leaks', PRACTICE, 'camera/rear-box/checks'),
  raised('felt-crossing', 'E', 'a rear box that does not go in', 'derived', 'camera/rear-box/checks'),
  raised('damp', 'N', 'sweating glass and swollen boxes', PRACTICE, 'camera/rear-box/checks'),
  raised('floor-scrape', 'E', 'a rear box that drags on the floor', `derived; air ${PRACTICE}`, 'proof/foot'),
  raised('rib-under-floor', 'E', 'ribs that jam at close focus', PRACTICE, 'camera/rear-standard/checks'),
  raised('sole-meets-front', 'E', 'a sole that hits the panel’s foot', PRACTICE, 'camera/rear-standard/checks'),
  raised('standard-over-rails', 'E', 'a standard that sits on its own rails', PRACTICE, 'camera/rear-standard/checks'),
  raised(
    'racking',
    'EW',
    'a standard that binds when it is pushed at one edge',
    `Beer and Johnston, statics, sample problem on a movable bracket; limits ${PRACTICE}`,
    'camera/rear-standard/checks',
  ),
  raised('back-clears-sole', 'E', 'a back that does not turn', PRACTICE, 'camera/rear-standard/checks'),
  raised(
    'button-clears',
    'E',
    'a turn-button that meets fence or front box, or does not hold',
    PRACTICE,
    'camera/rear-standard/checks',
  ),
  raised('slot-length', 'E', 'a knob that stops before infinity', `derived; web ${PRACTICE}`, 'proof/foot'),
  raised('knob-clear', 'W', 'a knob under the tripod plate', PRACTICE, 'camera/tailboard/checks'),
  raised('tripod-hold', 'E', 'a tripod screw that tears out', PRACTICE, 'camera/tailboard/checks'),
  raised('balance', 'W', 'a head that droops, a tripod that tips', PRACTICE, 'proof/foot'),
  raised(
    'sag-tilt',
    'W',
    'the top of the picture soft at full draw',
    `handbooks of statics; half the depth of focus ${PRACTICE}`,
    'proof/foot',
  ),
  raised('mass-tripod', 'N', 'a camera heavier than its tripod takes', 'weighed from the parts', 'proof/foot'),
  // Back, holders, register
  raised('holder-clears', 'EN', 'a loaded holder that fouls the tailboard', PRACTICE, 'proof/dark-slide'),
  raised('back-square', 'E', 'a back that binds at portrait', PRACTICE, 'camera/back/checks'),
  raised('ring-width', 'E', 'a turning ring that snaps when it is glued', PRACTICE, 'camera/back/checks'),
  raised('trap-land', 'E', 'a leak at the corner of the light trap', PRACTICE, 'camera/back/checks'),
  raised('seat-flat', 'W', 'a holder that rocks', PRACTICE, 'camera/back/checks'),
  raised('register-soft', 'E', 'focus that changes with the pull of the cords', 'derived', 'camera/back/checks'),
  raised('holder-rim', 'E', 'a holder that tips into the opening, or leaks', PRACTICE, 'proof/well'),
  raised('well-fit', 'W', 'a holder, and a picture, off centre', PRACTICE, 'camera/holder-rules'),
  raised('fence-below-slide', 'E', 'a dark slide that cannot be drawn, or light along the rim', PRACTICE, 'proof/well'),
  raised('raised-rim', 'W', 'light along the rim of a holder that stands on a spacer', PRACTICE, 'proof/well'),
  raised('slide-path', 'E', 'a dark slide that hits something on its way out', 'derived', 'proof/dark-slide'),
  raised('slide-lifts-holder', 'W', 'a slide that pulls the holder out with it', PRACTICE, 'camera/holder-rules'),
  raised(
    'register',
    'E',
    'sharp on the glass, soft on the paper',
    `depth of focus: optics/depth; a quarter of it ${PRACTICE}`,
    'proof/film-and-glass',
  ),
  raised(
    'register-budget',
    'WN',
    'glass and film that part by plies, glue and shims that nobody measured',
    `depth of focus: optics/depth; spreads: proof/straying, mostly ${PRACTICE}`,
    'proof/register',
  ),
  raised(
    'cord-hold',
    'W',
    'a glass or holder that drops from its seat when the lens points up',
    `weights from the parts; pull of a cord ${PRACTICE}`,
    'proof/cords',
  ),
  raised(
    'depth-meaning',
    'W',
    'a depth of the slot typed for that of the emulsion',
    'published holder depths: standards/holders',
    'design/plausible-depths',
  ),
  raised(
    'frosted-side',
    'N',
    'a glass put in the wrong way round',
    'shift of a plane plate: optics/depth',
    'camera/ground-glass-frame/checks',
  ),
  raised('glass-packing', 'E', 'a glass that cannot reach its depth', 'derived', 'camera/ground-glass-frame/checks'),
  raised('spacer-shims', 'W', 'shims that slide about', PRACTICE, 'camera/spacer/checks'),
  raised('spacer-held', 'E', 'a spacer that falls out of the well', PRACTICE, 'camera/spacer/checks'),
  raised(
    'tank-depth',
    'N',
    'a window forgotten in the register',
    'shift of a plane plate: optics/depth',
    'camera/holder-rules',
  ),
  raised('scale-sense', 'EW', 'a focus scale that cannot be read', PRACTICE, 'proof/focus-scale'),
  // Wood, fits, joints
  raised('thickness-measured', 'W', 'joints loose everywhere', PRACTICE, 'design/plausible-sheet'),
  raised('thickness-spread', 'EW', 'fingers that do not enter', PRACTICE, 'design/plausible-sheet'),
  raised('fit-ladder', 'WN', 'a press fit that splits thin sheet', PRACTICE, 'design/plausible-sheet'),
  raised('kerf-plausible', 'E', 'a cut width in inches, or typed twice over', PRACTICE, 'design/plausible-sheet'),
  raised('finger-rule', 'E', 'fingers that crumble, or too few to hold', PRACTICE, 'camera/finger-rule'),
  raised(
    'thin-panel',
    'W',
    'walls that bow inwards',
    `bow of a pushed wall: handbooks of statics; limits ${PRACTICE}`,
    'camera/front-box/checks',
  ),
  raised('nut-edge', 'E', 'a hole that breaks out', PRACTICE, 'proof/edges'),
  raised('web-least', 'E', 'a piece that breaks on the bed', PRACTICE, 'proof/web'),
  raised('corner-owner', 'E', 'a notch at a box corner that lets light in', 'derived', 'proof/corner-owner'),
  raised('parts-collide', 'E', 'anything that overlaps', 'derived', 'proof/collisions'),
  raised('parts-touch', 'W', 'a part attached to nothing', 'derived', 'proof/contacts'),
  raised('groups-part', 'E', 'a part that joins what must move', 'derived', 'proof/groups'),
  raised('assembly-order', 'E', 'a last part that cannot be put in', 'derived', 'proof/order'),
  raised('one-way', 'W', 'left and right swapped', 'derived', 'proof/one-way'),
  raised('not-proven', 'N', 'a camera taken for proven that was not put together', 'a choice of ours', 'workshop'),
  // Sheets and engraving
  raised('kerf-once', 'E', 'a cut width doubled or forgotten', 'derived', 'sheets/cut-line'),
  raised('part-on-bed', 'E', 'a part larger than the sheet', 'derived', 'sheets/checks'),
  raised('parts-part', 'E', 'two parts cut into each other', 'derived', 'sheets/checks'),
  raised('small-part', 'N', 'a part that falls through the slats', PRACTICE, 'sheets/checks'),
  raised('small-mark', 'N', 'a part too small to carry its mark', PRACTICE, 'camera/engrave'),
  raised('grain-long', 'W', 'a rail that bends', PRACTICE, 'sheets/checks'),
  raised('mirror-text', 'E', 'a scale or mark that reads backwards', 'derived', 'proof/marks'),
  raised('id-hidden', 'W', 'a number on a show face', PRACTICE, 'proof/marks'),
  waiting('comb-reading', 'W', 'a misread test piece', PRACTICE, 'test piece'),
  // What was typed
  raised('unit-plausible', 'EW', 'inches typed for millimetres', 'a choice of ours', 'design/plausible-units'),
  raised(
    'assumed',
    'N',
    'what was taken for granted because it was not written',
    'the defaults of the design file',
    'design/assumptions',
  ),
  // Optional objects
  waiting('filter-clear', 'W', 'corners cut by gel frame or hood', 'optics/light-cone', 'optional object'),
  waiting('shutter-crosses', 'W', 'top and bottom exposed differently', 'derived', 'optional object'),
  waiting('mask-edge', 'N', 'a border softer than wanted', 'derived', 'optional object'),
  waiting('tank-liquid', 'W', 'patches undeveloped', PRACTICE, 'optional object'),
  waiting('tank-shut', 'E', 'a spout that leaks light or liquid', PRACTICE, 'optional object'),
  waiting('shelf', 'N', 'a dark slide that warps, felt that moths eat', PRACTICE, 'book'),
];
