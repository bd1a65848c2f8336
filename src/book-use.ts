import { countOf } from './assembly/setups.js';
import { care } from './book/care.js';
import type { Chapter } from './book/chapter.js';
import type { Bought, StandingCamera } from './book/given.js';
import { leakTest } from './book/leak-test.js';
import { processingInTheHolder } from './book/processing.js';
import { type RegisterStack, type StackThatStands, settingTheRegister } from './book/register.js';
import { lackingLineText, otherScaleText } from './book/standing-camera.js';
import { type TemplatesGiven, templates } from './book/templates.js';
import { testPiece } from './book/test-piece.js';
import { type UseRow, usingTheCamera } from './book/use.js';
import { PIN_PLAY, PIN_PROUD } from './camera/back/size.js';
import { type Spacer, wantedOf } from './camera/spacer/size.js';
import { type Design, filmStands, windowTakes } from './design/design.js';
import { type ClosedPath, flatten, polygon } from './geometry/path.js';
import { apply, type Matrix4 } from './geometry/placement.js';
import { laminate, MOST_SHIMS } from './joinery/lamination.js';
import type { Drawing } from './model/page.js';
import type { PlanDocument } from './model/plan.js';
import type { ProofDocument } from './model/proof.js';
import { extension, extensionFactor, extensionStops, filmPlane, subjectDistance } from './optics/conjugates.js';
import type { Planned } from './pipeline.js';
import { testPieceGiven } from './test-piece.js';
import { plainNumber } from './units/print.js';

export interface UseFrom {
  readonly planned: Planned;
  readonly plan: PlanDocument;
  /** Null where the camera was not put together. */
  readonly proof: ProofDocument | null;
  readonly since: StandingCamera | null;
  /** How baths are poured into a holder, drawn. */
  readonly pouring: readonly Drawing[];
}

/** The chapters that stand round the assembly: what comes before it, and how the camera is set, tested, used and kept. */
export function chaptersAround({ planned, plan, proof, since, pouring }: UseFrom): {
  readonly before: readonly Chapter[];
  readonly after: readonly Chapter[];
  readonly bought: readonly Bought[];
} {
  const { design, camera } = planned;
  const { tailboard, rearBox, lensClamp } = camera.objects;
  return {
    bought: boughtFor(planned, plan),
    before: [testPiece(testPieceGiven(design))],
    after: [
      settingTheRegister(registerOf(planned, proof)),
      leakTest({
        joints: proof?.joints ?? [],
        holders: design.holders.map(({ name }) => name),
        pinless: design.holders.flatMap(({ name, locating }) => (locating === 'pins' ? [] : [name])),
      }),
      usingTheCamera({
        format: design.format.name,
        maxAperture: design.lens.maxAperture,
        rows: useRows(design, plan),
        coversFrom: plan.optics.coversFrom,
        holders: design.holders.map(({ name, locating }, i) => ({
          name,
          mark: camera.focusScale.indexes[i]?.engraved ?? `${i + 1}`,
          offset: plan.tailboard.indexOffsets[name] ?? 0,
          spacer: spacerOf(planned, name),
          locating,
        })),
        tripod: {
          thread: tailboard.thread.name,
          massKg: plan.findings.find(({ rule }) => rule === 'mass-tripod')?.value ?? plan.camera.mass,
          advice: plan.findings.find(({ rule }) => rule === 'mass-tripod')?.hint ?? '',
          balance: [plan.tailboard.balance.closest, plan.tailboard.balance.farthest],
          z: plan.tailboard.tripod,
        },
        tongue: camera.objects.back.tongue !== null,
        mount: design.lens.mount.by,
        lackingLine: since === null ? null : lackingLineText(since, 'R4U'),
        otherScale: since === null ? null : otherScaleText(since, { scale: ['T3', 'T3S'], index: ['R4U'] }),
        lensKg: design.lens.barrel.massKg,
      }),
      ...chapterOf(
        processingInTheHolder({
          pouring,
          tanks: plan.holders.flatMap(({ name, tank }) => {
            const own = camera.objects.tanks.find((one) => one.name === name);
            return tank === undefined || own === undefined ? [] : [{ name, tank, screws: own.screws.at.length }];
          }),
        }),
      ),
      care({
        clampHeat: plan.findings.find(({ rule }) => rule === 'clamp-heat')?.limit ?? null,
        clampMaterial:
          lensClamp === undefined ? null : (plan.parts.find(({ id }) => id === 'lens-clamp')?.material ?? null),
        clearance: rearBox.clearance,
        felt: rearBox.felt,
        revision: planned.revision,
        spaced: camera.spacers.find(({ under }) => under !== 'none')?.holder ?? null,
      }),
      templates(templatesOf(planned)),
    ],
  };
}

