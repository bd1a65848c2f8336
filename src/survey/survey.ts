import { assemble, markOut, type SetOutCamera, setOutCamera } from '../camera/camera.js';
import { outsideOf } from '../camera/outside.js';
import { magnificationAt } from '../design/consistency.js';
import type { Design } from '../design/design.js';
import { type TrialGiven, trialDesigns } from '../design/trial.js';
import { type SurveyedFormat, type SurveyedLens, usualAperture } from '../forms/lenses.js';
import { type Drawer, formatName } from '../forms/read-lenses.js';
import type { Finding } from '../model/finding.js';
import type {
  Assumption,
  FormatSurveyed,
  LensSurveyed,
  SurveyDocument,
  SurveyPair,
  SurveyState,
} from '../model/survey.js';
import { subjectDistance } from '../optics/conjugates.js';
import { circleAt, coversFrom, diagonal } from '../optics/image-circle.js';
import { measuredOn } from '../pipeline.js';
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
export function prepareSurvey({ drawers, formats }: SurveyGiven): Survey {
  const complete = trialDesigns();
  const trials = drawers.flatMap((drawer) => {
    const own = formats ?? drawer.formats ?? table.map(({ name }) => name);
    return drawer.lenses.flatMap((lens) => own.map((format): Trial => ({ drawer, lens, format })));
  });
  return {
    count: trials.length,
    pairs: (from, to) => trials.slice(from, to).map((trial) => pairOf(trial, complete)),
    document: (pairs) => ({
      schema: 1,
      lenses: drawers.flatMap(({ file, lenses }) => lenses.map((lens) => lensSurveyed(lens, file))),
      formats: formatsOf(trials.map(({ format }) => format)),
      pairs,
    }),
  };
}

/** A lens of the list with what nobody said filled in; its mount is still open. */
const lensOf = (lens: SurveyedLens) => ({
  ...lens,
  flangeDistance: lens.flangeDistance ?? lens.focalLength,
  maxAperture: lens.maxAperture ?? usualAperture(),
});

function lensSurveyed(written: SurveyedLens, file: string): LensSurveyed {
  const { name, focalLength, flangeDistance, maxAperture, coverage, pupilMagnification } = lensOf(written);
  const imageCircle = coverage ? circleAt(0, coverage, pupilMagnification) : null;
  return { name, file, focalLength, flangeDistance, maxAperture, imageCircle };
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
  return { name, width, height, image: { short: Math.min(...image), long: Math.max(...image) } };
}

/** A lens that is held from one side, and how near a camera for it can focus. */
interface Held {
  readonly design: Design;
  readonly bench: SetOutCamera;
}

/** What one lens becomes for one format. */
function pairOf({ drawer, lens: written, format }: Trial, complete: ReturnType<typeof trialDesigns>): SurveyPair {
  const { focus, plywood, groundGlass, workshop } = drawer;
  const { width, image } = sizesOf(format);
  const name = formatName(format);
  const lens = lensOf(written);
  const ply = Math.max(...plywood.thickness);
  const own = drawer.holders?.filter((holder) => holder.format === name) ?? [];
  const holders = own.length > 0 ? own : [homeMadeHolder(ply, width, image.long)];
  const by = lens.mount.by ?? (lens.flange === undefined ? 'clamp' : 'flange');
  const { nearest: wanted } = focus;
  const withinFocus = 'subjectDistance' in wanted && wanted.subjectDistance <= lens.focalLength;
  const asked = withinFocus ? null : magnificationAt(wanted, lens.focalLength);
  const held = (side: 'front' | 'inside'): Held => {
    const given: TrialGiven = {
      name: lens.name,
      format,
      lens: { ...lens, mount: { ...lens.mount, by, side } },
      focus,
      plywood,
      groundGlass,
      holders: [...holders],
      workshop,
    };
    const design = complete(given, written.barrel === undefined ? ['lens.barrel'] : []);
    return { design, bench: setOutCamera(design) };
  };
  const sides = lens.mount.side === undefined ? (['inside', 'front'] as const) : [lens.mount.side];
  const { design, bench } = sides
    .map(held)
    .reduce((best, one) => (one.bench.rod.reachable > best.bench.rod.reachable ? one : best));
  const { reachable } = bench.rod;
  const assumed: readonly Assumption[] = [
    ...(written.flangeDistance === undefined ? (['flangeDistance'] as const) : []),
    ...(written.maxAperture === undefined ? (['maxAperture'] as const) : []),
    ...(written.barrel === undefined ? (['barrel'] as const) : []),
    ...(own.length === 0 ? (['holder'] as const) : []),
  ];
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
    mount: { by, side: design.lens.mount.side },
    holders: holders.map((holder) => holder.name),
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
    camera: nearest === asked ? cameraOf(design, bench) : cameraOf(...setOutFor(design, nearest)),
  };
}

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

function setOutFor(design: Design, nearest: number): readonly [Design, SetOutCamera] {
  const nearer = { ...design, focus: { ...design.focus, nearest } };
  return [nearer, setOutCamera(nearer)];
}

function cameraOf(design: Design, bench: SetOutCamera): NonNullable<SurveyPair['camera']> {
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
    broken: brokenIn(measuredOn(design, camera, build)),
  };
}

const brokenIn = (findings: readonly Finding[]): readonly string[] => [
  ...new Set(findings.flatMap(({ rule, level }) => (level === 'error' && rule !== 'lens-covers' ? [rule] : []))),
];
