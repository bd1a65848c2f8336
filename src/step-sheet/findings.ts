import type { Finding } from '../model/finding.js';
import type { PrintProcess, SheetStep, TankFigures } from '../model/step-sheet.js';
import { duration, millilitres, plainNumber } from '../units/print.js';

/** A sheet before its findings are known. */
export interface Laid extends Pick<PrintProcess, 'timesFrom' | 'temperature' | 'carryOver'> {
  readonly steps: readonly SheetStep[];
  /** null where neither the file, nor a flag, nor a design says it. */
  readonly tank: { readonly [Figure in keyof TankFigures]: number | null };
}

type Look = (sheet: Laid) => readonly Finding[];

/** Of the time that counts from pouring in; less covered than that, and pouring and draining are what shapes the print (common practice, no source). */
const LEAST_COVERED = 0.5;
/** Part of a bath that is another; the maker's data sheet may allow more or less (common practice, no source). */
const MOST_THINNED = 0.1;
/** So much more than what covers the print is poured as fast, as far as anybody can tell (a choice of ours). */
const LARGE_POUR = 1.5;
/** A sum of typed seconds must not be over by its last bit. */
const ROUNDING = 1e-9;

const nth = (i: number, { name }: SheetStep): string => `Step ${i + 1}, ${name}`;

/** What a step must take at least, and what it should. */
const stepTime: Look = ({ steps, timesFrom, tank }) => {
  const pours = (tank.fillSeconds ?? 0) + (tank.drainSeconds ?? 0);
  return steps.flatMap((step, i): readonly Finding[] => {
    if (!step.poured || timesFrom === 'covered') return [];
    const about = `steps[${i}].time`;
    if (step.time < pours - ROUNDING)
      return [
        {
          rule: 'step-time',
          level: 'error',
          value: step.time,
          limit: pours,
          unit: 's',
          about,
          message: `${nth(i, step)}: it takes ${duration(step.time)} from pouring in, and filling and draining alone take ${duration(pours)}.`,
          hint: 'Thin the bath or cool it to the longer time that its maker gives, widen the spout, or count with timesFrom: covered where the maker counts so.',
        },
      ];
    const least = pours / (1 - LEAST_COVERED);
    if (step.time >= least - ROUNDING) return [];
    return [
      {
        rule: 'step-time',
        level: 'warning',
        value: step.time,
        limit: least,
        unit: 's',
        about,
        message: `${nth(i, step)}: of ${duration(step.time)} the whole print is covered for ${duration(step.time - pours)} only; it may come out uneven.`,
        hint: `Take a bath that works in ${duration(least)} or longer, or pour and drain faster.`,
      },
    ];
  });
};

/** Filling and draining that nobody has timed. */
const tankTimes: Look = ({ steps, tank: { fillSeconds, drainSeconds } }) => {
  const missing = [...(fillSeconds === null ? ['fill'] : []), ...(drainSeconds === null ? ['drain'] : [])];
  if (missing.length === 0 || !steps.some(({ poured }) => poured)) return [];
  const [first = ''] = missing;
  return [
    {
      rule: 'tank-times',
      level: 'warning',
      about: first,
      message: `Nobody says how long the tank takes to ${missing.join(' and to ')}: it is reckoned as no time at all.`,
      hint: `Time it with water and write ${missing.map((key) => `${key}: 8 s`).join(' and ')}, or what comes out; an open tray has 0 s.`,
    },
  ];
};

/** Filling and draining are known for what covers the print; more of it takes longer. */
const largePours: Look = ({ steps, tank: { fillSeconds, workingVolume } }) =>
  steps.flatMap((step, i): readonly Finding[] => {
    if (!step.poured || step.volume === null || workingVolume === null || !fillSeconds) return [];
    const times = step.volume / workingVolume;
    if (times <= LARGE_POUR + ROUNDING) return [];
    return [
      {
        rule: 'tank-times',
        level: 'note',
        value: step.volume,
        limit: LARGE_POUR * workingVolume,
        unit: 'ml',
        about: `steps[${i}].volume`,
        message: `${nth(i, step)}: filling in ${duration(fillSeconds)} is meant for ${millilitres(workingVolume)}; ${millilitres(step.volume)} take about ${duration(fillSeconds * times)}, and longer to drain.`,
        hint: 'Where it matters in this step, pour less, or begin to drain so much earlier.',
      },
    ];
  });

