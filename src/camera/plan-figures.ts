import type { Build } from '../assembly/build.js';
import type { Design } from '../design/design.js';
import type { Lamination } from '../joinery/lamination.js';
import type { PlanDocument } from '../model/plan.js';
import { extensionFactor, extensionStops, subjectDistance, workingAperture } from '../optics/conjugates.js';
import { type AheadFigures, aheadOfLensFigures } from './ahead-figures.js';
import { type Camera, glassStandsOf } from './camera.js';
import { type Absent, absent, type Figure, type Formula, formula, keyed, reckoned, told } from './figure.js';
import { outsideOf } from './outside.js';
import { sagFigure } from './sag.js';
import type { GluedSpacer, Spacer } from './spacer/size.js';
import { tankPlan } from './tank-plan.js';

/** A document with each number as a figure that can be explained. */
type Figured<T> = T extends number
  ? Figure
  : T extends null
    ? Absent
    : T extends string | boolean
      ? T
      : { readonly [K in keyof T]: Figured<T[K]> };

/** Every figure of the plan under the name that it has there; parts, hardware and findings are lists of their own. */
export type PlanFigures = Figured<
  Pick<PlanDocument, 'optics' | 'slide' | 'lensBoard' | 'holders' | 'groundGlass' | 'spacers' | 'tailboard' | 'camera'>
> &
  AheadFigures;

export function planFigures(design: Design, camera: Camera, build: Build): PlanFigures {
  const { settingOut: rod, objects, figures } = camera;
  const { given, filmAtInfinity, filmAtFarthest, filmAtNearest, depths } = figures;
  const outside = outsideOf(build, rod.figures.travel);
  const firstDepth = standingDepth(design, camera, 0) ?? depths[0];
  return {
    optics: opticsFigures(camera),
    slide: {
      travel: rod.figures.travel,
      closest: rod.closest,
      farthest: rod.farthest,
      ...(rod.middle
        ? {
            middleBox: {
              length: rod.middle.length,
              inside: rod.middle.inside,
              outside: rod.middle.outside,
              rearRun: rod.middle.rearRun,
              ownRun: rod.middle.ownRun,
              overlapInFront: rod.middle.overlapInFront,
              overlapOfRear: rod.middle.overlapOfRear,
              overlapRequired: rod.middle.overlapRequired,
            },
          }
        : {}),
      frontBoxLength: rod.frontLength,
      rearBoxLength: rod.rearLength,
      frontBoxInside: rod.frontInside,
      rearBoxInside: rod.rearInside,
      frontBoxOutside: rod.frontOutside,
      rearBoxOutside: rod.rearOutside,
      clearance: rod.figures.clearance,
      overlapFarthest: rod.figures.overlapFarthest,
      overlapRequired: rod.overlapRequired,
      passesInsideRearBox: rod.passesInsideRearBox,
      panelDead: rod.panelDead,
      stackBehindBoxes: rod.stackBehindBoxes,
      slack: rod.figures.slack,
      reserve: rod.figures.reserve,
      reachableMagnification: rod.figures.reachable,
      reachableOtherSide: rod.figures.reachableOtherSide,
      limitedBy: rod.limitedBy,
    },
    lensBoard: {
      opening: objects.lensBoard.figures.opening,
      side: objects.lensBoard.figures.board,
      radiusBehindPanel: objects.lensBoard.figures.radiusBehindPanel,
      reachBehindPanel: objects.lensBoard.figures.reachBehindPanel,
    },
    holders: given.holders.map(({ name, filmDepth }, i) => {
      const depth = depths[i] ?? figures.glassDepth;
      const seat = (mark: string, where: string, film: Figure) =>
        reckoned(
          `s_${mark}${i + 1}`,
          `z of the holder seat with the ${name} in focus ${where}`,
          formula`${film} - ${depth}`,
        );
      const tank = tankPlan(objects, i + 1);
      const standing = standingDepth(design, camera, i);
      return {
        name,
        filmDepth,
        effectiveDepth: depth,
        ...(standing ? { standingDepth: standing } : {}),
        ...(tank ? { tank } : {}),
        seat: {
          infinity: seat('i', 'at infinity', filmAtInfinity),
          ...(filmAtFarthest ? { farthest: seat('f', 'at the farthest', filmAtFarthest) } : {}),
          nearest: seat('n', 'at the nearest', filmAtNearest),
        },
      };
    }),
    groundGlass: {
      effectiveDepth: figures.glassDepth,
      ...standingGlass(design, camera),
      packing: figures.packing,
      ...layersOf(design, camera, objects.groundGlassFrame.packing, figures.packing, 'packing of the ground glass'),
    },
    spacers: camera.spacers.map((s, i) => {
      const thickness = figures.spacers[i] ?? figures.packing;
      return {
        holder: s.holder,
        thickness,
        under: s.under,
        ...layersOf(design, camera, s.made, thickness, `spacer of the ${s.holder}`),
        ...(s.glued ? gluedFigures(design, camera, s, s.glued, i) : {}),
        tolerance: figures.tolerance,
      };
    }),
    tailboard: {
      length: rod.tailboardLength,
      width: rod.backSide,
      slot: objects.tailboard.figures.slot,
      axisHeight: rod.axisHeight,
      tripod: objects.tailboard.figures.tripod,
      indexOffsets: Object.fromEntries(
        given.holders.map(({ name }, i) => {
          const own = standingDepth(design, camera, i) ?? depths[i] ?? figures.glassDepth;
          const what = `index line of the ${name}, behind the first holder’s`;
          return [name, reckoned(`o_${i + 1}`, what, formula`${own} - ${firstDepth ?? own}`)];
        }),
      ),
      balance: { closest: camera.balance.figures.closest, farthest: camera.balance.figures.farthest },
      sag: sagFigure(camera.sag.sag, {
        ...camera.balance.figures,
        tripod: objects.tailboard.figures.tripod,
        doubler: objects.tailboard.doubler.side,
        width: rod.backSide,
        ply: given.ply,
        modulus: given.modulus,
      }),
    },
    camera: { ...outside, mass: camera.balance.figures.mass },
    ...aheadOfLensFigures(camera),
  };
}

