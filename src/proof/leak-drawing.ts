import type { Point3 } from '../geometry/placement.js';
import { mm, plainNumber, tenth } from '../units/print.js';
import type { Leak } from './light-leak.js';
import type { Scene } from './light-scene.js';
import { type Cut, type CutSolid, type Drawn, type Rectangle, sectionOf } from './light-section.js';

/** Half of the side of what is drawn round the gap, mm, and the scale of the drawing. */
const AROUND = 20;
const SCALE = 8;
/** Room for words beside the picture, in units of the drawing, and the size of the letters. */
const MARGIN = { left: 12, top: 58, bottom: 40, right: 12 };
const LETTERS = 11;

/**
 * A small section through a leak, as SVG: the plane in which the light runs and the gap is narrowest. The two parts that
 * bound the gap are hatched, all others grey, the light is a red line with an arrow towards the film; a scale of 10 mm.
 */
export function leakDrawing(scene: Scene, leak: Leak): string {
  const cut = planeOf(leak);
  const window = { left: -AROUND, right: AROUND, bottom: -AROUND, top: AROUND };
  const section = sectionOf(scene, leak.stance, cut, window, leak.stance.push === 'none');
  const [a, b] = leak.parts;
  const side = 2 * AROUND * SCALE;
  const [width, height] = [side + MARGIN.left + MARGIN.right, side + MARGIN.top + MARGIN.bottom];
  const at = ({ r, h }: Drawn) =>
    `${coordinate(MARGIN.left + (r + AROUND) * SCALE)} ${coordinate(MARGIN.top + (AROUND - h) * SCALE)}`;
  const title = a.id === b.id ? `Light through ${a.id}` : `Light between ${a.id} and ${b.id}`;
  const where = `x ${mm(tenth(leak.at.x))}, y ${mm(tenth(leak.at.y))}, z ${mm(tenth(leak.at.z))}`;
  const lines = [
    `${plainNumber(leak.width, 1)} mm wide at ${where}`,
    `${leak.stance.setup.name}, ${leak.stance.station.name}`,
  ];
  const bounds = new Set([a.id, b.id]);
  const shapes = section.flatMap(({ solid, rectangles }) =>
    rectangles.map((one) => {
      const fill =
        solid.piece.part.id === a.id ? 'url(#rising)' : bounds.has(solid.piece.part.id) ? 'url(#falling)' : '#d8d8d8';
      return `  <path fill="${fill}" d="M${at({ r: one.left, h: one.bottom })}L${at({ r: one.right, h: one.bottom })}L${at({ r: one.right, h: one.top })}L${at({ r: one.left, h: one.top })}Z"/>`;
    }),
  );
  const labels = labelled(section, bounds).map(
    ({ id, point }) =>
      `  <text font-weight="${bounds.has(id) ? 'bold' : 'normal'}" x="${at(point).split(' ')[0]}" y="${at(point).split(' ')[1]}">${id}</text>`,
  );
  const [from, to] = rayIn(cut, leak);
  const bar = { x: MARGIN.left, y: height - 14 };
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${coordinate(width)}" height="${coordinate(height)}" viewBox="0 0 ${coordinate(width)} ${coordinate(height)}" font-family="DejaVu Sans, sans-serif" font-size="${LETTERS}">`,
    ` <title>${title}</title>`,
    ` <desc>${lines.join('; ')}</desc>`,
    ' <defs>',
    hatch('rising', 45),
    hatch('falling', -45),
    `  <clipPath id="window"><rect x="${MARGIN.left}" y="${MARGIN.top}" width="${side}" height="${side}"/></clipPath>`,
    '  <marker id="arrow" markerWidth="8" markerHeight="8" refX="7" refY="4" orient="auto"><path d="M0 1L8 4L0 7Z" fill="#c00000"/></marker>',
    ' </defs>',
    ` <rect width="${coordinate(width)}" height="${coordinate(height)}" fill="#ffffff"/>`,
    ` <text x="${MARGIN.left}" y="16" font-weight="bold">${title}</text>`,
    ...lines.map((line, i) => ` <text x="${MARGIN.left}" y="${32 + 14 * i}" font-size="${LETTERS - 2}">${line}</text>`),
    ' <g id="parts" clip-path="url(#window)" stroke="#000000" stroke-width="0.6">',
    ...shapes,
    ' </g>',
    ` <path id="light" clip-path="url(#window)" d="M${at(from)}L${at(to)}" stroke="#c00000" stroke-width="1.2" fill="none" marker-end="url(#arrow)"/>`,
    ' <g id="labels" stroke="#ffffff" stroke-width="3" paint-order="stroke" text-anchor="middle">',
    ...labels,
    ' </g>',
    ` <path id="scale" d="M${bar.x} ${bar.y}h${10 * SCALE}M${bar.x} ${bar.y - 4}v8M${bar.x + 10 * SCALE} ${bar.y - 4}v8" stroke="#000000" fill="none"/>`,
    ` <text x="${bar.x + 10 * SCALE + 8}" y="${bar.y + 4}">10 mm</text>`,
    '</svg>',
    '',
  ].join('\n');
}

