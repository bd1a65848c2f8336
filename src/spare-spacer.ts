import type { Build } from './assembly/build.js';
import { ROUNDING } from './assembly/limit.js';
import { placedParts } from './assembly/placed-parts.js';
import { inWords } from './camera/cures.js';
import { effectiveDepth } from './camera/ground-glass-frame/size.js';
import { SOLE_BEHIND } from './camera/setting-out.js';
import { farReserve } from './camera/slide-rules.js';
import { spacerChecks } from './camera/spacer/checks.js';
import { spacerParts } from './camera/spacer/parts.js';
import type { PlacedSpacer } from './camera/spacer/size.js';
import { cutting, FIRE, LEAST_EFFORT } from './cutting.js';
import { type Design, filmStands } from './design/design.js';
import { publishedDepth } from './design/plausible-depths.js';
import { nominalThickness } from './design/plausible-sheet.js';
import { documentNumber } from './files/document-number.js';
import { layersText } from './files/plan-page.js';
import { type Lamination, laminate } from './joinery/lamination.js';
import type { Finding } from './model/finding.js';
import type { OutputFile } from './model/output-file.js';
import type { Part } from './model/part.js';
import type { PlanDocument, PlanSpacer } from './model/plan.js';
import { inOrder, type Planned, planCamera, planOf } from './pipeline.js';
import { remnantFiles, sheetFiles, textFile } from './sheet-files.js';
import type { LayOut } from './sheets/lay-out.js';
import type { SheetRemnant } from './sheets/stock.js';
import { besideRemnants, ofThickness, onLeastSheet, READING, remnantsRefused, sheetsFor } from './spare-sheets.js';
import { magnification, mm, tenth } from './units/print.js';

/** A holder of the design by its name, or with `filmDepth` (mm, effective) one that the design does not know. */
export interface SpacerWanted {
  readonly name: string;
  readonly filmDepth?: number;
  /** Of the sheet that is at hand now, where it is not that of the camera. */
  readonly thickness?: number;
  /** Pieces at hand, of which the smallest that holds all plies is cut. */
  readonly remnants?: readonly SheetRemnant[];
}

export interface SpacerResult {
  readonly spacer: PlanSpacer;
  /** How far the holder's index line stands behind that of the first holder as it is engraved, signed. */
  readonly index: number;
  readonly files: readonly OutputFile[];
  readonly findings: readonly Finding[];
  readonly summary: readonly string[];
}

/**
 * One more spacer for a camera that exists: cut for its seat, pins and well. A holder that the design does not know is
 * taken to be as wide and as long as the widest that it knows, so that nothing of the camera changes.
 */
export function spacerAlone(design: Design, { name, filmDepth, remnants = [], ...wanted }: SpacerWanted): SpacerResult {
  const thickness = wanted.thickness ?? thicknessOf(remnants, design);
  const own = planCamera(design);
  const planned = filmDepth === undefined ? own : planCamera(withHolder(design, name, filmDepth));
  const drawn = planned.camera.objects.spacers.filter((s) => s.spacer.holder === name);
  const placed = thickness === undefined ? drawn : drawn.map((s) => ofSheet(planned.design, s, thickness));
  const plan = planOf(planned);
  const planSpacer = plan.spacers.find((s) => s.holder === name);
  if (!planSpacer) throw new Error(`no spacer was planned for ${name}`);
  const spacer = thickness === undefined ? planSpacer : ofOtherSheet(planSpacer, placed);
  const parts = placed.flatMap((s) => spacerParts(s));
  const standing = withParts(
    planned.build,
    drawn.flatMap((s) => spacerParts(s)),
    parts,
  );
  const checked = [
    ...(wanted.thickness === undefined ? [] : nominalThickness(wanted.thickness)),
    ...(filmDepth === undefined ? [] : publishedDepth(name, filmDepth)),
    ...placed.flatMap((one) => spacerChecks.flatMap((check) => check(one, standing))),
    ...reachWith(own, spacer, name, filmDepth),
  ];
  const job = { ...planned, revision: own.revision };
  // hundreds of plies are not laid out for nobody
  const cuttable = checked.some(({ rule }) => rule === 'spacer-layers') ? [] : parts;
  const { cut, findings } =
    remnants.length > 0 && cuttable.some(({ kind }) => kind === 'flat')
      ? onLeastSheet(job, cuttable, { remnants, drawn: placed[0]?.wood.ply, effort: LEAST_EFFORT })
      : cutting(job, cuttable, { effort: LEAST_EFFORT, from: sheetsFor(design, cuttable) });
  const all = inOrder([...checked, ...findings]);
  const index = behindEngraved(plan, name);
  const files =
    placed.length === 0
      ? []
      : [
          textFile('spacer.json', `${JSON.stringify({ ...spacer, index }, null, 2)}\n`),
          ...(cut.sheets.length > 0 ? [...sheetFiles({ ...job, despite: [] }, cut), ...remnantFiles(job, cut)] : []),
        ];
  const summary = [
    ...spacerSummary(spacer, parts, planned.design),
    ...(isMended(spacer) ? [SCRIBE_LATER] : verdict(planned, name, index)),
    ...cutSummary(cut, remnants, placed[0]?.wood.ply.material),
  ];
  return { spacer, index, files, findings: all, summary };
}

