import type { Build } from './assembly/build.js';
import { countOf } from './assembly/setups.js';
import { workbench } from './assembly/workbench.js';
import { bookPages } from './book/book.js';
import type { BookGiven, BookStep, Counted, StandingCamera, StepPart, StepSince } from './book/given.js';
import { chaptersAround } from './book-use.js';
import { stepsOf } from './camera/objects.js';
import { withoutIndexLine } from './compare/lines-kept.js';
import { newHardware } from './compare/new-hardware.js';
import { stacksAgain } from './compare/stacks-again.js';
import { stepsAgain } from './compare/steps-again.js';
import { type CameraDrawings, drawCamera } from './drawings/draw-camera.js';
import type { DrawingGiven } from './drawings/given.js';
import { markOf } from './drawings/numbers.js';
import { compareWords } from './files/compare-page.js';
import { pageSvg } from './files/page-svg.js';
import type { Kernel } from './geometry/kernel.js';
import type { Move } from './model/assembly-move.js';
import { type Act, type NumberedStep, names, stepsOfCamera } from './model/assembly-steps.js';
import type { BuiltCamera } from './model/built-camera.js';
import type { CompareDocument } from './model/compare.js';
import type { OutputFile } from './model/output-file.js';
import type { Drawing, Page } from './model/page.js';
import type { Part } from './model/part.js';
import type { PlanDocument } from './model/plan.js';
import type { ProofDocument } from './model/proof.js';
import type { Planned } from './pipeline.js';
import type { Sheet } from './sheets/sheet.js';

/** Writes pages as one document, its letters in it. */
export type WriteDocument = (
  pages: readonly Page[],
  about: { readonly title: string; readonly subject: string },
) => Uint8Array;

/** The largest that a drawing of the book may be: on either paper, with its title and the foot of the page. */
const ROOM = { width: 174, height: 225 } as const;

/** @param onDrawn is told of each step that is drawn, as a share of all of them */
export const drawBuild = (
  from: Pick<DrawingGiven, 'build' | 'plan'> & { readonly moves: readonly Move[] },
  kernel: Kernel,
  onDrawn?: (share: number) => void,
): CameraDrawings => kernel.stage((bench) => drawCamera({ ...from, on: workbench(bench), room: ROOM }, onDrawn));

export interface BookFrom {
  readonly planned: Planned;
  /** With its parts engraved. */
  readonly build: Build;
  readonly plan: PlanDocument;
  readonly sheets: readonly Sheet[];
  readonly bare: readonly string[];
  readonly proof: ProofDocument;
  readonly drawings: CameraDrawings;
  /** The camera that stands already, and what is made for it; null where the whole camera is. */
  readonly since: SinceFrom | null;
}

interface SinceFrom {
  readonly before: BuiltCamera;
  readonly after: BuiltCamera;
  readonly changes: CompareDocument;
}

/** The drawings, each a file, and the book that has them all. */
export function bookFiles(from: BookFrom, writeDocument: WriteDocument): readonly OutputFile[] {
  const { planned, drawings } = from;
  const { design, revision } = planned;
  const encoder = new TextEncoder();
  const title = `${design.name}, revision ${revision}: build book`;
  const subject = `How the camera ${design.name} is built from its cut parts, and used.`;
  return [
    ...[drawings.cover, ...wholeOf(drawings), ...drawings.pouring, ...drawings.steps.map(({ drawing }) => drawing)].map(
      (drawing) => ({
        path: `drawings/${drawing.name}.svg`,
        bytes: encoder.encode(pageSvg(drawing)),
      }),
    ),
    { path: 'book.pdf', bytes: writeDocument(bookPages(givenFrom(from), design.book.paper), { title, subject }) },
  ];
}

/** What shows the whole camera, in the order in which it is looked at. */
const wholeOf = ({ sections, exploded, elevations, lightTrap }: CameraDrawings): readonly Drawing[] => [
  ...sections,
  ...exploded,
  ...elevations,
  lightTrap,
];

function givenFrom({ planned, build, plan, sheets, bare, proof, drawings, since: from }: BookFrom): BookGiven {
  const { design } = planned;
  const parts = build.parts.map((part): Counted => ({ part, count: countOf(part.placements, build.setups) }));
  const since = from === null ? null : standingFrom(from, { plan, parts });
  return {
    plan,
    since,
    lens: design.lens.name,
    format: design.format.name,
    image: design.format.image,
    parts,
    sheets,
    bare,
    steps: bookSteps(planned, parts, { drawings: drawings.steps, from }),
    cover: drawings.cover,
    drawings: wholeOf(drawings),
    ...chaptersAround({ planned, plan, proof, since, pouring: drawings.pouring }),
  };
}

