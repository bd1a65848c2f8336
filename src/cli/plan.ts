import { planDesign, planPage } from '../index.js';
import { readDesignFile } from './read-design-file.js';
import { EXIT } from './stop.js';
import type { Terminal } from './terminal.js';

/** Prints the camera's figures. Rules that are broken are told among them and do not fail the command. */
export async function plan(
  file: string,
  { json = false }: { readonly json?: boolean },
  terminal: Terminal,
): Promise<number> {
  const { plan: document } = planDesign(readDesignFile(file));
  await terminal.out(json ? `${JSON.stringify(document, null, 2)}\n` : planPage(document, terminal));
  return EXIT.done;
}
