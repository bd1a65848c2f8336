import type { Build } from '../assembly/build.js';
import { assemble, type Camera, markOut, type SetOutCamera, setOutCamera } from '../camera/camera.js';
import { outsideOf } from '../camera/outside.js';
import { magnificationAt } from '../design/consistency.js';
import type { Design } from '../design/design.js';
import { plausibility } from '../design/plausibility.js';
import { type TrialGiven, trialDesigns } from '../design/trial.js';
import { type SurveyedFormat, type SurveyedLens, usualAperture } from '../forms/lenses.js';
import { type Drawer, formatName } from '../forms/read-lenses.js';
import type { Finding } from '../model/finding.js';
import type {
  Assumption,
  CameraSurveyed,
  FormatSurveyed,
  LensSurveyed,
  ListSurveyed,
  SurveyDocument,
  SurveyPair,
  SurveyState,
} from '../model/survey.js';
import { subjectDistance } from '../optics/conjugates.js';
import { circleAt, coversFrom, diagonal } from '../optics/image-circle.js';
import { isMisread, measuredOn } from '../pipeline.js';
import { FILM_REBATE, formatNamed, formats as table } from '../standards/formats.js';
import { homeMadeHolder } from './home-made-holder.js';
import { woodOf } from './wood.js';

/** What is surveyed: nothing but records, so that it can be handed to another thread. */
export interface SurveyGiven {
  readonly drawers: readonly Drawer[];
  /** Those that are asked for; null: the formats of each list. */
  readonly formats: readonly SurveyedFormat[] | null;
}

export interface Survey {
  /** Pairs of lens and format. */
  readonly count: number;
  /** The pairs from one number up to another, in the order of the lists: lens by lens, each with its formats. */
  readonly pairs: (from: number, to: number) => readonly SurveyPair[];
  /** All of it, once every pair is known. */
  readonly document: (pairs: readonly SurveyPair[]) => SurveyDocument;
}

interface Trial {
  readonly drawer: Drawer;
  readonly lens: SurveyedLens;
  readonly format: SurveyedFormat;
}

/** Sets out the pairs of a survey; each is reckoned by itself, so any part of them can be done anywhere. */
export function prepareSurvey(given: SurveyGiven): Survey {
  const { drawers } = given;
  const complete = trialDesigns();
  const trials = trialsOf(given);
  return {
    count: trials.length,
    pairs: (from, to) => trials.slice(from, to).map((trial) => pairOf(trial, complete)),
    document: (pairs) => ({
      schema: 1,
      lists: drawers.map((drawer) => listSurveyed(drawer, ownTrials(trials, drawer), complete)),
      lenses: drawers.flatMap((drawer) => {
        const own = ownTrials(trials, drawer);
        return drawer.lenses.flatMap((lens) => {
          const first = own.find((trial) => trial.lens === lens);
          return first === undefined ? [] : [lensSurveyed(first, complete)];
        });
      }),
      formats: formatsOf(trials.map(({ format }) => format)),
      pairs,
    }),
  };
}

const trialsOf = ({ drawers, formats }: SurveyGiven): readonly Trial[] =>
  drawers.flatMap((drawer) => {
    const own = formats ?? drawer.formats ?? table.map(({ name }) => name);
    return drawer.lenses.flatMap((lens) => own.map((format): Trial => ({ drawer, lens, format })));
  });

/** The design that a pair was surveyed as, but for how near it focuses; null where it is no pair of these. */
export function surveyedDesign(given: SurveyGiven, { lens, format, mount }: SurveyPair): Design | null {
  const trial = trialsOf(given).find((one) => one.lens.name === lens && formatName(one.format) === format);
  return trial === undefined ? null : designOf(trial, trialDesigns(), mount.side);
}

/** A lens of the list with what nobody said filled in; its mount is still open. */
const lensOf = (lens: SurveyedLens) => ({
  ...lens,
  flangeDistance: lens.flangeDistance ?? lens.focalLength,
  maxAperture: lens.maxAperture ?? usualAperture(),
});

const ownTrials = (trials: readonly Trial[], drawer: Drawer): readonly Trial[] =>
  trials.filter((trial) => trial.drawer === drawer);

type Complete = ReturnType<typeof trialDesigns>;

/** Odd figures: the rules of the design that look for slips of the unit, and of one figure for another. */
const SLIPS: ReadonlySet<string> = new Set(['unit-plausible', 'flange-plausible']);

function lensSurveyed(trial: Trial, complete: Complete): LensSurveyed {
  const { name, focalLength, flangeDistance, maxAperture, coverage, pupilMagnification } = lensOf(trial.lens);
  const imageCircle = coverage ? circleAt(0, coverage, pupilMagnification) : null;
  const assumed = assumedOf(trial);
  const findings = plausibility(designOf(trial, complete, 'inside')).filter(
    (finding) => SLIPS.has(finding.rule) && isOfLens(finding) && !hangsOnAssumed(finding, assumed),
  );
  return { name, file: trial.drawer.file, focalLength, flangeDistance, maxAperture, imageCircle, findings };
}

