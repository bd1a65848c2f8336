import type { Source } from './source.js';
import { type Parsed, parsed } from './splice.js';
import { type Outline, readYaml } from './yaml.js';

/** What makes something of a YAML text: the values and their places, and the tree of its nodes. */
export interface Reader {
  readonly outline: typeof readYaml;
  readonly tree: typeof parsed;
}

/** Reads each text as often as it is asked. */
export const plainReader: Reader = { outline: readYaml, tree: parsed };

/** As many texts as one change has: the one before it and the one after. */
const REMEMBERED = 2;

/** Remembers the last texts, for whoever asks several things of the same: reading is half of what a changed key takes. */
export function keepingReader(): Reader {
  const outlines = new Map<string, Outline>();
  const trees = new Map<string, Parsed>();
  return {
    outline: (source: Source) => {
      const key = `${source.kind.noun}\n${source.text}`;
      const known = outlines.get(key);
      if (known !== undefined) return known;
      const outline = readYaml(source);
      // problems name the file, which may be another one next time
      if ('value' in outline && outline.problems.length === 0) keep(outlines, key, outline);
      return outline;
    },
    tree: (text) => trees.get(text) ?? keep(trees, text, parsed(text)),
  };
}

function keep<T>(known: Map<string, T>, key: string, value: T): T {
  known.set(key, value);
  for (const oldest of [...known.keys()].slice(0, -REMEMBERED)) known.delete(oldest);
  return value;
}
