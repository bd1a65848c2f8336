import { cutMinutes, type Pace } from '../sheets/cut-time.js';
import type { Sheet } from '../sheets/sheet.js';
import { rounded } from './decimal.js';

interface LaserGiven extends Pace {
  readonly kerf: number;
}

/** layout.json: which part lies where, for each material and size of sheet; rotations in degrees, times in minutes. */
export function layoutJson(sheets: readonly Sheet[], { kerf, ...pace }: LaserGiven): string {
  const kinds = [...new Set(sheets.map(({ material }) => material))];
  const layouts = kinds.map((material) => {
    const own = sheets.filter((sheet) => sheet.material === material);
    // each layout says its form too, so that it can be handed on alone
    return {
      schema: 1,
      material,
      thickness: (own[0] as Sheet).thickness,
      kerf,
      sheets: own.map((sheet) => entry(sheet, pace)),
    };
  });
  return `${JSON.stringify({ schema: 1, layouts }, null, 2)}\n`;
}

const entry = (sheet: Sheet, pace: Pace) => ({
  file: `${sheet.name}.svg`,
  // the piece that it is cut from, where it is no whole sheet
  ...(sheet.remnant ? { remnant: sheet.remnant.file } : {}),
  width: rounded(sheet.width),
  height: rounded(sheet.height),
  margin: rounded(sheet.margin),
  spacing: rounded(sheet.spacing),
  parts: sheet.placed.map(({ part, instance, x, y, rotation }) => ({
    id: part,
    instance,
    x: rounded(x),
    y: rounded(y),
    rotation: rounded((rotation * 180) / Math.PI),
  })),
  usedArea: rounded(sheet.usedArea),
  cutLength: rounded(sheet.cutLength),
  travelLength: rounded(sheet.travelLength),
  estimatedMinutes: rounded(cutMinutes(sheet, pace)),
});
