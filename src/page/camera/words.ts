import type { Join } from '../../model/part.js';
import type { ShownBody, ShownSetup } from '../../model/shown.js';
import { mm, tenth } from '../../units/print.js';

/** What a thing is made of. */
export function materialWords({ material, stuff, thickness }: ShownBody): string {
  if (material === null) return stuffWords[stuff];
  return thickness === null ? `printed in ${material}` : `${material.replace(/-[\d.]+$/, '')}, ${mm(thickness)}`;
}

const stuffWords: Readonly<Record<ShownBody['stuff'], string>> = {
  plywood: 'plywood',
  wood: 'wood, bought',
  printed: 'printed',
  metal: 'metal, bought',
  glass: 'glass, bought',
  felt: 'felt or cord, bought',
  card: 'card or sheet, bought',
  lens: 'the lens, as a block of its size',
  holder: 'bought, as a block of its size',
};

/** Largest first, as wood is measured; a sheet's own thickness stands with its material. */
export function sizeWords({ size, thickness }: ShownBody): string {
  const [x, y, z] = size;
  const sides = thickness === null ? [x, y, z] : [x, y];
  return sides
    .sort((a, b) => b - a)
    .map((side) => mm(tenth(side)).replace(' mm', ''))
    .join(' × ')
    .concat(' mm');
}

const joined: Readonly<Record<Join['by'], string>> = {
  finger: 'fingered and glued to',
  glue: 'glued to',
  slide: 'slides along',
  screw: 'screwed to',
  press: 'pressed into',
  rest: 'rests on',
};

/** One line for each way of joining. */
export function joinWords(
  body: ShownBody,
  bodies: readonly ShownBody[],
): readonly { readonly how: string; readonly to: readonly { readonly part: string; readonly name: string }[] }[] {
  const names = new Map(bodies.map(({ part, name }) => [part, name]));
  const ways = [...new Set(body.joins.map(({ by }) => by))];
  return ways.map((by) => ({
    how: joined[by],
    to: [...new Set(body.joins.filter((join) => join.by === by && join.to !== body.part).map(({ to }) => to))].flatMap(
      (part) => {
        const name = names.get(part);
        return name === undefined ? [] : [{ part, name }];
      },
    ),
  }));
}

/** A set-up as one would say it. */
export const setupWords = ({ name, holder, orientation, focusing }: ShownSetup): string => {
  if (!name.includes(holder)) return name.charAt(0).toUpperCase() + name.slice(1);
  const way = orientation === 'upright' ? 'upright' : 'lengthwise';
  return focusing
    ? `Ground glass for the ${holder}, ${way}`
    : `${holder.charAt(0).toUpperCase()}${holder.slice(1)}, ${way}`;
};

/** What is called by a short mark is told by it too. */
export const partWords = ({ part, name }: Pick<ShownBody, 'part' | 'name'>): string =>
  /^[A-Z]+\d/.test(part) ? `${part} ${name}` : name;
