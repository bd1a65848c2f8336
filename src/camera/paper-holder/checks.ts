import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { holeRound, outlineOf, plateOf, sidesOf } from '../../assembly/measure.js';
import { spanOf, spansOf } from '../../assembly/span-of.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import type { PaperHolder } from './size.js';

/** The set-up in which the holder lies upright with a sheet of its own size. */
function setupOf({ name }: PaperHolder, { setups }: Build) {
  const found = setups.find(
    ({ holder, focusing, orientation, insert }) =>
      holder === name && !focusing && orientation === 'upright' && insert === undefined,
  );
  if (found === undefined) throw new Error(`the ${name} stands in no set-up`);
  return found;
}

/** holder-depth: the layers ahead of the film, as they are placed, against the depth that was asked for. */
export function holderDepth(own: PaperHolder, build: Build): readonly Finding[] {
  const { mark, name, asked, within, wood } = own;
  const setup = setupOf(own, build);
  const made = spanOf(build, `HL${mark}`, { setup }).z[1] - spanOf(build, `HF${mark}`, { setup }).z[0];
  const off = asked - made;
  const bare = made < asked ? 'more' : 'less';
  return unless(Math.abs(off) <= within + ROUNDING, {
    rule: 'holder-depth',
    level: 'error',
    value: made,
    limit: asked,
    unit: 'mm',
    about: `holders[${mark - 1}].filmDepth`,
    message: `Face, channel and lip of the ${name} come to ${mm(thousandth(made))}, and a film depth of ${mm(thousandth(asked))} was asked for: no plies and shims make up ${mm(thousandth(Math.abs(off)))} ${bare}, within ${mm(thousandth(within))}.`,
    hint:
      off < 0
        ? `Delete filmDepth, and the holder decides; or add a sheet of ${mm(thousandth(wood.ply.thickness + off))} to the stock for its face.`
        : `Delete filmDepth, and the holder decides; or add shims that make up ${mm(thousandth(off))}.`,
  });
}

const thousandth = (value: number): number => Math.round(value * 1000) / 1000;

/** Play of the sheet in its pocket that neither binds nor lets it off the lip, both sides together; common practice, no source. */
const SHEET_PLAY = { least: 0.4, most: 1.5 };
/** The lip holds the sheet by so much at least, each side, wherever it lies in its pocket; common practice, no source. */
const HELD = 1;

/** holder-sheet: the sheet drops into the pocket, and is held by the lip all round. */
export function holderSheet(own: PaperHolder, build: Build): readonly Finding[] {
  const { mark, name } = own;
  const setup = setupOf(own, build);
  const sheet = sidesOf(outlineOf(build, `sheet-${mark}`, { setup }).outline);
  const window = (id: string) => sidesOf(holeRound(plateOf(build, id, { setup })) ?? []);
  const [pocket, lip] = [window(`HP${mark}`), window(`HL${mark}`)];
  const play = { width: pocket.width - sheet.width, height: pocket.height - sheet.height };
  const [tight, loose] = [Math.min(play.width, play.height), Math.max(play.width, play.height)];
  const held = Math.min(sheet.width - lip.width - play.width, sheet.height - lip.height - play.height) / 2;
  const rule = { rule: 'holder-sheet', level: 'error', unit: 'mm' } as const;
  return [
    ...unless(tight >= SHEET_PLAY.least - ROUNDING && loose <= SHEET_PLAY.most + ROUNDING, {
      ...rule,
      value: tight < SHEET_PLAY.least ? tight : loose,
      limit: tight < SHEET_PLAY.least ? SHEET_PLAY.least : SHEET_PLAY.most,
      message: `A sheet has ${mm(tenth(tight < SHEET_PLAY.least ? tight : loose))} of play in the pocket of the ${name}: it ${tight < SHEET_PLAY.least ? 'buckles' : 'slips off its lip'}.`,
      hint: 'Cut the pocket 0.8 mm larger than the sheet, each way.',
    }),
    ...unless(held >= HELD - ROUNDING, {
      ...rule,
      value: held,
      limit: HELD,
      about: 'format.image',
      message: `The lip of the ${name} holds its sheet by ${mm(tenth(held))} where that lies at one side of the pocket: it falls through.`,
      hint: 'Write a smaller image, or take a larger sheet.',
    }),
  ];
}

/** Velvet pressed to less of its pile than this holds the slide fast, to more lets light by; common practice, no source. */
const PRESSED = { least: 0.2, most: 0.8 };

/** Of a slide that is drawn for an exposure so much stays in the velvet at least; common practice, no source. */
const STAYS = 8;

/** slide-velvet: the end of a drawn slide stays in the velvet, on both of its faces. */
export function slideStays(own: PaperHolder, build: Build): readonly Finding[] {
  const { mark, name } = own;
  const setup = setupOf(own, build);
  const slide = spanOf(build, `HS${mark}`, { setup });
  const laps = ['face', 'lip'].map((side) => {
    const [strip] = spansOf(build, `velvet-${side}-${mark}`, { setup });
    const touches = strip && (side === 'face' ? strip.z[1] - slide.z[0] : slide.z[1] - strip.z[0]) > -ROUNDING;
    return strip && touches ? Math.min(strip.y[1], slide.y[1]) - Math.max(strip.y[0], slide.y[0]) : 0;
  });
  const value = Math.max(0, Math.min(...laps));
  return unless(value >= STAYS - ROUNDING, {
    rule: 'slide-velvet',
    level: 'error',
    value,
    limit: STAYS,
    unit: 'mm',
    message: `Drawn for an exposure, the slide of the ${name} has velvet on both of its faces for ${mm(tenth(value))}: light runs in along it.`,
    hint: 'Lay velvet 12 mm wide across the open end on both sides of the slide, and stop the slide before it leaves it.',
  });
}

/** slide-velvet: the pile on both sides of the slide, against the room that channel and lip leave it. */
export function slideVelvet(own: PaperHolder, build: Build): readonly Finding[] {
  const { mark, name, pile } = own;
  const setup = setupOf(own, build);
  const [slide, lip, channel] = ['HS', 'HL', 'HC'].map((id) => spanOf(build, `${id}${mark}`, { setup }).z);
  if (!slide || !lip || !channel) throw new Error(`the ${name} has no slide`);
  const room = lip[1] - channel[0] - (slide[1] - slide[0]);
  const share = room / (2 * pile);
  const tight = share < PRESSED.least - ROUNDING;
  return unless(!tight && share <= PRESSED.most + ROUNDING, {
    rule: 'slide-velvet',
    level: 'error',
    value: room,
    limit: 2 * pile * (tight ? PRESSED.least : PRESSED.most),
    unit: 'mm',
    about: 'workshop.boards.velvet',
    message: `The velvet of the ${name} is pressed to ${plainNumber(share, 2)} of its pile beside the slide: ${tight ? 'the slide jams' : 'light comes past it'}.`,
    hint: `Use velvet with a pile of ${mm(tenth(room))} or so, and write it under workshop.boards; ${mm(thousandth(room))} are there for both sides.`,
  });
}

export const paperHolderChecks = [holderDepth, holderSheet, slideVelvet, slideStays];
