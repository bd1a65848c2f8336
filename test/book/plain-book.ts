import type { Build } from '../../src/assembly/build.js';
import { bookFiles } from '../../src/build-book.js';
import { compareCameras, piecesToCut } from '../../src/compare/compare.js';
import { recordOfDesign } from '../../src/compare-cameras.js';
import { cutting } from '../../src/cutting.js';
import type { Design } from '../../src/design/design.js';
import { partsJson } from '../../src/files/parts-json.js';
import { type NumberedStep, stepsOfCamera } from '../../src/model/assembly-steps.js';
import type { BuiltCamera } from '../../src/model/built-camera.js';
import type { OutputFile } from '../../src/model/output-file.js';
import type { Drawing, Mark, Page } from '../../src/model/page.js';
import type { PlanDocument } from '../../src/model/plan.js';
import { type Planned, planCamera, planOf } from '../../src/pipeline.js';
import { lightJoints } from '../../src/proof/light-joints.js';
import { sceneOf } from '../../src/proof/light-scene.js';
import { registerBudgets } from '../../src/proof/register.js';
import type { Sheet } from '../../src/sheets/sheet.js';

export interface PlainBook {
  readonly planned: Planned;
  readonly build: Build;
  readonly plan: PlanDocument;
  readonly sheets: readonly Sheet[];
  readonly pages: readonly Page[];
  readonly files: readonly OutputFile[];
  /** The same on that paper. */
  readonly on: (paper: Design['book']['paper']) => readonly Page[];
  readonly steps: readonly NumberedStep[];
  readonly parts: readonly { readonly id: string; readonly kind: string; readonly count: number }[];
}

/** In the place of a drawing: its name alone. */
const standIn = (name: string): Drawing => ({
  name,
  title: name,
  description: name,
  scale: null,
  width: 100,
  height: 20,
  marks: [
    {
      kind: 'words',
      at: { x: 2, y: 10 },
      text: `[${name}]`,
      size: 3.2,
      anchor: 'start',
      colour: '#000000',
    },
  ],
});

/** The names of what shows the whole camera. */
export const WHOLE = ['section-a', 'section-b', 'exploded', 'front', 'side', 'light-trap'] as const;

/** The book of a design with names in the place of its drawings, which takes a moment where the book takes many. */
export function plainBook(
  design: Design,
  { laidOut = true, since }: { readonly laidOut?: boolean; readonly since?: BuiltCamera } = {},
): PlainBook {
  const planned = planCamera(design);
  // to lay parts on sheets takes longer than all the rest
  const none = { build: planned.build, bare: [], cut: { sheets: [] } };
  const changes = since === undefined ? null : sinceOf(since, recordOfDesign(design));
  const { build, bare, cut } = laidOut
    ? cutting(planned, planned.parts, { effort: 0, ...(changes === null ? {} : { pieces: changes.pieces }) })
    : none;
  const plan = planOf(planned);
  const [first, second, exploded, front, side, lightTrap] = WHOLE.map(standIn) as [
    Drawing,
    Drawing,
    Drawing,
    Drawing,
    Drawing,
    Drawing,
  ];
  const proof = {
    pieces: 0,
    pairs: 0,
    setups: [],
    clearances: [],
    register: registerBudgets(design, planned.build),
    joints: lightJoints(sceneOf(planned.build)),
    assembly: [],
  };
  // given from the last to the first: the book goes by their numbers
  const steps = stepsOfCamera(planned.parts)
    .map(({ number, key }) => ({ number, drawing: standIn(`step ${key}`) }))
    .reverse();
  const drawings = {
    cover: standIn('cover'),
    sections: [first, second],
    pouring: [],
    exploded: [exploded],
    elevations: [front, side],
    lightTrap,
    steps,
  };
  const on = (paper: Design['book']['paper']) => {
    let pages: readonly Page[] = [];
    const printed = { ...planned, design: { ...design, book: { paper } } };
    const files = bookFiles(
      { planned: printed, build, plan, sheets: cut.sheets, bare, proof, drawings, since: changes },
      (written) => {
        pages = written;
        return new Uint8Array();
      },
    );
    return { pages, files };
  };
  const { parts } = JSON.parse(partsJson(build, planned.revision, new Map())) as Pick<PlainBook, 'parts'>;
  return {
    planned,
    build,
    plan,
    sheets: cut.sheets,
    steps: stepsOfCamera(planned.parts),
    ...on(design.book.paper),
    on: (paper) => on(paper).pages,
    parts,
  };
}

const sinceOf = (before: BuiltCamera, after: BuiltCamera) => ({
  before,
  after,
  changes: compareCameras(before, after),
  pieces: (id: string, count: number) => piecesToCut(before, after).get(id) ?? count,
});

type Words = Extract<Mark, { readonly kind: 'words' }>;

/** Without the foot: what stands below the last line of a page. */
export const wordsOn = ({ marks, height }: Page): readonly Words[] =>
  marks.filter((mark): mark is Words => mark.kind === 'words' && mark.at.y < height - 18);

/** All that is said on some pages, broken lines joined. */
export const saidOn = (pages: readonly Page[]): string =>
  pages
    .flatMap(wordsOn)
    .map(({ text }) => text)
    .join(' ');

/** A bookmark and the next one, of its level or above where the whole of a chapter is meant. */
function between(pages: readonly Page[], title: string, { whole }: { readonly whole: boolean }) {
  const marks = pages.flatMap(({ bookmarks = [] }, page) => bookmarks.map((mark) => ({ ...mark, page })));
  const at = marks.findIndex((mark) => mark.title === title);
  const own = marks[at];
  if (own === undefined) throw new Error(`no bookmark ${title}`);
  const next = marks.slice(at + 1).find(({ level }) => !whole || level <= own.level);
  return { own, next, pages: pages.slice(own.page, (next?.page ?? pages.length) + 1) };
}

/** The pages from the one with this bookmark to the one on which the next of its level or above stands. */
export const chapterPages = (pages: readonly Page[], title: string): readonly Page[] =>
  between(pages, title, { whole: true }).pages;

/** What is said from a title to the next one. */
export function saidUnder(pages: readonly Page[], title: string): string {
  const { next, pages: own } = between(pages, title, { whole: false });
  const all = saidOn(own);
  const from = all.indexOf(title);
  const to = next === undefined ? -1 : all.indexOf(next.title, from + title.length);
  return all.slice(from, to < 0 ? all.length : to);
}

/** Words on one base line of a page, from left to right. */
export function linesOn(page: Page): readonly (readonly Words[])[] {
  const lines = new Map<string, Words[]>();
  for (const word of wordsOn(page)) {
    const key = word.at.y.toFixed(2);
    lines.set(key, [...(lines.get(key) ?? []), word]);
  }
  return [...lines.values()].map((line) => [...line].sort((a, b) => a.at.x - b.at.x));
}
