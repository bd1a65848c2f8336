import { plainReader, type Reader } from './reader.js';
import { designFile } from './source.js';
import { isComment, lexemesOf, lineStop, type Refusal } from './splice.js';
import type { Change } from './take-out.js';
import type { Written } from './trail.js';
import type { Outline } from './yaml.js';

/** What the designs that begin here have behind a figure that nobody has measured. */
const MARK = /\b(?:PLACEHOLDER|NOT MEASURED)\b/;

/**
 * The keys of a design whose figures nobody has measured: those with a comment behind them, on the same line, that says so.
 * What was only read from a file cannot be told from what was measured; the comment is all there is.
 */
export function madeUpIn(given: string, reader: Reader = plainReader): readonly string[] {
  const text = given.replace(/^\ufeff/, '');
  if (text.length > designFile.largest || !MARK.test(text)) return [];
  const outline = reader.outline({ file: '', text, kind: designFile });
  return 'value' in outline ? marked(text, outline).map(({ path }) => path) : [];
}

/** Takes the mark off a key, now that its figure is somebody's own: the comment goes, and the blanks before it. */
export function asMeasured({ text, outline }: Written, path: string): Change | Refusal {
  const all = marked(text, outline);
  const own = all.find((one) => one.path === path);
  if (own === undefined) return { splices: [] };
  const { at, end } = own;
  const alike = all.filter((one) => one.at === at).map((one) => one.path);
  if (alike.length > 1)
    return {
      what: `One comment says of several figures that they are made up: ${alike.join(', ')}.`,
      accepted: 'Take it away in the text when you have measured all of them.',
    };
  const from = text.slice(0, at).trimEnd().length;
  return { splices: [{ span: [from, end], text: '' }], gone: [at, end] };
}

/** Each marked key, with the span of its mark. */
function marked(text: string, outline: Outline) {
  const comments = lexemesOf(text)
    .filter((one) => isComment(one) && MARK.test(one.text))
    .map((one) => ({ at: one.at, end: one.at + one.text.trimEnd().length }));
  const found = [...outline.texts.keys()].flatMap((path) => {
    const span = outline.valueSpans.get(path);
    if (span === undefined) return [];
    const mark = comments.find(({ at }) => at >= span[1] && at <= lineStop(text, span[1]));
    // several readings are one figure
    return mark === undefined ? [] : [{ path: path.replace(/\[\d+\]$/, ''), ...mark }];
  });
  return found.filter(({ path }, index) => found.findIndex((one) => one.path === path) === index);
}
