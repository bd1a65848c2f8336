import type { Cited } from './cited.js';

type Range = readonly [number, number];

const CALIBRATION = '"Exposure Meter Calibration", basiccamera.blogspot.com/2008/06/';
const ARTICLE = 'from memory: ISO 2720:1974 as summarised in the encyclopedia article Light meter';

/** K of a meter that looks at the subject, for cd/m². Tables in foot units have other numbers. */
export const reflectedLight: {
  readonly constant: Cited<number>;
  /** What some makers take instead, though it lies beyond the standard's range. */
  readonly other: Cited<number>;
  readonly range: Cited<Range>;
} = {
  constant: { value: 12.5, source: CALIBRATION },
  other: { value: 14, source: CALIBRATION },
  range: { value: [10.6, 13.4], source: CALIBRATION },
};

/** C of a meter that is held at the subject, for lx; its range by the shape of the receptor. */
export const incidentLight: {
  readonly constant: Cited<number>;
  readonly flat: Cited<Range>;
  readonly dome: Cited<Range>;
} = {
  constant: { value: 250, source: 'encyclopedia article Exposure value, on illuminance' },
  flat: { value: [240, 400], source: ARTICLE },
  dome: { value: [320, 540], source: ARTICLE },
};
