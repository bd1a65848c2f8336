import { type Box, boundsOfPoints } from '../geometry/path.js';
import type { Bed, Offcut, PackedSheet } from './shapes.js';
import { roomsWithin } from './silhouette.js';

/**
 * The largest clear rectangle over the full width or height of one of the sheets, the spacing to its neighbours taken
 * off.
 *
 * @param taken what the pieces on each sheet cover
 */
export function offcutOf(
  sheets: readonly PackedSheet[],
  taken: readonly (readonly Box[])[],
  beds: readonly Bed[],
  spacing: number,
): Offcut | null {
  let best: Offcut | null = null;
  let most = 0;
  sheets.forEach((sheet, n) => {
    const { outline, holes } = beds[sheet.bed] as Bed;
    const all = boundsOfPoints(outline);
    const boxes = taken[n] as readonly Box[];
    const clearX = clearStretch(
      boxes.map(({ left, right }) => [left - spacing, right + spacing] as const),
      all.left,
      all.right,
    );
    const clearY = clearStretch(
      boxes.map(({ bottom, top }) => [bottom - spacing, top + spacing] as const),
      all.bottom,
      all.top,
    );
    const strips = [
      { ...all, left: clearX[0], right: clearX[1] },
      { ...all, bottom: clearY[0], top: clearY[1] },
    ];
    const plain = holes.length === 0 && outline.length === 4;
    for (const strip of strips) {
      const size = (strip.right - strip.left) * (strip.top - strip.bottom);
      if (size <= most || strip.right <= strip.left || strip.top <= strip.bottom) continue;
      if (!plain) {
        const held = roomsWithin(outline, holes, 1).some(
          (room) =>
            room.left <= strip.left &&
            room.right >= strip.right &&
            room.bottom <= strip.bottom &&
            room.top >= strip.top,
        );
        if (!held) continue;
      }
      best = { sheet: n, ...strip };
      most = size;
    }
  });
  return best;
}

/** The longest stretch between two limits that nothing touches; the first of several. */
export function clearStretch(
  taken: readonly (readonly [number, number])[],
  from: number,
  to: number,
): readonly [number, number] {
  let reached = from;
  let best: readonly [number, number] = [from, from];
  for (const [low, high] of [...taken].sort((a, b) => a[0] - b[0])) {
    if (low - reached > best[1] - best[0]) best = [reached, low];
    reached = Math.max(reached, high);
  }
  return to - reached > best[1] - best[0] ? [reached, to] : best;
}
