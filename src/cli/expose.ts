import { loadSitting } from '../index.js';
import { readDesignFile } from './read-design-file.js';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';

/** What the flags of a sitting give: texts by the keys of the design's `sitting`. */
export interface ExposeOptions {
  readonly json?: boolean;
  /** Folder of the card; `true` where it is the usual one. */
  readonly card?: string | true;
  readonly [key: string]: string | readonly string[] | boolean | undefined;
}

/** The setting for one sitting: what the design says of it, and what differs today. */
export async function expose(
  file: string,
  { json = false, card, ...flags }: ExposeOptions,
  terminal: Terminal,
): Promise<number> {
  const design = readDesignFile(file);
  if (card !== undefined) {
    if (json) throw new Stop(EXIT.wrongCall, '--card writes files and --json prints one setting. Give one of them.');
    const { writeCard } = await import('./expose-card.js');
    return writeCard(design, card, typed(flags), terminal);
  }
  const sittings = await loadSitting();
  const outcome = sittings.expose(design, typed(flags));
  if ('refused' in outcome) throw new Stop(EXIT.wrongCall, outcome.refused);
  const { sitting } = outcome;
  await terminal.out(json ? sittings.exposureJson(sitting) : sittings.exposurePage(design.name, sitting, terminal));
  return EXIT.done;
}

/** What was typed for the keys of the design's `sitting`, and for those of a log. */
export function typed(
  flags: Omit<ExposeOptions, 'json' | 'card'>,
): Readonly<Record<string, string | readonly string[]>> {
  const texts: Record<string, string | readonly string[]> = {};
  for (const [key, value] of Object.entries(flags))
    if (typeof value === 'string' || Array.isArray(value)) texts[key] = value;
  return texts;
}