const hatch = (id: string, turn: number): string =>
  `  <pattern id="${id}" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(${turn})"><rect width="5" height="5" fill="#f3ead8"/><path d="M0 0V5" stroke="#7a5a2a" stroke-width="1.4"/></pattern>`;

const coordinate = (value: number): string => plainNumber(value, 2);

/** The plane of the light and the way across the gap: light runs to the right, towards the film. */
function planeOf({ at, gate, outside, across }: Leak): Cut {
  const right = unit({ x: gate.x - outside.x, y: gate.y - outside.y, z: gate.z - outside.z });
  const side = across ?? (Math.abs(right.y) < 0.9 ? { x: 0, y: 1, z: 0 } : { x: 1, y: 0, z: 0 });
  const along = right.x * side.x + right.y * side.y + right.z * side.z;
  return {
    origin: at,
    right,
    up: unit({ x: side.x - along * right.x, y: side.y - along * right.y, z: side.z - along * right.z }),
  };
}

const unit = ({ x, y, z }: Point3): Point3 => {
  const long = Math.sqrt(x * x + y * y + z * z);
  return { x: x / long, y: y / long, z: z / long };
};

/** The light in the plane, from the edge of the picture to the film, or to the other edge. */
function rayIn({ origin, right }: Cut, { gate }: Leak): readonly [Drawn, Drawn] {
  const film = (gate.x - origin.x) * right.x + (gate.y - origin.y) * right.y + (gate.z - origin.z) * right.z;
  return [
    { r: -AROUND, h: 0 },
    { r: Math.min(AROUND, film), h: 0 },
  ];
}

/** Thinner things get no label, mm. */
const LABELLED = 1.5;

/** Each part's id once, in the middle of the largest piece of it that is in the picture. */
function labelled(
  section: readonly CutSolid[],
  always: ReadonlySet<string>,
): readonly { readonly id: string; readonly point: Drawn }[] {
  const largest = new Map<string, Rectangle>();
  for (const { solid, rectangles } of section)
    for (const one of rectangles) {
      const seen = {
        left: Math.max(-AROUND, one.left),
        right: Math.min(AROUND, one.right),
        bottom: Math.max(-AROUND, one.bottom),
        top: Math.min(AROUND, one.top),
      };
      const { id } = solid.piece.part;
      const before = largest.get(id);
      if (before === undefined || areaOf(seen) > areaOf(before)) largest.set(id, seen);
    }
  return [...largest]
    .filter(([id, { bottom, top }]) => always.has(id) || top - bottom > LABELLED)
    .map(([id, { left, right, bottom, top }]) => ({
      id,
      point: { r: (left + right) / 2, h: (bottom + top) / 2 - 0.5 },
    }));
}

const areaOf = ({ left, right, bottom, top }: Rectangle): number => (right - left) * (top - bottom);
