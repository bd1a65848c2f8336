import type { Cited } from './cited.js';

/** Where the curve of a printing paper is measured: densities above the base, the shadow as a share of the greatest. */
export const paperPoints: Cited<{ readonly highlight: number; readonly speed: number; readonly shadowShare: number }> =
  {
    value: { highlight: 0.04, speed: 0.6, shadowShare: 0.9 },
    source: 'ISO 6846:1992, abstract at standards.iteh.ai; Focal Encyclopedia, p. 679',
  };

/** ISO range R of one variable-contrast paper, by the grade of the filter: a hundred times the log exposures that it holds. */
export const rangeByFilter: Cited<Readonly<Record<'00' | '0' | '1' | '2' | '3' | '4' | '5', number>>> = {
  value: { '00': 180, '0': 160, '1': 130, '2': 110, '3': 90, '4': 60, '5': 40 },
  source: "paper maker's sheet of October 2020, as quoted in a public test script",
};
