import { boughtFor } from './book-use.js';
import type { WriteDocument } from './build-book.js';
import { cutting, FIRE } from './cutting.js';
import type { Design } from './design/design.js';
import { kitsJson } from './files/kits-json.js';
import { overviewSvg } from './files/overview.js';
import { sheetsPage } from './files/sheets-page.js';
import type { Kernel } from './geometry/kernel.js';
import { costOf } from './kits/cost.js';
import { hardwareFor } from './kits/hardware.js';
import { kitPages } from './kits/kits-pages.js';
import { inCuttingOrder, kitsOf } from './kits/packing-list.js';
import { kitsInWords } from './kits/run-folder.js';
import { comesWithLens } from './model/comes-with-lens.js';
import type { Finding } from './model/finding.js';
import type { KitAround, KitPrint, KitSheets, KitsDocument } from './model/kits.js';
import type { OutputFile } from './model/output-file.js';
import type { Part } from './model/part.js';
import type { Prices } from './model/prices.js';
import { inOrder, type Planned, planCamera, planOf } from './pipeline.js';
import { printFile, printFiles, printsOf } from './print-files.js';
import { prove, putTogether } from './proof/prove.js';
import { remnantFiles, sheetFiles, textFile } from './sheet-files.js';
import { cutMinutes, wholeMinutes } from './sheets/cut-time.js';
import { EFFORT } from './sheets/lay-out.js';
import type { Sheet } from './sheets/sheet.js';
import { paperSizes } from './standards/paper-sizes.js';
import { money } from './units/print.js';
import { type BuildOptions, brokenRules, despiteText, leakFiles, NOT_PROVEN, packing } from './workshop.js';

export interface KitRunOptions extends BuildOptions {
  readonly copies: number;
  /** Null where nobody says what things cost. */
  readonly prices: Prices | null;
}

export interface KitRunResult {
  readonly run: KitsDocument;
  readonly files: readonly OutputFile[];
  readonly findings: readonly Finding[];
  readonly summary: readonly string[];
}

/** Where no price file says another share: as its own default. */
export const NO_PRICES: Pick<Prices, 'spares' | 'bought'> = { spares: 10, bought: [] };

/**
 * Kits of one camera for a class: the camera is proven once, for the kits are alike; their parts are laid on sheets that
 * they share. What differs from one camera is written; the plan, the drawings and the book are those of the camera, as
 * `build` writes them without copies.
 */
export function buildKits(
  design: Design,
  kernel: Kernel,
  { copies, prices, despite, onProgress, lightOf, writeDocument, effort = EFFORT }: KitRunOptions,
): KitRunResult {
  const stage = (name: string, done: number) => onProgress({ stage: name, done });
  stage('sizing', 0);
  const planned = planCamera(design);
  const { build, bare, cut, pieces, findings } = cutting(planned, planned.parts, {
    effort,
    copies,
    onProgress: packing(({ stage: name, done }) => stage(name, 2 * done - 0.1)),
  });
  stage('modelling prints', 0.7);
  const prints = printsOf(build.parts, kernel);
  stage('putting it together', 0.75);
  const together = planned.drawable ? putTogether(design, planned.build, kernel) : null;
  stage('looking for light', 0.8);
  const proven =
    together === null
      ? { findings: [NOT_PROVEN], leaks: [] }
      : prove(design, planned.build, kernel, { together, ...(lightOf === undefined ? {} : { lightOf }) });
  stage('writing the papers', 0.95);
  const all = inOrder([...planned.findings, ...proven.findings, ...findings]);
  const waived = brokenRules(all).filter((rule) => despite.includes(rule));
  const minutesOf = (sheet: Sheet) => wholeMinutes(cutMinutes(sheet, design.laser));
  const sheets = inCuttingOrder(cut.sheets);
  const given = { planned, parts: build.parts, pieces, sheets, minutesOf, copies, prices };
  const run: KitsDocument = { ...runOf(given), findings: all, despite: waived };
  const called = { ...planned, design: { ...design, name: `${design.name}, ${kitsInWords(copies)}` } };
  const flatBare = bare.filter((id) => pieces.some(({ part }) => part.id === id));
  const files: readonly OutputFile[] = [
    textFile('kits.json', kitsJson(run)),
    ...kitsPdf({ run, sheets, minutesOf, bare: flatBare }, design.book.paper, writeDocument),
    ...sheetFiles({ ...called, despite: waived }, cut),
    ...remnantFiles(called, cut),
    textFile(
      'sheets/overview.svg',
      overviewSvg(cut.sheets, {
        title: [`${called.design.name}, revision ${planned.revision}`, ...despiteText(waived)].join('; '),
        pieces,
        offcuts: cut.offcuts,
      }),
    ),
    ...leakFiles(proven.leaks).map((file) => ({ ...file, path: `drawings/${file.path}` })),
    ...printFiles(prints),
  ];
  stage('done', 1);
  return {
    run,
    files,
    findings: all,
    summary: [
      `${called.design.name}, revision ${planned.revision}.`,
      ...sheetsPage(cut, (sheet) => cutMinutes(sheet, design.laser)),
      ...(effort === 0 && !sharesSheets(run) ? [EACH_ALONE] : []),
      ...costLines(run),
      'kits.pdf has a page for the class, what to buy, and a packing list for each box. The book is that of one camera: build it without copies.',
      FIRE,
      ...despiteText(waived).map((line) => `${line.charAt(0).toUpperCase()}${line.slice(1)}.`),
    ],
  };
}

