import { saveFile } from '../files.js';
import type { DesignText } from '../worker/questions.js';

/** Where a design is saved to. */
export interface Keeping {
  /**
   * @param design comes when what was just typed is written into it: it is saved where this one is kept, whatever is
   *   opened until then
   * @returns the file that now holds the design, or in words why none does
   */
  readonly save: (design: Promise<DesignText>) => Promise<{ readonly file: string } | { readonly why: string }>;
}

/** Without a program behind the page a design is saved where the browser saves what comes from a page. */
export const downloads: Keeping = {
  save: async (design) => {
    const { file, text } = await design;
    saveFile(file, text, 'application/yaml');
    return { file };
  },
};
