import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { spanOf } from '../../assembly/span-of.js';
import type { Finding } from '../../model/finding.js';
import { mm, tenth } from '../../units/print.js';
import type { Baffle } from './size.js';

/** Before the lens at the closest station, and behind the strips; common practice, no source. */
const AIR = 2;

/** baffle-room: between the rear end of the lens and the frame, and between its strips and the turning ring, the slide pushed in. */
export function baffleRoom(_own: Baffle, build: Build): readonly Finding[] {
  const lens = build.parts
    .filter((part) => part.kind === 'bought' && part.role === 'lens')
    .map(({ id }) => spanOf(build, id).z[1]);
  const ahead = spanOf(build, 'R8').z[0] - Math.max(...lens);
  const behind = spanOf(build, 'B2').z[0] - spanOf(build, 'R9').z[1];
  const value = Math.min(ahead, behind);
  return unless(value >= AIR - ROUNDING, {
    rule: 'baffle-room',
    level: 'error',
    value,
    limit: AIR,
    unit: 'mm',
    about: 'baffle',
    message: `At the closest position the baffle has ${mm(tenth(value))} to the ${ahead < behind ? 'lens' : 'turning ring'}: there is no room for it.`,
    hint: 'Leave baffle out, and line the walls with black velvet paper.',
  });
}

export const baffleChecks = [baffleRoom];
