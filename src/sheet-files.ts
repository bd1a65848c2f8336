import type { Design } from './design/design.js';
import { sheetDxf } from './files/dxf.js';
import { layoutJson } from './files/layout-json.js';
import { remnantJson } from './files/remnant-json.js';
import { laserCaution, sheetSvg, sheetTitle } from './files/svg.js';
import type { OutputFile } from './model/output-file.js';
import type { LayOut } from './sheets/lay-out.js';
import { leftOver } from './sheets/remnant.js';

/** What the titles of sheets are made of. */
export interface Titled {
  readonly design: Design;
  readonly revision: string;
}

/** Each sheet for the laser, in both forms, and what lies where. */
export function sheetFiles(
  { design, revision, despite }: Titled & { readonly despite: readonly string[] },
  { sheets }: Pick<LayOut, 'sheets'>,
): readonly OutputFile[] {
  const { name, laser } = design;
  const of = sheets.length;
  return [
    ...sheets.flatMap((sheet) => [
      textFile(
        `sheets/${sheet.name}.svg`,
        sheetSvg(sheet, {
          title: sheetTitle({ name, revision, of, despite }, sheet),
          description: laserCaution,
          palette: laser.palette,
        }),
      ),
      textFile(`sheets/${sheet.name}.dxf`, sheetDxf(sheet)),
    ]),
    textFile('sheets/layout.json', layoutJson(sheets, laser)),
  ];
}

/** What is left of the sheets and worth keeping, each piece in a file that the stock of a later design can name. */
export const remnantFiles = ({ design, revision }: Titled, { sheets }: LayOut): readonly OutputFile[] =>
  sheets.flatMap((sheet) =>
    leftOver(sheet).map((left) =>
      textFile(
        `remnants/${left.name}.json`,
        remnantJson(left, { from: `${design.name}, revision ${revision}, ${sheet.name}` }),
      ),
    ),
  );

const encoder = new TextEncoder();
export const textFile = (path: string, content: string): OutputFile => ({ path, bytes: encoder.encode(content) });
