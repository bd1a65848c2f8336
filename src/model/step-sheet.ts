import type { Finding } from './finding.js';

/*
 * How a print is taken through its baths. Times in s, volumes in ml, temperatures in °C.
 */

/** What a tank does to times and volumes, reckoned from its design or measured with water. */
export interface TankFigures {
  /** From the beginning of pouring until the bath is in. */
  readonly fillSeconds: number;
  /** From the beginning of draining until the tank is empty. */
  readonly drainSeconds: number;
  /** What covers the print while the tank lies; null where nobody says. */
  readonly workingVolume: number | null;
  /** What it holds when it is full; null where nobody says. */
  readonly fullVolume: number | null;
}

/**
 * From when to when the time of a bath counts.
 *
 * `pouring-in`: from the beginning of pouring until the tank is empty again; draining begins so much before the end.
 * `covered`: from when the bath is in until draining begins; filling and draining come on top.
 */
export const timeRules = ['pouring-in', 'covered'] as const;
export type TimeRule = (typeof timeRules)[number];

/**
 * What light the print stands in: `safe` that of the darkroom or none; `window` white light falls through the open slide
 * on purpose, the second exposure; `any` white light does no harm.
 */
export const stepLights = ['safe', 'window', 'any'] as const;
export type StepLight = (typeof stepLights)[number];

/** A step as the file has it. */
export interface ProcessStep {
  readonly name: string;
  readonly time: number;
  /** `tank`: as much as covers the print in the tank; `none`: nothing is poured. */
  readonly volume: number | 'tank' | 'none';
  /** null: that of the process. */
  readonly temperature: number | null;
  readonly agitation: string | null;
  /** null: as in the step before. */
  readonly light: StepLight | null;
  /** Whether light does no harm to a print that has been through this step. */
  readonly fixes: boolean;
  /** So many prints one bath serves. */
  readonly serves: number;
  readonly caution: string | null;
}

/** A process as the file has it. */
export interface PrintProcess {
  readonly name: string;
  readonly temperature: number | null;
  readonly prints: number;
  readonly timesFrom: TimeRule;
  /** What a print and its tank take along from one bath into the next. */
  readonly carryOver: number;
  /** null where the file does not say it. */
  readonly tank: { readonly [Figure in keyof TankFigures]: number | null };
  readonly steps: readonly ProcessStep[];
}

/** When things are done in a step, counted from the beginning of the first. */
export interface StepTimes {
  /** Of pouring; of the step where nothing is poured. */
  readonly beginsAt: number;
  /** The bath is in; null where nothing is poured, as for draining. */
  readonly coveredAt: number | null;
  readonly drainAt: number | null;
  /** The tank is empty, and the next step begins. */
  readonly endsAt: number;
}

/** What a bath takes for all prints. */
export interface BathNeed {
  /** Baths that are mixed or poured afresh. */
  readonly baths: number;
  /** For all prints; what is carried out of a bath that nothing was carried into is made up for. */
  readonly total: number;
  /** Part of the bath that is liquid of the bath before, once its last print is in it; null for the first bath. */
  readonly thinned: number | null;
}

export interface SheetStep extends StepTimes {
  readonly name: string;
  readonly time: number;
  /** Poured for one print; null where nothing is, and where nobody says how much. */
  readonly volume: number | null;
  /** Whether a bath is poured in this step. */
  readonly poured: boolean;
  readonly temperature: number | null;
  readonly agitation: string | null;
  readonly light: StepLight;
  readonly fixes: boolean;
  readonly serves: number;
  /** null where volume is. */
  readonly need: BathNeed | null;
  readonly caution: string | null;
}

/** The whole sheet, as `process --json` prints it. */
export interface StepSheet {
  readonly schema: 1;
  readonly name: string;
  readonly prints: number;
  readonly timesFrom: TimeRule;
  readonly temperature: number | null;
  readonly tank: TankFigures;
  readonly carryOver: number;
  readonly steps: readonly SheetStep[];
  /** Of one print. */
  readonly seconds: number;
  /** Of all baths for all prints; null where a volume is not known. */
  readonly liquid: number | null;
  readonly findings: readonly Finding[];
  readonly cautions: readonly string[];
}
