import { madeHolder } from '../standards/made-holder.js';
import { mm } from '../units/print.js';
import { completeFormat } from './complete-format.js';
import { windowTakes } from './design.js';
import type { Fault } from './explain.js';
import { imageFits } from './image-fits.js';
import { madeSizes } from './made-holder.js';
import type { Written, WrittenHolder } from './schema.js';
import { chamberOf, leastWidthOfTank, tankSizes } from './tank-sizes.js';

type Given = Pick<Written, 'format' | 'plywood' | 'workshop' | 'groundGlass' | 'holders'>;

/** What the construction of a holder cannot do that is cut from the sheet of the camera. */
export const madeHoldersFit = (written: Given): readonly Fault[] =>
  (written.holders ?? []).flatMap((holder, index) => (holder.make === true ? madeFits(written, holder, index) : []));

/** Sizes of its own construction may be written as well, but not others. */
const SAME = 0.1;
/** What is glued differs from its layers by no more than this; common practice, no source. */
const STRAYS = 1;
/** Wood that stands round the pocket of an insert; common practice, no source. */
const INSERT_RIM = 6;

function madeFits(
  { format, plywood, workshop, groundGlass }: Given,
  holder: WrittenHolder,
  index: number,
): readonly Fault[] {
  const faults: Fault[] = [];
  const fault = (key: keyof WrittenHolder, what: string, accepted: string) =>
    faults.push({ path: ['holders', index, key], at: 'value', what, accepted });
  const { image, width: sheetWidth, height: sheetHeight } = completeFormat(format);
  const { boards } = workshop;
  const ply = Math.max(...plywood.thickness);
  const given = { ply, boards, sheetWidth, imageLong: image.long, refractiveIndex: groundGlass.refractiveIndex };
  const { window } = holder;
  const sizesOf = (written: Partial<WrittenHolder>) =>
    window === undefined ? madeSizes({ ...given, ...written }) : tankSizes({ ...given, ...written, window });
  const made = sizesOf(holder);
  const own = sizesOf({});
  const { least: leastEnd } = madeHolder.closedEnd.value;
  const closedEnd = holder.closedEnd ?? leastEnd;
  const least = {
    width: window === undefined ? own.width : leastWidthOfTank(sheetWidth),
    length: image.long + closedEnd + madeHolder.openEnd.value.least,
  };
  if (window !== undefined && chamberOf(made) < ply + boards.lip - SAME)
    fault(
      'filmDepth',
      `Ahead of the chamber lie a face, the channel of its slide and the window; ${mm(made.filmDepth)} leaves no room for liquid.`,
      `Write filmDepth: ${mm(hundredth(own.filmDepth))} or so, or delete the key.`,
    );
  if (window === undefined && made.filmDepth < boards.channel + boards.lip + SAME)
    fault(
      'filmDepth',
      `Ahead of the film lie a face, the channel of its slide and its lip, ${mm(own.filmDepth)} together; ${mm(made.filmDepth)} leaves no face.`,
      `Write filmDepth: ${mm(own.filmDepth)}, or delete the key.`,
    );
  if (made.width < least.width - SAME)
    fault(
      'width',
      window === undefined
        ? `The pocket and ${mm(madeHolder.rim.value)} of wood on each side of it are wider.`
        : 'The pocket, the gasket round it and the screws outside the gasket are wider.',
      `Write width: ${mm(least.width)} or more, or delete the key.`,
    );
  if (made.length < least.length - SAME)
    fault(
      'length',
      `The image, the closed end of ${mm(closedEnd)} and the velvet at the open end are longer.`,
      `Write length: ${mm(least.length)} or more, or delete the key.`,
    );
  if (closedEnd < leastEnd - SAME)
    fault(
      'closedEnd',
      `The end of the slide and the land under the lid take ${mm(leastEnd)} beyond the image.`,
      `Write closedEnd: ${mm(leastEnd)} or more, or delete the key.`,
    );
  const held = Math.min(sheetWidth - image.short, sheetHeight - image.long) / 2;
  if (held < madeHolder.lipHolds.value)
    fault(
      'make',
      `The sheet lies behind a lip that is open over the image, which leaves ${mm(held)} of it at each side: it falls through.`,
      `Write format.image: [${mm(sheetWidth - 2 * madeHolder.lipHolds.value)}, ${mm(sheetHeight - 2 * madeHolder.lipHolds.value)}] or less.`,
    );
  for (const key of ['thickness', 'slideDepth'] as const) {
    const written = holder[key];
    if (written !== undefined && Math.abs(written - made[key]) > SAME)
      fault(key, `As it is made this comes to ${mm(hundredth(made[key]))}.`, 'Delete the key.');
  }
  if (boards.slide > boards.channel - LEAST_AIR)
    faults.push({
      path: ['workshop', 'boards', 'slide'],
      at: 'value',
      what: `A dark slide of ${mm(boards.slide)} jams in a channel of ${mm(boards.channel)}.`,
      accepted: `Measure both boards; the slide takes ${mm(LEAST_AIR)} of air.`,
    });
  const layers = made.filmDepth + windowTakes(window, groundGlass.refractiveIndex);
  if (holder.measured !== undefined && Math.abs(holder.measured - layers) > STRAYS)
    fault(
      'measured',
      `A holder whose layers come to ${mm(hundredth(layers))} does not measure ${mm(holder.measured)}.`,
      'Measure from its face to the lip, and the plywood and the boards again.',
    );
  const { insert } = holder;
  if (insert !== undefined) {
    faults.push(
      ...imageFits({ format: insert }).map((one) => ({
        ...one,
        path: ['holders', index, 'insert', ...one.path.slice(1)],
      })),
    );
    const smaller = completeFormat(insert);
    const rim = INSERT_RIM + madeHolder.pocketPlay.value;
    if (smaller.width + 2 * rim > sheetWidth || smaller.height + 2 * rim > sheetHeight)
      fault(
        'insert',
        `It leaves no frame between a sheet of ${mm(smaller.width)} by ${mm(smaller.height)} and the pocket of the holder.`,
        `Write a size of ${mm(sheetWidth - 2 * rim)} by ${mm(sheetHeight - 2 * rim)} or less.`,
      );
  }
  return faults;
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** A slide runs freely with so much; common practice, no source. */
const LEAST_AIR = 0.1;
