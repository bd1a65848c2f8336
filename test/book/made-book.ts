import type { Design } from '../../src/design/design.js';
import { pagePdf } from '../../src/files/pdf.js';
import { loadWorkshop, type OutputFile } from '../../src/index.js';
import type { Page } from '../../src/model/page.js';
import { planCamera } from '../../src/pipeline.js';
import { lightJoints } from '../../src/proof/light-joints.js';
import { sceneOf } from '../../src/proof/light-scene.js';
import { keptDesign } from '../designs/kept-design.js';
import { bookFonts } from '../files/read-pdf.js';

const { build } = await loadWorkshop();

export interface MadeBook {
  readonly pages: readonly Page[];
  readonly files: readonly OutputFile[];
  readonly pdf: Uint8Array;
}

/** A design built in a hurry: the first sheets that are found, and the dark taken for granted. */
export function madeBook(
  name: string,
  change: (design: Design) => Design = (design) => design,
  despite: readonly string[] = [],
): MadeBook {
  const design = change(keptDesign(name));
  let pages: readonly Page[] = [];
  const { files } = build(design, {
    despite,
    effort: 0,
    onProgress: () => {},
    lightOf: () => ({ findings: [], leaks: [], drawings: [], joints: lightJoints(sceneOf(planCamera(design).build)) }),
    writeDocument: (written, about) => {
      pages = written;
      return pagePdf(written, bookFonts, about);
    },
  });
  const pdf = files.find(({ path }) => path === 'book.pdf')?.bytes;
  if (pdf === undefined) throw new Error(`${name} has no book`);
  return { pages, files, pdf };
}

/** The bytes of a file of the build as text. */
export function textOf({ files }: MadeBook, path: string): string {
  const file = files.find((one) => one.path === path);
  if (file === undefined) throw new Error(`${path} was not written`);
  return new TextDecoder().decode(file.bytes);
}
