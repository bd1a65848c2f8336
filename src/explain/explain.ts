import { type Figure, type Formula, formula, keyed, type Origin, type Reason, told } from '../camera/figure.js';
import { givenFigures } from '../camera/given-figures.js';
import { isDefaulted } from '../design/defaulted.js';
import type { Design } from '../design/design.js';
import { revisionOf } from '../design/revision.js';
import { type Variable, variablesOf } from '../design/variables.js';
import type { ExplainedClaim, ExplainedInput, Explanation, FigureList, KeyText } from '../model/explanation.js';
import { formatNamed } from '../standards/formats.js';
import { findFigure } from './find-figure.js';
import { formulaText } from './formula-text.js';
import { type Entry, entriesOf } from './plan-tree.js';
import { whatMoves } from './what-moves.js';

export type Explained =
  | { readonly kind: 'explanation'; readonly explanation: Explanation }
  | { readonly kind: 'list'; readonly list: FigureList }
  | { readonly kind: 'unknown'; readonly message: string };

/**
 * How a figure came about, from where it is reckoned; without a name the list of all figures, parts left out.
 *
 * @param text of the design file that `design` was read from
 */
export function explain(text: string, design: Design, asked?: string): Explained {
  const entries = entriesOf(design);
  if (asked === undefined)
    return listOf(
      design,
      entries.filter(({ ofPart }) => !ofPart),
    );
  const found = findFigure(asked, entries, design.holders);
  if (found.kind === 'none') return { kind: 'unknown', message: found.message };
  if (found.kind === 'group') return listOf(design, found.entries);
  const { entry } = found;
  const context = contextOf(text, design, entries);
  const { value } = entry.figure;
  const moved = value === null ? { changes: [], otherChanges: 0 } : whatMoves(context.variables, entry.path, value);
  return { kind: 'explanation', explanation: { ...cameAbout(entry, context), ...moved } };
}

/** The same without what would change the figure, which takes many cameras to find out: `whatMoves` is asked for that. */
export function explainAtOnce(
  text: string,
  design: Design,
  figure: string,
): Omit<Explanation, 'changes' | 'otherChanges'> | null {
  const entries = entriesOf(design);
  const entry = entries.find(({ path }) => path === figure);
  return entry ? cameAbout(entry, contextOf(text, design, entries)) : null;
}

/** What would change a figure of the plan. */
export function figureMoves(
  text: string,
  design: Design,
  figure: string,
): Pick<Explanation, 'changes' | 'otherChanges'> | null {
  const value = entriesOf(design).find(({ path }) => path === figure)?.figure.value;
  return typeof value === 'number' ? whatMoves(variablesOf(text, design.stock), figure, value) : null;
}

const listOf = (design: Design, entries: readonly Entry[]): Explained => ({
  kind: 'list',
  list: {
    schema: 1,
    name: design.name,
    revision: revisionOf(design),
    figures: entries.map(({ path, figure, word }) => ({
      figure: path,
      what: word ? word.what : figure.what,
      value: word ? word.value : figure.value,
      unit: word || figure.value === null ? '' : figure.unit,
    })),
  },
});

/** What explanations look things up in. */
export interface Context {
  readonly design: Design;
  readonly variables: readonly Variable[];
  /** Where each figure stands in the plan; one that stands there twice, at its first place. */
  readonly paths: ReadonlyMap<object, string>;
}

export const contextOf = (text: string, design: Design, entries: readonly Entry[]): Context => ({
  design,
  variables: variablesOf(text, design.stock),
  paths: new Map([...entries].reverse().flatMap(({ figure, path, word }) => (word ? [] : [[figure, path]]))),
});

/** All of an explanation but what would change the figure, which takes many cameras to find out. */
export function cameAbout(
  { path, figure, word }: Entry,
  context: Context,
): Omit<Explanation, 'changes' | 'otherChanges'> {
  const { design } = context;
  const head = {
    schema: 1,
    name: design.name,
    revision: revisionOf(design),
    figure: path,
    what: word ? word.what : figure.what,
    symbol: figure.symbol,
  } as const;
  if (figure.value === null)
    return { ...head, ...NO_ORIGIN, value: null, unit: '', decidedBy: null, because: figure.because, source: '' };
  return {
    ...head,
    value: word ? word.value : figure.value,
    unit: figure.unit,
    decidedBy: word ? figure.value : null,
    because: word ? word.because : null,
    ...originText(figure, context),
  };
}

