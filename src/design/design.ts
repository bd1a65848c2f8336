import type { Palette } from '../model/palette.js';
import type { Remnant } from '../model/remnant.js';

/** What the user said, with the defaults filled in: lengths in mm, masses in kg, magnifications as numbers (infinity is 0). */
export interface Design {
  readonly name: string;
  /** The name in lower case, words joined by hyphens: the folder of its output. */
  readonly slug: string;
  readonly format: Format;
  readonly lens: Lens;
  readonly focus: {
    readonly nearest: number;
    readonly farthest: number;
    readonly pastInfinity: number;
    /** null: the slack of the slide, at most 5 % of the focal length. */
    readonly pastNearest: number | null;
  };
  readonly plywood: {
    /** The thickest reading. */
    readonly thickness: number;
    readonly readings: readonly number[];
    readonly sheet: SheetSize;
    /** With the thickness: plywood-4.05. */
    readonly material: string;
  };
  readonly stock: readonly Stock[];
  readonly laser: {
    readonly kerf: number;
    /** How far it strays over the bed, each way. */
    readonly kerfUncertainty: number;
    /** mm/s */
    readonly cutSpeed: number;
    /** mm/s */
    readonly engraveSpeed: number;
    /** With the beam off, mm/s. */
    readonly travelSpeed: number;
    /** Before the beam is through and the cut begins, s. */
    readonly pierceTime: number;
    readonly palette: Palette;
  };
  readonly groundGlass: GroundGlass;
  /** At least one. */
  readonly holders: readonly Holder[];
  readonly shims: readonly number[];
  readonly workshop: Workshop;
  readonly book: { readonly paper: 'A4' | 'Letter' };
  readonly sitting: Sitting;
  /** Paths of the keys that the user did not write, such as lens.maxAperture. */
  readonly defaulted: readonly string[];
}

export interface Format {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** What the film really receives: short and long side. */
  readonly image: { readonly short: number; readonly long: number };
}

export interface Lens {
  readonly name: string;
  readonly focalLength: number;
  readonly flangeDistance: number;
  /** How well the two are known; null: nobody measured it. */
  readonly uncertainty: LensUncertainty | null;
  readonly maxAperture: number;
  readonly coverage: { readonly diameter: number; readonly at: number } | null;
  readonly pupilMagnification: number;
  /** Where the user gave none, a stand-in of f/N across (and `lens.barrel` is among the defaulted). */
  readonly barrel: Barrel;
  readonly flange: LensFlange | null;
  readonly mount: {
    readonly by: 'clamp' | 'flange' | 'ring';
    readonly side: 'front' | 'inside';
    readonly screws: number;
  };
}

/** Standard errors of focal length and flange distance, and how they go together. */
export interface LensUncertainty {
  readonly focalLength: number;
  readonly flangeDistance: number;
  readonly correlation: number;
  /** How many readings they come from; null: so many that more would tell nothing new. */
  readonly readings: number | null;
}

/** All lengths from the lens seat: `front` ahead of it, `grip` and then `rear` behind it. */
export interface Barrel {
  readonly diameter: number;
  readonly grip: number;
  readonly front: number;
  readonly rear: number;
  readonly frontDiameter: number;
  readonly rearDiameter: number;
  readonly massKg: number;
}

export interface LensFlange {
  readonly diameter: number;
  readonly boltCircle: number;
  readonly screws: number;
  readonly thickness: number;
}

export interface SheetSize {
  readonly width: number;
  readonly height: number;
}

/** Sheets that are to be had beside those of `plywood`: of its material for all parts, of another for single layers. */
export interface Stock {
  /** With the thickness: plywood-4.05. */
  readonly material: string;
  readonly thickness: number;
  /** The first side along the face grain; of a remnant, the rectangle round it. */
  readonly sheet: SheetSize;
  /** How many there are; null: as many as are needed. */
  readonly count: number | null;
  /** Used before what does not say so. */
  readonly first: boolean;
  /** What is left of an earlier job, and the file that says so; null: a whole sheet. */
  readonly remnant: StockRemnant | null;
}

