/** How one looks at the camera: what changes many times a second while a slider is dragged, and so is no part of the state. */
export interface Pose {
  /** How far the moving groups have slid from the closest station, mm. */
  readonly rear: number;
  /** Name of the set-up that is shown. */
  readonly setup: string;
  /** From 0, together, to 1, everything out. */
  readonly explode: number;
  /** Cut open along the axis. */
  readonly sawn: boolean;
  readonly cone: boolean;
  /** A subject distance that was typed and is out of reach, mm, and where the slide stopped for it. */
  readonly beyond: { readonly distance: number; readonly rear: number } | null;
  /** The part that was chosen, in whichever view. */
  readonly chosen: string | null;
  /** Parts that a finding is about: the camera turns to them. */
  readonly pointed: readonly string[];
}

export const firstPose: Pose = {
  rear: 0,
  setup: '',
  explode: 0,
  sawn: false,
  cone: true,
  beyond: null,
  chosen: null,
  pointed: [],
};

export interface PoseBox {
  readonly now: () => Pose;
  readonly change: (patch: Partial<Pose>) => void;
  readonly watch: (listener: (pose: Pose) => void) => void;
}

export function poseBox(): PoseBox {
  let pose = firstPose;
  const listeners: ((pose: Pose) => void)[] = [];
  return {
    now: () => pose,
    change: (patch) => {
      pose = { ...pose, ...patch };
      for (const listener of listeners) listener(pose);
    },
    watch: (listener) => void listeners.push(listener),
  };
}
