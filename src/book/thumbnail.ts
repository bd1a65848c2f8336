import { boundsOf, type ClosedPath, flatten, type Point } from '../geometry/path.js';
import type { Mark } from '../model/page.js';
import type { FlatPart } from '../model/part.js';
import type { Block } from '../paper/blocks.js';
import { INK } from '../paper/prose.js';

const WIDTH = 24;
const HEIGHT = 11;
/** What is round is followed so closely, mm on paper. */
const SAGITTA = 0.02;

/** The outline of a part, as large as a line of a list allows: to know it by, not to measure. */
export function thumbnail({ outline, holes }: Pick<FlatPart, 'outline' | 'holes'>): Block {
  const { left, right, bottom, top } = boundsOf(outline);
  const [across, up] = [right - left, top - bottom];
  // what stands high and narrow is laid down
  const lying = up > across;
  const scale = Math.min(WIDTH / Math.max(across, up), HEIGHT / Math.min(across, up));
  const loop = (path: ClosedPath): readonly Point[] =>
    flatten(path, SAGITTA / scale).map(({ x, y }) => ({
      x: hundredths(scale * (lying ? y - bottom : x - left)),
      y: hundredths(scale * (lying ? x - left : top - y)),
    }));
  const height = scale * Math.min(across, up);
  return {
    height,
    marks: ({ x, y }) => {
      const at = (points: readonly Point[]) => points.map((p) => ({ x: p.x + x, y: p.y + y }));
      const line = (path: ClosedPath, fill: string): Mark => ({
        kind: 'line',
        points: at(loop(path)),
        closed: true,
        fill,
        stroke: { colour: INK, width: 0.15 },
      });
      return [line(outline, '#e6e6e6'), ...holes.map((hole) => line(hole, '#ffffff'))];
    },
  };
}

const hundredths = (value: number): number => Math.round(value * 100) / 100;