const isOfLens = ({ about = '' }: Finding): boolean => about.startsWith('lens.');

/** Each said once, though every camera of the list has it. */
function listSurveyed(drawer: Drawer, own: readonly Trial[], complete: Complete): ListSurveyed {
  const said = new Map<string, Finding>();
  const seen = new Set<string>();
  for (const trial of own) {
    const format = formatName(trial.format);
    if (seen.has(format)) continue;
    seen.add(format);
    for (const finding of plausibility(designOf(trial, complete, 'inside')))
      if (SLIPS.has(finding.rule) && !isOfLens(finding) && !hangsOnAssumed(finding, assumedOf(trial)))
        said.set(finding.message, finding);
  }
  return { file: drawer.file, nearestAssumed: drawer.nearestAssumed, findings: [...said.values()] };
}

function formatsOf(formats: readonly SurveyedFormat[]): readonly FormatSurveyed[] {
  const named = new Map<string, FormatSurveyed>();
  for (const format of formats) if (!named.has(formatName(format))) named.set(formatName(format), sizesOf(format));
  const size = ({ image }: FormatSurveyed) => diagonal({ width: image.short, height: image.long });
  return [...named.values()].sort((a, b) => size(a) - size(b) || (a.name < b.name ? -1 : 1));
}

/** A format standing upright: nominal size and image. */
function sizesOf(format: SurveyedFormat): FormatSurveyed {
  const name = formatName(format);
  const known = typeof format === 'string' ? formatNamed(format) : undefined;
  const [w, h] = known ? known.nominal.value : typeof format === 'string' ? [0, 0] : [format.width, format.height];
  const [width, height] = [Math.min(w, h), Math.max(w, h)];
  const image = known?.image.value ??
    (typeof format === 'string' ? undefined : format.image) ?? [width - FILM_REBATE, height - FILM_REBATE];
  const imageAssumed = typeof format !== 'string' && format.image === undefined;
  return { name, width, height, image: { short: Math.min(...image), long: Math.max(...image) }, imageAssumed };
}

/** A lens that is held from one side, and how near a camera for it can focus. */
interface Held {
  readonly design: Design;
  readonly bench: SetOutCamera;
}

/** What one lens becomes for one format. */
function pairOf(trial: Trial, complete: Complete): SurveyPair {
  const { drawer, lens: written, format } = trial;
  const { image } = sizesOf(format);
  const name = formatName(format);
  const lens = lensOf(written);
  const { nearest: wanted } = drawer.focus;
  const withinFocus = 'subjectDistance' in wanted && wanted.subjectDistance <= lens.focalLength;
  const asked = withinFocus ? null : magnificationAt(wanted, lens.focalLength);
  const held = (side: Side): Held => {
    const design = designOf(trial, complete, side);
    return { design, bench: setOutCamera(design) };
  };
  const first = held(written.mount.side ?? 'inside');
  const { design, bench } =
    written.mount.side === undefined && first.bench.rod.reachableOtherSide > first.bench.rod.reachable
      ? held('front')
      : first;
  const { reachable } = bench.rod;
  const assumed = assumedOf(trial);
  const circle = lens.coverage ? circleAt(0, lens.coverage, lens.pupilMagnification) : null;
  const required = diagonal({ width: image.short, height: image.long });
  const covers = circle === null ? null : coversFrom(required, circle, lens.pupilMagnification);
  const { farthest } = design.focus;
  const closes = reachable > farthest;
  const nearest = asked === null ? reachable : Math.min(asked, reachable);
  const state = stateOf({ closes, covers, farthest, reachable });
  const told = {
    lens: lens.name,
    format: name,
    state,
    coversFrom: covers,
    asked,
    mount: { by: design.lens.mount.by, side: design.lens.mount.side },
    holders: design.holders.map((holder) => holder.name),
    assumed,
  };
  if (!closes) return { ...told, reachable: null, nearest: null, subjectDistance: null, use: null, camera: null };
  const from = Math.max(farthest, covers ?? 0);
  return {
    ...told,
    reachable,
    nearest,
    subjectDistance: subjectDistance(lens.focalLength, nearest),
    use: covers === null || from > nearest ? null : { from, to: nearest },
    // where it reaches what is asked the rod is set out already
    camera: cameraOf(nearest === asked ? { design, bench } : setOutFor(design, nearest), { state, assumed }),
  };
}

type Side = 'front' | 'inside';

