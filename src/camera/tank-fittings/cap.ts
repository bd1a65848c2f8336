import { type Neck, PLAY, type Play } from './neck.js';
import { wallsOf } from './printing.js';

/** The cap, printed with its top on the bed: heights count from there. */
export interface Cap {
  /** Thickness of its top. */
  readonly thickness: number;
  readonly height: number;
  /** From the roof of the block to the cap's top when it is shut. */
  readonly above: number;
  /** Half its width across flats, and to its corners. */
  readonly apothem: number;
  readonly radius: number;
  readonly bore: number;
  /** Where the lugs turn: radius, and from the ceiling to where it slopes in to the bore. */
  readonly groove: { readonly radius: number; readonly from: number; readonly to: number };
  /** rad: a way in for a lug, and how far the cap is turned from it to be shut. */
  readonly entry: number;
  readonly turn: number;
  readonly lugs: number;
  /** What the rim presses on; cut from sheet, thinner when the cap is shut. */
  readonly gasket: { readonly diameter: number; readonly thickness: number; readonly pressed: number };
  readonly play: Play;
  readonly size: readonly [number, number, number];
  readonly volume: number;
}

const GASKET = { thickness: 2, pressed: 1.5 };
/** How far a lug goes past its way in: its own angle and this, rad. A choice of ours. */
const TURNED = Math.PI / 12;

export function sizeCap(neck: Neck, nozzle: number): Cap {
  const { inner: wall, outer: thickness } = wallsOf(nozzle);
  const bore = neck.lip.radius + PLAY.radial;
  const groove = neck.lug.radius + PLAY.radial;
  const above = neck.rim + GASKET.pressed + thickness;
  const ceiling = above - neck.lug.top - PLAY.axial;
  /** Where the underside of a lug is when the cap is shut, from the cap's top. */
  const under = (radius: number) => above - neck.lug.from - (radius - neck.radius);
  const height = under(bore) + wall;
  const apothem = groove + wall;
  const entry = neck.lug.angle + (2 * PLAY.around) / neck.lug.radius;
  const turn = neck.lug.angle + TURNED;
  const opened = (neck.lug.count * (entry + turn)) / (2 * Math.PI);
  const ring = Math.PI * (groove * groove - bore * bore);
  return {
    thickness,
    height,
    above,
    apothem,
    radius: apothem / Math.cos(Math.PI / 8),
    bore,
    groove: { radius: groove, from: ceiling, to: under(groove) },
    entry,
    turn,
    lugs: neck.lug.count,
    gasket: { diameter: 2 * (bore - PLAY.around), ...GASKET },
    play: PLAY,
    size: [2 * apothem, 2 * apothem, height],
    volume:
      8 * Math.tan(Math.PI / 8) * apothem * apothem * height -
      Math.PI * bore * bore * (height - thickness) -
      opened * ring * (height - ceiling),
  };
}