/** What is poured against what the tank holds, and what covers the print. */
const bathVolume: Look = ({ steps, tank: { workingVolume, fullVolume } }) =>
  steps.flatMap((step, i): readonly Finding[] => {
    if (!step.poured) return [];
    const { volume } = step;
    const finding = { rule: 'bath-volume', about: `steps[${i}].volume` } as const;
    if (volume === null)
      return [
        {
          ...finding,
          level: 'warning',
          message: `${nth(i, step)}: it is filled as the tank wants it, and nobody says how much that is. Its liquid is not counted.`,
          hint: 'Measure with water what covers a print in the tank as it lies, and write workingVolume: 120 ml, or what comes out.',
        },
      ];
    if (fullVolume !== null && volume > fullVolume)
      return [
        {
          ...finding,
          level: 'error',
          value: volume,
          limit: fullVolume,
          unit: 'ml',
          message: `${nth(i, step)}: ${millilitres(volume)} are poured, and the tank holds ${millilitres(fullVolume)}. It runs over.`,
          hint: 'Pour less, or measure fullVolume anew.',
        },
      ];
    if (workingVolume === null || volume >= workingVolume) return [];
    return [
      {
        ...finding,
        level: 'warning',
        value: volume,
        limit: workingVolume,
        unit: 'ml',
        message: `${nth(i, step)}: ${millilitres(volume)} are poured, and ${millilitres(workingVolume)} cover the print while the tank lies.`,
        hint: 'Pour more, or keep the tank moving so that every part of the print is wetted again and again.',
      },
    ];
  });

/** Baths without a temperature: their times say nothing. */
const bathTemperature: Look = ({ steps }) => {
  const without = steps.filter(({ poured, temperature }) => poured && temperature === null);
  const [first] = without;
  if (first === undefined) return [];
  const i = steps.indexOf(first);
  const others = without.length === 1 ? '' : ` Nor is that of ${without.length - 1} more.`;
  return [
    {
      rule: 'bath-temperature',
      level: 'warning',
      about: 'temperature',
      message: `${nth(i, first)}: its temperature is not given, and a time holds at one temperature alone.${others}`,
      hint: 'Write temperature: 24 C, for all of them or in the step, as the maker of the bath gives it.',
    },
  ];
};

/** White light before the print can stand it, and darkness after it. */
const lightOrder: Look = ({ steps }) => {
  const lit = steps.findIndex(({ light }) => light !== 'safe');
  const first = steps[lit];
  if (first === undefined) return [];
  const dark = steps.findIndex(({ light }, i) => i > lit && light === 'safe');
  const fixing = steps.findIndex(({ fixes }) => fixes);
  return [...litTooSoon(first, lit, fixing), ...darkTooLate(steps[dark], dark, `step ${lit + 1}, ${first.name}`)];
};

function litTooSoon(step: SheetStep, lit: number, fixing: number): readonly Finding[] {
  if (step.light === 'window' || fixing < lit) return [];
  const during = fixing === lit;
  return [
    {
      rule: 'light-order',
      level: during ? 'warning' : 'error',
      about: `steps[${lit}].light`,
      message: during
        ? `${nth(lit, step)}: white light is let in while the print is being fixed, and it is not fixed from the first moment on.`
        : `${nth(lit, step)}: white light is let in, and step ${fixing + 1} only fixes the print: it would darken all over.`,
      hint: during
        ? `Write light: any at step ${fixing + 2}, or part the step in two where its maker says from when light does no harm.`
        : `Write light: any at step ${fixing + 2} at the earliest; where the light is the second exposure of a reversal, write light: window.`,
    },
  ];
}

function darkTooLate(step: SheetStep | undefined, dark: number, lit: string): readonly Finding[] {
  if (step === undefined) return [];
  return [
    {
      rule: 'light-order',
      level: 'error',
      about: `steps[${dark}].light`,
      message: `${nth(dark, step)}: it asks for light: safe, and white light was let in at ${lit}. Darkness comes too late.`,
      hint: 'Put the steps in their order, or let light in later.',
    },
  ];
}

/** A bath that is used so often that much of it is another. */
const bathThinned: Look = ({ steps }) =>
  steps.flatMap((step, i): readonly Finding[] => {
    const thinned = step.need?.thinned ?? 0;
    if (step.serves === 1 || thinned <= MOST_THINNED) return [];
    const [percent, most] = [thinned, MOST_THINNED].map((part) => plainNumber(100 * part, 0));
    return [
      {
        rule: 'bath-thinned',
        level: 'note',
        value: 100 * thinned,
        limit: 100 * MOST_THINNED,
        unit: '%',
        about: `steps[${i}].reuse`,
        message: `${nth(i, step)}: with its last print ${percent} % of the bath is what was carried over from the bath before; ${most} % is a usual limit.`,
        hint: 'Let it serve fewer prints, drain longer, or rinse before it.',
      },
    ];
  });

const LOOKS: readonly Look[] = [stepTime, tankTimes, largePours, bathVolume, bathTemperature, lightOrder, bathThinned];

/** What is wrong with a sheet, or odd. */
export const findingsOf = (sheet: Laid): readonly Finding[] => LOOKS.flatMap((look) => look(sheet));
