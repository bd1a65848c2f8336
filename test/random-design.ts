import fc from 'fast-check';

/** A share of a range, in thousandths, so that failures shrink towards its lower end. */
const share = fc.integer({ min: 0, max: 1000 });

const drawnLens = fc.record({
  focal: share,
  flangeDistance: share,
  aperture: fc.constantFrom(4.5, 5.6, 6.3, 8, 9, 11),
  stout: share,
  front: share,
  grip: share,
  rear: share,
  taper: share,
  rim: share,
  by: fc.constantFrom('clamp', 'clamp', 'flange', 'ring'),
  side: fc.constantFrom('inside', 'inside', 'front'),
  screws: fc.integer({ min: 3, max: 6 }),
  coverage: fc.constantFrom('unknown', 'wide', 'bare'),
});

const drawnHolder = fc.record({
  kind: fc.constantFrom('home-made', 'home-made', 'thin', 'thick'),
  wide: share,
  long: share,
  deep: share,
  behindFilm: share,
  closedEnd: fc.option(share),
  locating: fc.constantFrom('pins', 'pins', 'pins', 'pins', 'well', 'well', 'rib'),
  window: fc.boolean(),
});

const FORMATS = [
  { write: '4x5', short: 95.2, long: 120.6 },
  { write: '5x7', short: 120.6, long: 171.4 },
  { write: '8x10', short: 196.8, long: 247.6 },
  { write: '9x12', short: 83.6, long: 113.6 },
  { write: '13x18', short: 123.6, long: 173.6 },
  { write: 'half-plate-british', short: 115.65, long: 160.1 },
  { write: 'whole-plate', short: 160.1, long: 210.9 },
  { write: '{ width: 100 mm, height: 150 mm, image: [94 mm, 143 mm] }', short: 94, long: 143 },
  { write: '{ width: 150 mm, height: 150 mm, image: [143.6 mm, 143.6 mm] }', short: 143.6, long: 143.6 },
  { write: '{ width: 3 1/4 in, height: 4 1/4 in, image: [76 mm, 101.5 mm] }', short: 76, long: 101.5 },
] as const;

const drawnDesign = fc.record({
  format: fc.constantFrom(...FORMATS),
  lens: drawnLens,
  focus: fc.record({
    nearest: share,
    as: fc.constantFrom('magnification', 'distance'),
    farthest: fc.constantFrom('infinity', 'infinity', 'infinity', '1:25', '8 m'),
    pastInfinity: share,
    pastNearest: fc.constantFrom(null, null, 0, 3),
  }),
  wood: fc.record({
    ply: fc.oneof(
      fc.constantFrom(3.05, 4.05, 5.9, 6.4, 9),
      fc.integer({ min: 300, max: 900 }).map((n) => n / 100),
    ),
    spread: fc.array(share, { maxLength: 4 }),
    stock: fc.array(share, { maxLength: 2 }),
    kerf: share,
  }),
  glass: fc.record({
    thickness: share,
    frosted: fc.constantFrom('lens', 'lens', 'eye'),
    depth: fc.constantFrom('as the first', 'as the first', 'as the deepest', 'its own'),
    own: share,
  }),
  holders: fc.array(drawnHolder, { minLength: 1, maxLength: 3 }),
  shims: fc.constantFrom(null, null, '[0.1 mm, 0.2 mm, 0.5 mm, 1 mm]', '[0.05 mm, 0.25 mm]'),
  clearance: fc.constantFrom(null, null, 1.8, 2),
});

type Drawn = typeof drawnDesign extends fc.Arbitrary<infer T> ? T : never;

const between = (least: number, most: number, thousandths: number): number =>
  least + ((most - least) * thousandths) / 1000;
const round = (value: number): number => Math.round(value * 100) / 100;
const mm = (value: number): string => `${round(value)} mm`;

/**
 * Design files as builders might write them, all data invented: what comes off a salvage shelf, not what would suit best.
 * More than half can be built; the others must be refused with a finding, never with a crash.
 */
export const randomDesign: fc.Arbitrary<string> = drawnDesign.map(written);

