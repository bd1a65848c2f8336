import * as z from 'zod';
import type { BuiltCamera, BuiltPart, Edges } from '../model/built-camera.js';
import { readJson } from '../model/json-text.js';

/** Why a text is no plan of a camera, and what would be taken. */
export interface BuiltTrouble {
  readonly what: string;
  readonly accepted: string;
}

const REBUILD = 'Name the plan.json that a build wrote, its folder, or a design file.';

const figure = z.number();
const word = z.string().min(1).max(1000);
const layers = {
  thickness: figure,
  plies: z.array(figure).max(1000),
  shims: z.array(figure).max(1000),
  remainder: figure,
  measured: figure.optional(),
  add: z.array(figure).max(1000).optional(),
  takeOut: z.array(figure).max(1000).optional(),
};

/** What is read of a plan; other keys are carried along. */
const planSchema = z.looseObject({
  schema: z.literal(1),
  name: word,
  revision: word,
  optics: z.looseObject({
    focalLength: figure.positive(),
    flangeDistance: figure,
    seatZ: figure,
    coversFrom: figure.nullable(),
    imageCircle: z.looseObject({ infinity: figure.nullable() }),
    nearest: z.looseObject({ magnification: figure }),
  }),
  slide: z.looseObject({
    closest: figure,
    farthest: figure,
    reserve: figure,
    rearBoxInside: figure,
    panelDead: figure,
  }),
  lensBoard: z.looseObject({ opening: figure, radiusBehindPanel: figure, reachBehindPanel: figure }),
  holders: z.array(z.looseObject({ name: word, effectiveDepth: figure })).max(1000),
  groundGlass: z.looseObject({ effectiveDepth: figure }),
  spacers: z.array(z.looseObject({ holder: word, under: z.enum(['glass', 'holder', 'none']), ...layers })).max(1000),
  tailboard: z.looseObject({}),
  hardware: z
    .array(z.looseObject({ name: word, size: z.string(), count: figure, for: z.string() }))
    .max(10_000)
    .optional(),
  parts: z
    .array(
      z.looseObject({
        id: word,
        name: word,
        count: z.int().nonnegative(),
        material: word,
        thickness: figure,
        shape: word,
        engraved: word.nullable(),
      }),
    )
    .max(10_000),
});

const corner = z.tuple([figure, figure]);
const loop = z.array(corner).min(3).max(100_000);
const partsSchema = z.looseObject({
  schema: z.literal(1),
  revision: word,
  parts: z
    .array(
      z.looseObject({
        id: word,
        kind: z.enum(['flat', 'printed', 'bought']),
        outline: loop.optional(),
        holes: z.array(loop).optional(),
        joins: z.array(z.looseObject({ to: word, by: z.enum(['finger', 'glue', 'slide', 'screw', 'press', 'rest']) })),
      }),
    )
    .max(10_000),
});

/** What a build wrote of a camera; without parts.json its parts are known by their digests alone. */
export function readBuilt(planText: string, partsText: string | null): BuiltCamera | BuiltTrouble {
  const plan = parsed(planText, planSchema);
  if ('what' in plan) return { what: `plan.json: ${plan.what}`, accepted: REBUILD };
  const shaped = partsText === null ? null : parsed(partsText, partsSchema);
  if (shaped !== null && 'what' in shaped) return { what: `parts.json: ${shaped.what}`, accepted: REBUILD };
  if (shaped !== null && shaped.revision !== plan.revision)
    return {
      what: `parts.json is of revision ${shaped.revision}, and plan.json of ${plan.revision}: they are not of one build.`,
      accepted: REBUILD,
    };
  const known = new Map((shaped?.parts ?? []).map((part) => [part.id, part]));
  return {
    // the schema has read all that is compared by name; other figures are only held against each other
    plan: plan as unknown as BuiltCamera['plan'],
    parts: plan.parts.map(({ id, name, count, material, thickness, shape, engraved }): BuiltPart => {
      const part = known.get(id);
      return {
        id,
        name,
        count,
        material,
        thickness,
        shape,
        engraved,
        edges: part?.kind === 'flat' && part.outline ? edgesOf(part.outline, part.holes ?? []) : null,
        joins: part?.joins ?? [],
      };
    }),
  };
}

type Loop = readonly (readonly [number, number])[];

const points = (corners: Loop) => corners.map(([x, y]) => ({ x, y }));
const edgesOf = (outline: Loop, holes: readonly Loop[]): Edges => ({
  outline: points(outline),
  holes: holes.map(points),
});

function parsed<T>(text: string, schema: z.ZodType<T>): T | { readonly what: string } {
  const json = readJson(text);
  if ('what' in json) return json;
  const read = schema.safeParse(json.value);
  // as it was written: what the schema gives back has its own keys first
  if (read.success) return json.value as T;
  const [first] = read.error.issues;
  const where = first?.path.map(String).join('.') ?? '';
  if (where === '') return { what: 'It is not the plan of a camera.' };
  return {
    what: `${where} is missing, or not what it was written as: an earlier program, or somebody else, wrote it.`,
  };
}
