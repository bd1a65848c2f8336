import type { Build } from '../assembly/build.js';
import { stands } from '../assembly/setups.js';
import type { Finding } from '../model/finding.js';
import { mm, plainNumber, tenth } from '../units/print.js';
import { leakDrawing } from './leak-drawing.js';
import type { Leak } from './light-leak.js';
import { gapWords, leaksIn, WORN } from './light-leaks.js';
import { sceneOf } from './light-scene.js';

/** What was proven of the dark under the cap. */
interface CapDark {
  readonly findings: readonly Finding[];
  /** A small section through each leak, as SVG. */
  readonly drawings: readonly string[];
}

/** So far ahead of the lens its light is caught, for the search, mm: on one plane with it nothing could hide it. */
const BEFORE_LENS = 0.05;

/**
 * cap-dark: with the cap on and the dark slide drawn no straight line from outside reaches the front of the lens, whatever
 * the lens would make of it. That is the search for light in a camera, on what stands still with the lens, its gate where
 * the lens begins. Nothing to prove where there is no cap.
 */
export function capDark(build: Build, most: number): CapDark {
  const under = underCap(build);
  if (under === null) return { findings: [], drawings: [] };
  const scene = sceneOf(under);
  const leaks = leaksIn(scene, most);
  return { findings: leaks.map(leakFinding), drawings: leaks.map((leak) => leakDrawing(scene, leak)) };
}

/** What stands still while the cap is on, with the front of the lens as its gate. */
export function underCap({ parts, setups, opening }: Build): Build | null {
  const capped = setups.find(({ ahead }) => ahead === 'cap');
  if (capped === undefined) return null;
  return {
    parts: parts.flatMap((part) => {
      const placements = part.placements.filter((place) => place.group === 'front' && stands(place, capped));
      return placements.length === 0 ? [] : [{ ...part, placements }];
    }),
    stations: [{ name: 'wherever the slide stands', rear: 0 }],
    setups: [capped],
    gate: { z: opening.z - BEFORE_LENS, width: opening.diameter, height: opening.diameter },
    opening,
  };
}

function leakFinding(leak: Leak): Finding {
  const { at, width, across, stance } = leak;
  return {
    rule: 'cap-dark',
    level: 'error',
    value: width,
    limit: 0,
    unit: 'mm',
    message: `Fog with the cap on: light falls in a straight line on the lens through ${gapWords(leak)}, ${plainNumber(width, 1)} mm wide at x ${mm(tenth(at.x))}, y ${mm(tenth(at.y))}, z ${mm(tenth(at.z))}; ${WORN[stance.push]}.`,
    hint:
      across === null
        ? 'Nothing stands there: a part is missing.'
        : 'Give the light a turn there: a cap that laps 10 mm over the ring on all sides.',
  };
}