const CONJUGATES = 'thin lens between its principal planes: a textbook of physics';
const WORKING = 'working f-number, as the encyclopedia has it';
const CIRCLE = 'growth of the image circle with the draw; published for process lenses';

function opticsFigures({ optics, settingOut: rod, figures }: Camera): PlanFigures['optics'] {
  const { given, diagonal, seat } = figures;
  const { focalLength: f, flangeDistance: V, maxAperture: N, pupilMagnification: P, nearest: m, farthest: far } = given;
  const circle = (symbol: string, what: string, at: 'infinity' | 'nearest') => {
    const { circle: own } = optics;
    const { coverage } = given;
    if (!own || !coverage) return absent(symbol, what, NO_COVERAGE);
    const by =
      at === 'infinity'
        ? () => formula`${coverage.diameter} / (1 + ${coverage.at} / ${P})`
        : () => formula`${coverage.diameter} (1 + ${m} / ${P}) / (1 + ${coverage.at} / ${P})`;
    return told(symbol, what, own[at], by, { source: CIRCLE });
  };
  const infinity = circle('C', 'image circle at infinity', 'infinity');
  const magnification = { unit: 'magnification', source: CIRCLE } as const;
  const covers = 'magnification from which the circle covers the image';
  const coversWithin = optics.coversFrom !== null && optics.coversFrom <= rod.reachable + 1e-9;
  return {
    focalLength: f,
    flangeDistance: V,
    maxAperture: N,
    imageDiagonal: diagonal,
    seatZ: seat,
    exitPupil: {
      z: told('z_p', 'z of the exit pupil', optics.pupil.z, () => formula`${seat} + ${V} - ${P} ${f}`),
      diameter: told('d_p', 'diameter of the exit pupil', optics.pupil.diameter, () => formula`${P} ${f} / ${N}`),
    },
    imageCircle: {
      infinity,
      nearest: circle('C_near', 'image circle at the nearest', 'nearest'),
      required: diagonal,
    },
    coversFrom:
      infinity.value === null
        ? absent('m_cover', covers, NO_COVERAGE)
        : optics.coversFrom === null || !coversWithin
          ? absent('m_cover', covers, 'within the reach of the slide the circle never covers the image')
          : told(
              'm_cover',
              covers,
              optics.coversFrom,
              () => formula`max(0, ${P} (${diagonal} / ${infinity} - 1))`,
              magnification,
            ),
    infinity: {
      filmDistance: reckoned('D_inf', 'lens seat to film at infinity: the flange distance', formula`${V}`),
    },
    ...(far.value > 0
      ? {
          farthest: {
            magnification: far,
            subjectDistance: told(
              'u_far',
              'subject at the farthest, from the front principal plane',
              subjectDistance(f.value, far.value),
              () => formula`${f} (1 + 1 / ${far})`,
              { source: CONJUGATES },
            ),
            filmDistance: reckoned('D_far', 'lens seat to film at the farthest', formula`${V} + ${f} ${far}`, {
              source: CONJUGATES,
            }),
          },
        }
      : {}),
    nearest: {
      magnification: m,
      subjectDistance:
        m.value > 0
          ? told(
              'u',
              'subject at the nearest, from the front principal plane',
              subjectDistance(f.value, m.value),
              () => formula`${f} (1 + 1 / ${m})`,
              { source: CONJUGATES },
            )
          : absent('u', 'subject at the nearest', 'the nearest focus asked for is infinity'),
      filmDistance: reckoned('D_near', 'lens seat to film at the nearest', formula`${V} + ${f} ${m}`, {
        source: CONJUGATES,
      }),
      extensionFactor: told(
        'X',
        'exposure at the nearest, over the metered one',
        extensionFactor(m.value, P.value),
        () => formula`(1 + ${m} / ${P})^2`,
        { unit: 'times', source: WORKING },
      ),
      stops: told(
        'x',
        'exposure at the nearest, in stops',
        extensionStops(m.value, P.value),
        () => formula`2 log2(1 + ${m} / ${P})`,
        { unit: 'stops', source: WORKING },
      ),
      effectiveAperture: told(
        'N_near',
        'f-number that the film sees at the nearest, wide open',
        workingAperture(N.value, m.value, P.value),
        () => formula`${N} (1 + ${m} / ${P})`,
        { unit: 'f-number', source: WORKING },
      ),
    },
  };
}

