import type { BuiltCamera, BuiltPart, BuiltPlan } from '../model/built-camera.js';
import type { CompareDocument, Loss } from '../model/compare.js';
import type { Join } from '../model/part.js';
import { magnification, mm } from '../units/print.js';
import { changedFigures } from './changed-figures.js';
import { farthestAsked, inOldBoxes, lostInOldBoxes, ROUNDING as NO_LOSS, reachOf } from './old-boxes.js';
import { SAME, sameEdges, widerHole } from './same-edges.js';

/**
 * What becomes of a camera when its design becomes another. A part is kept where the earlier camera has one of the same
 * finished shape, so that kept and cut parts together are the later camera, the one that was proven, to within `SAME`. How it
 * is joined needs no look of its own: fingers, slots and holes are its shape.
 */
export function compareCameras(before: BuiltCamera, after: BuiltCamera): CompareDocument {
  const judged = judgedParts(before, after);
  const recut = judged.filter(({ why }) => why !== null);
  const kept = judged.filter(({ why }) => why === null);
  const sawn = recut.filter(({ part, from }) => sawnOut(part, from) !== null).map(({ part }) => part.id);
  // what is sawn out where it stands takes nothing with it
  const again = new Set(recut.map(({ part }) => part.id).filter((id) => !sawn.includes(id)));
  const used = new Set(judged.flatMap(({ from }) => (from === null ? [] : [from.id])));
  return {
    schema: 1,
    changed: changedFigures(before.plan, after.plan),
    recut: recut.map(({ part }) => part.id),
    keeps: kept.map(({ part }) => part.id),
    sawn,
    lost: losses(before, after),
    why: Object.fromEntries(recut.map(({ part, why }) => [part.id, why ?? ''])),
    renamed: Object.fromEntries(
      kept.flatMap(({ part, from }) => (from === null || from.id === part.id ? [] : [[part.id, from.id]])),
    ),
    engraved: kept.filter(({ part, from }) => part.engraved !== from?.engraved).map(({ part }) => part.id),
    glued: kept.filter(({ part }) => isGluedTo(part, again, after.parts)).map(({ part }) => part.id),
    left: before.parts.filter(({ id }) => !used.has(id)).map(({ id }) => id),
    inOldBoxes: inOldBoxes(before.plan, after.plan),
  };
}

/** How many pieces of each part must be cut: all of them, or those that are more than before. */
export const piecesToCut = (before: BuiltCamera, after: BuiltCamera): ReadonlyMap<string, number> =>
  new Map(judgedParts(before, after).map(({ part, pieces }) => [part.id, pieces]));

interface Judged {
  readonly part: BuiltPart;
  /** Why it is cut again; null where it is kept. */
  readonly why: string | null;
  /** The part of the earlier camera that it was held against. */
  readonly from: BuiltPart | null;
  readonly pieces: number;
}

/** Each part of the later camera against its elder. */
export function judgedParts(before: BuiltCamera, after: BuiltCamera): readonly Judged[] {
  return after.parts.map((part): Judged => {
    const id = earlierId(part.id, before.plan, after.plan);
    const from = before.parts.find((old) => old.id === id) ?? null;
    if (from === null) return { part, why: 'new', from, pieces: part.count };
    const other =
      otherWood(part, from) ?? (sameShape(part, from) ? null : (sawnOut(part, from) ?? shapeWords(part, from)));
    if (other !== null) return { part, why: other, from, pieces: part.count };
    const more = part.count - from.count;
    return more > 0 ? { part, why: `${more} more of it`, from, pieces: more } : { part, why: null, from, pieces: 0 };
  });
}

/** Marks of what belongs to a holder bear its number: SP2T, HF1, KC2, tank-cap-2. */
const OF_HOLDER = /^(SP|H[A-Z]|K[A-Z]|tank-[a-z]+-)(\d+)(.*)$/;

/** What a part was called in a camera in which the holders stand in another order. */
function earlierId(id: string, before: BuiltPlan, after: BuiltPlan): string {
  const [, kind, number, rest] = OF_HOLDER.exec(id) ?? [];
  if (kind === undefined) return id;
  const holder = after.holders[Number(number) - 1]?.name;
  const was = before.holders.findIndex(({ name }) => name === holder);
  return was < 0 ? `no part of the ${holder}` : `${kind}${was + 1}${rest}`;
}

type Joined = Pick<BuiltPart, 'id' | 'joins'>;

/** Whether a part is glued to one of these, by its own joints or theirs; fingers are glued too. */
export function isGluedTo({ id, joins }: Joined, others: ReadonlySet<string>, parts: readonly Joined[]): boolean {
  const isGlue = ({ by }: Join) => by === 'glue' || by === 'finger';
  return (
    joins.some((join) => isGlue(join) && others.has(join.to)) ||
    parts.some((other) => others.has(other.id) && other.joins.some((join) => isGlue(join) && join.to === id))
  );
}