function written(drawn: Drawn): string {
  const { format, wood, shims, clearance } = drawn;
  const ply = plyOf(drawn);
  const lens = lensOf(drawn);
  const holders = drawn.holders.map((holder, i) => holderOf(holder, i, format, ply, lens.deepest));
  const glass = glassOf(drawn, holders);
  const stock = wood.stock.map((s) => `{ thickness: ${mm(between(1.5, 6, s))}, sheet: [600 mm, 400 mm] }`);
  const sheet = format.long > 180 ? '[1000 mm, 600 mm]' : '[800 mm, 500 mm]';
  return [
    'name: Random',
    `format: ${format.write}`,
    ...lens.lines,
    focusLine(drawn, lens, holders, glass.depth),
    `plywood: { thickness: ${readings(ply, wood.spread)}, sheet: ${sheet} }`,
    ...(stock.length > 0 ? [`stock: [${stock.join(', ')}]`] : []),
    `laser: { kerf: ${mm(between(0.08, 0.25, wood.kerf))} }`,
    ...glass.lines,
    'holders:',
    ...holders.map(({ line }) => line),
    ...(shims ? [`shims: ${shims}`] : []),
    ...(clearance ? [`workshop: { slideClearance: ${mm(clearance)} }`] : []),
    '',
  ].join('\n');
}

/** Thin sheet sags under a large camera. */
const plyOf = ({ wood, format }: Drawn): number => Math.max(wood.ply, format.long > 180 ? 4 : 3);

/** The thickest reading is the given thickness. */
const readings = (ply: number, spread: readonly number[]): string =>
  spread.length === 0 ? mm(ply) : `[${[ply, ...spread.map((s) => ply - between(0, 0.14, s))].map(mm).join(', ')}]`;

/** Longer than the diagonal as a rule, as portrait makers like it. */
function lensOf(drawn: Drawn) {
  const { format, lens } = drawn;
  const diagonal = Math.sqrt(format.short ** 2 + format.long ** 2);
  const f = Math.round(Math.min(360, Math.max(75, diagonal * between(0.9, 2, lens.focal))));
  const V = f * between(0.8, 1.1, lens.flangeDistance);
  const diameter = Math.max(30, f / lens.aperture + between(4, 30, lens.stout));
  const rearDiameter = diameter * between(0.75, 1, lens.taper);
  // a ring from inside holds the lens by a thread on its front
  const frontDiameter =
    lens.by === 'ring' && lens.side === 'inside'
      ? diameter * between(0.8, 0.95, lens.rim)
      : diameter + between(1, 12, lens.rim);
  const flange = Math.max(diameter, frontDiameter) + between(14, 36, lens.rim);
  const grip = between(lens.by === 'clamp' ? 15 : 8, 40, lens.grip);
  const barrel = [
    `diameter: ${mm(diameter)}`,
    `grip: ${mm(grip)}`,
    `front: ${mm(between(2 * plyOf(drawn), 50, lens.front))}`,
    `rear: ${mm(between(2, 40, lens.rear))}`,
    `frontDiameter: ${mm(frontDiameter)}`,
    `rearDiameter: ${mm(rearDiameter)}`,
    `mass: ${Math.round(between(200, 1180, lens.stout))} g`,
  ];
  const coverage = {
    unknown: [],
    wide: [`  coverage: { diameter: ${mm(2.6 * diagonal)}, at: 1:1 }`],
    bare: [`  coverage: { diameter: ${mm(1.02 * diagonal)}, at: infinity }`],
  };
  return {
    f,
    V: round(V),
    seat: lens.side === 'inside' ? 0 : lens.by === 'clamp' ? -grip - 8 : -8,
    /** A holder deeper than this leaves no room to slide. */
    deepest: Math.min(36, V / 8),
    lines: [
      'lens:',
      `  focalLength: ${f} mm`,
      `  flangeDistance: ${mm(V)}`,
      `  maxAperture: f/${lens.aperture}`,
      ...coverage[lens.coverage as keyof typeof coverage],
      `  barrel: { ${barrel.join(', ')} }`,
      ...(lens.by === 'flange'
        ? [
            `  flange: { diameter: ${mm(flange)}, boltCircle: ${mm(flange - 7)}, screws: ${lens.screws}, thickness: ${mm(between(2, 5, lens.taper))} }`,
          ]
        : []),
      `  mount: { by: ${lens.by}, side: ${lens.side}${lens.by === 'clamp' ? `, screws: ${lens.screws}` : ''} }`,
    ],
  };
}

