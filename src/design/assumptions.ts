import type { Finding } from '../model/finding.js';
import { fNumber, mm } from '../units/print.js';
import { isDefaulted } from './defaulted.js';
import type { Design } from './design.js';

/** What the program took for granted because it was not written, where the camera may come out wrong by it. */
export function assumptions(design: Design): readonly Finding[] {
  const { lens, holders } = design;
  const assumed: (readonly [about: string, message: string, hint: string])[] = [
    [
      'lens.maxAperture',
      `The widest stop is taken as ${fNumber(lens.maxAperture)}.`,
      'Write lens.maxAperture as engraved.',
    ],
    [
      'lens.coverage',
      'The image circle of the lens is not known, so nothing is said of dark corners.',
      'Write lens.coverage: { diameter, at }: copying and process lenses state it at 1:1.',
    ],
    [
      'lens.barrel',
      `The lens is drawn as a stand-in of ${mm(lens.barrel.diameter)} across, its focal length over its f-number.`,
      'Measure the barrel and write lens.barrel.',
    ],
    [
      'holders',
      `The ${holders[0]?.name} is taken from published depths, its outside from memory.`,
      'Measure your own holder and write it under holders.',
    ],
  ];
  return assumed
    .filter(([about]) => isDefaulted(design, about))
    .map(([about, message, hint]) => ({ rule: 'assumed', level: 'note', about, message, hint }));
}
