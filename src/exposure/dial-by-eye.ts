import type { Process } from '../model/sitting-log.js';
import { plainNumber, stopsInWords, tenth } from '../units/print.js';
import {
  chanceWithin,
  FLATTEST_SCALE,
  likeliestSetting,
  likelyError,
  likelyStretch,
  type SeenSheet,
  STEEPEST_SCALE,
} from './likely-error.js';
import { CLOSE, changeInWords, FIRST_STEP, type Step, sheetInWords, type TestedSheet } from './tested-sheet.js';

/** Half of what a judgement is rounded to, stops. */
const HALF_OF_HALF = 0.25;

/** So sure that it is close enough, and the dialling in ends: 19 times of 20. */
const SURE = 0.95;

/** Once two sheets are known the next may lie as far off as this, stops. */
const LATER_STEP = 3;

/** So sure that most would leave it. */
const USUAL = 0.9;

/** Sheets that count: older ones tell of paper and baths as they were, and a dozen leaves nothing open. */
const LATEST = 12;

/**
 * Sheets that are this likely to show a stop as more or less than is usual do not fit together. Of 8000 simulated pairs and
 * triples of sheets whose scale was usual, 1 of 200 came out so.
 */
const MISFIT = 0.4;

/** So many sheets that agree on a scale are believed, whatever it is: the paper is a hard or a soft one. */
const BELIEVED = 4;

/** Settings nearer together than this are the same to an eye, stops. */
const SAME = 0.25;

/** Less than this was not held back, stops. */
const WORTH_SAYING = 0.1;

/** Two deviations of the difference of two judgements, each good to a tenth of a stop, stops. */
const TWICE_NOISE = 0.3;

interface Seen extends SeenSheet {
  readonly sheet: number;
  readonly strip: number | null;
}

/** The next setting where the last sheet was judged by eye. Each sheet given has a result. */
export function dialByEye(process: Process, sheets: readonly TestedSheet[]): Step {
  const all = sheets.flatMap((sheet) => seenOn(process, sheet)).slice(-LATEST);
  const { kept, against } = agreeing(all);
  const last = kept.at(-1);
  const first = kept[0];
  if (last === undefined || first === undefined) throw new Error('No sheet was judged by eye.');
  const likely = likelyError(kept.map((seen) => ({ ...seen, given: seen.given - first.given })));
  const fits = likely.unexpected.share < MISFIT || kept.length >= BELIEVED;
  const at = last.given - first.given;
  const here = chanceWithin(likely, at, CLOSE);
  const told = [judgementOf(process, sheets.at(-1), last), ...contradiction(against, last)];
  const [least, most] = likelyStretch(likely, 0.9);
  const stretch = `Nine times in ten it then needs ${between(least - at, most - at)}: an eye judges in half stops, and eye and paper show a stop as 0.7 to 1.3 stops.`;
  if (here >= SURE && against === null && fits)
    return {
      given: last.given,
      change: 0,
      done: true,
      chance: here,
      reasoning: [
        ...told,
        `Done: ${sheetInWords(last.sheet, last.strip)} is within a third of a stop of right, as sure as ${inHundred(here)} in 100. Keep this setting.`,
      ],
    };
  const held = kept.length === 1 && last.strip === null;
  const reach = held ? FIRST_STEP : LATER_STEP;
  const next = likeliestSetting(likely, CLOSE, [at - reach, at + reach]);
  const free = held ? likeliestSetting(likely, CLOSE, [at - LATER_STEP, at + LATER_STEP]) : next;
  const change = next.given - at;
  const bounded = held && Math.abs(free.given - at) > FIRST_STEP + WORTH_SAYING;
  return {
    given: last.given + change,
    change,
    done: false,
    chance: fits ? next.chance : null,
    reasoning: [
      ...told,
      ...(fits ? [stretch] : [misfit(likely.unexpected.scale)]),
      ...(bounded ? [`One sheet alone moves the setting by no more than ${stopsInWords(FIRST_STEP)}.`] : []),
      `Next: ${changeInWords(change, last.sheet, last.strip)}${fits ? `; the chance that this is within a third of a stop is ${inHundred(next.chance)} in 100` : ''}.`,
      ...(fits && here >= USUAL ? ['It may do as it is; one more sheet makes sure.'] : []),
    ],
  };
}

/** What a judged sheet, or one strip of it, seems to ask for. */
function seenOn(process: Process, { sheet, given, strips, result }: TestedSheet): readonly Seen[] {
  if (result === null) return [];
  const { looks, by, strip } = result;
  const at = strip === null ? given : (strips[strip - 1] ?? given);
  const seen = { sheet, strip, given: at };
  if (looks !== null && looks !== 'right' && by !== null) {
    const more = (looks === 'too dark') === (process === 'reversal');
    const asked = more ? by : -by;
    return [{ ...seen, asks: [asked - HALF_OF_HALF, asked + HALF_OF_HALF] }];
  }
  if (looks !== 'right') return [];
  if (strip === null) return [{ ...seen, asks: [-HALF_OF_HALF, HALF_OF_HALF] }];
  const room = (next: number | undefined) =>
    next === undefined ? Number.POSITIVE_INFINITY : Math.max(HALF_OF_HALF, Math.abs(next - at) / 2);
  const sorted = [...strips].sort((a, b) => a - b);
  const place = sorted.indexOf(at);
  return [{ ...seen, asks: [-room(sorted[place - 1]), room(sorted[place + 1])] }];
}

