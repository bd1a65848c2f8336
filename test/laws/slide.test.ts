import { expect, test } from 'vitest';
import { apply } from '../../src/geometry/placement.js';
import type { Planned } from '../../src/pipeline.js';
import { lawsFrom, withDesign } from './law.js';

const { law, lawWith } = lawsFrom(3);

const ROUNDING = 1e-6;
/** Depths of film and glass that differ by less need no spacer: thinner than glue. */
const SAME_DEPTH = 0.005;

const travelOf = ({ build }: Planned): number => (build.stations.at(-1)?.rear ?? 0) - (build.stations[0]?.rear ?? 0);

test('a thicker holder never shortens the slide', () =>
  lawWith(40, (planned, drawn) => {
    const { design } = planned;
    const [first, ...others] = design.holders;
    if (!first) throw new Error('a design without holders was read');
    const more = drawn / 40;
    const thicker = { ...first, filmDepth: first.filmDepth + more, thickness: first.thickness + more };
    // deeper than every other, so that no shallower holder has become the odd one out
    const deepest = Math.max(
      ...design.holders.map((h) => h.filmDepth),
      planned.camera.objects.groundGlassFrame.effectiveDepth,
    );
    if (first.filmDepth < deepest) return;
    expect(travelOf(withDesign(design, { holders: [thicker, ...others] }))).toBeGreaterThanOrEqual(
      travelOf(planned) - ROUNDING,
    );
  }));

test('asking for less magnification never lengthens the slide, nor the tailboard', () =>
  lawWith(40, (planned, drawn) => {
    const { focus } = planned.design;
    const nearest = focus.farthest + ((focus.nearest - focus.farthest) * (1 + drawn)) / 1001;
    const shorter = withDesign(planned.design, { focus: { ...focus, nearest, pastNearest: 0 } });
    expect(travelOf(shorter)).toBeLessThanOrEqual(travelOf(planned) + ROUNDING);
    expect(shorter.camera.objects.tailboard.length).toBeLessThanOrEqual(
      planned.camera.objects.tailboard.length + ROUNDING,
    );
  }));

test('every holder brings its film to infinity and to the nearest focus', () =>
  law(60, ({ design, parts, build, camera }) => {
    const { focalLength: f, flangeDistance: V } = design.lens;
    const { nearest, farthest, pastInfinity } = design.focus;
    const last = build.stations.at(-1)?.rear ?? 0;
    for (const holder of design.holders) {
      const standIn = parts.find((part) => part.kind === 'bought' && part.name === holder.name);
      const [place] = standIn?.placements ?? [];
      if (!place) throw new Error(`${holder.name} stands nowhere`);
      const face = apply(place.matrix, { x: 0, y: 0, z: 0 }).z;
      const spacer = camera.spacers.find((s) => s.holder === holder.name);
      // a holder on shims stands off by what they leave; the film plane is z_seat + V + f·m (section 3 of the description)
      const left = spacer?.under === 'holder' ? Math.abs(spacer.made.remainder) : SAME_DEPTH;
      const film = face + holder.filmDepth;
      const plane = (m: number) => camera.optics.seat + V + f * m;
      expect(film).toBeLessThanOrEqual(plane(farthest) - pastInfinity + left + ROUNDING);
      expect(film + last).toBeGreaterThanOrEqual(plane(nearest) - left - ROUNDING);
    }
  }));
