/** Lines that run into each other at less than this are the same line where they lie together: the sine of the angle. */
const PARALLEL = 0.15;

/** Cells across which a long line is looked up. */
const CELL = 4;

/** Remembers the lines of a drawing, so that where edges of several pieces fall together one line is drawn. */
export interface DrawnLines {
  /**
   * Draws a segment and gives the stretches of it that were not drawn before, each x, y of both ends.
   *
   * @param closest lines nearer to each other than this are one line, mm
   */
  readonly draw: (
    x0: number,
    y0: number,
    x1: number,
    y1: number,
  ) => readonly (readonly [number, number, number, number])[];
}

export function drawnLines(closest: number): DrawnLines {
  const cells = new Map<number, number[]>();
  const ends: number[] = [];
  /** When each line was last looked at: the number of the question. */
  const looked: number[] = [];
  let asked = 0;
  const key = (column: number, row: number) => (column + 32768) * 65536 + (row + 32768);

  /** The cells along a segment, and those within `closest` of it. */
  const along = (x0: number, y0: number, x1: number, y1: number, visit: (cell: number) => void): void => {
    const steps = Math.max(1, Math.ceil(Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0)) / CELL));
    for (let r = 0; r < steps; r++) {
      const [xa, ya] = [x0 + ((x1 - x0) * r) / steps, y0 + ((y1 - y0) * r) / steps];
      const [xb, yb] = [x0 + ((x1 - x0) * (r + 1)) / steps, y0 + ((y1 - y0) * (r + 1)) / steps];
      const [left, right] = [Math.min(xa, xb) - closest, Math.max(xa, xb) + closest];
      const [low, high] = [Math.min(ya, yb) - closest, Math.max(ya, yb) + closest];
      for (let c = Math.floor(left / CELL); c <= Math.floor(right / CELL); c++)
        for (let q = Math.floor(low / CELL); q <= Math.floor(high / CELL); q++) visit(key(c, q));
    }
  };

  const draw: DrawnLines['draw'] = (x0, y0, x1, y1) => {
    const [dx, dy] = [x1 - x0, y1 - y0];
    const length = Math.sqrt(dx * dx + dy * dy);
    if (length === 0) return [];
    const [ux, uy] = [dx / length, dy / length];
    const taken: [number, number][] = [];
    asked++;
    along(x0, y0, x1, y1, (cell) => {
      const near = cells.get(cell);
      if (near === undefined) return;
      for (const line of near) {
        if (looked[line / 4] === asked) continue;
        looked[line / 4] = asked;
        const ax = (ends[line] as number) - x0;
        const ay = (ends[line + 1] as number) - y0;
        const bx = (ends[line + 2] as number) - x0;
        const by = (ends[line + 3] as number) - y0;
        const [a, b] = [ax * ux + ay * uy, bx * ux + by * uy];
        const [offA, offB] = [ay * ux - ax * uy, by * ux - bx * uy];
        if (Math.abs(offA - offB) > PARALLEL * Math.abs(a - b)) continue;
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const [from, to] = [Math.max(0, low), Math.min(length, high)];
        if (to <= from) continue;
        // off the line where the two run beside each other
        const off = (s: number) => offA + ((offB - offA) * (s - a)) / (b - a);
        if (Math.abs(off(from)) > closest || Math.abs(off(to)) > closest) continue;
        // what hardly sticks out at an end is taken too
        taken.push([low < closest ? 0 : from, high > length - closest ? length : to]);
      }
    });
    const left: [number, number, number, number][] = [];
    const keep = (from: number, to: number) => {
      if (to - from <= (taken.length === 0 ? 0 : closest)) return;
      const line = ends.push(x0 + ux * from, y0 + uy * from, x0 + ux * to, y0 + uy * to) - 4;
      looked.push(0);
      left.push([x0 + ux * from, y0 + uy * from, x0 + ux * to, y0 + uy * to]);
      along(x0 + ux * from, y0 + uy * from, x0 + ux * to, y0 + uy * to, (cell) => {
        const known = cells.get(cell);
        if (known === undefined) cells.set(cell, [line]);
        else if (known.at(-1) !== line) known.push(line);
      });
    };
    taken.sort((a, b) => a[0] - b[0]);
    let from = 0;
    for (const [start, end] of taken) {
      if (start > from) keep(from, start);
      from = Math.max(from, end);
    }
    if (from < length) keep(from, length);
    return left;
  };
  return { draw };
}