/** Nobody looked for a layout in which kits share sheets: what was saved in time is paid in wood. */
const EACH_ALONE =
  'With effort 0 each kit lies on sheets of its own. Leave --effort out, and kits share sheets where that saves some.';

/** Whether pieces of two kits lie on one sheet; where there is one kit, nobody asks. */
const sharesSheets = ({ kits, copies }: KitsDocument): boolean =>
  copies === 1 || new Set(kits.flatMap(({ sheets }) => sheets)).size < kits.flatMap(({ sheets }) => sheets).length;

interface RunGiven {
  readonly planned: Planned;
  /** Engraved. */
  readonly parts: readonly Part[];
  /** Of one kit. */
  readonly pieces: Parameters<typeof kitsOf>[0];
  readonly sheets: readonly Sheet[];
  readonly minutesOf: (sheet: Sheet) => number;
  readonly copies: number;
  readonly prices: Prices | null;
}

function runOf({
  planned,
  parts,
  pieces,
  sheets,
  minutesOf,
  copies,
  prices,
}: RunGiven): Omit<KitsDocument, 'findings' | 'despite'> {
  // biome-ignore format: one line
  const { design, revision } = planned;
  const plan = planOf(planned);
  const needed = {
    copies,
    sheets: kindsOf(sheets),
    laser: {
      minutes: sheets.reduce((sum, sheet) => sum + minutesOf(sheet), 0),
      metres: sheets.reduce((sum, { cutLength }) => sum + cutLength, 0) / 1000,
    },
    prints: printsFor(plan.parts, parts, copies),
    hardware: hardwareFor(boughtFor(planned, plan), copies, prices ?? NO_PRICES),
    around: aroundOf(design, parts, copies),
  };
  return {
    schema: 1,
    name: design.name,
    revision,
    ...needed,
    cost: costOf(needed, prices),
    kits: kitsOf(pieces, copies, sheets),
  };
}

/** Remnants are each of a size of their own; they are counted as one kind of what is at hand. */
function kindsOf(sheets: readonly Sheet[]): readonly KitSheets[] {
  const kinds = new Map<string, KitSheets>();
  for (const { material, width, height, atHand } of sheets) {
    const key = `${material} ${width} ${height}`;
    const before = kinds.get(key) ?? { material, width, height, sheets: 0, atHand: 0, buy: 0 };
    const there = atHand === true ? 1 : 0;
    kinds.set(key, {
      ...before,
      sheets: before.sheets + 1,
      atHand: before.atHand + there,
      buy: before.buy + 1 - there,
    });
  }
  return [...kinds.values()];
}

/** What has no place in the camera, such as a funnel, is wanted once. */
function printsFor(
  listed: readonly { readonly id: string; readonly count: number }[],
  parts: readonly Part[],
  copies: number,
): readonly KitPrint[] {
  return parts.flatMap((part): readonly KitPrint[] => {
    if (part.kind !== 'printed') return [];
    const each = Math.max(1, listed.find(({ id }) => id === part.id)?.count ?? 1);
    const { id, name, material, massKg } = part;
    return [{ id, name, material, file: printFile(part), each, wanted: copies * each, mass: massKg }];
  });
}

/** The lens, and the holders that are not made with the camera. */
function aroundOf({ lens }: Design, parts: readonly Part[], copies: number): readonly KitAround[] {
  const holders = parts.flatMap((part) => (part.kind === 'bought' && part.role === 'holder' ? [part.name] : []));
  return [
    { name: lens.name, with: comesWithLens(parts), each: 1, wanted: copies },
    ...[...new Set(holders)].map((name) => ({ name, with: null, each: 1, wanted: copies })),
  ];
}

function kitsPdf(
  given: Parameters<typeof kitPages>[0],
  paper: keyof typeof paperSizes,
  writeDocument: WriteDocument,
): readonly OutputFile[] {
  const [width, height] = paperSizes[paper].value;
  const { name, revision } = given.run;
  const title = `${name}, revision ${revision}: ${kitsInWords(given.run.copies)}`;
  const subject = `What the class gets, what it costs, what to buy, and what goes into each box.`;
  return [{ path: 'kits.pdf', bytes: writeDocument(kitPages(given, { width, height }), { title, subject }) }];
}

function costLines({ cost, copies }: KitsDocument): readonly string[] {
  const { currency, total, perKit, notPriced, notUsed } = cost;
  if (currency === null) return ['Nothing is priced: give a price file with --prices.'];
  return [
    `Cost: ${money(total, currency)}${copies === 1 ? '' : ` for all, ${money(perKit, currency)} a kit`}.`,
    ...(notPriced.length === 0 ? [] : [`Not priced: ${notPriced.join('; ')}.`]),
    ...(notUsed.length === 0 ? [] : [`Priced, and not needed: ${notUsed.join('; ')}.`]),
  ];
}
