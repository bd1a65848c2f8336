import type { Build } from '../assembly/build.js';
import { countOf } from '../assembly/setups.js';
import type { Camera } from '../camera/camera.js';
import type { Absent, Figure } from '../camera/figure.js';
import { planFigures } from '../camera/plan-figures.js';
import type { Design } from '../design/design.js';
import { boundsOf } from '../geometry/path.js';
import type { Finding } from '../model/finding.js';
import type { Hardware, Part } from '../model/part.js';
import type { PlanDocument, PlanPart } from '../model/plan.js';
import { documentNumber } from './document-number.js';
import { engravingDigest, shapeDigest } from './part-digest.js';

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
  return rounded({
    schema: 1,
    name: design.name,
    revision,
    ...planFigures(design, camera, build),
    // what is used away from the camera stands among the hardware
    parts: build.parts
      .filter((part) => part.kind !== 'bought')
      .filter(({ placements }) => placements.length > 0)
      .map((part) => planPart(part, build)),
    hardware: gathered(camera.hardware),
    findings,
    despite,
  });
}

function planPart(part: Exclude<Part, { kind: 'bought' }>, build: Build): PlanPart {
  const [{ group = 'front', drawnFrom } = {}] = part.placements;
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
    group: drawnFrom !== undefined ? 'middle' : typeof group === 'string' ? group : group.holder,
    shape: shapeDigest(part),
    engraved: engravingDigest(part),
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

/** What a document becomes when each of its figures is put down as its value. */
type Values<T> = T extends Figure
  ? number
  : T extends Absent
    ? null
    : T extends string | number | boolean | null
      ? T
      : { readonly [K in keyof T]: Values<T[K]> };

/**
 * Figures as their values, and every number as documents have it.
 */
function rounded<T>(value: T): Values<T> {
  return put(value) as Values<T>; // what `Values` says is what `put` does, step by step
}

function put(value: unknown): unknown {
  if (typeof value === 'number') return documentNumber(value);
  if (Array.isArray(value)) return value.map(put);
  if (value === null || typeof value !== 'object') return value;
  if ('symbol' in value && 'value' in value) return put(value.value);
  const out: Record<string, unknown> = {};
  for (const key in value) out[key] = put((value as Record<string, unknown>)[key]);
  return out;
}
