import { explain as explainFigure, explainPage, explanationJson, figureList, figureListJson } from '../index.js';
import { readDesignAndText } from './read-design-file.js';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';

/** Prints how a figure of the plan came about; without a figure, or with a group of them, the list. */
export async function explain(
  file: string,
  figure: string | undefined,
  { json = false }: { readonly json?: boolean },
  terminal: Terminal,
): Promise<number> {
  const { design, text } = readDesignAndText(file);
  const explained = explainFigure(text, design, figure);
  if (explained.kind === 'unknown') throw new Stop(EXIT.wrongCall, explained.message);
  if (explained.kind === 'list') {
    const { list } = explained;
    await terminal.out(json ? figureListJson(list) : figureList(list, terminal));
  } else {
    const { explanation } = explained;
    await terminal.out(json ? explanationJson(explanation) : explainPage(explanation, terminal));
  }
  return EXIT.done;
}
