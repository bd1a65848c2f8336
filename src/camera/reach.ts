import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';
import { kg, magnification, mm, plainNumber } from '../units/print.js';
import type { Camera } from './camera.js';
import { ROUNDING, unless } from './unless.js';

/**
 * Rules of the whole that need no solid geometry: what the lens covers, what the slide reaches, what the foot carries.
 * Each names value, limit, unit and the cheapest cure.
 */
export const checkWhole = (design: Design, camera: Camera): readonly Finding[] =>
  rules.flatMap((rule) => rule(design, camera));

type Rule = (design: Design, camera: Camera) => readonly Finding[];

const lensCovers: Rule = ({ format }, { optics, settingOut }) => {
  const { circle, diagonal, coversFrom } = optics;
  if (!circle) return [];
  if (circle.nearest < diagonal - ROUNDING)
    return [
      {
        rule: 'lens-covers',
        level: 'error',
        value: circle.nearest,
        limit: diagonal,
        unit: 'mm',
        about: 'lens.coverage',
        message: `At the nearest focus the lens covers ${mm(round(circle.nearest))}; the diagonal of the ${format.name} image is ${mm(round(diagonal))}: dark corners everywhere.`,
        hint: `It would cover from ${magnification(coversFrom ?? 0)}. Choose a smaller format.`,
      },
    ];
  return unless(circle.infinity >= diagonal - ROUNDING, {
    rule: 'lens-covers',
    level: 'warning',
    value: circle.infinity,
    limit: diagonal,
    unit: 'mm',
    about: 'format',
    message: `At infinity the lens covers ${mm(round(circle.infinity))} of ${mm(round(diagonal))}: dark corners in landscapes. It covers from ${magnification(coversFrom ?? 0)}, which the slide ${(coversFrom ?? 0) <= settingOut.reachable ? 'reaches' : 'does not reach'}.`,
    hint: 'Use it for portraits, or mask the picture.',
  });
};

const cornerFalloff: Rule = ({ lens }, { optics }) => {
  const tangent = optics.diagonal / 2 / lens.focalLength;
  const lost = 2 * Math.log2(1 + tangent * tangent);
  return unless(lost <= 1, {
    rule: 'corner-falloff',
    level: 'note',
    value: lost,
    limit: 1,
    unit: 'stops',
    message: `At infinity the corners get ${plainNumber(lost, 1)} stops less light than the middle (cos⁴ of half the field).`,
  });
};

const reachNear: Rule = ({ focus, lens }, { settingOut: rod }) => {
  if (rod.slack >= -ROUNDING * lens.focalLength) return [];
  const missing = -rod.slack;
  const other = lens.mount.side === 'inside' ? 'from the front' : 'from inside';
  const each = (mmGained: number) => magnification(rod.reachable + mmGained / lens.focalLength);
  return [
    {
      rule: 'reach-near',
      level: 'error',
      value: rod.reachable,
      limit: focus.nearest,
      unit: 'magnification',
      about: 'focus.nearest',
      message:
        `${magnification(rod.reachable)} is the nearest that two boxes reach with every holder; ${magnification(focus.nearest)} asks for ${mm(round(missing))} more. ` +
        `A millimetre off the thickest holder’s film depth or off the run past infinity gains two (${each(2)}); a millimetre off the overlap, the gaps or the depth behind the panel gains one (${each(1)}). ` +
        `Mounted ${other} the lens would reach ${magnification(Math.max(0, rod.reachableOtherSide))}.`,
      hint:
        rod.reachableOtherSide >= focus.nearest - ROUNDING
          ? `Mount the lens ${other}.`
          : rod.reachable > 0
            ? `Write nearest: ${magnification(Math.floor(rod.reachable * 1000) / 1000)}, or make the thickest holder ${mm(Math.ceil(missing * 5) / 10)} shallower.`
            : 'The boxes do not even close on infinity: use thinner holders, or a lens with a longer flange distance.',
    },
  ];
};