const NO_COVERAGE = 'the design does not give lens.coverage';

const LAMINATION = 'whole plies, then the fewest shims that come within half the tolerance';

/** What a thickness is made of, and what that leaves. */
function layersOf(design: Design, camera: Camera, made: Lamination, thickness: Figure, of: string) {
  const { ply } = camera.figures.given;
  const plies = made.plies.map((own): Figure => {
    const k = design.stock.findIndex((entry) => entry.thickness === own);
    return own === ply.value || k < 0
      ? ply
      : keyed(`t_${k + 1}`, 'thickness of a ply of other stock', `stock[${k}].thickness`, own);
  });
  const shims = made.shims.map((own): Figure => {
    const k = design.shims.indexOf(own);
    return keyed(`c_${k + 1}`, 'thickness of a shim', `shims[${k}]`, own);
  });
  return {
    plies,
    shims,
    remainder: told(
      'd',
      `what the plies and shims leave of the ${of}`,
      made.remainder,
      () => less(thickness, [...plies, ...shims]),
      {
        source: LAMINATION,
        within: 1e-6, // so little is nothing to whoever laminates
      },
    ),
  };
}

/** Where the glass stands that was measured, and where it should, if that is elsewhere. */
function standingGlass(design: Design, { spacers, objects, figures: { given, glassDepth: glassDrawn } }: Camera) {
  const { stands } = objects.groundGlassFrame;
  if (stands === null) return {};
  const standing = stands.measured === null ? {} : { standingDepth: glassStandsOf(design, given, glassDrawn) };
  if (!stands.isOff) return standing;
  const films = given.holders
    .flatMap(({ filmStands, filmDepth }, i) => (spacers[i]?.under === 'none' ? [filmStands ?? filmDepth] : []))
    .sort((a, b) => a.value - b.value);
  const [nearest = glassDrawn, farthest = nearest] = [films[0], films.at(-1)];
  const wantedDepth = reckoned(
    'T_w',
    'effective depth of the ground glass that the films on no spacer ask for, as they stand',
    nearest.value === farthest.value ? formula`${nearest}` : formula`(${nearest} + ${farthest}) / 2`,
  );
  return {
    ...standing,
    wantedDepth,
    add: stands.add.map((own) => shimAtHand(design, own)),
    takeOut: stands.takeOut.map((own) => shimAtHand(design, own)),
  };
}