const misfit = (scale: number): string =>
  `These sheets do not fit together: a stop would have to look like ${stopsInWords(tenth(scale))}, and eye and paper show it as 0.7 to 1.3. Something else may have changed, such as the bath, the pops that fired or the shutter. How sure the next setting is cannot be said; another sheet tells.`;

interface Contradiction {
  readonly earlier: Seen;
  /** What the later sheet did against all that exposure can do. */
  readonly what: string;
}

/**
 * The sheets from the last contradiction on. Two sheets contradict each other where no scale of eye and paper explains
 * both: what came before such a pair explains nothing.
 */
function agreeing(all: readonly Seen[]): { readonly kept: readonly Seen[]; readonly against: Contradiction | null } {
  let kept: readonly Seen[] = [];
  let against: Contradiction | null = null;
  for (const seen of all) {
    const found = kept.map((earlier) => contradictionOf(earlier, seen)).find((one) => one !== null) ?? null;
    kept = found === null ? [...kept, seen] : [seen];
    against = found;
  }
  return { kept, against };
}

function contradictionOf(earlier: Seen, later: Seen): Contradiction | null {
  const more = later.given - earlier.given;
  const [less, most] = more < 0 ? [later, earlier] : [earlier, later];
  const apart = Math.abs(more);
  // what is asked for falls as exposure rises, by the scale times as much
  const least = most.asks[0] - less.asks[1] - TWICE_NOISE;
  const falls = most.asks[1] - less.asks[0] + TWICE_NOISE;
  const size = stopsInWords(apart);
  const given = size === '0 stops' ? 'had the same exposure as' : `had ${size} ${more > 0 ? 'more' : 'less'} than`;
  const tell = (what: string): Contradiction => ({
    earlier,
    what: `${given} ${sheetInWords(earlier.sheet, earlier.strip).replace(/^S/, 's')} and ${what}`,
  });
  if (least > -FLATTEST_SCALE * apart) {
    if (apart < SAME) return tell('looks different');
    return tell(least + TWICE_NOISE >= 0 ? `asks for ${more > 0 ? 'more' : 'less'} still` : 'looks hardly different');
  }
  return falls < -STEEPEST_SCALE * apart ? tell('looks more different than that can make it') : null;
}

const contradiction = (against: Contradiction | null, last: Seen): readonly string[] =>
  against === null
    ? []
    : [
        `That contradicts what was seen before: ${sheetInWords(last.sheet, last.strip).replace(/^S/, 's')} ${against.what}. Something else has changed: look at the bath and its temperature, the pops that fired, the shutter, the side of the paper and whether it was fogged.`,
        'The next setting counts from the last sheet alone; the earlier ones are set aside.',
      ];

function judgementOf(process: Process, sheet: TestedSheet | undefined, last: Seen): string {
  const name = sheetInWords(last.sheet, last.strip);
  const look = sheet?.result?.looks ?? 'right';
  const by = sheet?.result?.by ?? 0;
  if (look === 'right') {
    if (last.strip === null) return `${name} looks right.`;
    const end = last.asks.some((side) => !Number.isFinite(side));
    return end
      ? `${name} looks best; it is the last at its end of the strip, so the right exposure may lie beyond it.`
      : `${name} looks best.`;
  }
  const more = (look === 'too dark') === (process === 'reversal');
  const because =
    process === 'reversal' ? 'by reversal, exposure makes lighter' : 'on a negative, exposure makes darker';
  return `${name} looks ${look} by ${stopsInWords(by)}: ${because}, so it asks for ${more ? 'more' : 'less'}.`;
}

/** Never "100 in 100": nothing here is that sure. */
const inHundred = (chance: number): number => Math.min(99, Math.floor(chance * 100));

/** `between 0.2 and 1.1 stops less`, `between 0.3 stop less and half a stop more`: to a tenth, which is all that it is good for. */
function between(least: number, most: number): string {
  const [from, to] = [tenth(least), tenth(most)];
  if (from === to) return signed(from);
  if (from * to <= 0) return `between ${signed(from)} and ${signed(to)}`;
  const [near, far] = from > 0 ? [from, to] : [to, from];
  return `between ${plainNumber(Math.abs(near), 1)} and ${signed(far)}`;
}

const signed = (change: number): string =>
  change === 0 ? 'no change' : `${stopsInWords(change)} ${change > 0 ? 'more' : 'less'}`;
