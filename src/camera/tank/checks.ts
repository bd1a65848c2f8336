import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { boxOf, holeRound, leastBetween, outlineOf, plateOf, sidesOf } from '../../assembly/measure.js';
import { spanOf, spansOf } from '../../assembly/span-of.js';
import type { Point } from '../../geometry/path.js';
import { paneStress, pushOf, sealedRise } from '../../liquids/pressure.js';
import type { Finding } from '../../model/finding.js';
import { glassShift } from '../../optics/depth.js';
import { paneGlass } from '../../standards/liquids.js';
import { tank as practice } from '../../standards/tank.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import { WARMED } from './liquid.js';
import { tankIds } from './parts.js';
import { grown, type Tank } from './size.js';

/** tank-depth: where the sheet lies behind the face, less what the window takes away, against the depth that was asked for. */
export function tankDepth(own: Tank, build: Build): readonly Finding[] {
  const { number, name, filmDepth, glass, within } = own;
  const ids = tankIds(number);
  const face = spanOf(build, ids.face).z[0];
  const pane = spanOf(build, ids.glass).z;
  const physical = spanOf(build, ids.lip).z[1] - face;
  const shift = glassShift(pane[1] - pane[0], glass.refractiveIndex);
  const off = physical - shift - filmDepth;
  return unless(Math.abs(off) <= 2 * within + ROUNDING, {
    rule: 'tank-depth',
    level: 'error',
    value: off,
    limit: 2 * within,
    unit: 'mm',
    about: 'shims',
    message: `The sheet in the ${name} lies ${mm(hundredth(physical))} behind its face. Through its window that works as ${mm(hundredth(physical - shift))}, which is ${mm(hundredth(Math.abs(off)))} ${off > 0 ? 'more' : 'less'} than its film depth.`,
    hint: `Add a shim of ${mm(Math.max(0.05, Math.round(Math.abs(off) * 20) / 20))} to the list, or write filmDepth: ${mm(hundredth(physical - shift))}.`,
  });
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** tank-liquid: the layer that covers the sheet may fill half of the chamber at most, or it runs into spout and vent. */
export function tankLiquid(own: Tank, build: Build): readonly Finding[] {
  const ids = tankIds(own.number);
  const depth = spanOf(build, ids.lip).z[1] - spanOf(build, ids.glass).z[1];
  const most = depth / 2;
  return unless(practice.layer.value <= most + ROUNDING, {
    rule: 'tank-liquid',
    level: 'warning',
    value: practice.layer.value,
    limit: most,
    unit: 'mm',
    about: 'holders',
    message: `The ${own.name} is ${mm(tenth(depth))} deep inside: ${mm(practice.layer.value)} of liquid over the sheet are more than half of that, and too little stays free to rock it in. Patches stay undeveloped.`,
    hint: `Make its film depth ${mm(tenth(Math.ceil(10 * (2 * practice.layer.value - depth)) / 10))} more.`,
  });
}

/** tank-shut: land under the gasket, and screws near enough to each other to press it. */
export function tankShut(own: Tank, build: Build): readonly Finding[] {
  const { number, name } = own;
  const ids = tankIds(number);
  const rim = plateOf(build, ids.rim);
  const pocket = holeRound(rim);
  const bored = rim.holes.filter((hole) => hole !== pocket);
  const land = pocket === null ? 0 : Math.min(...[rim.outline, ...bored].map((loop) => leastBetween(loop, pocket)));
  const apart = widestStep(middlesOf(build, ids.screw));
  const { gasketLand, screwSpacing } = practice;
  return [
    ...unless(land >= gasketLand.value - ROUNDING, {
      rule: 'tank-shut',
      level: 'error',
      value: land,
      limit: gasketLand.value,
      unit: 'mm',
      about: 'holders',
      message: `The gasket of the ${name} lies on ${mm(tenth(land))} of wood between the pocket and a screw: liquid finds its way out along the screw.`,
      hint: `Make it ${mm(Math.ceil(20 * (gasketLand.value - land)) / 10)} wider.`,
    }),
    ...unless(apart <= screwSpacing.value + ROUNDING, {
      rule: 'tank-shut',
      level: 'error',
      value: apart,
      limit: screwSpacing.value,
      unit: 'mm',
      message: `Two screws of the lid of the ${name} stand ${mm(tenth(apart))} apart: between them the lid lifts, and liquid and light come past the gasket.`,
      hint: 'Put a screw more along that edge.',
    }),
  ];
}

/** Of the pieces that stand upright: the tank lies lengthwise as well, and each piece is placed for both. */
function middlesOf(build: Build, id: string): readonly Point[] {
  const upright = build.setups.filter(({ orientation }) => orientation === 'upright');
  const places = upright.map((setup) => spansOf(build, id, { setup })).find((spans) => spans.length > 0) ?? [];
  return places.map(({ x, y }) => ({ x: (x[0] + x[1]) / 2, y: (y[0] + y[1]) / 2 }));
}

/** The longest way from one screw to the next, all of them taken in turn round their middle. */
function widestStep(places: readonly Point[]): number {
  const box = boxOf(places);
  const [cx, cy] = [(box.left + box.right) / 2, (box.bottom + box.top) / 2];
  const around = [...places].sort((a, b) => Math.atan2(a.y - cy, a.x - cx) - Math.atan2(b.y - cy, b.x - cx));
  return Math.max(
    ...around.map((a, i) => {
      const b = around[(i + 1) % around.length] ?? a;
      // round a corner the gasket goes along both edges
      return Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
    }),
  );
}

/** tank-shut, as a note: what lifts the lid and bends the window where all is capped and gets warm, or gas comes up. */
export function tankPressed(own: Tank, build: Build): readonly Finding[] {
  const ids = tankIds(own.number);
  const pocket = holeRound(plateOf(build, ids.rim));
  if (pocket === null) return [];
  const rise = sealedRise(WARMED.from, WARMED.to);
  const over = sidesOf(pocket);
  const push = pushOf(rise, over.width * over.height);
  // it lies on a ledge all round
  const { width: short, height: long } = grown(sidesOf(outlineOf(build, ids.glass).outline), -practice.glassMore.value);
  const pane = spanOf(build, ids.glass).z;
  const { poisson, lastingStress } = paneGlass.value;
  const stress = paneStress({ short, long, thickness: pane[1] - pane[0], poisson }, rise);
  return [
    {
      rule: 'tank-shut',
      level: 'note',
      value: push,
      unit: 'N',
      message: `Capped tight at ${WARMED.from} °C and warmed to ${WARMED.to} °C, the ${own.name} is pressed open with ${plainNumber(Math.round(push))} N, and its window is bent with ${plainNumber(stress, 1)} N/mm²${stress > lastingStress ? `, more than the ${plainNumber(lastingStress)} that glass is trusted with for long` : ''}. Gas presses harder still.`,
      hint: 'Leave the cap of the vent loose but for the rocking itself, and never cap it tight on bleach, or on acid after carbonate.',
    },
  ];
}

export const tankChecks = [tankDepth, tankLiquid, tankShut, tankPressed];