const shimAtHand = ({ shims }: Design, own: number): Figure =>
  keyed('c', 'thickness of a shim', `shims[${shims.indexOf(own)}]`, own);

/** A spacer that was measured, and what it lacks between glass and film as they stand. */
function gluedFigures(
  design: Design,
  { figures: { given, glassDepth: glassDrawn } }: Camera,
  { holder, under }: Spacer,
  glued: GluedSpacer,
  i: number,
) {
  const glass = glassStandsOf(design, given, glassDrawn);
  const film = given.holders[i]?.filmStands ?? given.holders[i]?.filmDepth ?? glass;
  const measured = keyed(
    'S_m',
    `spacer of the ${holder}, as measured`,
    `holders[${i}].spacer.measured`,
    glued.measured,
  );
  return {
    measured,
    remainder: reckoned(
      'd',
      `what the glued spacer of the ${holder} lacks`,
      under === 'glass' ? formula`${film} - ${glass} - ${measured}` : formula`${glass} - ${film} - ${measured}`,
    ),
    add: glued.add.map((own) => shimAtHand(design, own)),
    takeOut: glued.takeOut.map((own) => shimAtHand(design, own)),
  };
}

/** Where the film lies of a holder that something was measured of, for the picture: its index line goes with it. */
function standingDepth(
  { groundGlass }: Design,
  { spacers, figures: { given, spacers: drawn } }: Camera,
  i: number,
): Figure | null {
  const { under, glued, holder } = spacers[i] ?? { under: 'none', glued: null, holder: '' };
  const own = given.holders[i];
  const film = own?.filmStands ?? own?.filmDepth;
  if (film === undefined) return null;
  if (under !== 'holder') return own?.filmStands ?? null;
  if (glued === null && !own?.filmStands && groundGlass.measured === undefined) return null;
  const spacer =
    glued === null
      ? drawn[i]
      : keyed('S_m', `spacer of the ${holder}, as measured`, `holders[${i}].spacer.measured`, glued.measured);
  return spacer === undefined
    ? null
    : reckoned(`T_s${i + 1}`, `film of the ${holder} on its spacer as it stands`, formula`${film} + ${spacer}`);
}

/** A thickness less its layers, those of a kind taken together. */
function less(thickness: Figure, layers: readonly Figure[]): Formula {
  const counts = new Map<string, { readonly layer: Figure; readonly count: number }>();
  for (const layer of layers) counts.set(layer.symbol, { layer, count: (counts.get(layer.symbol)?.count ?? 0) + 1 });
  const kinds = [...counts.values()];
  return formula(
    ['', ...kinds.map(({ count }) => (count === 1 ? ' - ' : ` - ${count} `)), ''],
    thickness,
    ...kinds.map(({ layer }) => layer),
  );
}