type DrawnHolder = Drawn['holders'][number];

function holderOf(holder: DrawnHolder, i: number, { short, long }: Drawn['format'], ply: number, deepest: number) {
  const filmDepth = round(
    {
      'home-made': ply + 1.75,
      thin: between(3, 6, holder.deep),
      thick: between(8, Math.max(10, deepest), holder.deep),
    }[holder.kind as 'home-made' | 'thin' | 'thick'],
  );
  const width = short + between(25, 60, holder.wide);
  // as a rule long enough at the open end to lie on the seat, now and then too short
  const closedEnd = holder.closedEnd === null ? 20 : between(13, 26, holder.closedEnd);
  const length = long + closedEnd + between(holder.locating === 'rib' ? 18 : 13, 60, holder.long);
  const rib =
    holder.locating === 'rib'
      ? `, rib: { fromAxis: ${mm(long / 2 + 9)}, width: ${mm(between(3, 5, holder.wide))}, height: 1.5 mm }`
      : '';
  const keys = [
    `name: holder ${i + 1}`,
    `filmDepth: ${filmDepth} mm`,
    'depthTo: emulsion',
    `width: ${mm(width)}`,
    `length: ${mm(length)}`,
    `thickness: ${mm(filmDepth + between(4, 15, holder.behindFilm))}`,
    ...(holder.closedEnd === null ? [] : [`closedEnd: ${mm(closedEnd)}`]),
    ...(holder.kind === 'thin' ? ['slideDepth: 2 mm'] : []),
    ...(holder.kind === 'thick' && holder.window ? ['window: { thickness: 2 mm }'] : []),
    `locating: ${holder.locating}`,
  ];
  return { filmDepth, line: `  - { ${keys.join(', ')}${rib} }` };
}

function glassOf(drawn: Drawn, holders: readonly { readonly filmDepth: number }[]) {
  const { glass } = drawn;
  const ply = plyOf(drawn);
  const thickness = round(between(1.5, 5, glass.thickness));
  const eye = glass.frosted === 'eye';
  const depths = holders.map((h) => h.filmDepth);
  const film = {
    'as the first': depths[0] as number,
    'as the deepest': Math.max(...depths),
    'its own': ply + between(0, 4, glass.own),
  }[glass.depth as 'as the first'];
  const wanted = eye ? film + thickness * (1 - 1 / 1.52) : film;
  // as a builder who has been told once writes it: the glass never lies inside the frame's front
  const depth = round(Math.max(wanted, glass.own > 30 ? ply + (eye ? thickness : 0) : 0));
  return {
    depth: eye ? depth - thickness * (1 - 1 / 1.52) : depth,
    lines: [`groundGlass: { thickness: ${thickness} mm, depth: ${depth} mm, frosted: ${glass.frosted} }`],
  };
}

/** Mostly a little less than the slide may reach, now and then more. */
function focusLine(
  drawn: Drawn,
  { f, V, seat }: { readonly f: number; readonly V: number; readonly seat: number },
  holders: readonly { readonly filmDepth: number }[],
  glassDepth: number,
): string {
  const { focus, format } = drawn;
  const ply = plyOf(drawn);
  const past = Math.round(between(2, 6, focus.pastInfinity) * 2) / 2;
  const depths = [glassDepth, ...holders.map((h) => Math.max(h.filmDepth, glassDepth))];
  const room =
    seat + V - 2 * past - 2 * Math.max(...depths) + Math.min(...depths) - 3 * ply - 8 - (format.long + 45) / 5;
  const m = Math.max(0.06, (room / f) * between(0.4, 1.05, focus.nearest));
  const nearest = focus.as === 'distance' ? `${Math.ceil(f * (1 + 1 / m))} mm` : `1:${Math.ceil(10 / m) / 10}`;
  const keys = [
    `nearest: ${nearest}`,
    `farthest: ${focus.farthest}`,
    `pastInfinity: ${past} mm`,
    ...(focus.pastNearest === null ? [] : [`pastNearest: ${focus.pastNearest} mm`]),
  ];
  return `focus: { ${keys.join(', ')} }`;
}
