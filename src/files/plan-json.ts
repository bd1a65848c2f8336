import type { Build } from '../assembly/build.js';
import { around, boxesOf, slidBox } from '../assembly/extent.js';
import { countOf, stands } from '../assembly/setups.js';
import type { Camera } from '../camera/camera.js';
import type { Design } from '../design/design.js';
import { boundsOf } from '../geometry/path.js';
import type { Finding } from '../model/finding.js';
import type { Hardware, Part } from '../model/part.js';
import type { PlanDocument, PlanPart } from '../model/plan.js';
import { extensionFactor, extensionStops, subjectDistance, workingAperture } from '../optics/conjugates.js';

/** What a plan is made from. */
export interface PlanGiven {
  readonly design: Design;
  readonly revision: string;
  readonly camera: Camera;
  readonly build: Build;
  readonly findings: readonly Finding[];
  readonly despite: readonly string[];
}

/** The camera in figures, each rounded once. */
export function planDocument({ design, revision, camera, build, findings, despite }: PlanGiven): PlanDocument {
  const { optics, settingOut: rod, objects } = camera;
  const { focalLength: f, flangeDistance: V, maxAperture: N, pupilMagnification: P } = design.lens;
  const m = design.focus.nearest;
  const first = camera.holders[0]?.effectiveDepth ?? 0;
  const packing = objects.groundGlassFrame.packing;
  const coversWithin = optics.coversFrom !== null && optics.coversFrom <= rod.reachable + 1e-9;
  return rounded({
    schema: 1,
    name: design.name,
    revision,
    optics: {
      focalLength: f,
      flangeDistance: V,
      maxAperture: N,
      imageDiagonal: optics.diagonal,
      seatZ: optics.seat,
      exitPupil: optics.pupil,
      imageCircle: {
        infinity: optics.circle?.infinity ?? null,
        nearest: optics.circle?.nearest ?? null,
        required: optics.diagonal,
      },
      coversFrom: coversWithin ? optics.coversFrom : null,
      infinity: { filmDistance: V },
      nearest: {
        magnification: m,
        subjectDistance: m > 0 ? subjectDistance(f, m) : null,
        filmDistance: V + f * m,
        extensionFactor: extensionFactor(m, P),
        stops: extensionStops(m, P),
        effectiveAperture: workingAperture(N, m, P),
      },
    },
    slide: {
      travel: rod.travel,
      closest: rod.closest.value,
      farthest: rod.farthest.value,
      frontBoxLength: rod.frontLength.value,
      rearBoxLength: rod.rearLength.value,
      frontBoxInside: rod.frontInside.value,
      rearBoxInside: rod.rearInside.value,
      frontBoxOutside: rod.frontOutside.value,
      rearBoxOutside: rod.rearOutside.value,
      clearance: rod.clearance,
      overlapFarthest: rod.overlapFarthest,
      overlapRequired: rod.overlapRequired.value,
      passesInsideRearBox: rod.passesInsideRearBox,
      panelDead: rod.panelDead.value,
      stackBehindBoxes: rod.stackBehindBoxes.value,
      slack: rod.slack,
      reachableMagnification: rod.reachable,
      reachableOtherSide: rod.reachableOtherSide,
      limitedBy: rod.limitedBy,
    },
    holders: camera.holders.map((h) => ({
      name: h.name,
      filmDepth: h.filmDepth,
      effectiveDepth: h.effectiveDepth,
      seat: { infinity: optics.filmAtInfinity - h.effectiveDepth, nearest: optics.filmAtNearest - h.effectiveDepth },
    })),
    groundGlass: {
      effectiveDepth: objects.groundGlassFrame.effectiveDepth,
      packing: packing.thickness,
      plies: packing.plies,
      shims: packing.shims,
      remainder: packing.remainder,
    },
    spacers: camera.spacers.map((s) => ({
      holder: s.holder,
      thickness: s.thickness,
      under: s.under,
      plies: s.made.plies,
      shims: s.made.shims,
      remainder: s.made.remainder,
      tolerance: s.tolerance,
    })),
    tailboard: {
      length: objects.tailboard.length,
      width: objects.tailboard.width,
      slot: objects.tailboard.slot.length,
      axisHeight: rod.axisHeight.value,
      tripod: objects.tailboard.tripod,
      indexOffsets: Object.fromEntries(camera.holders.map((h) => [h.name, h.effectiveDepth - first])),
      balance: { closest: camera.balance.closest, farthest: camera.balance.farthest },
      sag: camera.sag.sag,
    },
    camera: outsideOf(camera, build),
    parts: build.parts.filter((part) => part.kind !== 'bought').map((part) => planPart(part, build)),
    hardware: gathered(camera.hardware),
    findings,
    despite,
  });
}

/** Outside sizes over everything but the lens and the holders. */
function outsideOf({ balance, settingOut: rod }: Camera, build: Build): PlanDocument['camera'] {
  const boxes = build.parts
    .filter((part) => part.kind !== 'bought' || part.role === undefined)
    .flatMap((part) =>
      boxesOf(
        part,
        part.placements.filter((p) => build.setups[0] && stands(p, build.setups[0])),
      ),
    );
  const at = (rear: number) => around(boxes.map((box) => slidBox(box, rear)));
  const [near, far] = [at(0), at(rod.travel)];
  const span = ([from, to]: readonly [number, number]) => to - from;
  return {
    width: span(near.x),
    height: span(near.y),
    depthClosed: span(near.z),
    depthOpen: span(far.z),
    mass: balance.massKg,
  };
}

function planPart(part: Exclude<Part, { kind: 'bought' }>, build: Build): PlanPart {
  const group = part.placements[0]?.group ?? 'front';
  const box = part.kind === 'flat' ? boundsOf(part.outline) : null;
  return {
    id: part.id,
    name: part.name,
    count: countOf(part.placements, build.setups),
    material: part.material,
    thickness: part.kind === 'flat' ? part.thickness : part.size[2],
    width: box ? box.right - box.left : ((part as { size: readonly number[] }).size[0] ?? 0),
    height: box ? box.top - box.bottom : ((part as { size: readonly number[] }).size[1] ?? 0),
    grain: part.kind === 'flat' ? part.grain : 'any',
    group: typeof group === 'string' ? group : group.holder,
  };
}

/** One line for what is bought alike, its uses joined. */
function gathered(hardware: readonly Hardware[]): readonly Hardware[] {
  const lines = new Map<string, Hardware>();
  for (const item of hardware) {
    if (item.count === 0) continue;
    const key = `${item.name}|${item.size}`;
    const known = lines.get(key);
    lines.set(key, known ? { ...known, count: known.count + item.count, for: `${known.for}; ${item.for}` } : item);
  }
  return [...lines.values()];
}

/**
 * Every number of a document to a millionth, small ones to a billionth (a magnification of 1:30 keeps its six figures),
 * no -0; so that the last bits of the arithmetic never reach a file.
 */
function rounded<T>(value: T): T {
  if (typeof value === 'number') {
    const grid = Math.abs(value) < 10 ? 1e9 : 1e6;
    return (Math.round(value * grid) / grid || 0) as T;
  }
  if (Array.isArray(value)) return value.map(rounded) as T;
  if (value !== null && typeof value === 'object')
    return Object.fromEntries(Object.entries(value).map(([key, own]) => [key, rounded(own)])) as T;
  return value;
}