/** A tenth of a micrometre more is no other thickness. */
const ROUNDING = 1e-6;

function otherWood(part: BuiltPart, old: BuiltPart): string | null {
  const word = ({ material }: BuiltPart) => material.replace(/-[\d.]+$/, '');
  if (word(part) !== word(old)) return `of ${part.material}, was ${old.material}`;
  // of a print this is its height, and the digest knows it
  if (isPrinted(part)) return null;
  return Math.abs(part.thickness - old.thickness) > SAME + ROUNDING
    ? `${mm(part.thickness)} thick, was ${mm(old.thickness)}`
    : null;
}

/** What is cut bears its thickness in its material. */
const isPrinted = ({ material }: BuiltPart): boolean => !/-[\d.]+$/.test(material);

/** By digest; and where both outlines are known, within what nobody can measure. */
const sameShape = (part: BuiltPart, old: BuiltPart): boolean =>
  part.shape === old.shape || (part.edges !== null && old.edges !== null && sameEdges(part.edges, old.edges));

/** It carries the front box and is glued all round, and its opening wants no laser: of small parts wider holes are cut anew. */
const PANEL = 'F1';

/** Of a panel that differs by a wider opening alone: by how much; null of all else. */
function sawnOut(part: BuiltPart, old: BuiltPart | null): string | null {
  if (part.id !== PANEL || part.edges === null || !old?.edges || otherWood(part, old) !== null) return null;
  const hole = widerHole(part.edges, old.edges);
  return hole && `an opening of ${sizeOf(hole.is)}, was ${sizeOf(hole.was)}`;
}

function shapeWords(part: BuiltPart, old: BuiltPart): string {
  if (part.edges === null || old.edges === null) return 'another shape';
  const [is, was] = [sizeOf(part.edges.outline), sizeOf(old.edges.outline)];
  if (is !== was) return `${is}, was ${was}`;
  return part.edges.holes.length === old.edges.holes.length ? 'other edges or holes' : 'other holes';
}

function sizeOf(points: readonly { readonly x: number; readonly y: number }[]): string {
  const across = (axis: 'x' | 'y') => {
    const values = points.map((point) => point[axis]);
    return Math.round((Math.max(...values) - Math.min(...values)) * 100) / 100;
  };
  return `${across('x')} × ${mm(across('y'))}`;
}

/** So much less magnification is no loss, as a share: 1:1.87 is as near as 1:1.9. */
const HARDLY = 0.02;

function losses(before: BuiltCamera, after: BuiltCamera): readonly Loss[] {
  const [was, is] = [before.plan, after.plan];
  const far = farthestAsked(was);
  const holders = was.holders.flatMap(({ name, effectiveDepth }): readonly Loss[] => {
    const now = is.holders.find((holder) => holder.name === name);
    if (now === undefined) return [{ what: `the ${name}`, why: 'The later design has no holder of that name.' }];
    const [old, reach] = [reachOf(was, effectiveDepth), reachOf(is, now.effectiveDepth)];
    return [
      ...(far !== null && reach.farthest > far * (1 + HARDLY) + NO_LOSS
        ? [
            {
              what: `${magnification(far)} with the ${name}`,
              why: `The later camera goes no farther than ${magnification(reach.farthest, 'nearer')}.`,
            },
          ]
        : []),
      ...(reach.nearest < old.nearest * (1 - HARDLY)
        ? [
            {
              what: `${magnification(old.nearest)} with the ${name}`,
              why: `The later camera goes no nearer than ${magnification(reach.nearest)}.`,
            },
          ]
        : []),
    ];
  });
  return [...holders, ...coverage(before, after), ...lostInOldBoxes(was, is)];
}

function coverage({ plan: { optics: was } }: BuiltCamera, { plan: { optics: is } }: BuiltCamera): readonly Loss[] {
  if (was.imageCircle.infinity === null || is.imageCircle.infinity === null) return [];
  const from = (m: number | null) => m ?? Infinity;
  if (from(is.coversFrom) <= from(was.coversFrom) + 1e-6) return [];
  const what =
    was.coversFrom === 0 ? 'corners at infinity' : `corners at ${magnification(was.coversFrom ?? 0, 'nearer')}`;
  const why =
    is.coversFrom === null
      ? 'The lens never covers the picture within the reach of the slide.'
      : `The lens covers the picture from ${magnification(is.coversFrom, 'nearer')} on.`;
  return [{ what, why }];
}