const chapterOf = (chapter: Chapter | null): readonly Chapter[] => (chapter === null ? [] : [chapter]);

const spacerOf = ({ camera }: Planned, name: string) => {
  const placed = camera.objects.spacers.find(({ spacer }) => spacer.holder === name);
  if (placed === undefined || placed.spacer.under === 'none')
    return { id: null, under: 'none' as const, thickness: 0, drawn: 0, measured: null };
  const { id, under, asDrawn, glued } = placed.spacer;
  return { id, under, thickness: wantedOf(placed.spacer), drawn: asDrawn, measured: glued?.measured ?? null };
};

export function registerOf(planned: Planned, proof: ProofDocument | null) {
  const { design, camera } = planned;
  const { groundGlass, holders, shims, focus } = design;
  const frame = camera.objects.groundGlassFrame;
  return {
    glass: {
      frosted: groundGlass.frosted,
      thickness: groundGlass.thickness,
      depth: frame.stands?.wanted ?? groundGlass.depth,
      drawn: groundGlass.depth,
      measured: groundGlass.measured ?? null,
      isOff: frame.stands?.isOff ?? false,
      wrongWayRound: Math.abs(frame.effectiveOtherSide - frame.effectiveDepth),
    },
    holders: holders.map((holder) => {
      const { name, filmDepth, window, measured } = holder;
      const stands = filmStands(holder, groundGlass);
      const behindWindow = windowTakes(window, groundGlass.refractiveIndex);
      return {
        name,
        filmDepth,
        measured: measured === undefined ? null : stands,
        behindWindow,
        measuredDepth: stands + behindWindow,
        spacer: spacerOf(planned, name),
      };
    }),
    tolerance: camera.optics.registerTolerance,
    within: frame.within,
    shims,
    mostShims: MOST_SHIMS,
    stacks: stacksOf(planned),
    ofShims: camera.objects.spacers
      .filter(({ spacer: { made } }) => made.plies.length === 0 && made.shims.length > 0)
      .map(({ spacer }) => ({
        name: `spacer for the ${spacer.holder}`,
        wanted: wantedOf(spacer),
        shims: spacer.made.shims,
        stands: gluedOf(spacer),
      })),
    budgets: proof?.register ?? [],
    nearest: focus.nearest,
  };
}

/** The glass frame, from the seat to the front face of the glass, and each spacer that has plies. */
function stacksOf({ design, camera }: Planned): readonly RegisterStack[] {
  const { groundGlassFrame: frame, spacers } = camera.objects;
  const { shims } = design;
  const { within, packing } = frame;
  const t = design.plywood.thickness;
  const glassPlies = [t, ...packing.plies];
  const drawn = t + packing.thickness;
  // from the frosted face to the front face of the glass
  const behind = frame.depth - drawn;
  const { stands } = frame;
  return [
    {
      name: 'glass frame',
      reading:
        packing.plies.length === 0
          ? 'its front ply G1 alone, before anything is put to it.'
          : 'its front ply G1 with the packing glued to it, before G2 is put to it.',
      shimsGo: `The shims lie between ${packing.plies.length === 0 ? 'G1' : 'them'} and the pocket ply G2, under the glass.`,
      ...stackOf(glassPlies, stands === null ? drawn : stands.wanted - behind, { shims, within }),
      wantedDrawn: drawn,
      stands: stands === null ? null : { ...stands, measured: (stands.measured ?? frame.depth) - behind, isRead: stands.measured !== null }, // biome-ignore format: one line
    },
    ...spacers
      .filter(({ spacer }) => spacer.made.plies.length > 0)
      .map(({ spacer }) => ({ spacer, ...spacer }))
      .map(({ spacer, id, holder, made }) => ({
        name: `spacer for the ${holder}`,
        reading: `the glued plies ${id}.`,
        shimsGo: `The shims lie on its seat side, under the glued plies, with holes for the seat pins: draw round ${id} and through its holes.`,
        ...stackOf(made.plies, wantedOf(spacer), { shims, within }),
        wantedDrawn: spacer.asDrawn,
        stands: gluedOf(spacer),
      })),
  ];
}

