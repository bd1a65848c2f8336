import type { Arrangement, Pair } from '../assembly/arrangement.js';
import type { Setup } from '../assembly/build.js';
import type { Piece } from '../assembly/pieces.js';
import type { Finding } from '../model/finding.js';
import type { Join, Part } from '../model/part.js';
import { mm, tenth } from '../units/print.js';

/** A glue line bridges no more than this, mm, half of a loose glue slip and a card; common practice, no source. */
const BRIDGED = 0.15;
/** What slides or is screwed has so much play at most, mm: the boxes' own clearance is closed by felt. A choice of ours. */
const GUIDED = 0.6;

/** How far apart parts may stand that are joined so; what slides or is screwed may have play. */
const reachOf = (by: ReadonlySet<Join['by']>): number => (by.has('slide') || by.has('screw') ? GUIDED : BRIDGED);

/**
 * parts-touch: what is joined by glue, fingers, a press fit or rests touches; and every piece of every set-up hangs
 * together with all the others, so that nothing floats.
 */
export function contacts(parts: readonly Part[], arrangement: Arrangement): readonly Finding[] {
  return [...joints(parts, arrangement), ...floating(arrangement)];
}

const TOUCHING: readonly Join['by'][] = ['glue', 'finger', 'press', 'rest'];

/** The closest station and the farthest: a joint between what slides and what stands must hold at both. */
const ends = ({ rears }: Arrangement): readonly number[] => [0, rears[4] ?? 0];

function joints(parts: readonly Part[], arrangement: Arrangement): readonly Finding[] {
  const near = new Map<Piece, Pair[]>();
  for (const pair of arrangement.pairs(BRIDGED))
    for (const piece of [pair.a, pair.b]) near.set(piece, [...(near.get(piece) ?? []), pair]);
  const touches = (piece: Piece, ids: readonly string[], setup: Setup, rear: number): boolean =>
    (near.get(piece) ?? []).some((pair) => {
      const other = pair.a === piece ? pair.b : pair.a;
      return (
        ids.includes(other.part.id) && arrangement.standsIn(other, setup) && arrangement.touches(pair, rear, BRIDGED)
      );
    });
  return parts.flatMap((part) => {
    const own = arrangement.pieces.filter((piece) => piece.part.id === part.id);
    const others = (ids: readonly string[], setup: Setup) =>
      arrangement.pieces.filter((p) => ids.includes(p.part.id) && arrangement.standsIn(p, setup));
    // what rests is borne by one of its bearers, another in each set-up; every other joint stands for itself
    const bearers = part.joins.filter(({ by }) => by === 'rest').map(({ to }) => to);
    const claims = [
      ...part.joins.filter(({ by }) => by !== 'rest' && TOUCHING.includes(by)).map(({ to, by }) => ({ to: [to], by })),
      ...(bearers.length > 0 ? [{ to: bearers, by: 'rest' as const }] : []),
    ];
    return claims.flatMap(({ to, by }) => {
      const open = arrangement.setups.flatMap((setup) => {
        const mine = own.filter((piece) => arrangement.standsIn(piece, setup));
        const theirs = others(to, setup);
        if (mine.length === 0 || theirs.length === 0) return [];
        // every piece of the scarcer part has its partner; a stack glued to itself hangs together by its own joint
        const scarce = mine.length <= theirs.length || by === 'rest';
        const [few, ids] = scarce ? [mine, to] : [theirs, [part.id]];
        const stack = few.some((piece) => piece.part.joins.some((j) => j.to === piece.part.id && j.by === 'glue'));
        return ends(arrangement).flatMap((rear) => {
          const without = few.filter((piece) => !touches(piece, ids, setup, rear));
          const open =
            stack && !ids.includes(few[0]?.part.id ?? '') ? without.length === few.length : without.length > 0;
          return open ? [{ setup, rear, piece: without[0] as Piece }] : [];
        });
      });
      const [first] = open;
      return first === undefined ? [] : [apart(part, to, by, first, arrangement)];
    });
  });
}

interface Open {
  readonly setup: Setup;
  readonly rear: number;
  readonly piece: Piece;
}

function apart(
  part: Part,
  to: readonly string[],
  by: Join['by'],
  { setup, rear, piece }: Open,
  arrangement: Arrangement,
): Finding {
  const own = piece.part.id === part.id;
  const partners = own ? to : [part.id];
  const air = Math.min(
    GUIDED,
    ...arrangement.pairs(GUIDED).flatMap((pair) => {
      const other = pair.a === piece ? pair.b : pair.b === piece ? pair.a : null;
      if (other === null || !partners.includes(other.part.id) || !arrangement.standsIn(other, setup)) return [];
      return [arrangement.gap(pair, rear, GUIDED)];
    }),
  );
  return {
    rule: 'parts-touch',
    level: 'warning',
    value: air,
    limit: BRIDGED,
    unit: 'mm',
    message: `${piece.part.id} (${piece.part.name}) ${WORDS[by]} ${partners.join(' or ')} and stands ${air < GUIDED ? '' : 'more than '}${mm(hundredth(air))} away from it: ${setup.name}${rear > 0 ? `, drawn out ${mm(tenth(rear))}` : ''}.`,
    hint:
      by === 'rest'
        ? 'It will drop or rock: it needs a bearer.'
        : 'Glue does not bridge that: fit it dry first, and pack the joint with veneer.',
  };
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;

const WORDS: Readonly<Record<Join['by'], string>> = {
  glue: 'is to be glued to',
  finger: 'is to be fingered into',
  press: 'is to be pressed into',
  rest: 'is to rest on',
  slide: 'slides on',
  screw: 'is screwed to',
};

/** Pieces that hang together with no other, in any set-up. */
function floating(arrangement: Arrangement): readonly Finding[] {
  // what is joined hangs together for sure, and then few other pairs need to be measured
  const near = arrangement.pairs(GUIDED);
  const pairs = [...near.filter(({ by }) => by.size > 0), ...near.filter(({ by }) => by.size === 0)];
  const found = new Map<string, Finding>();
  for (const setup of arrangement.setups)
    for (const rear of ends(arrangement)) {
      const here = arrangement.pieces.filter((piece) => arrangement.standsIn(piece, setup));
      const chief = new Map(here.map((piece) => [piece, piece]));
      const headOf = (piece: Piece): Piece => {
        const next = chief.get(piece) ?? piece;
        return next === piece ? piece : headOf(next);
      };
      for (const pair of pairs) {
        const { a, b } = pair;
        if (!(chief.has(a) && chief.has(b)) || headOf(a) === headOf(b)) continue;
        if (arrangement.touches(pair, rear, reachOf(pair.by))) chief.set(headOf(a), headOf(b));
      }
      const sizes = new Map<Piece, number>();
      for (const piece of here) sizes.set(headOf(piece), (sizes.get(headOf(piece)) ?? 0) + 1);
      const [main] = [...sizes].reduce((most, one) => (one[1] > most[1] ? one : most), [null, 0] as [
        Piece | null,
        number,
      ]);
      for (const piece of here) {
        if (headOf(piece) === main || found.has(piece.part.id)) continue;
        found.set(piece.part.id, {
          rule: 'parts-touch',
          level: 'warning',
          value: GUIDED,
          limit: BRIDGED,
          unit: 'mm',
          message: `${piece.part.id} (${piece.part.name}) hangs in the air: nothing within ${mm(BRIDGED)} holds it; ${setup.name}${rear > 0 ? `, drawn out ${mm(tenth(rear))}` : ''}.`,
          hint: 'A part that nothing holds has no place: see what it is meant to be joined to.',
        });
      }
    }
  return [...found.values()];
}
