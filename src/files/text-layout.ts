/** Breaks a text into lines of at most `width` characters, between words where it can. */
export function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((w) => w !== '')) {
    let rest = word;
    if (line !== '' && line.length + 1 + rest.length <= width) {
      line += ` ${rest}`;
      continue;
    }
    if (line !== '') lines.push(line);
    while (rest.length > width) {
      lines.push(rest.slice(0, width));
      rest = rest.slice(width);
    }
    line = rest;
  }
  if (line !== '') lines.push(line);
  return lines;
}

export interface Column {
  readonly title: string;
  /** Words stand left, numbers right. */
  readonly align: 'left' | 'right';
  /** Its cells are names: they run over several lines only where nothing else can give way. */
  readonly names?: true;
}

export interface Table {
  readonly titles: readonly string[];
  /** The lines of each row. */
  readonly rows: readonly (readonly string[])[];
}

/** Blanks between two columns. */
export const GAP = 2;
/** A column of words narrower than this is no longer read: the table is then left wider than the page. */
const NARROWEST = 8;

/**
 * Columns are as wide as their widest cell; where they are too many for the page, the widest column of words gives way
 * and its cells run over several lines; then, before a word is broken, any other that holds more than one.
 */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): Table {
  const widths = columns.map(({ title }, i) => Math.max(title.length, ...rows.map((row) => (row[i] ?? '').length)));
  const room = width - GAP * (columns.length - 1);
  const unbroken = columns.map(({ title, names }, i) =>
    names ? (widths[i] ?? 0) : longestWord([title, ...rows.map((row) => row[i] ?? '')]),
  );
  const giveWay = ({ least, align }: GivesWay): void => {
    while (sum(widths) > room) {
      const widest = widestOf(columns, widths, { least, align });
      if (widest === null) break;
      widths[widest] = (widths[widest] ?? 0) - 1;
    }
  };
  const whole = unbroken.map((longest) => Math.max(longest, NARROWEST));
  giveWay({ least: whole, align: ['left'] });
  giveWay({ least: whole, align: ['left', 'right'] });
  giveWay({ least: columns.map(() => NARROWEST), align: ['left'] });
  const lines = (cells: readonly string[]): readonly string[] => {
    const wrapped = widths.map((w, i) => wrap(cells[i] ?? '', w));
    return Array.from({ length: Math.max(1, ...wrapped.map(({ length }) => length)) }, (_, k) =>
      columns
        .map(({ align }, i) => {
          const text = wrapped[i]?.[k] ?? '';
          return align === 'right' ? text.padStart(widths[i] ?? 0) : text.padEnd(widths[i] ?? 0);
        })
        .join(' '.repeat(GAP))
        .trimEnd(),
    );
  };
  return { titles: lines(columns.map(({ title }) => title)), rows: rows.map(lines) };
}

const sum = (widths: readonly number[]): number => widths.reduce((total, w) => total + w, 0);

const longestWord = (cells: readonly string[]): number =>
  Math.max(0, ...cells.flatMap((cell) => cell.split(/\s+/).map(({ length }) => length)));

interface GivesWay {
  /** Of each column, how narrow it may become. */
  readonly least: readonly number[];
  readonly align: readonly Column['align'][];
}

/** The column that can still give way, the widest of them; null where none can. */
function widestOf(columns: readonly Column[], widths: readonly number[], { least, align }: GivesWay): number | null {
  let widest: number | null = null;
  columns.forEach((column, i) => {
    const w = widths[i] ?? 0;
    if (align.includes(column.align) && w > (least[i] ?? 0) && w > (widest === null ? 0 : (widths[widest] ?? 0)))
      widest = i;
  });
  return widest;
}
