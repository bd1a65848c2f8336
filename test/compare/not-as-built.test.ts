import { describe, expect, test } from 'vitest';
import { notAsBuilt } from '../../src/compare/not-as-built.js';
import { recordOfDesign } from '../../src/compare-cameras.js';
import { changed, designOf } from '../design/reading.js';
import { heron } from '../design/worked-designs.js';

const record = (text: string) => recordOfDesign(designOf(text));
const before = record(heron);
const told = (text: string, ...ids: readonly string[]) => notAsBuilt(before, record(text), ids);

describe('not-as-built: a spare part for a camera that was built from another design', () => {
  test('of the same design nothing is said', () => expect(told(heron, 'F3', 'F6', 'lens-clamp')).toEqual([]));

  test('a sheet of 3.9 in the design: the part fits no slot that is there, and how it would', () => {
    const thin = changed(heron, 'thickness: 4.05 mm, sheet', 'thickness: 3.9 mm, sheet');
    const [finding, ...others] = told(thin, 'F3', 'lens-clamp');
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ rule: 'not-as-built', level: 'warning', value: 3.9, limit: 4.05 });
    expect(finding?.message).toContain(before.plan.revision);
    expect(finding?.hint).toContain('--thickness 3.9 mm');
  });

  test('a part that did not change is no matter, whatever else did', () => {
    const longer = changed(heron, 'filmDepth: 24 mm', 'filmDepth: 22 mm');
    expect(told(longer, 'F1', 'R3')).toEqual([]);
    expect(told(longer, 'F3').map(({ level }) => level)).toEqual(['warning']);
  });

  test('a shorter lens: infinity is lost by what its film would have to stand nearer', () => {
    const short = changed(
      changed(heron, 'focalLength: 210 mm', 'focalLength: 180 mm'),
      'flangeDistance: 203.5 mm',
      'flangeDistance: 172 mm',
    );
    // the seat stands at 175.5 and no nearer: 175.5 + 5.8 − 172 and 175.5 + 24 − 172
    const messages = told(short, 'F6').map(({ message }) => message);
    expect(messages.filter((text) => text.includes('infinity'))).toEqual([
      expect.stringContaining('9.3 mm short'),
      expect.stringContaining('27.5 mm short'),
    ]);
  });
});