/** Why the remnants that are named are nothing to cut a spacer from; null where they are. */
export function remnantsUnfit({ plywood }: Design, { remnants = [], ...wanted }: SpacerWanted): string | null {
  const [first] = remnants;
  if (first === undefined) return null;
  return remnantsRefused(remnants, { ...plywood, called: 'the spacer' }, wanted.thickness ?? first.thickness);
}

/** Of the remnants, where it is not that of the design. */
const thicknessOf = ([first]: readonly SheetRemnant[], { plywood }: Design): number | undefined =>
  first === undefined || Math.abs(first.thickness - plywood.thickness) <= READING ? undefined : first.thickness;

/** The same spacer of another sheet: as many plies of that as go in, and the shims chosen anew. */
function ofSheet({ plywood, shims }: Design, placed: PlacedSpacer, thickness: number): PlacedSpacer {
  const { spacer, wood } = placed;
  const { tolerance } = spacer;
  const stock = placed.extra.map((other) => other.thickness);
  const made = laminate({ thickness: spacer.thickness, ply: thickness, shims, within: tolerance / 2, stock });
  const { density } = wood.ply;
  const ply = { material: ofThickness(plywood, thickness), thickness, density };
  return { ...placed, spacer: { ...spacer, made, glued: null }, wood: { ...wood, ply } };
}

/** A new spacer, of which nothing is measured yet. */
function ofOtherSheet(
  { measured: _measured, add: _add, takeOut: _takeOut, ...spacer }: PlanSpacer,
  placed: readonly PlacedSpacer[],
): PlanSpacer {
  return placed.reduce<PlanSpacer>((_, { spacer: { made } }) => ({ ...spacer, ...figuresOf(made) }), spacer);
}

/** The camera with these parts in place of others. */
function withParts(build: Build, drawn: readonly Part[], parts: readonly Part[]): Build {
  const ids = new Set(drawn.map(({ id }) => id));
  const all = [...build.parts.filter(({ id }) => !ids.has(id)), ...parts];
  return { ...build, parts: all, placed: placedParts(all) };
}

const figuresOf = ({ plies, shims, remainder }: Lamination) => ({
  plies: plies.map(documentNumber),
  shims: shims.map(documentNumber),
  remainder: documentNumber(remainder),
});

/** The lines on the sole are engraved as drawn, whatever was measured of the first holder since; mm. */
function behindEngraved({ holders: [first], tailboard }: PlanDocument, name: string): number {
  const moved = first?.standingDepth === undefined ? 0 : first.standingDepth - first.effectiveDepth;
  return (tailboard.indexOffsets[name] ?? 0) + moved;
}

/** Where the index line is scribed. */
function verdict({ camera, design }: Planned, name: string, index: number): readonly string[] {
  const [first] = design.holders;
  const { settingOut: rod, focusScale } = camera;
  const line = focusScale.indexes.find(({ holder }) => holder === name);
  if (first === undefined || line === undefined || first.name === name) return [];
  const soleEnd = rod.closest.value - rod.stackBehindBoxes.value + SOLE_BEHIND;
  const sharing = focusScale.indexes.find((other) => other !== line && other.engraved === line.engraved);
  const drawn = line.z - (focusScale.indexes.find(({ holder }) => holder === first.name)?.z ?? line.z);
  const isCut = !design.holders.some((own) => own.name === name && own.later) && Math.abs(index - drawn) < SAME_LINE;
  const where =
    sharing !== undefined
      ? `Its index line is that of the ${sharing.holder}.`
      : `Its index line stands ${mm(documentNumber(Math.abs(index)))} ${index > 0 ? 'behind' : 'ahead of'} that of the ${first.name} on the sole: ${isCut ? `it is engraved there, with ${line.mark} beside it` : `scribe it there, and write ${line.mark} beside it`}.`;
  if (isCut) return [where];
  return line.z > soleEnd - WOOD_BEHIND_LINE
    ? [where, 'There the sole has ended: glue a strip behind it to scribe on.']
    : [where];
}

/** A scribed line is not told from one that stands nearer, mm; a choice of ours. */
const SAME_LINE = 0.05;
/** A line that is scribed nearer to the edge breaks off, mm; a choice of ours. */
const WOOD_BEHIND_LINE = 2;

function withHolder(design: Design, name: string, filmDepth: number): Design {
  const {
    make: _construction,
    spacer: _glued,
    measured: _read,
    ...widest
  } = design.holders.reduce((most, h) => (h.width > most.width ? h : most));
  const others = design.holders.filter((h) => h.name !== name);
  return { ...design, holders: [...others, { ...widest, name, filmDepth, locating: 'pins', later: true }] };
}

