import { type Block, words } from '../paper/blocks.js';
import { figure } from '../paper/figure.js';
import { caution, INK } from '../paper/prose.js';
import { TEXT_WIDTH } from '../paper/sheet-size.js';
import { table } from '../paper/table.js';
import { fNumber, kg, magnification, metres, mm, plainNumber, tenth } from '../units/print.js';
import type { BookGiven } from './given.js';
import { AT_THE_CAMERA_THAT_STANDS, otherLinesText } from './standing-camera.js';

const NAME = 15;
const TITLE = 5;

/** What the book is of, at a glance. */
export function cover(given: BookGiven): readonly Block[] {
  const { plan, since } = given;
  const large = (text: string, size: number): Block =>
    words(text, { size, colour: INK, width: TEXT_WIDTH, bold: true });
  return [
    { ...large(plan.name, NAME), above: 0, entry: { title: `${plan.name}: what it is`, level: 0 } },
    { ...words('A sliding-box camera to build', { size: TITLE, colour: INK, width: TEXT_WIDTH }), above: 1 },
    {
      ...words(revisionText(given), { size: 3.6, colour: INK, width: TEXT_WIDTH }),
      above: 3,
    },
    ...(since === null || since.otherLines.length === 0
      ? []
      : [caution(otherLinesText(since.otherLines, since.revision))]),
    ...plan.despite.map((rule): Block => ({ ...large(`Built despite ${rule}`, TITLE), above: 2 })),
    { ...figure(given.cover, { caption: '' }), above: 6 },
    ...table(
      [{ title: 'What it is', width: 46 }, { title: '' }],
      factsOf(given).map(([what, value]) => [what, value]),
    ),
  ];
}

function revisionText({ plan: { revision }, since }: BookGiven): string {
  if (since === null) return `Revision ${revision}. Parts of another revision do not fit.`;
  return `Revision ${revision}, built from ${since.name}, revision ${since.revision}, which stands already. Parts that are kept bear the old revision, and fit; the chapter “${AT_THE_CAMERA_THAT_STANDS}” names them. No others do.`;
}

function factsOf({ plan, lens, format, image }: BookGiven): readonly (readonly [string, string])[] {
  const { optics, camera, slide, holders } = plan;
  const { nearest, farthest } = optics;
  const across = (length: number) => plainNumber(tenth(length));
  const near =
    nearest.subjectDistance === null
      ? 'infinity only'
      : `${farthest ? `${magnification(farthest.magnification)}, a subject ${metres(farthest.subjectDistance)} before the lens,` : 'infinity'} to ${magnification(nearest.magnification)}, a subject ${metres(nearest.subjectDistance)} before the lens`;
  return [
    ['Lens', `${lens}: ${mm(optics.focalLength)}, widest stop ${fNumber(optics.maxAperture)}`],
    ['Picture', `${format}; the film receives ${across(image.short)} × ${across(image.long)} mm`],
    ['Focus', `${near}; the back slides ${mm(tenth(slide.travel))}`],
    ['Holders', holders.map(({ name }) => name).join(', ')],
    [
      'Size, closed',
      `${across(camera.width)} wide, ${across(camera.height)} high, ${across(camera.depthClosed)} mm deep without lens and accessories; ${
        across(camera.depthOpen) === across(camera.depthClosed)
          ? 'drawn out the same, for the tailboard is as long'
          : `open ${across(camera.depthOpen)} mm`
      }`,
    ],
    ['Mass', `${kg(Math.round(camera.mass * 100) / 100)} with lens and ground glass, without a holder`],
  ];
}
