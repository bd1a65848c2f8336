/**
 * Draws the camera of a build, put together, from `parts.json` and the prints:
 *
 *     npx tsx test/pictures/render.ts <output folder> <picture folder>
 *
 *     --setup <name>          else the first focusing one that is upright
 *     --station <name or mm>  for all pictures; else each has its own
 *     --only <id,id>          these parts alone
 *     --hide <id,id>          all but these
 *     --view <name,name>      these pictures alone
 *     --zoom <factor>         from 1, which fits everything
 *     --at <x,y,z or id>      the middle of the picture, camera frame, or a part
 *     --saw <axis=mm>         takes away what lies beyond, in every picture: x=0, y=40, z=120
 *     --name <word>           ahead of the names of the files
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { type Body, draw, type Vector } from './draw.js';
import { type PartsFile, readParts, rearAt, type SetUp, usualSetUp } from './parts-file.js';
import { png } from './png.js';
import { type Saw, workbench } from './workpieces.js';

interface Sight {
  readonly name: string;
  readonly from: Vector;
  readonly station: 'closest' | 'farthest';
  readonly saw?: Saw;
}

/** x to the right and y up as the photographer stands, z from the lens towards him. */
const sights: readonly Sight[] = [
  { name: 'closed-from-behind', from: [0.55, 0.5, 0.85], station: 'closest' },
  { name: 'closed-from-the-front', from: [-0.6, 0.45, -0.85], station: 'closest' },
  { name: 'open-from-behind', from: [0.55, 0.5, 0.85], station: 'farthest' },
  { name: 'open-from-the-front', from: [-0.75, 0.45, -0.7], station: 'farthest' },
  { name: 'from-below', from: [0.45, -0.8, 0.6], station: 'farthest' },
  { name: 'cutaway', from: [1, 0, 0], station: 'farthest', saw: { axis: 0, at: 0 } },
  { name: 'cutaway-closed', from: [1, 0.22, 0.25], station: 'closest', saw: { axis: 0, at: 0 } },
];

const { values: asked, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    setup: { type: 'string' },
    station: { type: 'string' },
    only: { type: 'string' },
    hide: { type: 'string' },
    view: { type: 'string' },
    zoom: { type: 'string' },
    at: { type: 'string' },
    saw: { type: 'string' },
    name: { type: 'string' },
  },
});
const [output, pictures] = positionals;
if (output === undefined || pictures === undefined)
  throw new Error('two folders are wanted: a build, and one to draw into');

const file = readParts(output);
const setUp = asked.setup === undefined ? usualSetUp(file) : file.setups.find(({ name }) => name === asked.setup);
if (setUp === undefined)
  throw new Error(`no such set-up; there are: ${file.setups.map(({ name }) => name).join('; ')}`);
const only = known(file, asked.only);
const hidden = known(file, asked.hide);
const wanted = (id: string) => (only.length === 0 || only.includes(id)) && !hidden.includes(id);
const putTogether = await workbench(output, file);
const chosen = asked.view === undefined ? sights : sights.filter(({ name }) => asked.view?.split(',').includes(name));
if (chosen.length === 0) throw new Error(`no such view; there are: ${sights.map(({ name }) => name).join(', ')}`);

mkdirSync(pictures, { recursive: true });
for (const { name, from, station, saw } of chosen) {
  const standing = { setUp, rear: rearAt(file, asked.station ?? station), saw: sawOf(asked.saw) ?? saw };
  const at = asked.at === undefined ? {} : { at: middleOf(asked.at, setUp, standing.rear) };
  const picture = draw(putTogether(standing, wanted), { from, zoom: Number(asked.zoom ?? 1), ...at });
  const path = join(pictures, `${asked.name === undefined ? '' : `${asked.name}-`}${name}.png`);
  writeFileSync(path, png(picture));
  console.log(`${path}: ${setUp.name}, rear at ${standing.rear.toFixed(2)} mm`);
}

function known({ parts }: PartsFile, list: string | undefined): readonly string[] {
  const ids = list?.split(',') ?? [];
  const strange = ids.filter((id) => !parts.some((part) => part.id === id));
  if (strange.length === 0) return ids;
  throw new Error(`no part ${strange.join(', ')}; there are ${parts.map(({ id }) => id).join(', ')}`);
}

function sawOf(words: string | undefined): Saw | undefined {
  if (words === undefined) return undefined;
  const [, axis = '', at] = /^([xyz])=(-?[\d.]+)$/.exec(words) ?? [];
  if (axis === '') throw new Error(`--saw wants an axis and a place, such as x=0, not ${words}`);
  return { axis: 'xyz'.indexOf(axis) as Saw['axis'], at: Number(at) };
}

function middleOf(words: string, inSetUp: SetUp, rear: number): Vector {
  const numbers = words.split(',').map(Number);
  if (numbers.length === 3 && numbers.every(Number.isFinite)) return numbers as unknown as Vector;
  const [id] = known(file, words);
  const [body] = putTogether({ setUp: inSetUp, rear }, (part) => part === id);
  if (body === undefined) throw new Error(`${words} does not stand in ${inSetUp.name}`);
  return middleOfBody(body);
}

function middleOfBody({ mesh: { positions } }: Body): Vector {
  const middle = (axis: number) => {
    const along = positions.filter((_, i) => i % 3 === axis);
    return (along.reduce((a, b) => Math.min(a, b)) + along.reduce((a, b) => Math.max(a, b))) / 2;
  };
  return [middle(0), middle(1), middle(2)];
}