const NO_ORIGIN = { formula: null, key: null, inputs: [], governs: null, behind: [] } as const;

type OriginText = Pick<Explanation, 'formula' | 'key' | 'inputs' | 'governs' | 'behind' | 'source'>;

function originText(figure: Figure, context: Context): OriginText {
  const { from } = figure;
  switch (from.kind) {
    case 'key': {
      const distance = from.path === NEAREST ? nearestDistance(context) : null;
      if (distance) return originText(fromDistance(figure, distance, context), context);
      return { ...NO_ORIGIN, key: keyText(from.path, context), source: keySource(from.path, context) };
    }
    case 'constant':
      return { ...NO_ORIGIN, source: from.source };
    case 'measured':
      return { ...NO_ORIGIN, source: from.how };
    case 'formula':
      return { ...NO_ORIGIN, ...reckoning(from.formula(), context), source: from.source };
    case 'claims': {
      const [first, ...behind] = inOrder(from);
      if (first === undefined) return { ...NO_ORIGIN, source: '' };
      return {
        ...NO_ORIGIN,
        ...reckoning(first.formula, context),
        governs: first.because,
        behind: behind.map((claim) => behindIt(claim, first, context)),
        source: first.source,
      };
    }
  }
}

const NEAREST = 'focus.nearest';

function nearestDistance({ variables }: Context): Figure | null {
  const written = variables.find(({ path, unit }) => path === NEAREST && unit === 'mm');
  return written ? keyed('u', 'nearest subject, from the front principal plane', NEAREST, written.value) : null;
}

/** The magnification that a distance was turned into when the design was read. */
const fromDistance = ({ symbol, what, value }: Figure, u: Figure, { design }: Context): Figure => {
  const { focalLength } = givenFigures(design);
  return told(symbol, what, value, () => formula`${focalLength} / (${u} - ${focalLength})`, {
    unit: 'magnification',
    source: 'thin lens between its principal planes: a textbook of physics',
  });
};

/** The governing claim first; of equals the first one named, as in `widest`. */
const inOrder = ({ by, claims }: Extract<Origin, { kind: 'claims' }>): readonly Reason[] =>
  [...claims()].sort((a, b) => (by === 'widest' ? b.value - a.value : a.value - b.value));

const behindIt = (
  { because, value, formula: by, source }: Reason,
  first: Reason,
  context: Context,
): ExplainedClaim => ({
  because,
  value,
  distance: Math.abs(first.value - value),
  ...reckoning(by, context),
  source,
});

const reckoning = (by: Formula, context: Context) => ({ formula: formulaText(by), inputs: inputsOf(by, context) });

/** Each input once, in the order of the formula. */
const inputsOf = ({ inputs }: Formula, context: Context): readonly ExplainedInput[] =>
  [...new Set(inputs)].map((input) => inputText(input, context));

function inputText(figure: Figure, context: Context): ExplainedInput {
  const { symbol, value, unit, what, from } = figure;
  const known = context.paths.get(figure) ?? null;
  const head = { symbol, value, unit, what };
  const none = { key: null, figure: null, formula: null, governs: null, next: null, inputs: [], source: null };
  if (from.kind === 'key') return { ...head, ...none, key: keyText(from.path, context) };
  // a figure of the plan is explained when it is asked for
  if (known !== null) return { ...head, ...none, figure: known };
  const { formula: by, governs, behind, inputs, source } = originText(figure, context);
  const [next = null] = behind;
  const own = { ...head, ...none, governs, next: next && { because: next.because, distance: next.distance }, source };
  // a claim that is one measured number says no more than its value
  return isMeasured(figure) ? own : { ...own, formula: by, inputs };
}

/** A format may be given by its name, and then the table of formats has its image. */
function keyText(path: string, { design }: Context): KeyText {
  if (path !== 'format') return { path, typed: !isDefaulted(design, path), source: null };
  const known = formatNamed(design.format.name);
  return known
    ? { path, typed: true, source: `${known.name}: ${known.image.source}` }
    : { path: 'format.image', typed: !isDefaulted(design, 'format.image'), source: null };
}

function isMeasured({ from }: Figure): boolean {
  const first = from.kind === 'claims' ? inOrder(from)[0]?.formula : undefined;
  return first?.expression.tokens.length === 1 && first.inputs[0]?.from.kind === 'measured';
}

const keySource = (path: string, context: Context): string => {
  const { typed, source } = keyText(path, context);
  return source ?? (typed ? 'the design file' : 'a default: the design file does not give it');
};