export interface StockRemnant extends Remnant {
  /** As the design names it. */
  readonly file: string;
}

export interface GroundGlass {
  readonly thickness: number;
  /** Physical: holder seat to frosted face. */
  readonly depth: number;
  readonly frosted: 'lens' | 'eye';
  readonly refractiveIndex: number;
}

export interface Holder {
  readonly name: string;
  /** Effective: from the face to the emulsion, the glass of a window allowed for. */
  readonly filmDepth: number;
  /** How far that depth strays, each way; null: as far as a careful reading does. */
  readonly tolerance: number | null;
  /** How far the film can lie ahead of the back of its slot; 0 where it lies against a lip. */
  readonly filmFloat: number;
  readonly width: number;
  readonly length: number;
  readonly thickness: number;
  /** From the image to the closed end; null: as camera.md says, min(20, (length - image)/2). */
  readonly closedEnd: number | null;
  /** From the face to the dark slide. */
  readonly slideDepth: number;
  readonly locating: 'pins' | 'rib' | 'well';
  /** Where the lock rib stands: from the axis towards the open end to its middle, its width and height. */
  readonly rib: { readonly fromAxis: number; readonly width: number; readonly height: number } | null;
  readonly window: { readonly thickness: number } | null;
  readonly massKg: number;
}

/** The shop's habits: every value marked as common practice that the design file may override. */
export interface Workshop {
  readonly slideClearance: number;
  readonly railPlay: number;
  readonly fits: { readonly press: number; readonly glueSlip: number; readonly slide: number; readonly dropIn: number };
  readonly glueLine: number;
  readonly friction: number;
  /** kg/m³ */
  readonly density: number;
  /** N/mm² */
  readonly modulus: number;
  readonly spacing: number;
  readonly margin: number;
  readonly boreAllowance: number;
}

/**
 * How a sitter is exposed, as far as somebody said: what was not said is not there, so that what differs today can be laid
 * over it. Lengths in mm, times in s, energies in J.
 */
export interface Sitting {
  /** From the front principal plane to the eyes. At most one of subject, magnification and head is there. */
  readonly subject?: number | undefined;
  readonly magnification?: number | undefined;
  /** Of the head on the ground glass: mm, or a share of the picture's height. */
  readonly head?: { readonly height: number } | { readonly share: number } | undefined;
  readonly headHeight?: number | undefined;
  readonly aperture?: number | undefined;
  readonly speed?: number | undefined;
  /** Factors. */
  readonly filter?: readonly number[] | undefined;
  readonly density?: readonly number[] | undefined;
  /** Name of one of `filterSets`, or `none`. */
  readonly filterSet?: string | undefined;
  readonly filterSets?: readonly FilterSet[] | undefined;
  /** At most one of meterTime and flashEnergy is there. */
  readonly meterTime?: number | undefined;
  readonly meterAperture?: number | undefined;
  readonly meterSpeed?: number | undefined;
  readonly flashEnergy?: number | undefined;
  readonly flashAperture?: number | undefined;
  readonly flashDistance?: number | undefined;
  readonly flashSpeed?: number | undefined;
  readonly testMagnification?: number | undefined;
  readonly testFilter?: number | undefined;
  readonly lampDistance?: number | undefined;
  readonly flashMost?: number | undefined;
  /** An exponent, or a table in rising order. */
  readonly reciprocity?: number | readonly { readonly metered: number; readonly given: number }[] | undefined;
  readonly process?: 'negative' | 'reversal' | undefined;
  readonly paper?: string | undefined;
  /** Subject distances, a row of the card each. */
  readonly distances?: readonly number[] | undefined;
}

export interface FilterSet {
  readonly name: string;
  /** Each with a factor or a density. */
  readonly filters: readonly {
    readonly name?: string | undefined;
    readonly factor?: number | undefined;
    readonly density?: number | undefined;
  }[];
}
