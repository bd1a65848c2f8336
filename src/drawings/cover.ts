import type { Drawing } from '../model/page.js';
import type { DrawingGiven } from './given.js';
import { lines } from './line-weights.js';
import { extentOf, hundredths, plotted } from './plot.js';
import { bodiesOf, standingIn } from './scene.js';
import { seenLines } from './seen-lines.js';
import { viewFrom } from './view.js';

/** Higher than this it is not, mm: the figures of the camera stand below it. */
const HIGHEST = 120;
/** Bare paper all round, for the width of the lines. */
const RIM = 1;

/** The camera drawn out to its nearest focus, the glass on its back, from before it. */
export function coverDrawing({ build, plan, on, room }: DrawingGiven): Drawing {
  const [setup] = build.setups;
  const rear = build.stations.reduce((most, station) => Math.max(most, station.rear), 0);
  if (setup === undefined) throw new Error('a camera has a set-up');
  const bodies = bodiesOf(
    on,
    standingIn(build.parts, setup).map((piece) => ({ piece, rear })),
  );
  const seen = seenLines(bodies, viewFrom({ x: -0.78, y: 0.42, z: -0.62 })).flatMap((piece) => piece.seen);
  const bounds = extentOf(seen);
  const size = { width: bounds.right - bounds.left, height: bounds.top - bounds.bottom };
  const scale = Math.min((room.width - 2 * RIM) / size.width, (Math.min(HIGHEST, room.height) - 2 * RIM) / size.height);
  const plot = plotted(scale, {
    x: hundredths(room.width / 2 - (scale * (bounds.left + bounds.right)) / 2),
    y: hundredths(RIM + scale * bounds.top),
  });
  return {
    name: 'cover',
    title: plan.name,
    description: `${plan.name} drawn out to its nearest focus, from the front and the left, without perspective.`,
    scale: null,
    width: room.width,
    height: hundredths(2 * RIM + scale * size.height),
    marks: [{ kind: 'strokes', role: 'outline', paths: seen.map((path) => path.map(plot.at)), stroke: lines.outline }],
  };
}
