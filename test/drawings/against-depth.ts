/**
 * Holds the lines of the drawings against depth pictures of the same cameras, look by look:
 *
 *     npx tsx test/drawings/against-depth.ts heron wren     these designs; else all that come with the program
 *
 *     --points <number>   points of the picture for a millimetre, 4 where left out
 *     --look <words>      only looks whose name holds these words
 *     --setup <word>      glass, holder or lengthwise alone
 *     --places <number>   so many of the places where they differ are told
 */
import { parseArgs } from 'node:util';
import { loadKernel } from '../../src/geometry/kernel.js';
import { keptDesigns } from '../designs/kept-design.js';
import { agreement, depthPicture } from './depth-picture.js';
import { looks, seenTwice } from './looked-at.js';

const { values: asked, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    points: { type: 'string', default: '4' },
    look: { type: 'string', default: '' },
    setup: { type: 'string', default: '' },
    places: { type: 'string', default: '0' },
  },
});
const kernel = await loadKernel();
const sum = { edges: 0, edgesAgree: 0, points: 0, pointsAgree: 0 };
for (const name of positionals.length > 0 ? positionals : keptDesigns) {
  const camera = await seenTwice(name, kernel);
  for (const look of looks) {
    if (!look.name.includes(asked.look) || !look.setUp.includes(asked.setup)) continue;
    const lines = camera.lines(look);
    const picture = depthPicture(camera.solids(look), look.view, Number(asked.points));
    const { edges, edgesWithoutLine, linePoints, linePointsWithoutEdge } = agreement(picture, lines);
    sum.edges += edges;
    sum.edgesAgree += edges - edgesWithoutLine.length;
    sum.points += linePoints;
    sum.pointsAgree += linePoints - linePointsWithoutEdge.length;
    const title = `${name}, ${look.setUp}, ${look.open ? 'open' : 'closed'}, ${look.name}`;
    console.log(
      `${title}: ${share(edges - edgesWithoutLine.length, edges)} of ${edges} edges have a line, ${share(linePoints - linePointsWithoutEdge.length, linePoints)} of the lines an edge`,
    );
    const places = Number(asked.places);
    for (const [what, list] of [
      ['no line', edgesWithoutLine.map(({ x, y, between }) => ({ x, y, who: between.join(' | ') }))],
      ['no edge', linePointsWithoutEdge.map(({ x, y, key }) => ({ x, y, who: key }))],
    ] as const)
      for (const line of grouped(list).slice(0, places)) console.log(`    ${what}: ${line}`);
  }
}
console.log(
  `in all: ${share(sum.edgesAgree, sum.edges)} of ${sum.edges} edges have a line, ${share(sum.pointsAgree, sum.points)} of the lines an edge`,
);

function share(part: number, whole: number): string {
  return `${((100 * part) / whole).toFixed(3)} %`;
}

/** The places sorted by whom they lie between, the most first. */
function grouped(list: readonly { readonly x: number; readonly y: number; readonly who: string }[]): readonly string[] {
  const by = new Map<string, { count: number; x: [number, number]; y: [number, number] }>();
  for (const { x, y, who } of list) {
    const known = by.get(who) ?? { count: 0, x: [x, x], y: [y, y] };
    known.count++;
    known.x = [Math.min(known.x[0], x), Math.max(known.x[1], x)];
    known.y = [Math.min(known.y[0], y), Math.max(known.y[1], y)];
    by.set(who, known);
  }
  return [...by]
    .sort((a, b) => b[1].count - a[1].count)
    .map(
      ([who, { count, x, y }]) =>
        `${who}: ${count} at x ${x.map((v) => v.toFixed(2)).join(' to ')}, y ${y.map((v) => v.toFixed(2)).join(' to ')}`,
    );
}
