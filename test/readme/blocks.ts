import { compareCameras } from '../../src/compare/compare.js';
import { recordOfDesign } from '../../src/compare-cameras.js';
import { designJsonSchema } from '../../src/design/json-schema.js';
import { keyTable } from '../../src/design/key-table.js';
import { comparePage } from '../../src/files/compare-page.js';
import { benchJsonSchema } from '../../src/forms/bench-readings.js';
import { pricesJsonSchema } from '../../src/forms/price-file.js';
import { sittingLogJsonSchema } from '../../src/forms/read-sitting-log.js';
import { planDesign, planPage } from '../../src/index.js';
import { formats } from '../../src/standards/formats.js';
import { plainNumber } from '../../src/units/print.js';
import { keptDesign, secondLens } from '../designs/kept-design.js';

/** What README.md shows of the program itself, between `<!-- name -->` and `<!-- /name -->`. */
const blocks: Readonly<Record<string, () => string>> = {
  plan: planExcerpt,
  'second lens': secondLensExcerpt,
  formats: formatTable,
  keys: () => keyRows(designJsonSchema()),
  'keys bench': () => keyRows(benchJsonSchema()),
  'keys log': () => keyRows(sittingLogJsonSchema()),
  'keys prices': () => keyRows(pricesJsonSchema()),
};

/** The page with each block written anew. */
export const withBlocks = (page: string): string =>
  Object.entries(blocks).reduce((text, [name, write]) => {
    const open = `<!-- ${name} -->\n`;
    const close = `<!-- /${name} -->`;
    const from = text.indexOf(open);
    const to = text.indexOf(close);
    if (from < 0 || to < from) throw new Error(`the page has no place for ${name}`);
    return `${text.slice(0, from + open.length)}\n${write()}\n${text.slice(to)}`;
  }, page);

const SHOWN = [/^Heron/, /^Lens/, /^Focus/, /^Boxes/, /^Ground glass/, /^Findings/];

const plain = (text: string) => text;
const page = { width: 100, colour: { heading: plain, faint: plain, error: plain, warning: plain, note: plain } };

/** What becomes of Teal with another lens, its figures left out. */
function secondLensExcerpt(): string {
  const cameras = { before: recordOfDesign(keptDesign('teal')), after: recordOfDesign(secondLens()) };
  const [title, ...sections] = comparePage(compareCameras(cameras.before, cameras.after), cameras, page)
    .trimEnd()
    .split('\n\n');
  const shown = [title, ...sections.map((section) => (section.startsWith('Figures') ? '…' : section))];
  return `\`\`\`\n${shown.join('\n\n')}\n\`\`\`\n`;
}

/** Some sections of the plan of Heron, an ellipsis where others stand. */
function planExcerpt(): string {
  const sections = planPage(planDesign(keptDesign('heron')).plan, page)
    .trimEnd()
    .split('\n\n');
  const shown = sections.map((section) => (SHOWN.some((start) => start.test(section)) ? section : '…'));
  const once = shown.filter((section, i) => section !== '…' || shown[i - 1] !== '…');
  return `\`\`\`\n${once.join('\n\n')}\n\`\`\`\n`;
}

function formatTable(): string {
  const size = ([width, height]: readonly [number, number]) => `${plainNumber(width, 2)} × ${plainNumber(height, 2)}`;
  return rows(
    ['`format`', 'what it is', 'nominal, mm', 'image, mm'],
    formats.map(({ name, title, nominal, image }) => [code(name), title, size(nominal.value), size(image.value)]),
  );
}

function keyRows(schema: Readonly<Record<string, unknown>>): string {
  return rows(
    ['key', 'what it says', 'such as', 'where it is left out'],
    keyTable(schema)
      .filter(isOwn)
      .map(({ path, description, example, whenAbsent, required, keys }) => [
        keys.length > 0 ? `**${code(path)}**` : code(path),
        description,
        keys.length > 0 ? '' : code(example),
        required ? 'must be given' : (whenAbsent ?? 'none'),
      ]),
  );
}

/** Lens and focus of a camera that stands have the keys that are listed once already. */
const isOwn = ({ path }: { readonly path: string }): boolean => !/^builtFor\.(lens|focus)\./.test(path);

const code = (text: string): string => `\`${text}\``;

const rows = (head: readonly string[], body: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...body]
    .map((cells) => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |\n`)
    .join('');
