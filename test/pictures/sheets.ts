/**
 * Draws what leaves the workshop: every sheet of a build with its overview, the drawings, and every print from above
 * and from below:
 *
 *     npx tsx test/pictures/sheets.ts <output folder> <picture folder> [--stroke <mm>] [--width <pixels>]
 *
 * Cutting lines are too fine to be seen on a whole sheet; --stroke says how wide they are drawn.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import { Resvg } from '@resvg/resvg-js';
import { draw, type Vector } from './draw.js';
import { png } from './png.js';
import { readPrint } from './workpieces.js';

/** Prints are drawn in one tone, whatever they are made of. */
const PRINTED = [232, 158, 84] as const;

const { values: asked, positionals } = parseArgs({
  allowPositionals: true,
  options: { stroke: { type: 'string', default: '0.6' }, width: { type: 'string', default: '1600' } },
});
const [output, pictures] = positionals;
if (output === undefined || pictures === undefined) {
  throw new Error('two folders are wanted: a build, and one to draw into');
}

mkdirSync(pictures, { recursive: true });
for (const path of files('sheets', '.svg')) {
  const svg = readFileSync(path, 'utf8');
  const isOverview = basename(path) === 'overview.svg';
  keep(isOverview ? 'overview' : `sheet-${basename(path, '.svg')}`, onPaper(isOverview ? svg : thickened(svg)));
}
for (const path of files('drawings', '.svg')) {
  keep(`drawing-${basename(path, '.svg')}`, onPaper(readFileSync(path, 'utf8')));
}
for (const path of files('prints', '.stl')) {
  const sides: readonly { readonly side: string; readonly from: Vector }[] = [
    { side: 'above', from: [0.45, -0.7, 0.6] },
    { side: 'below', from: [-0.45, -0.7, -0.6] },
  ];
  for (const { side, from } of sides) {
    const picture = draw([{ mesh: readPrint(path), colour: PRINTED }], { from, up: [0, 0, 1] });
    keep(`print-${basename(path, '.stl')}-${side}`, png(picture));
  }
}

function files(folder: string, ending: string): readonly string[] {
  const whole = join(output as string, folder);
  const names = existsSync(whole) ? readdirSync(whole).filter((name) => name.endsWith(ending)) : [];
  return names.sort().map((name) => join(whole, name));
}

function keep(name: string, bytes: Uint8Array) {
  const path = join(pictures as string, `${name}.png`);
  writeFileSync(path, bytes);
  console.log(path);
}

function onPaper(svg: string): Uint8Array {
  const fitTo = { mode: 'width', value: Number(asked.width) } as const;
  return new Resvg(svg, { fitTo, background: '#ffffff' }).render().asPng();
}

/** All lines as wide as asked, whatever width they have; a group that names none would be drawn 1 mm wide. */
function thickened(svg: string): string {
  const wide = `stroke-width="${asked.stroke}"`;
  return svg.replaceAll(/\s*stroke-width="[^"]*"/g, '').replaceAll(/<g /g, `<g ${wide} `);
}