const gluedOf = ({ glued }: Spacer): StackThatStands | null => (glued === null ? null : { ...glued, isRead: true });

/** A reading for every so many mm, as far as so many plies may stray, and two glue lines' worth more. Choices of ours. */
const READING_STEP = 0.05;
const PLY_STRAYS = 0.1;
const LEAST_SPREAD = 0.2;

function stackOf(
  plies: readonly number[],
  wanted: number,
  { shims, within }: { readonly shims: readonly number[]; readonly within: number },
): Pick<RegisterStack, 'plies' | 'drawn' | 'wanted' | 'rows'> {
  const drawn = plies.reduce((sum, ply) => sum + ply, 0);
  const steps = Math.round(Math.max(LEAST_SPREAD, PLY_STRAYS * plies.length) / READING_STEP);
  const rows = Array.from({ length: 2 * steps + 1 }, (_, i) => {
    const reading = drawn + (i - steps) * READING_STEP;
    const missing = wanted - reading;
    const made = laminate({ thickness: missing, ply: Number.POSITIVE_INFINITY, shims, within, stock: [] });
    return { reading, shims: made.shims, remainder: made.remainder };
  });
  return { plies: plies.length, drawn, wanted, rows };
}

/**
 * Sheet for shims beyond what the camera takes as drawn, so that every row of the tables can be laid, and one of each
 * size to spare.
 */
export function shimsToSpare(planned: Planned): readonly { readonly thickness: number; readonly count: number }[] {
  const stacks = stacksOf(planned);
  const drawn = [
    ...planned.camera.objects.groundGlassFrame.packing.shims,
    ...planned.camera.objects.spacers.flatMap(({ spacer }) => spacer.made.shims),
  ];
  const added = [
    ...(planned.camera.objects.groundGlassFrame.stands?.add ?? []),
    ...planned.camera.objects.spacers.flatMap(({ spacer }) => spacer.glued?.add ?? []),
  ];
  const of = (size: number, shims: readonly number[]) => shims.filter((one) => one === size).length;
  return [...planned.design.shims]
    .sort((a, b) => b - a)
    .flatMap((thickness) => {
      const inTables = stacks.reduce(
        (sum, { rows }) =>
          sum + Math.max(0, ...rows.map(({ shims }) => (shims.length > MOST_SHIMS ? 0 : of(thickness, shims)))),
        0,
      );
      const most = Math.max(inTables, of(thickness, drawn) + of(thickness, added));
      return most === 0 ? [] : [{ thickness, count: most + 1 - of(thickness, drawn) }];
    });
}

/** All that is bought for one camera but what it is built round: the one list that the book and the kits go by. */
export const boughtFor = (planned: Planned, { hardware }: Pick<PlanDocument, 'hardware'>): readonly Bought[] => [
  ...hardware.map((line) => ({ ...line, toChooseFrom: false })),
  ...shimsToSpare(planned).map(({ thickness, count }) => ({
    name: 'shim',
    size: `${plainNumber(thickness)} thick, as large as G1`,
    count,
    for: 'setting the register: the tables of its chapter ask for no others',
    toChooseFrom: true,
  })),
];

