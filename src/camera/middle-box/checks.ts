import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { platesOf } from '../../assembly/measure.js';
import { spanOf, spansOf } from '../../assembly/span-of.js';
import type { Finding } from '../../model/finding.js';
import { mm, tenth } from '../../units/print.js';
import { fingerRule, tubeEdges } from '../finger-rule.js';
import type { MiddleBox } from './size.js';

/** A stop bites by so much at least, with the middle box lifted in its felt; a choice of ours. */
const BITE = 3;

/** How far each joint is drawn before its stop holds, and by how much that bites, on the parts as they stand. */
export function stopsOf(build: Build) {
  const [frame, block, batten] = [spanOf(build, 'C3'), spanOf(build, 'F14'), spanOf(build, 'R10')];
  // of the bar what stands above the lower edge of the block is its hook
  const hooks = platesOf(build, 'C4').map(({ outline }) => outline.filter(({ y }) => y > block.y[0] + ROUNDING));
  const hook = Math.max(...hooks.flatMap((corners) => corners.map(({ x }) => x)));
  const top = Math.min(...hooks.map((corners) => Math.max(...corners.map(({ y }) => y))));
  return {
    own: { run: block.z[0] - hook, bite: Math.min(top, block.y[1]) - block.y[0] },
    rear: { run: frame.z[0] - batten.z[1], bite: batten.y[1] - frame.y[0] },
  };
}

/** middle-stopped: the stops of the middle box hold, and let the slide run to its end. */
export function middleStopped(_own: MiddleBox, build: Build): readonly Finding[] {
  const { own, rear } = stopsOf(build);
  const whole = spanOf(build, 'T5').z[0] - spanOf(build, 'R4L').z[1];
  const drawnFrom =
    spansOf(build, 'C3').length > 0 ? build.parts.find(({ id }) => id === 'C3')?.placements[0]?.drawnFrom : 0;
  const rule = { rule: 'middle-stopped', level: 'error', unit: 'mm' } as const;
  const bites = [
    { bite: own.bite, what: 'the bars C4 hook on the blocks F14' },
    { bite: rear.bite, what: 'the batten R10 hooks on the tongue of C3' },
  ];
  return [
    ...bites.flatMap(({ bite, what }) =>
      unless(bite >= BITE - ROUNDING, {
        ...rule,
        value: bite,
        limit: BITE,
        message: `A box is drawn off at full draw: ${what} by ${mm(tenth(Math.max(0, bite)))}, and lifted in its felt the middle box slips over.`,
        hint: 'Make the hook, the tongue or the batten higher.',
      }),
    ),
    ...unless(own.run + rear.run >= whole - ROUNDING, {
      ...rule,
      value: own.run + rear.run,
      limit: whole,
      message: `The stops of the middle box hold after ${mm(tenth(own.run + rear.run))}, and the slide runs ${mm(tenth(whole))}: it stops short of the nearest focus.`,
      hint: 'Set the blocks F14 farther back.',
    }),
    ...unless(Math.abs((drawnFrom ?? 0) - rear.run) <= ROUNDING, {
      ...rule,
      value: drawnFrom ?? 0,
      limit: rear.run,
      message: `The middle box is said to be drawn along from ${mm(tenth(drawnFrom ?? 0))} on, and its batten takes it along from ${mm(tenth(rear.run))} on.`,
      hint: 'Set the batten R10 where the frame C3 is to be taken along.',
    }),
  ];
}

/** finger-rule: the long edges of the middle box, and its fingers in the opening of its frame. */
export const middleFingers = ({ wood }: MiddleBox, build: Build): readonly Finding[] =>
  fingerRule(
    'Middle box',
    tubeEdges(build, { sides: ['C1L', 'C1R'], lids: ['C2T', 'C2F'], plate: { id: 'C3', name: 'frame' } }),
    wood.fits.glueSlip,
    build,
  );

export const middleBoxChecks = [middleStopped, middleFingers];
