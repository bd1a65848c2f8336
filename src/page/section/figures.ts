import type { PlanDocument } from '../../index.js';
import type { ShownSection, ShownSetup } from '../../model/shown.js';
import type { Pose } from '../pose.js';

/** What the section shows at a place of the slide: z along the axis, mm. */
export interface SectionFigures {
  readonly setup: ShownSetup;
  /** How far the rear has slid from the closest. */
  readonly rear: number;
  /** How far a middle box has been drawn along. */
  readonly drawn: number;
  readonly lensSeat: number;
  readonly holderSeat: number;
  /** Front edge and rear edge of the rear box, and rear edge of the front box. */
  readonly rearBox: readonly [number, number];
  readonly frontBox: number;
  /** From the front edge of a box to the rear edge of the one round it: of three, the joint that has less to spare. */
  readonly joint: readonly [number, number];
  /** Below 0 where the boxes have come apart. */
  readonly overlap: number;
  readonly overlapRequired: number;
  /** The film of the holder that is in, or the glass in its place. */
  readonly film: number;
  /** Half the image, as it stands. */
  readonly half: number;
  /** Where a film stands for infinity and for the nearest focus, whichever holder has it. */
  readonly sharpAt: { readonly infinity: number; readonly nearest: number };
  /** Places that the film of this holder reaches at both ends of the slide. */
  readonly ends: readonly [number, number];
  /** From the front on; what lies in one plane together. */
  readonly planes: readonly FilmPlane[];
}

export interface FilmPlane {
  /** Number of the first holder that has it, from 1; 0 where it is the bare glass alone. */
  readonly id: number;
  readonly names: readonly string[];
  readonly z: number;
  /** Lens seat to film. */
  readonly distance: number;
  /** At which it is sharp there; below 0 past infinity. */
  readonly magnification: number;
  readonly isIn: boolean;
}

/** So far apart, mm, two films are in one plane: less than any shim makes up. */
const ONE_PLANE = 0.005;

export function figuresAt(plan: PlanDocument, { setups, image }: ShownSection, pose: Pose): SectionFigures | null {
  const setup = setups.find(({ name }) => name === pose.setup) ?? setups.find(({ focusing }) => !focusing);
  const holder = plan.holders.find(({ name }) => name === setup?.holder);
  if (setup === undefined || holder === undefined) return null;
  const { slide, optics } = plan;
  const rear = Math.min(Math.max(pose.rear, 0), slide.farthest - slide.closest);
  const holderSeat = slide.closest + rear;
  const standard = holderSeat - slide.stackBehindBoxes;
  const lensSeat = optics.seatZ;
  const film = holderSeat + holder.effectiveDepth;
  const drawn = Math.max(0, rear - (slide.middleBox?.rearRun ?? rear));
  const joint = jointAt(plan, standard - slide.rearBoxLength, drawn);
  const planes: FilmPlane[] = [];
  const add = (name: string, depth: number, id: number, isIn: boolean) => {
    const z = holderSeat + depth;
    const same = planes.findIndex((one) => Math.abs(one.z - z) < ONE_PLANE);
    const known = planes[same];
    if (known !== undefined) {
      planes[same] = { ...known, names: [...known.names, name], isIn: known.isIn || isIn };
      return;
    }
    const distance = z - lensSeat;
    const magnification = (distance - optics.flangeDistance) / optics.focalLength;
    planes.push({ id, names: [name], z, distance, magnification, isIn });
  };
  plan.holders.forEach(({ name, effectiveDepth }, i) => {
    add(name, effectiveDepth, i + 1, name === holder.name);
  });
  add('ground glass', setup.focusing ? holder.effectiveDepth : plan.groundGlass.effectiveDepth, 0, setup.focusing);
  return {
    setup,
    rear,
    lensSeat,
    holderSeat,
    rearBox: [standard - slide.rearBoxLength, standard],
    frontBox: slide.frontBoxLength,
    drawn,
    joint: joint.ends,
    overlap: joint.ends[1] - joint.ends[0],
    overlapRequired: joint.required,
    film,
    half: (setup.orientation === 'upright' ? image.height : image.width) / 2,
    sharpAt: {
      infinity: lensSeat + optics.infinity.filmDistance,
      nearest: lensSeat + optics.nearest.filmDistance,
    },
    ends: [slide.closest + holder.effectiveDepth, slide.farthest + holder.effectiveDepth],
    planes: planes.sort((a, b) => a.z - b.z),
  };
}

interface JointOfBoxes {
  readonly ends: readonly [number, number];
  readonly required: number;
}

/** The joint of two boxes; of three, the one that has less to spare. */
function jointAt({ slide }: PlanDocument, rearFront: number, drawn: number): JointOfBoxes {
  const { middleBox, frontBoxLength, overlapRequired, panelDead } = slide;
  if (middleBox === undefined) return { ends: [rearFront, frontBoxLength], required: overlapRequired };
  const front = panelDead + drawn;
  // what is left at the stop and what is drawn until then are its whole length
  const rear = front + middleBox.overlapOfRear + middleBox.rearRun;
  const joints: readonly [JointOfBoxes, JointOfBoxes] = [
    { ends: [front, frontBoxLength], required: middleBox.overlapRequired },
    { ends: [rearFront, rear], required: overlapRequired },
  ];
  const spare = ({ ends, required }: JointOfBoxes) => ends[1] - ends[0] - required;
  return spare(joints[1]) < spare(joints[0]) ? joints[1] : joints[0];
}
