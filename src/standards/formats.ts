import type { Cited } from './cited.js';

/** A size of film or plate, standing upright: width is the short side. Inches are turned to mm exactly (25.4). */
export interface StandardFormat {
  /** As the design file names it. */
  readonly name: string;
  readonly title: string;
  readonly carrier: 'sheet film' | 'plate';
  /** Nominal width and height. */
  readonly nominal: Cited<readonly [number, number]>;
  /** What the film really receives: short and long side. */
  readonly image: Cited<readonly [number, number]>;
}

const PLATE_SIZES = 'thread "Plate sizes", photrio.com/forum/threads/plate-sizes.13819/';
const HOLDERS_ARTICLE = '"Working with cut film holders", rogerandfrances.com';
const FILM_CHART = 'nominal inches, common practice, no source; rounded in the film size chart of design215.com';
const METRIC = 'nominal centimetres, common practice, no source';

/** A holder hides so much of sheet film, both edges of a side together: common practice, no source. */
export const FILM_REBATE = 6.4;

const REBATE = { 'sheet film': FILM_REBATE, plate: 5 } as const;

const format = (
  name: string,
  title: string,
  carrier: StandardFormat['carrier'],
  width: number,
  height: number,
  source: string,
): StandardFormat => ({
  name,
  title,
  carrier,
  nominal: { value: [width, height], source },
  image: {
    value: [width - REBATE[carrier], height - REBATE[carrier]],
    source: `nominal less ${REBATE[carrier]} each way for a ${carrier}'s rebates, common practice, no source`,
  },
});

/**
 * The formats that a design may name. Half plate alone would be two sizes and so is no name here; 13x18 is not 5x7, though
 * their holders share outside sizes. The film itself is cut 1/16 in under the nominal inches, which plates keep: holders
 * allow for that, so the nominal size is what a pocket is made from.
 */
export const formats: readonly StandardFormat[] = [
  format('4x5', '4 x 5 in', 'sheet film', 101.6, 127, FILM_CHART),
  format('5x7', '5 x 7 in', 'sheet film', 127, 177.8, FILM_CHART),
  format('8x10', '8 x 10 in', 'sheet film', 203.2, 254, FILM_CHART),
  format('11x14', '11 x 14 in', 'sheet film', 279.4, 355.6, 'nominal inches, common practice, no source'),
  format('9x12', '9 x 12 cm', 'sheet film', 90, 120, METRIC),
  format('13x18', '13 x 18 cm', 'sheet film', 130, 180, METRIC),
  format('18x24', '18 x 24 cm', 'sheet film', 180, 240, METRIC),
  format('whole-plate', 'whole plate, 6 1/2 x 8 1/2 in', 'plate', 165.1, 215.9, PLATE_SIZES),
  format('half-plate-british', 'British half plate, 4 3/4 x 6 1/2 in', 'plate', 120.65, 165.1, HOLDERS_ARTICLE),
  format('half-plate-american', 'American half plate, 4 1/4 x 5 1/2 in', 'plate', 107.95, 139.7, PLATE_SIZES),
  format('quarter-plate', 'quarter plate, 3 1/4 x 4 1/4 in', 'plate', 82.55, 107.95, PLATE_SIZES),
];

export const formatNamed = (name: string): StandardFormat | undefined => formats.find((known) => known.name === name);

/** The names in the table that a free wording such as `5 x 7 in` or `half plate` may mean. */
export function formatsLike(wording: string): readonly string[] {
  const bare = (text: string) =>
    text
      .toLowerCase()
      .replaceAll('×', 'x')
      .replace(/[^a-z0-9.]/g, '');
  const asked = bare(wording);
  if (asked === '') return [];
  return formats
    .filter(({ name, title }) => bare(name).startsWith(asked) || bare(title) === asked || bare(title).startsWith(asked))
    .map(({ name }) => name);
}
