import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { boundsOf } from '../../geometry/path.js';
import type { Finding } from '../../model/finding.js';
import type { FlatPart } from '../../model/part.js';
import { exactFNumber } from '../../standards/aperture-numbers.js';
import { fNumber, mm, plainNumber } from '../../units/print.js';
import type { Stop, Stops } from './size.js';

const plateOf = ({ parts }: Build, { id }: Stop): FlatPart | undefined => {
  const part = parts.find((one) => one.id === id);
  return part?.kind === 'flat' ? part : undefined;
};

/** What a hole may be off: a hundredth of a stop at f/22; and the least that a beam cuts round. Choices of ours. */
const HOLE = { off: 0.05, least: 2 };

/** stop-hole: the hole of each plate, against the hole of the lens at its widest stop in the ratio of the f-numbers. */
export const stopHole = ({ stops, fullAperture, marked }: Stops, build: Build): readonly Finding[] =>
  stops.flatMap((stop) => {
    const cut = plateOf(build, stop)?.holes[0];
    const { left, right } = cut ? boundsOf(cut) : { left: 0, right: 0 };
    const hole = right - left;
    const wanted = (fullAperture * marked) / exactFNumber(stop.mark);
    const stray = 2 * Math.log2(hole / wanted);
    const rule = { rule: 'stop-hole', unit: 'mm', about: 'stops.fullAperture' } as const;
    return [
      ...unless(Math.abs(hole - wanted) <= HOLE.off + ROUNDING, {
        ...rule,
        level: 'error',
        value: hole,
        limit: wanted,
        message: `The hole of ${stop.id} is ${mm(hundredth(hole))} wide where ${fNumber(stop.mark)} wants ${mm(hundredth(wanted))}: it gives ${plainNumber(Math.abs(stray), 2)} stops ${stray > 0 ? 'more' : 'less'} light.`,
        hint: 'Cut another plate.',
      }),
      ...unless(hole >= HOLE.least - ROUNDING || Math.abs(hole - wanted) > HOLE.off + ROUNDING, {
        ...rule,
        level: 'warning',
        value: hole,
        limit: HOLE.least,
        message: `The hole for ${fNumber(stop.mark)} is ${mm(hundredth(hole))} wide (${stop.id}): a beam does not cut so small a hole true.`,
        hint: `Drill it through to ${mm(hundredth(wanted))}, or leave ${fNumber(stop.mark)} out.`,
      }),
    ];
  });

const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** Air of a plate in the slot, in all: across it, and through it. A choice of ours. */
const AIR = { across: { least: 0.1, most: 0.8 }, through: { least: 0.05, most: 0.5 } };

/** stop-slot: each plate goes into the slot of the lens, and does not wander in it. */
export const stopSlot = ({ stops, slot }: Stops, build: Build): readonly Finding[] => {
  const found = stops.flatMap((stop) => {
    const part = plateOf(build, stop);
    if (part === undefined) return [];
    const { left, right } = boundsOf(part.outline);
    return [
      { id: part.id, way: 'across' as const, air: slot.width - (right - left) },
      { id: part.id, way: 'through' as const, air: slot.thickness - part.thickness },
    ];
  });
  return found.flatMap(({ id, way, air }) => {
    const { least, most } = AIR[way];
    const tight = air < least - ROUNDING;
    return unless(!tight && air <= most + ROUNDING, {
      rule: 'stop-slot',
      level: tight ? 'error' : 'warning',
      value: air,
      limit: tight ? least : most,
      unit: 'mm',
      about: way === 'across' ? 'stops.slot' : 'stops.board',
      message: tight
        ? `${id} does not go into the slot: it has ${mm(hundredth(air))} ${way === 'across' ? 'across' : 'for its thickness'}.`
        : `${id} wanders in the slot, which is ${mm(hundredth(air))} ${way === 'across' ? 'wider' : 'thicker'} than the plate: light passes beside it.`,
      hint: way === 'across' ? 'Measure the slot again.' : 'Take board 0.1 to 0.3 mm thinner than the slot.',
    });
  });
};

export const stopsChecks = [stopHole, stopSlot];
