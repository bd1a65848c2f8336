import type { Finding } from './finding.js';
import type { Hardware } from './part.js';

/**
 * The camera in figures: what `plan --json` prints and `plan.json` holds, field by field as it was promised to users.
 * Lengths in mm, masses in kg; z counts along the optical axis from the rear face of the front panel. No figure is
 * infinite or not a number: where there is none it is null.
 */
export interface PlanDocument {
  readonly schema: 1;
  readonly name: string;
  /** A short mark made from what shapes parts. */
  readonly revision: string;
  readonly optics: PlanOptics;
  readonly slide: PlanSlide;
  readonly lensBoard: PlanLensBoard;
  readonly holders: readonly PlanHolder[];
  readonly groundGlass: PlanGroundGlass;
  readonly spacers: readonly PlanSpacer[];
  readonly tailboard: PlanTailboard;
  readonly camera: {
    readonly width: number;
    readonly height: number;
    /** Over everything but the lens. */
    readonly depthClosed: number;
    /** Over everything but the lens. */
    readonly depthOpen: number;
    /** kg, with the glass and the lens, no holder. */
    readonly mass: number;
  };
  /** Only where the design asks for it. */
  readonly filterHolder?: PlanFilterHolder;
  /** Only where the design asks for it. */
  readonly shutter?: PlanShutter;
  /** Only where the design asks for it. */
  readonly hood?: PlanHood;
  /** Only where the design asks for it. */
  readonly cap?: PlanCap;
  readonly parts: readonly PlanPart[];
  readonly hardware: readonly Hardware[];
  readonly findings: readonly Finding[];
  /** Rules of level error that are broken and that `build` was told to build despite; empty in a plan alone. */
  readonly despite: readonly string[];
}

export interface PlanOptics {
  readonly focalLength: number;
  /** Lens seat to film at infinity. */
  readonly flangeDistance: number;
  /** As an f-number: 6.3 for f/6.3. */
  readonly maxAperture: number;
  readonly imageDiagonal: number;
  /** z of the lens seat. */
  readonly seatZ: number;
  readonly exitPupil: { readonly z: number; readonly diameter: number };
  /** Diameters; null where the design says nothing of the lens's coverage. */
  readonly imageCircle: {
    readonly infinity: number | null;
    readonly nearest: number | null;
    readonly required: number;
  };
  /** Magnification from which the circle covers; 0 at infinity, null where never within reach or unknown. */
  readonly coversFrom: number | null;
  /** Lens seat to film. */
  readonly infinity: { readonly filmDistance: number };
  /** Only where no infinity is asked for: the slide ends there, less the run past it. */
  readonly farthest?: {
    readonly magnification: number;
    /** From the front principal plane. */
    readonly subjectDistance: number;
    /** Lens seat to film. */
    readonly filmDistance: number;
  };
  readonly nearest: {
    readonly magnification: number;
    /** From the front principal plane; null where the nearest is infinity. */
    readonly subjectDistance: number | null;
    /** Lens seat to film. */
    readonly filmDistance: number;
    readonly extensionFactor: number;
    /** The same in stops. */
    readonly stops: number;
    /** As an f-number. */
    readonly effectiveAperture: number;
  };
}

/** Holder-seat positions are z over all holders and the bare glass, past-infinity allowance included, reserve excluded. */
export interface PlanSlide {
  readonly travel: number;
  readonly closest: number;
  readonly farthest: number;
  /** Only of a camera with a third box between the two. */
  readonly middleBox?: PlanMiddleBox;
  readonly frontBoxLength: number;
  readonly rearBoxLength: number;
  readonly frontBoxInside: number;
  readonly rearBoxInside: number;
  readonly frontBoxOutside: number;
  readonly rearBoxOutside: number;
  /** A side, compressed felt included. */
  readonly clearance: number;
  /** Of three boxes, that of the joint that has less. */
  readonly overlapFarthest: number;
  readonly overlapRequired: number;
  /** Whether the lens's inside parts pass inside the rear box. */
  readonly passesInsideRearBox: boolean;
  /** Depth kept free behind the front panel. */
  readonly panelDead: number;
  /** From the holder seat forward to the front face of the standard. */
  readonly stackBehindBoxes: number;
  /** Focal length times (reachable less nearest magnification), before any reserve. */
  readonly slack: number;
  /** Run past the nearest that was asked for, in the slot. */
  readonly reserve: number;
  /** The nearest focus that this construction could reach with every holder, as a magnification. */
  readonly reachableMagnification: number;
  /** The same with the lens mounted from the other side of the board; null where it cannot be. */
  readonly reachableOtherSide: number | null;
  /** What stops the slide from reaching nearer, in words. */
  readonly limitedBy: string;
}

/** The lens on its board, as far as front panel and rear box must make room for it. */
export interface PlanLensBoard {
  /** Side of the square opening in the front panel. */
  readonly opening: number;
  /** Of the square board. */
  readonly side: number;
  /** Greatest radius of what stands behind the panel. */
  readonly radiusBehindPanel: number;
  /** z of the rearmost thing on it. */
  readonly reachBehindPanel: number;
}

/** The box between the two others; nothing but felt guides it, and each of its joints has a stop. */
export interface PlanMiddleBox {
  /** From its front edge to its frame. */
  readonly length: number;
  readonly inside: number;
  readonly outside: number;
  /** How far the rear box is drawn out of it before it comes along. */
  readonly rearRun: number;
  /** How far it is drawn out of the front box at most. */
  readonly ownRun: number;
  /** With the front box and with the rear box, at the stops. */
  readonly overlapInFront: number;
  readonly overlapOfRear: number;
  /** Needed with the front box. */
  readonly overlapRequired: number;
}

