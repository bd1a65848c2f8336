import type { BuiltPlan } from '../model/built-camera.js';
import type { HolderInOldBoxes, Loss } from '../model/compare.js';
import { magnification, mm } from '../units/print.js';

/** Free air round what passes inside the rear box, and between it and what does not: section 6 and 7 of the camera's description. */
const FREE_AIR = 3;
const PANEL_GAP = 2;
/** Round what goes through the panel with the lens board, in all: rule board-out. */
const BOARD_OUT = 2;

/** Lens and holders of a later design in the boxes of an earlier camera: nothing of its slide changes, so all of this is arithmetic. */
interface Slide {
  /** How near to the panel the holder seat can stand, and how far from it with the reserve. */
  readonly closest: number;
  readonly farthest: number;
}

/** What the slide of a camera leaves a lens, which may keep the rear box from the panel. */
export function slideFor({ slide }: BuiltPlan, { lensBoard }: BuiltPlan): Slide {
  const passes = lensBoard.radiusBehindPanel + FREE_AIR <= slide.rearBoxInside / 2;
  const dead = passes ? slide.panelDead : Math.max(slide.panelDead, lensBoard.reachBehindPanel + PANEL_GAP);
  return {
    closest: slide.closest + Math.max(0, dead - slide.panelDead),
    farthest: slide.farthest + slide.reserve,
  };
}

/** Newton's form: the film of a holder stands its effective depth behind the seat, and f·m behind where infinity is sharp. */
const focusedAt = ({ optics }: BuiltPlan, seat: number, depth: number): number =>
  (seat + depth - optics.seatZ - optics.flangeDistance) / optics.focalLength;

/** Millionths of a magnification are no loss: two are compared that documents have rounded. */
export const ROUNDING = 2e-6;

export function inOldBoxes(before: BuiltPlan, after: BuiltPlan): readonly HolderInOldBoxes[] {
  const { closest, farthest } = slideFor(before, after);
  return after.holders.map(({ name, effectiveDepth }): HolderInOldBoxes => {
    const spacer = after.spacers.find(({ holder }) => holder === name);
    const far = focusedAt(after, closest, effectiveDepth);
    const nearest = focusedAt(after, farthest, effectiveDepth);
    return {
      holder: name,
      focuses: nearest > ROUNDING,
      farthest: rounded(Math.max(0, far)),
      nearest: rounded(Math.max(0, nearest)),
      spacer: {
        under: spacer?.under ?? 'none',
        thickness: spacer?.thickness ?? 0,
        plies: spacer?.plies ?? [],
        shims: spacer?.shims ?? [],
        remainder: spacer?.remainder ?? 0,
        ...(spacer?.measured === undefined
          ? {}
          : { measured: spacer.measured, add: spacer.add ?? [], takeOut: spacer.takeOut ?? [] }),
      },
    };
  });
}

const rounded = (value: number): number => Math.round(value * 1e6) / 1e6;

/** What the later design asks for and the boxes of the earlier camera do not give. */
export function lostInOldBoxes(before: BuiltPlan, after: BuiltPlan): readonly Loss[] {
  const where = 'in the boxes as they are';
  const { closest } = slideFor(before, after);
  const asked = after.optics.nearest.magnification;
  const askedFarthest = farthestAsked(after);
  const lens = lensInOldPanel(before, after);
  return [
    ...lens,
    ...inOldBoxes(before, after).flatMap(({ holder, focuses, farthest, nearest }): readonly Loss[] => {
      if (!focuses)
        return [
          {
            what: `the ${holder}, ${where}`,
            why: 'The film would have to stand nearer to the lens than the slide lets it, even for the nearest subject.',
          },
        ];
      return [
        ...(askedFarthest !== null && farthest > askedFarthest + ROUNDING
          ? [
              {
                what: `${magnification(askedFarthest)} with the ${holder}, ${where}`,
                why: `The slide ends ${mm(tenth((farthest - askedFarthest) * after.optics.focalLength))} short${closest > before.slide.closest ? ', for the lens is too wide to pass inside the rear box' : ''}; the farthest subject is at ${magnification(farthest, 'nearer')}.`,
              },
            ]
          : []),
        ...(nearest < asked - ROUNDING
          ? [
              {
                what: `${magnification(asked)} with the ${holder}, ${where}`,
                why: `At the end of the slide it is focused on ${magnification(nearest)}.`,
              },
            ]
          : []),
      ];
    }),
  ];
}

/** How far a camera was made to focus, as a magnification; null where boxes that stood already were too long for it. */
export function farthestAsked(plan: BuiltPlan): number | null {
  const { farthest } = plan.optics;
  return farthest?.magnification ?? (reachesInfinity(plan) ? 0 : null);
}

/** Whether the seat goes as near as infinity needs, for every holder. */
const reachesInfinity = (plan: BuiltPlan): boolean =>
  plan.holders.every(({ effectiveDepth }) => focusedAt(plan, plan.slide.closest, effectiveDepth) <= ROUNDING);

/** Whether the lens goes through the old panel with its board. */
function lensInOldPanel({ lensBoard: old }: BuiltPlan, { lensBoard }: BuiltPlan): readonly Loss[] {
  const through = 2 * lensBoard.radiusBehindPanel + BOARD_OUT;
  if (through <= old.opening + ROUNDING) return [];
  return [
    {
      what: 'the lens through the old front panel',
      why: `Its opening is ${mm(tenth(old.opening))}, and what stands behind the board needs ${mm(tenth(through))}: it is sawn out or F1 cut again, or the lens mounted in front.`,
    },
  ];
}

/** The nearest and the farthest that a camera was built to reach with one of its holders. */
export const reachOf = (plan: BuiltPlan, depth: number): { readonly farthest: number; readonly nearest: number } => ({
  farthest: Math.max(0, focusedAt(plan, plan.slide.closest, depth)),
  nearest: focusedAt(plan, plan.slide.farthest + plan.slide.reserve, depth),
});

const tenth = (length: number): number => Math.round(length * 10) / 10;