/** Magnifications that are looked up at the camera, from far to near. */
const USUAL = [0, 1 / 50, 1 / 20, 1 / 15, 1 / 10, 1 / 8, 1 / 6, 1 / 5, 1 / 4, 1 / 3, 1 / 2.5, 1 / 2, 1 / 1.5, 1];

export function useRows({ lens, focus, format }: Design, plan: PlanDocument): readonly UseRow[] {
  const { focalLength: f, pupilMagnification: P } = lens;
  const { coversFrom, imageCircle } = plan.optics;
  const known = imageCircle.infinity !== null;
  const within = USUAL.filter((m) => m > focus.farthest + 1e-9 && m < focus.nearest - 1e-9);
  return [focus.farthest, ...within, ...(focus.nearest > focus.farthest ? [focus.nearest] : [])].map((m) => ({
    m,
    subject: m === 0 ? null : subjectDistance(f, m),
    filmDistance: filmPlane({ ...lens, seat: 0 }, m),
    extension: extension(f, m),
    factor: extensionFactor(m, P),
    stops: extensionStops(m, P),
    takesIn: m === 0 ? null : { width: format.image.short / m, height: format.image.long / m },
    covers: known ? coversFrom !== null && m >= coversFrom - 1e-9 : null,
  }));
}

const feltOn = ({ felt, feltWidth, bands, front, length, outside }: FeltedBox) => ({
  free: felt,
  width: feltWidth,
  bands: bands.map((z) => z - front),
  boxLength: length,
  boxSide: outside,
});

type FeltedBox = Pick<
  Planned['camera']['objects']['rearBox'],
  'felt' | 'feltWidth' | 'bands' | 'front' | 'length' | 'outside'
>;

/** @returns what is cut by hand, and where */
export function templatesOf({ design, camera, build }: Planned): TemplatesGiven {
  const { back, middleBox, rearBox, rearStandard, tailboard } = camera.objects;
  const flat = (id: string) => {
    const part = build.parts.find((one) => one.id === id);
    if (part?.kind !== 'flat') throw new Error(`${id} is no part that is cut`);
    return part;
  };
  const plate = flat('B1');
  const [standing] = plate.placements;
  if (standing === undefined) throw new Error('the back stands nowhere');
  return {
    bought: build.parts.flatMap((part) =>
      part.kind === 'bought' ? [{ part, count: countOf(part.placements, build.setups) }] : [],
    ),
    cut: build.parts.flatMap((part) => (part.kind === 'flat' ? [part.id] : [])),
    glass: { frosted: design.groundGlass.frosted },
    fenceLayers: back.openFence.layers,
    felt: feltOn(rearBox),
    ...(middleBox ? { middleFelt: feltOn(middleBox) } : {}),
    well: {
      plate: placedLoop(plate.outline, standing.matrix),
      opening: back.opening,
      width: back.holderWidth + 2 * back.wellPlay,
      closed: back.closedExtent + back.wellPlay,
      open: back.openExtent + back.wellPlay,
      play: back.wellPlay,
      fenceHeight: design.plywood.thickness,
      openFenceHeight: back.openFence.height,
      pins: back.pins,
      pinProud: PIN_PROUD,
      pinPlay: PIN_PLAY,
    },
    holders: design.holders.map(({ name, filmDepth }, i) => ({
      id: `holder-${i + 1}`,
      name,
      filmDepth,
      onSpacer: camera.objects.spacers.some(({ spacer }) => spacer.holder === name && spacer.under === 'holder'),
    })),
    tripod: {
      thread: tailboard.thread.name,
      doubler: flat('T4'),
      fromFront: tailboard.tripod - tailboard.start,
      toKnob: rearStandard.bolt - rearStandard.knob.diameter / 2 - tailboard.tripod,
      board: { width: tailboard.width, length: tailboard.length },
    },
  };
}

/** As it stands, seen from behind. */
const placedLoop = (loop: ClosedPath, matrix: Matrix4): ClosedPath =>
  polygon(
    flatten(loop).map((point): [number, number] => {
      const { x, y } = apply(matrix, { ...point, z: 0 });
      return [x, y];
    }),
  );