const reachInfinity: Rule = ({ focus }, { settingOut: rod, optics, holders }) =>
  focus.farthest > 0
    ? []
    : holders.flatMap((h) => {
        const limit = optics.filmAtInfinity - h.effectiveDepth;
        return unless(rod.closest.value + rod.pastInfinity <= limit + ROUNDING, {
          rule: 'reach-infinity',
          level: 'error',
          value: rod.closest.value + rod.pastInfinity,
          limit,
          unit: 'mm',
          message: `With ${h.name} the slide stops short of infinity by ${mm(rod.closest.value + rod.pastInfinity - limit)}.`,
        });
      });

const reachReserve: Rule = ({ lens, focus }, { settingOut: rod }) => [
  ...unless(
    0.03 * lens.focalLength * focus.nearest <= rod.reserve + ROUNDING ||
      0.03 * lens.focalLength <= rod.reserve + ROUNDING,
    {
      rule: 'reach-reserve',
      level: 'warning',
      value: rod.reserve,
      limit: 0.03 * lens.focalLength,
      unit: 'mm',
      about: 'focus.nearest',
      message: `An engraved focal length is good to a few per cent. Past the nearest focus the slide has ${mm(round(rod.reserve))} left; 3 % of the focal length is ${mm(round(0.03 * lens.focalLength))}.`,
      hint: 'Ask for a little less magnification, or measure the lens before cutting.',
    },
  ),
  ...unless(focus.farthest > 0 || 0.01 * lens.flangeDistance <= focus.pastInfinity + ROUNDING, {
    rule: 'reach-reserve',
    level: 'warning',
    value: focus.pastInfinity,
    limit: 0.01 * lens.flangeDistance,
    unit: 'mm',
    about: 'focus.pastInfinity',
    message: `If the flange distance is 1 % shorter than you wrote, infinity is lost: the slide runs ${mm(focus.pastInfinity)} past it, 1 % is ${mm(round(0.01 * lens.flangeDistance))}.`,
    hint: `Write pastInfinity: ${mm(Math.ceil(0.01 * lens.flangeDistance * 2) / 2)}.`,
  }),
];

const boxesClose: Rule = (_design, { settingOut: rod }) => {
  const standard = rod.closest.value - rod.stackBehindBoxes.value;
  const panel = standard - rod.rearLength.value;
  const gap = standard - rod.frontLength.value;
  return [
    ...unless(panel >= rod.panelDead.value - ROUNDING, {
      rule: 'box-meets-panel',
      level: 'error',
      value: panel,
      limit: rod.panelDead.value,
      unit: 'mm',
      message: `At the closest position the rear box stands ${mm(panel)} behind the panel; ${mm(rod.panelDead.value)} are needed.`,
    }),
    ...unless(gap >= rod.backGap - ROUNDING, {
      rule: 'back-meets-box',
      level: 'error',
      value: gap,
      limit: rod.backGap,
      unit: 'mm',
      message: `The standard meets the front box ${mm(gap)} short of infinity.`,
    }),
    ...unless(rod.overlapFarthest >= rod.overlapRequired.value - ROUNDING, {
      rule: 'overlap-far',
      level: 'error',
      value: rod.overlapFarthest,
      limit: rod.overlapRequired.value,
      unit: 'mm',
      about: 'focus.nearest',
      message: `At full draw the boxes overlap by ${mm(round(rod.overlapFarthest))}; ${mm(round(rod.overlapRequired.value))} are needed (${rod.overlapRequired.because}).`,
      hint: 'See reach-near.',
    }),
    ...unless(rod.rearLength.value >= rod.overlapRequired.value && rod.frontLength.value >= rod.overlapRequired.value, {
      rule: 'box-meets-panel',
      level: 'error',
      value: Math.min(rod.rearLength.value, rod.frontLength.value),
      limit: rod.overlapRequired.value,
      unit: 'mm',
      about: 'lens.flangeDistance',
      message: `There is room for a box of ${mm(round(rod.rearLength.value))} between panel and standard, less than the boxes must overlap.`,
      hint: 'This lens stands too near to the film for two boxes: a thinner holder, or the other side of the board.',
    }),
  ];
};