export interface PlanHolder {
  readonly name: string;
  readonly filmDepth: number;
  /** With the spacer that stands under the holder, where one does. */
  readonly effectiveDepth: number;
  /** The same as it stands, where something of it was measured: the index line goes with it. */
  readonly standingDepth?: number;
  /** z of the holder seat, as drawn, with the film in focus. */
  readonly seat: {
    readonly infinity: number;
    /** Only where no infinity is asked for. */
    readonly farthest?: number;
    readonly nearest: number;
  };
  /** Of one that is made with a window: the print is processed in it. */
  readonly tank?: PlanTank;
}

/** Volumes in ml, times in s, the angle in degrees, the force in N. */
export interface PlanTank {
  readonly fullVolume: number;
  /** 5 mm over the sheet while it lies on its lid. */
  readonly workingVolume: number;
  /** A thinner layer leaves places bare. */
  readonly leastVolume: number;
  /** With the working volume, through the funnel, and out by the spout's corner. */
  readonly fillSeconds: number;
  readonly drainSeconds: number;
  /** To either side, at which the working volume still reaches the middle. */
  readonly rockAngle: number;
  /** What would lift the lid if it were capped tight at 20 °C and warmed to 38 °C. */
  readonly lidForce: number;
}

export interface PlanGroundGlass {
  readonly effectiveDepth: number;
  /** The same as it stands, only where it was measured: spacers are reckoned from it. */
  readonly standingDepth?: number;
  /**
   * Where the films ask for it that want no spacer, as they stand: only where it is farther off than half the tolerance. It
   * is mended first then, and measured again, before any spacer.
   */
  readonly wantedDepth?: number;
  /** Only with it: shims at hand that bring it there, and shims under the glass that are too many. */
  readonly add?: readonly number[];
  readonly takeOut?: readonly number[];
  /** Thickness between the frame's front ply and the glass, made of the plies and shims. */
  readonly packing: number;
  readonly plies: readonly number[];
  readonly shims: readonly number[];
  /** Packing less plies and shims, signed. */
  readonly remainder: number;
}

export interface PlanSpacer {
  readonly holder: string;
  readonly thickness: number;
  readonly under: 'glass' | 'holder' | 'none';
  readonly plies: readonly number[];
  readonly shims: readonly number[];
  /** Thickness less plies and shims, signed; of one that was measured, what it should be less what it is. */
  readonly remainder: number;
  /** Only where it was measured, glued. */
  readonly measured?: number;
  /** Only where it was measured: shims at hand that bring it within half the tolerance, and shims in it that are too many. */
  readonly add?: readonly number[];
  readonly takeOut?: readonly number[];
  /** A quarter of the depth of focus at infinity. */
  readonly tolerance: number;
}

export interface PlanTailboard {
  readonly length: number;
  readonly width: number;
  /** Of the lock bolt, the reserve included. */
  readonly slot: number;
  /** Of the optical axis above the tailboard. */
  readonly axisHeight: number;
  /** z of the tripod nut. */
  readonly tripod: number;
  /** How far each holder's index line stands from the first one's. */
  readonly indexOffsets: Readonly<Record<string, number>>;
  /** z of the centre of gravity: closed and empty, open with the heaviest holder. */
  readonly balance: { readonly closest: number; readonly farthest: number };
  /** Of the overhang, open and loaded. */
  readonly sag: number;
}

export interface PlanFilterHolder {
  /** Of its opening, and of the light that comes through there at infinity. */
  readonly opening: number;
  readonly light: number;
  /** Side of the square gels. */
  readonly gel: number;
}

/** With the lens wide open. Times in s. */
export interface PlanShutter {
  /** Length of the slot along the fall. */
  readonly slot: number;
  /** From the peg to the felt. */
  readonly fall: number;
  /** From the slide to the lens seat, where the entrance pupil is taken to be. */
  readonly distance: number;
  /** Effective time: what an exposure is reckoned by. */
  readonly time: number;
  /** From first to last light, for a point in the middle of the picture. */
  readonly open: number;
  readonly fullyOpen: number;
  /** Effective time over the time from first to last light. */
  readonly efficiency: number;
  /** The nearest mark of a dial, and by how many stops the time is longer than what that mark stands for. */
  readonly dial: number;
  readonly dialStops: number;
  /** Stops that the picture gets more above than below; null where it is lit before the slide is let go. */
  readonly uneven: number | null;
}

export interface PlanHood {
  /** From the front of the lens to its mouth. */
  readonly depth: number;
  /** Side of its mouth, and of the light that comes through there at infinity. */
  readonly mouth: number;
  readonly light: number;
  /** Light that slants in by more than this, in degrees, does not reach the lens. */
  readonly shade: number;
}

export interface PlanCap {
  /** What it laps over the opening of the ring at its sides. */
  readonly lap: number;
}

export interface PlanPart {
  readonly id: string;
  readonly name: string;
  readonly count: number;
  readonly material: string;
  /** Of the sheet; of a print its height on the bed. */
  readonly thickness: number;
  readonly width: number;
  readonly height: number;
  readonly grain: 'x' | 'y' | 'any';
  /** What it moves with: front, rear, back, loose, or a holder's name. */
  readonly group: string;
  /** Digest of its outline and holes, or of what is printed: two parts of one digest are the same but for material and thickness. */
  readonly shape: string;
  /** Digest of the scales, lines and words on it; null where there are none. */
  readonly engraved: string | null;
}
