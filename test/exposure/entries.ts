import { noPack } from '../../src/exposure/colour-cast.js';
import type { ResultEntry, SettingEntry } from '../../src/model/sitting-log.js';

/** A sheet that was given out by flash, on a negative of no name. */
export const settingEntry = (sheet: number, more: Partial<SettingEntry> = {}): SettingEntry => ({
  sheet,
  at: null,
  process: 'negative',
  paper: null,
  batch: null,
  dialled: 0,
  strips: [],
  colourPack: noPack,
  magnification: 0.25,
  aperture: 16,
  speed: 6,
  filterFactor: 1,
  energy: 400,
  pops: 1,
  lampDistance: null,
  time: null,
  ...more,
});

/** A result of which nothing is said but what is given here. */
export const resultEntry = (sheet: number, more: Partial<ResultEntry> = {}): ResultEntry => ({
  sheet,
  at: null,
  looks: null,
  by: null,
  strip: null,
  density: null,
  densities: [],
  wanted: null,
  cast: null,
  castBy: null,
  gave: { energy: null, time: null },
  bath: { start: null, end: null },
  note: null,
  ...more,
});