const lensPassesBox: Rule = ({ lens }, { settingOut: rod, objects }) => {
  const radius = objects.lensBoard.claims.radiusBehindPanel;
  return unless(rod.passesInsideRearBox, {
    rule: 'lens-passes-box',
    level: 'warning',
    value: radius + 3,
    limit: rod.rearInside.value / 2,
    unit: 'mm',
    about: 'lens.mount',
    message: `The lens and its mount reach ${mm(round(radius))} from the axis, too wide to pass inside the rear box: ${mm(round(rod.panelDead.value))} behind the panel are lost to it.`,
    hint:
      lens.mount.side === 'inside'
        ? 'Mounted from the front it would stand outside the box.'
        : 'A narrower clamp or ring would win that reach back.',
  });
};

/** The bundle from the barrel's rear rim to the film's edges, where ring and standard stand round it, at both ends of the travel. */
const coneClear: Rule = ({ format }, { settingOut: rod, optics, holders }) => {
  const rim = optics.rearRim;
  const room = (short: boolean) => {
    const image = (short ? format.image.short : format.image.long) / 2;
    return holders.flatMap((h) =>
      [rod.closest.value, rod.farthest.value].map((seat) => {
        const film = seat + h.effectiveDepth;
        const z = seat - 2 * rod.ply;
        const half = z <= rim.z ? rim.radius : rim.radius + ((image - rim.radius) * (z - rim.z)) / (film - rim.z);
        return image + rod.openingMargin - half;
      }),
    );
  };
  const value = Math.min(...room(true), ...room(false));
  return unless(value >= 2 - ROUNDING, {
    rule: 'cone-clear',
    level: value < 0 ? 'error' : 'warning',
    value,
    limit: value < 0 ? 0 : 2,
    unit: 'mm',
    about: 'lens.barrel.rearDiameter',
    message: `The light from the lens passes the back’s opening with ${mm(round(value))} to spare: ${value < 0 ? 'straight dark edges' : 'little room for a frame that sits askew'}.`,
    hint: 'The lens is wide for this format: stop it down, or choose the larger format.',
  });
};

const wallFlare: Rule = ({ format }, { settingOut: rod }) => {
  const value = (rod.rearInside.value - format.image.long) / 2;
  return unless(value >= 6 - ROUNDING, {
    rule: 'wall-flare',
    level: 'warning',
    value,
    limit: 6,
    unit: 'mm',
    message: `The image runs ${mm(value)} along the box’s walls: they veil the shadows.`,
  });
};

const floorScrape: Rule = ({ workshop }, { settingOut: rod }) => {
  const value = rod.clearance - (workshop.railPlay * (rod.rearLength.value + rod.stackBehindBoxes.value)) / SOLE;
  return unless(value >= 0.5 - ROUNDING, {
    rule: 'floor-scrape',
    level: 'error',
    value,
    limit: 0.5,
    unit: 'mm',
    about: 'workshop.slideClearance',
    message: `With the play of the rails the front edge of the rear box comes within ${mm(round(value))} of the floor: it scrapes.`,
    hint: 'Give more slideClearance, or less railPlay.',
  });
};

const SOLE = 135;

const yawRegister: Rule = ({ workshop, format, focus, lens }, { optics }) => {
  const yaw = Math.atan((2 * workshop.railPlay) / SOLE);
  const value = (Math.tan(yaw) * format.image.long) / 2;
  const limit = (lens.maxAperture * optics.confusion * (1 + focus.nearest)) / 2;
  return unless(value <= limit + ROUNDING, {
    rule: 'yaw-register',
    level: 'warning',
    value,
    limit,
    unit: 'mm',
    about: 'workshop.railPlay',
    message: `Pushed askew in its rails the back moves ${mm(round(value))} at the picture’s edge; half the depth of focus at full aperture is ${mm(round(limit))}.`,
    hint: 'Push the sole against one rail before you lock it, and focus at the working aperture.',
  });
};