/** Whether the slide of the camera as it is takes the new holder to the farthest and to the nearest that it was asked for. */
function reachWith(
  { camera, design }: Planned,
  { holder }: PlanSpacer,
  name: string,
  filmDepth: number | undefined,
): readonly Finding[] {
  if (filmDepth === undefined) return [];
  const { optics, settingOut: rod } = camera;
  const f = design.lens.focalLength;
  const glass = camera.objects.groundGlassFrame.effectiveDepth;
  const depth = Math.max(filmDepth, glass);
  // one that is shallower than the glass stands on a spacer, and its film lies as deep as the glass all the same
  const shallower = (by: number): readonly string[] =>
    depth - by >= glass - ROUNDING ? [`use a holder that is ${mm(Math.ceil(by * 10 - ROUNDING) / 10)} shallower`] : [];
  const infinity = optics.filmAtInfinity - depth;
  const nearest = (rod.farthest.value + rod.reserve - infinity) / f;
  const farthest = (rod.closest.value - infinity) / f;
  const seatAtFarthest = infinity + f * design.focus.farthest;
  const past = seatAtFarthest - rod.closest.value;
  const lost: readonly Finding[] =
    past < -ROUNDING
      ? [
          {
            rule: 'reach-infinity',
            level: 'warning',
            value: rod.closest.value,
            limit: seatAtFarthest,
            unit: 'mm',
            message: `This camera cannot focus ${name} on ${magnification(design.focus.farthest)}: its slide ends ${mm(tenth(-past))} short. The farthest subject is at ${magnification(farthest, 'nearer')}.`,
            hint: inWords([...shallower(-past), 'file the stops if the boxes allow it']),
          },
        ]
      : farReserve(design, past, `With ${name} the slide runs`).map(({ finding, missing, cure }) => ({
          ...finding,
          hint: inWords([...shallower(missing), cure]),
        }));
  return nearest >= design.focus.nearest
    ? lost
    : [
        ...lost,
        {
          rule: 'reach-near',
          level: 'warning',
          value: nearest,
          limit: design.focus.nearest,
          unit: 'magnification',
          message: `With ${holder} the nearest focus of this camera is ${magnification(nearest)} instead of ${magnification(design.focus.nearest)}.`,
        },
      ];
}

/** Whether shims are put to it, or taken out, before it is right: its film lies elsewhere then. */
const isMended = ({ add = [], takeOut = [] }: PlanSpacer): boolean => add.length + takeOut.length > 0;

const SCRIBE_LATER = 'Mend it, measure it again, and write that into the design: then ask here for its index line.';

/** Of a holder that is drawn without a spacer. */
function noSpacer({ holder, tolerance }: PlanSpacer, { groundGlass, holders }: Design): string {
  const own = holders.find(({ name }) => name === holder);
  const glass = effectiveDepth({ ...groundGlass, depth: groundGlass.measured ?? groundGlass.depth });
  const behind = own === undefined ? 0 : glass - filmStands(own, groundGlass);
  return Math.abs(behind) <= tolerance
    ? `${holder} needs no spacer: its film lies as deep as the ground glass.`
    : `${holder} is drawn without a spacer, and as it was measured the glass stands ${mm(documentNumber(Math.abs(behind)))} ${behind > 0 ? 'behind' : 'ahead of'} its film: tailboard check says how the frame is mended.`;
}

function spacerSummary(spacer: PlanSpacer, parts: readonly Part[], design: Design): readonly string[] {
  const { holder, thickness, under, tolerance, plies } = spacer;
  if (under === 'none') return [noSpacer(spacer, design)];
  const pins = parts.filter((part) => part.kind === 'bought' && part.shape.form === 'cylinder').length;
  return [
    `${holder}: ${mm(thickness)} under the ${under === 'glass' ? 'ground glass' : 'holder'}: ${layersText(spacer)}.`,
    `The register may be out by ${mm(tolerance)}. ${
      plies.length > 0
        ? 'Glue the plies first, measure, then choose the shims: glue lines add up.'
        : 'No ply goes in: measure the shims before they do.'
    }`,
    ...(pins > 0
      ? ['The ply with four small holes goes on last; its two own pins stand towards what lies on it.']
      : []),
  ];
}

function cutSummary(
  { sheets }: LayOut,
  named: readonly SheetRemnant[],
  material: string | undefined,
): readonly string[] {
  const count = (noun: string, all: LayOut['sheets']) =>
    all.length === 0 ? [] : [`${all.length} ${noun}${all.length === 1 ? '' : 's'}`];
  const [pieces, whole] = [sheets.filter(({ remnant }) => remnant), sheets.filter(({ remnant }) => !remnant)];
  // a ply of other stock was never to lie on them
  const ofPly = sheets.filter((sheet) => sheet.material === material);
  return [
    ...(named.length > 0 && ofPly.length === 0
      ? ['The remnants that were named stay whole: no ply is cut from them.']
      : []),
    ...besideRemnants(named, ofPly),
    ...(sheets.length > 0
      ? [`${[...count('remnant', pieces), ...count('sheet', whole)].join(' and ')} to cut.`, FIRE]
      : []),
  ];
}