/** The ply of the sole that bears the index lines. */
const SOLE = 'R4U';

function standingFrom(
  { before, after, changes }: SinceFrom,
  { plan, parts }: Pick<BookGiven, 'plan' | 'parts'>,
): StandingCamera {
  const { name, revision, hardware: own } = before.plan;
  const { recut, kept } = compareWords(changes, { before, after });
  const withoutLine = withoutIndexLine(before.plan, after.plan);
  return {
    name,
    revision,
    recut: recut.rows,
    sawn: changes.sawn,
    kept,
    otherLines: changes.engraved.filter((id) => id !== SOLE || withoutLine === null),
    withoutLine: changes.engraved.includes(SOLE) ? (withoutLine ?? []) : [],
    hardware: own === undefined ? null : newHardware(own, plan.hardware),
    fast: parts.filter(({ part }) => isFastIn(part, changes.recut)),
  };
}

/** The lens is pressed into what holds it too, and comes out whole. */
const isFastIn = (part: Part, recut: readonly string[]): boolean =>
  part.kind === 'bought' &&
  part.role !== 'lens' &&
  part.joins.some(({ to, by }) => (by === 'glue' || by === 'press') && recut.includes(to));

function bookSteps(
  { camera }: Planned,
  parts: readonly Counted[],
  { drawings, from }: { readonly drawings: CameraDrawings['steps']; readonly from: SinceFrom | null },
): readonly BookStep[] {
  const words = stepsOf(camera.objects);
  const steps = stepsOfCamera(parts.map(({ part }) => part));
  const sinceOf =
    from === null
      ? () => null
      : stepsSince(
          steps.map((step) => ({
            ...step,
            says: words.flatMap(({ step: key, acts, checks = [] }) => (key === step.key ? [...acts, ...checks] : [])),
          })),
          parts,
          from,
        );
  return steps.map(({ key, number, title, acts }) => {
    const own = words.filter(({ step }) => step === key);
    const borrowed = own.flatMap(({ borrows = [] }) => borrows);
    return {
      number,
      title,
      words: own,
      parts: [
        ...acts.flatMap((act) => broughtBy(act, parts)),
        ...own.flatMap(({ fixings = [] }) => fixings.map((one): StepPart => ({ ids: [], id: null, ...one }))),
      ],
      borrowed: parts.filter(({ part: { id } }) => borrowed.includes(id)),
      drawing: drawings.find((drawn) => drawn.number === number)?.drawing ?? null,
      since: sinceOf({ key, number, acts }),
    };
  });
}

/** What each step is at a camera that stands. */
function stepsSince(
  steps: Parameters<typeof stepsAgain>[0],
  parts: readonly Counted[],
  { before, after, changes: { recut, sawn, engraved } }: SinceFrom,
): (step: Pick<NumberedStep, 'key' | 'number' | 'acts'>) => StepSince {
  const again = stepsAgain(
    steps,
    parts.map(({ part }) => part),
    recut.filter((id) => !sawn.includes(id)),
  );
  const { spacers, glassFrame } = stacksAgain(before.plan, after.plan);
  return ({ key, number, acts }) => {
    const { brings = [], meets = [] } = again.find((one) => one.number === number) ?? {};
    const stacks = key === 'spacers' ? spacers : key === 'glass-frame' ? glassFrame : [];
    return { brings, meets, stacks, otherLines: engraved.filter((id) => acts.some((act) => names(act, id))) };
  };
}

/** What is put in as one and was bought was bought as one: it is called after the largest of its pieces, as on the drawings. */
function broughtBy(act: Act, parts: readonly Counted[]): readonly StepPart[] {
  const own = parts.filter(({ part: { id } }) => names(act, id));
  const line = ({ part, count }: Counted): StepPart => ({
    ids: [part.id],
    count,
    id: part.kind === 'bought' ? null : part.id,
    name: part.name,
  });
  const [first] = own;
  const bought = own.every(({ part }) => part.kind === 'bought');
  if (first === undefined || !('asOne' in act) || !bought) return own.map(line);
  const largest = own.reduce((most, one) => (one.part.massKg > most.part.massKg ? one : most), first);
  return [{ ...line(largest), ids: own.map(({ part }) => part.id), name: markOf(largest.part) }];
}
