import type { Palette } from '../model/palette.js';
import type { Remnant } from '../model/remnant.js';

/** What the user said, with the defaults filled in: lengths in mm, masses in kg, magnifications as numbers (infinity is 0). */
export interface Design {
  readonly name: string;
  /** The name in lower case, words joined by hyphens: the folder of its output. */
  readonly slug: string;
  readonly format: Format;
  readonly lens: Lens;
  readonly focus: FocusAsked;
  /** What boxes that stand were built for, where another lens is put before them; left out where nothing stands. */
  readonly builtFor?: { readonly lens: Lens; readonly focus: FocusAsked };
  readonly plywood: {
    /** The thickest reading. */
    readonly thickness: number;
    readonly readings: readonly number[];
    readonly sheet: SheetSize;
    /** With the thickness: plywood-4.05. */
    readonly material: string;
  };
  readonly stock: readonly Stock[];
  /** What holders are made of beside the plywood; sheets of it are as large as those of the plywood where the stock has none. */
  readonly boards: { readonly channel: Board; readonly lip: Board; readonly slide: Board };
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
  /** A middle box between the two; left out where two boxes do. */
  readonly boxes?: 3;
  /** What is made only where it is asked for; left out where nobody does. */
  readonly baffle?: true;
  readonly handle?: true;
  readonly filterHolder?: FilterHolderAsked;
  readonly shutter?: ShutterAsked;
  readonly hood?: HoodAsked;
  readonly cap?: true;
  readonly masks?: readonly AskedMask[];
  readonly stops?: AskedStops;
  readonly workshop: Workshop;
  readonly book: { readonly paper: 'A4' | 'Letter' };
  readonly sitting: Sitting;
  /** Paths of the keys that the user did not write, such as lens.maxAperture. */
  readonly defaulted: readonly string[];
}

/** How near and how far a camera focuses. */
export interface FocusAsked {
  readonly nearest: number;
  readonly farthest: number;
  readonly pastInfinity: number;
  /** null: the slack of the slide, at most 5 % of the focal length. */
  readonly pastNearest: number | null;
}

/** A mask at the film gate: the picture that it leaves, the back upright, and the holder in which it has that size. */
export interface AskedMask {
  readonly name: string;
  readonly image: { readonly width: number; readonly height: number };
  /** Radius. */
  readonly corners: number;
  readonly holder: string;
}

/** Plates with a hole for a slot in the barrel. */
export interface AskedStops {
  /** Hole of the lens at its widest stop, and the f-number that it has then. */
  readonly fullAperture: number;
  readonly marked: number;
  readonly slot: { readonly width: number; readonly thickness: number };
  /** From the mouth of the slot to the middle of the barrel. */
  readonly depth: number;
  readonly board: Board;
  /** f-numbers as they are marked, the widest first. */
  readonly series: readonly number[];
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
    /** Side of the opening that the front panel has already; left out where it follows the lens. */
    readonly opening?: number | undefined;
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

/** Card or fibre sheet, named as the plywood is: board-1.25. */
export interface Board {
  readonly material: string;
  readonly thickness: number;
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
  /** The same on the frame as it was glued; not there where nobody measured it. */
  readonly measured?: number | undefined;
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
  /** From its face to the lip, as read on the glued holder; not there where nobody measured it. */
  readonly measured?: number | undefined;
  /** It turned up when the camera stood already: its spacer is chosen for the glass as that stands. */
  readonly later?: true;
  /** Of its spacer, glued and with the shims that are in it; not there where nobody measured it. */
  readonly spacer?: { readonly measured: number } | undefined;
  /** Where it is cut from the sheet of the camera; not there where it is bought. */
  readonly make?: MadeHolder;
}

/** What a window before a film takes off the depth that a caliper reads, mm: t(1 − 1/n). */
export const windowTakes = (window: Holder['window'] | undefined, refractiveIndex: number): number =>
  window ? window.thickness * (1 - 1 / refractiveIndex) : 0;

/**
 * From the face of a holder to where its film works, as it stands: what is drawn does not change because somebody
 * measured it.
 */
export const filmStands = (
  { filmDepth, measured, window }: Pick<Holder, 'filmDepth' | 'measured' | 'window'>,
  { refractiveIndex }: Design['groundGlass'],
): number => (measured === undefined ? filmDepth : measured - windowTakes(window, refractiveIndex));

/** What the construction of a holder must know beside its sizes. */
export interface MadeHolder {
  /** What lies in it, upright. */
  readonly sheet: { readonly width: number; readonly height: number; readonly thickness: number };
  /** A smaller size that can be put into it. */
  readonly insert: Format | null;
  /** Loaded, by the scales; null: weighed from its parts. */
  readonly weighedKg: number | null;
}

export interface FilterHolderAsked {
  /** How many gels it takes at once. */
  readonly filters: number;
  /** Of the gels; null: the smallest size that covers the light. */
  readonly side: number | null;
}

export interface ShutterAsked {
  /** Effective time wanted, s, or the length of the slot that is wanted. */
  readonly by: { readonly time: number } | { readonly slot: number };
  readonly elastic: {
    /** Pull when the slide is cocked, as the mass that weighs as much. */
    readonly pullKg: number;
    /** How far the slide moves before it hangs slack; null: the whole fall. */
    readonly over: number | null;
  } | null;
}

export interface HoodAsked {
  /** Of its mouth ahead of the lens; null: what the picture and the accessory frame let it have. */
  readonly depth: number | null;
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
  /** Width of the lines that the printer lays. */
  readonly nozzle: number;
  /** Thicknesses of what holders are made of beside the plywood. */
  readonly boards: Boards;
}

export interface Boards {
  readonly channel: number;
  readonly lip: number;
  readonly slide: number;
  /** Its pile standing. */
  readonly velvet: number;
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
