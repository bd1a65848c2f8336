import { expect, test } from 'vitest';
import { boundsOf } from '../../src/geometry/path.js';
import type { Planned } from '../../src/pipeline.js';
import { flatPart, lawsFrom, type Span, spanOf, withDesign } from './law.js';

const { law, lawWith } = lawsFrom(4);

/** Sections 6 and 9 of the project's description of the camera, measured on the outlines as they are placed. */

const between = (low: Span, high: Span): number => high[0] - low[1];
const over = (low: Span, high: Span): number => high[1] - low[0];

function boxes(planned: Planned) {
  const span = (id: string) => spanOf(planned, id);
  const [left, right] = [span('R1L').x, span('R1R').x];
  const [floor, top] = [span('R2F').y, span('R2T').y];
  const [outerLeft, outerRight] = [span('F2L').x, span('F2R').x];
  const [outerFloor, outerTop] = [span('F4').y, span('F3').y];
  return {
    rear: {
      inside: { across: between(left, right), up: between(floor, top) },
      outside: { across: over(left, right), up: over(floor, top) },
    },
    front: {
      inside: { across: between(outerLeft, outerRight), up: between(outerFloor, outerTop) },
      outside: { across: over(outerLeft, outerRight), up: over(outerFloor, outerTop) },
    },
  };
}

const RUNS = 60;

test('each box is two walls wider outside than inside', () =>
  law(RUNS, (planned) => {
    const t = Math.max(...planned.design.plywood.readings);
    for (const { inside, outside } of Object.values(boxes(planned))) {
      expect(outside.across - inside.across).toBeCloseTo(2 * t, 6);
      expect(outside.up - inside.up).toBeCloseTo(2 * t, 6);
    }
  }));

test('the rear box has the clearance on both sides in the front box, across and up', () =>
  law(RUNS, (planned) => {
    const { front, rear } = boxes(planned);
    const both = 2 * planned.design.workshop.slideClearance;
    expect(front.inside.across - rear.outside.across).toBeCloseTo(both, 6);
    expect(front.inside.up - rear.outside.up).toBeCloseTo(both, 6);
  }));

test('boxes and ring are square, so that the back turns', () =>
  law(RUNS, (planned) => {
    const { front, rear } = boxes(planned);
    expect(rear.inside.across).toBeCloseTo(rear.inside.up, 6);
    expect(front.inside.across).toBeCloseTo(front.inside.up, 6);
    const ring = boundsOf(flatPart(planned, 'B2').outline);
    expect(ring.right - ring.left).toBeCloseTo(ring.top - ring.bottom, 6);
    // slips by 0.2 to 0.5 a side (rule back-square)
    const slip = (rear.inside.across - (ring.right - ring.left)) / 2;
    expect(slip).toBeGreaterThanOrEqual(0.2);
    expect(slip).toBeLessThanOrEqual(0.5);
  }));

test('the long side of the picture and its margin fit inside the rear box and the ring', () =>
  law(RUNS, (planned) => {
    const { short, long } = planned.design.format.image;
    const [opening] = flatPart(planned, 'B2').holes;
    const window = boundsOf(opening ?? []);
    expect(window.right - window.left).toBeCloseTo(short + 4, 6);
    expect(window.top - window.bottom).toBeCloseTo(long + 4, 6);
    // image edge to wall at least 6 (rule wall-flare)
    expect((boxes(planned).rear.inside.across - long) / 2).toBeGreaterThanOrEqual(6);
  }));

test('a thicker ply never makes a narrower camera', () =>
  lawWith(40, (planned, drawn) => {
    const { plywood } = planned.design;
    const thickness = plywood.thickness + drawn / 500;
    const thicker = withDesign(planned.design, { plywood: { ...plywood, thickness, readings: [thickness] } });
    expect(boxes(thicker).front.outside.across).toBeGreaterThanOrEqual(boxes(planned).front.outside.across - 1e-9);
  }));
