import type { Build, Setup } from '../assembly/build.js';
import { around, boxesOf, type Extent } from '../assembly/extent.js';
import { isHolderFace, roleOf } from '../assembly/holders.js';
import { ROUNDING } from '../assembly/limit.js';
import type { Design } from '../design/design.js';
import { matrixOf } from '../geometry/facing.js';
import { box, rectangle } from '../geometry/shapes.js';
import { plate } from '../joinery/plate.js';
import type { Finding } from '../model/finding.js';
import type { FlatPart, Part } from '../model/part.js';
import type { LightJoint } from '../model/proof.js';
import { mm, plainNumber, tenth } from '../units/print.js';
import { type HolderWithSlide, holdersWithSlides, pushedIn } from './holder-slide.js';
import { leakDrawing } from './leak-drawing.js';
import { lidJoints } from './lid-joints.js';
import type { Leak } from './light-leak.js';
import { gapWords, leaksIn, WORN } from './light-leaks.js';
import { sceneOf } from './light-scene.js';

/** What was proven of the dark in the holders that are made. */
export interface HolderDark {
  readonly findings: readonly Finding[];
  readonly joints: readonly LightJoint[];
  /** A small section through each leak, as SVG. */
  readonly drawings: readonly string[];
}

/**
 * holder-dark: no straight line from outside to the film of a holder that is made: by itself in daylight, its slide closed;
 * and with its face on something dark, as on the camera, its slide half out and drawn. Its lid is on each time. That is the
 * search for light in a camera, on the holder alone, its gate where the sheet lies.
 */
export function holdersDark(design: Design, build: Build, most: number): HolderDark {
  const each = holdersWithSlides(design, build).flatMap((one) => {
    const alone = holderAlone(one);
    if (alone === null) return [];
    const scene = sceneOf(alone);
    const leaks = leaksIn(scene, most);
    const joints = lidJoints(scene, one.holder.name);
    return [
      {
        findings: [...leaks.map((leak) => leakFinding(leak, one)), ...joints.flatMap(jointFinding)],
        joints,
        drawings: leaks.map((leak) => leakDrawing(scene, leak)),
      },
    ];
  });
  return {
    findings: each.flatMap(({ findings }) => findings),
    joints: each.flatMap(({ joints }) => joints),
    drawings: each.flatMap(({ drawings }) => drawings),
  };
}

/** The film lies so far behind what its sheet lies against, for the search, mm: on one plane with it nothing could hide it. */
const BEHIND_LIP = 0.05;
/** What stands for the camera before the face. */
const CAMERA = { thickness: 5, beyond: 30 };

/** A holder by itself, in three set-ups: closed in daylight, half open and open on something dark. */
export function holderAlone({ holder, shell, slide, drawn }: HolderWithSlide): Build | null {
  const film = extentOf(shell.filter((part) => roleOf(part) === 'sheet'));
  const face = extentOf(shell.filter(isHolderFace));
  if (film === null || face === null) return null;
  const setup = (name: string): Setup => ({
    name: `${holder.name}, its slide ${name}`,
    holder: holder.name,
    orientation: 'upright',
    loads: 'top',
    focusing: false,
  });
  const [closed, half, open] = [setup('closed'), setup('half out'), setup('drawn')];
  const always = [closed, half, open].map(({ name }) => name);
  const standing = (parts: readonly Part[], when: readonly string[]): readonly Part[] =>
    parts.map((part) => ({ ...part, placements: part.placements.map((one) => ({ ...one, when })) }));
  // the same slide in three places
  const places = [
    { by: drawn, when: [closed.name] },
    { by: drawn / 2, when: [half.name] },
    { by: 0, when: [open.name] },
  ].map(({ by, when }) => standing(pushedIn(slide, by), when));
  const slides = slide.map((part, i) => ({ ...part, placements: places.flatMap((all) => all[i]?.placements ?? []) }));
  return {
    parts: [
      ...standing(
        shell.filter((part) => roleOf(part) !== 'sheet'),
        always,
      ),
      ...slides,
      ...standing([cameraBefore(face, shell)], [half.name, open.name]),
    ],
    stations: [{ name: 'its lid on', rear: 0 }],
    setups: [closed, half, open],
    gate: { z: film.z[0] + BEHIND_LIP, width: film.x[1] - film.x[0], height: film.y[1] - film.y[0] },
    opening: { z: face.z[0], diameter: 0 },
  };
}

/** A board as dark as the inside of a camera, on the face of the holder. */
function cameraBefore({ x, y, z }: Extent, shell: readonly Part[]): FlatPart {
  const face = shell.find(isHolderFace);
  const low = z[0] - CAMERA.thickness;
  const group = face?.placements[0]?.group ?? 'loose';
  return plate({
    id: 'camera',
    name: 'the camera before the holder',
    ply: { material: 'camera', thickness: CAMERA.thickness, density: 0 },
    facing: 'rear',
    low,
    group,
    grain: 'any',
    outline: rectangle(box(x[0] - CAMERA.beyond, y[0] - CAMERA.beyond, x[1] + CAMERA.beyond, y[1] + CAMERA.beyond)),
    places: [{ group, matrix: matrixOf('rear', low, CAMERA.thickness) }],
    joins: face ? [{ to: face.id, by: 'glue' }] : [],
  });
}

function extentOf(parts: readonly Part[]): Extent | null {
  const boxes = parts.flatMap((part) => boxesOf(part)).map(({ extent }) => extent);
  return boxes.length === 0 ? null : around(boxes);
}

function leakFinding(leak: Leak, { holder }: HolderWithSlide): Finding {
  const { at, width, across, stance } = leak;
  return {
    rule: 'holder-dark',
    level: 'error',
    value: width,
    limit: 0,
    unit: 'mm',
    message: `A streak of fog on the sheet in the ${holder.name}: light falls in a straight line onto it through ${gapWords(leak)}, ${plainNumber(width, 1)} mm wide at x ${mm(tenth(at.x))}, y ${mm(tenth(at.y))}, z ${mm(tenth(at.z))}; ${WORN[stance.push]}, with the ${stance.setup.name}.`,
    hint:
      across === null
        ? 'Nothing stands there: a part is missing.'
        : 'Give the light a turn there: velvet on both sides of the slide, land under the lid, a pad in the pocket.',
  };
}

/** holder-dark, for what a straight line does not notice: the land under the lid, and the turn round its pad. */
function jointFinding({ joint, parts, turns, land, needed, shutBy }: LightJoint): readonly Finding[] {
  const where = `${joint} (${parts.join(', ')})`;
  const rule = {
    rule: 'holder-dark',
    level: 'error',
    hint: `Shut by: ${shutBy}. One of these is missing or too small.`,
  } as const;
  if (turns < needed.turns)
    return [
      {
        ...rule,
        value: turns,
        limit: needed.turns,
        unit: 'turns',
        message: `Fog along the ${where}: light comes in with ${plainNumber(turns)} ${turns === 1 ? 'turn' : 'turns'}, and it takes ${plainNumber(needed.turns)} to tame it.`,
      },
    ];
  if (land >= needed.land - ROUNDING) return [];
  return [
    {
      ...rule,
      value: land,
      limit: needed.land,
      unit: 'mm',
      message: `Fog along the ${where}: wood lies on wood for ${mm(tenth(land))}, and it takes ${mm(needed.land)}.`,
    },
  ];
}
