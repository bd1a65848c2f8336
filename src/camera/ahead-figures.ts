import type { PlanDocument } from '../model/plan.js';
import { nearestMark } from '../standards/dial.js';
import { shutterTimes } from '../standards/shutter-times.js';
import type { Camera } from './camera.js';
import type { Cap } from './cap/size.js';
import type { DropShutter } from './drop-shutter/size.js';
import { type Absent, absent, constant, type Figure, formula, keyed, measured, reckoned, told } from './figure.js';
import type { FilterHolder } from './filter-holder/size.js';
import type { Hood } from './hood/size.js';
import { halfOfSquare, lightAcross } from './light-ahead.js';

type FiguresOf<T> = { readonly [K in keyof T]: null extends T[K] ? Figure | Absent : Figure };

/** What hangs ahead of the lens, each only where the design asks for it. */
export interface AheadFigures {
  readonly filterHolder?: FiguresOf<NonNullable<PlanDocument['filterHolder']>>;
  readonly shutter?: FiguresOf<NonNullable<PlanDocument['shutter']>>;
  readonly hood?: FiguresOf<NonNullable<PlanDocument['hood']>>;
  readonly cap?: FiguresOf<NonNullable<PlanDocument['cap']>>;
}

export function aheadOfLensFigures(camera: Camera): AheadFigures {
  const { filterHolder, dropShutter, hood, cap } = camera.objects;
  return {
    ...(filterHolder ? { filterHolder: filterFigures(filterHolder, camera) } : {}),
    ...(dropShutter ? { shutter: shutterFigures(dropShutter.shutter, camera) } : {}),
    ...(hood ? { hood: hoodFigures(hood.hood, camera) } : {}),
    ...(cap ? { cap: capFigures(cap.cap, camera) } : {}),
  };
}

const ENTRANCE = 'entrance pupil and the slope of the field, derived; the pupil is taken in the lens seat';

/** Width of the light at z, as the trade's formula has it. */
function lightAt(z: Figure, { figures, objects }: Camera): Figure {
  const { focalLength: f, maxAperture: N } = figures.given;
  const { diagonal, seat } = figures;
  const light = objects.accessoryFrame?.light;
  if (light === undefined) throw new Error('nothing hangs ahead of the lens');
  return told(
    'd_a',
    'width of the light there at infinity',
    lightAcross(light, z.value),
    () => formula`${f} / ${N} + max(0, ${seat} - ${z}) ${diagonal} / ${f}`,
    { source: ENTRANCE },
  );
}

function filterFigures(holder: FilterHolder, camera: Camera): NonNullable<AheadFigures['filterHolder']> {
  const { rear, wood, card, opening, gel } = holder;
  const z = measured('z_f', 'z of the front of the filter holder', rear - 2 * wood.ply.thickness - card, PLACED);
  const light = lightAt(z, camera);
  return {
    opening: told('w_f', 'opening of the filter holder', opening, () => formula`${light} + 2`),
    light,
    gel: measured('s_g', 'side of the gels', gel, 'the design, or the smallest size that covers the opening'),
  };
}

const PLACED = 'measured on the placed parts';
const DROP = 'mechanics of a falling slide, each line across the light of a point by itself; nine tenths of gravity';

function shutterFigures(shutter: DropShutter, camera: Camera): NonNullable<AheadFigures['shutter']> {
  const { slide, figures, wanted, light, beyondLips, wood } = shutter;
  const { seat } = camera.figures;
  const z = measured('z_d', 'z of the front of the slide', beyondLips - 2 * wood.ply.thickness, PLACED);
  const time = measured('t_e', 'effective time of the shutter, the lens wide open', figures.effective, DROP, 's');
  const open = measured('t_o', 'from first to last light for a point in the middle', figures.open, DROP, 's');
  const { mark } = nearestMark(figures.effective, shutterTimes);
  const exact = shutterTimes.marks.find((one) => one.mark === mark)?.exact ?? mark;
  const marked = constant('t_m', 'what that mark stands for', exact, shutterTimes.source, 's');
  const uneven = 'stops that the picture gets more above than below';
  return {
    slot:
      wanted === null
        ? keyed('L', 'length of the slot along the fall', 'shutter.slot', slide.slot)
        : measured('L', 'length of the slot along the fall', slide.slot, 'found for the time that is wanted'),
    fall: measured('s_d', 'fall of the slide, from the peg to the felt', slide.fall, PLACED),
    distance: told(
      'a_d',
      'from the slide to the lens seat',
      Math.max(0, light.pupil - z.value),
      () => formula`max(0, ${seat} - ${z})`,
    ),
    time,
    open,
    fullyOpen: measured('t_f', 'with nothing of the light covered', figures.fullyOpen, DROP, 's'),
    efficiency: told('e_d', 'share of the light that is used', figures.efficiency, () => formula`${time} / ${open}`, {
      unit: 'times',
    }),
    dial: constant('t_d', 'nearest mark of a dial', mark, shutterTimes.source, 's'),
    dialStops: reckoned('x_d', 'stops longer than that mark', formula`log2(${time} / ${marked})`, { unit: 'stops' }),
    uneven:
      figures.uneven === null
        ? absent('x_u', uneven, 'part of the picture is lit before the slide is let go')
        : measured('x_u', uneven, figures.uneven, DROP, 'stops'),
  };
}

function hoodFigures(hood: Hood, { figures }: Camera): NonNullable<AheadFigures['hood']> {
  const { half, mouth, lens, light } = hood;
  const { focalLength: f, maxAperture: N, imageLong } = figures.given;
  const { seat } = figures;
  const z = measured('z_h', 'z of the mouth of the hood', mouth, PLACED);
  const front = measured('z_l', 'z of the front of the lens', lens.front, 'lens.barrel.front, ahead of the lens seat');
  const across = keyed('d_l', 'diameter of the lens in front', 'lens.barrel.frontDiameter', lens.diameter);
  const side = measured('w_h', 'side of the mouth of the hood', 2 * half, PLACED);
  const depth = told('l_h', 'depth of the hood ahead of the lens', lens.front - mouth, () => formula`${front} - ${z}`);
  return {
    depth,
    mouth: side,
    light: told(
      'w_l',
      'side of the square that the light of the picture needs there, upright and lengthwise',
      2 * halfOfSquare(light, mouth),
      () => formula`${f} / ${N} + max(0, ${seat} - ${z}) ${imageLong} / ${f}`,
      { source: ENTRANCE },
    ),
    shade: told(
      'a_h',
      'from how far off the axis on light does not reach the lens',
      (180 / Math.PI) * Math.atan((2 * half + lens.diameter) / (2 * (lens.front - mouth))),
      () => formula`atan((${side} + ${across}) / (2 ${depth}))`,
      { unit: '°', source: 'similar triangles' },
    ),
  };
}

function capFigures({ plate }: Cap, { objects }: Camera): NonNullable<AheadFigures['cap']> {
  const width = measured('w_c', 'width of the cap', plate.width, PLACED);
  const opening = measured('w_o', 'side of the opening of the ring', objects.accessoryFrame?.opening ?? 0, PLACED);
  return {
    lap: told(
      'l_c',
      'what the cap laps over the opening of the ring',
      (width.value - opening.value) / 2,
      () => formula`(${width} - ${opening}) / 2`,
    ),
  };
}
