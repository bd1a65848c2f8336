import type { Build, Setup } from '../assembly/build.js';
import { boxesOf, type Extent } from '../assembly/extent.js';
import { type Load, loadsOf, slid } from '../assembly/mass.js';
import { stands } from '../assembly/setups.js';
import { spanOf } from '../assembly/span-of.js';
import { cantileverSag, cantileverTilt, centreOfGravity, secondMoment } from '../assembly/statics.js';
import type { Placement } from '../model/part.js';
import { standardGravity } from '../standards/gravity.js';

/** Mass, kg, and centre of gravity of what stands in a set-up, the moving groups slid by `rear`. */
export const weighed = (
  build: Build,
  setup: Setup,
  { rear, which = () => true }: { readonly rear: number; readonly which?: (placement: Placement) => boolean },
): Load =>
  centreOfGravity(
    build.parts
      .flatMap(loadsOf)
      .filter(({ placement }) => stands(placement, setup) && which(placement))
      .map((load) => slid(load, rear)),
  );

export const slides = ({ group }: Placement): boolean => group !== 'front';

/** kg to N. */
export const newtons = (massKg: number): number => massKg * standardGravity.value;

/** How far the moving groups slide. */
export const farthestRear = ({ stations }: Build): number => Math.max(...stations.map(({ rear }) => rear));

/** The tailboard behind its doubler, as a cantilever. */
interface Overhang {
  /** From the doubler's rear edge to the centre of gravity of what slides; 0 where that stands over the doubler. */
  readonly reach: number;
  readonly loadN: number;
  /** Across and up, of both plies. */
  readonly width: number;
  readonly thickness: number;
  readonly sag: number;
  /** rad */
  readonly tilt: number;
}

/** How the tailboard gives way at full draw. The doubler does not give; the load stands at the end. */
export function overhangOf(build: Build, setup: Setup, modulus: number): Overhang {
  const { massKg, at } = weighed(build, setup, { rear: farthestRear(build), which: slides });
  const [upper, lower, doubler] = ['T1U', 'T1L', 'T4'].map((id) => spanOf(build, id)) as [Extent, Extent, Extent];
  const reach = Math.max(0, at.z - doubler.z[1]);
  const loadN = newtons(massKg);
  const width = lower.x[1] - lower.x[0];
  const thickness = upper.y[1] - lower.y[0];
  const I = secondMoment(width, thickness);
  return {
    reach,
    loadN,
    width,
    thickness,
    sag: cantileverSag(loadN, reach, modulus, I),
    tilt: cantileverTilt(loadN, reach, modulus, I),
  };
}

/** The sole between its rails: its own size and the play on each side, as they are drawn. */
export function guideOf(build: Build): { readonly width: number; readonly length: number; readonly play: number } {
  const sole = spanOf(build, 'R4L');
  const rails = build.parts.find(({ id }) => id === 'T2');
  if (rails === undefined) throw new Error('there are no rails in this build');
  const boxes = boxesOf(rails).map(({ extent }) => extent);
  const left = Math.max(...boxes.filter(({ x }) => x[1] < 0).map(({ x }) => x[1]));
  const right = Math.min(...boxes.filter(({ x }) => x[0] > 0).map(({ x }) => x[0]));
  const width = sole.x[1] - sole.x[0];
  return { width, length: sole.z[1] - sole.z[0], play: Math.max(0, (right - left - width) / 2) };
}