/** The design of a pair, with the home-made holder where there is none for its format. */
function designOf({ drawer, lens: written, format }: Trial, complete: Complete, side: Side): Design {
  const { focus, plywood, groundGlass, workshop } = drawer;
  const lens = lensOf(written);
  const own = ownHolders(drawer, format);
  const { width, image } = sizesOf(format);
  const by = lens.mount.by ?? (lens.flange === undefined ? 'clamp' : 'flange');
  const given: TrialGiven = {
    name: lens.name,
    format,
    lens: { ...lens, mount: { ...lens.mount, by, side: lens.mount.side ?? side } },
    focus,
    plywood,
    groundGlass,
    holders:
      own.length > 0
        ? [...own]
        : [
            homeMadeHolder({
              ply: Math.max(...plywood.thickness),
              boards: workshop.boards,
              width,
              imageLong: image.long,
            }),
          ],
    workshop,
  };
  return complete(given, written.barrel === undefined ? ['lens.barrel'] : []);
}

const ownHolders = ({ holders = [] }: Drawer, format: SurveyedFormat) =>
  holders.filter((holder) => holder.format === formatName(format));

const assumedOf = ({ drawer, lens, format }: Trial): readonly Assumption[] => [
  ...(lens.flangeDistance === undefined ? (['flangeDistance'] as const) : []),
  ...(lens.maxAperture === undefined ? (['maxAperture'] as const) : []),
  ...(lens.barrel === undefined ? (['barrel'] as const) : []),
  ...(ownHolders(drawer, format).length === 0 ? (['holder'] as const) : []),
];

interface Judged {
  readonly closes: boolean;
  readonly covers: number | null;
  readonly farthest: number;
  readonly reachable: number;
}

/** So little is no magnification: what is asked for at the very end of the reach is within it. */
const ROUNDING = 1e-9;

function stateOf({ closes, covers, farthest, reachable }: Judged): SurveyState {
  if (!closes) return 'does-not-close';
  if (covers === null) return 'coverage-unknown';
  if (covers <= farthest) return 'covers';
  return covers <= reachable + ROUNDING ? 'covers-from' : 'never-covers';
}

function setOutFor(design: Design, nearest: number): Held {
  const nearer = { ...design, focus: { ...design.focus, nearest } };
  return { design: nearer, bench: setOutCamera(nearer) };
}

type Looked = Pick<SurveyPair, 'state' | 'assumed'>;

function cameraOf({ design, bench }: Held, { state, assumed }: Looked): CameraSurveyed {
  const camera = markOut(design, bench);
  const build = assemble(camera);
  const outside = outsideOf(build, camera.settingOut.figures.travel);
  return {
    travel: camera.settingOut.travel,
    width: outside.width.value,
    height: outside.height.value,
    depthClosed: outside.depthClosed.value,
    depthOpen: outside.depthOpen.value,
    mass: camera.balance.massKg,
    ...woodOf(build, design),
    ...(state === 'never-covers'
      ? { broken: null, brokenAsAssumed: null }
      : brokenIn(againstCamera(design, camera, build, assumed), assumed)),
  };
}

/** As in a plan, but that what nobody said is told among the assumptions already. */
function againstCamera(
  design: Design,
  camera: Camera,
  build: Build,
  assumed: readonly Assumption[],
): readonly Finding[] {
  const typed = plausibility(design).filter((finding) => !hangsOnAssumed(finding, assumed));
  return isMisread(typed) ? typed : [...typed, ...measuredOn(design, camera, build)];
}

function brokenIn(
  findings: readonly Finding[],
  assumed: readonly Assumption[],
): Pick<CameraSurveyed, 'broken' | 'brokenAsAssumed'> {
  const errors = findings.filter(({ rule, level }) => level === 'error' && rule !== 'lens-covers');
  const sure = new Set(errors.flatMap((finding) => (hangsOnAssumed(finding, assumed) ? [] : [finding.rule])));
  const open = new Set(errors.flatMap(({ rule }) => (sure.has(rule) ? [] : [rule])));
  return { broken: [...sure], brokenAsAssumed: [...open] };
}

/** Looked at on the body of the lens, whatever key would cure them: what the clamp holds, and what the light passes. */
const ON_THE_BARREL: ReadonlySet<string> = new Set(['clamp-grip', 'cone-clear']);

/** Whether a finding is about something that nobody said, and that was only taken for the lens. */
function hangsOnAssumed({ rule, about = '' }: Finding, assumed: readonly Assumption[]): boolean {
  return assumed.some((key) => {
    if (key === 'barrel')
      return about.startsWith('lens.barrel') || (ON_THE_BARREL.has(rule) && !about.startsWith('workshop.'));
    return about.startsWith(key === 'holder' ? 'holders' : `lens.${key}`);
  });
}