const sagTilt: Rule = ({ lens, focus, workshop }, { sag, optics }) => {
  const limit = (lens.maxAperture * optics.confusion * (1 + focus.nearest)) / 2;
  return unless(sag.atFilmEdge <= limit + ROUNDING, {
    rule: 'sag-tilt',
    level: 'warning',
    value: sag.atFilmEdge,
    limit,
    unit: 'mm',
    about: 'plywood.thickness',
    message: `Loaded and at full draw the tailboard tilts the film’s edge by ${mm(round(sag.atFilmEdge))} (${plainNumber(workshop.modulus, 0)} N/mm²); half the depth of focus is ${mm(round(limit))}.`,
    hint: 'Support the rear end of the tailboard, or use a thicker sheet.',
  });
};

const balance: Rule = (_design, { balance: { closest, farthest }, objects }) => {
  const value = Math.max(Math.abs(closest - objects.tailboard.tripod), Math.abs(farthest - objects.tailboard.tripod));
  return unless(value <= 40 + ROUNDING, {
    rule: 'balance',
    level: 'warning',
    value,
    limit: 40,
    unit: 'mm',
    message: `The centre of gravity wanders ${mm(round(value))} from the tripod nut between closed and open: the head droops.`,
    hint: 'Tighten the head, or rest the rear end of the tailboard.',
  });
};

const massTripod: Rule = (_design, { balance: b }) => [
  {
    rule: 'mass-tripod',
    level: 'note',
    value: b.loadedKg,
    unit: 'kg',
    message: `Camera, lens and heaviest holder come to ${kg(Math.round(b.loadedKg * 100) / 100)}: the tripod and its head must be made for that.`,
  },
];

/** The loaded holder in the positions that are used: closed end down, open end left or right. */
const holderClears: Rule = (_design, { settingOut: rod, objects }) => {
  const keepers = -rod.axisHeight.value + rod.soleThickness + rod.ply + 0.3;
  const lowest = -Math.max(objects.back.closedExtent, objects.back.holderWidth / 2);
  const value = lowest - keepers;
  return unless(value >= 3 - ROUNDING, {
    rule: 'holder-clears',
    level: 'error',
    value,
    limit: 3,
    unit: 'mm',
    about: 'holders',
    message: `A loaded holder hangs ${mm(round(value))} above the keepers: it fouls the tailboard.`,
    hint: 'Give a shorter closedEnd.',
  });
};

const boardWidth: Rule = (_design, { settingOut: rod }) => {
  const [image, board] = rod.rearInside.claims;
  return unless(!image || !board || board.value <= image.value + ROUNDING, {
    rule: 'board-widens',
    level: 'note',
    value: rod.rearInside.value,
    limit: image?.value ?? 0,
    unit: 'mm',
    about: 'lens.mount',
    message: `The lens board makes the boxes wider than the picture asks: ${mm(round(rod.rearInside.value))} inside instead of ${mm(round(image?.value ?? 0))}.`,
  });
};

const indexRoom: Rule = (_design, { focusScale }) =>
  unless(focusScale.room >= 2 - ROUNDING, {
    rule: 'scale-sense',
    level: 'warning',
    value: focusScale.room,
    limit: 2,
    unit: 'mm',
    about: 'holders',
    message: 'The holders differ so much in depth that the index line of the deepest runs off the sole.',
    hint: 'Glue a strip to the sole’s rear edge and carry the line over.',
  });

const rules: readonly Rule[] = [
  lensCovers,
  cornerFalloff,
  reachNear,
  reachInfinity,
  reachReserve,
  boxesClose,
  lensPassesBox,
  coneClear,
  wallFlare,
  floorScrape,
  yawRegister,
  sagTilt,
  balance,
  massTripod,
  holderClears,
  boardWidth,
  indexRoom,
];

/** Figures in a sentence: a tenth of a millimetre is what a builder reads. */
const round = (value: number): number => Math.round(value * 10) / 10;
