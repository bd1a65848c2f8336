import type { Stuff } from '../../model/shown.js';

/** In the order in which the shaders count them. */
export const stuffs = [
  'plywood',
  'wood',
  'printed',
  'metal',
  'glass',
  'felt',
  'card',
  'lens',
  'holder',
] as const satisfies readonly Stuff[];

/** What each looks like in daylight, and where the saw has gone through: red, green, blue. */
const looks: Readonly<Record<Stuff, { readonly face: string; readonly cut: string }>> = {
  plywood: { face: '#ecd3a4', cut: '#d99a6c' },
  wood: { face: '#c8995c', cut: '#b97a4a' },
  printed: { face: '#44474c', cut: '#6d7f8f' },
  metal: { face: '#a9adb0', cut: '#7d93ab' },
  glass: { face: '#b4cfc9', cut: '#8fb9b4' },
  felt: { face: '#3d3b3b', cut: '#5a5656' },
  card: { face: '#b3a68c', cut: '#8d8068' },
  lens: { face: '#2c2e33', cut: '#59636f' },
  holder: { face: '#59626a', cut: '#8b8f86' },
};

export const faceColours: readonly Colour[] = stuffs.map((stuff) => colourOf(looks[stuff].face));
export const cutColours: readonly Colour[] = stuffs.map((stuff) => colourOf(looks[stuff].cut));

/** Red, green and blue from 0 to 1. */
export type Colour = readonly [number, number, number];

/** From #rrggbb. */
export function colourOf(hex: string): Colour {
  const value = Number.parseInt(hex.slice(1), 16);
  return [(value >> 16) / 255, ((value >> 8) & 255) / 255, (value & 255) / 255];
}

/** Not lit up, touched, chosen, pointed to. */
export const markColours: readonly Colour[] = ['#000000', '#ffe9b8', '#5b8fcf', '#d9603f'].map(colourOf);

/** Edges in the same order, and last engraving: burnt brown. */
export const inks: readonly (readonly [number, number, number, number])[] = [
  [...colourOf('#2a2520'), 0.85],
  [...colourOf('#2a2520'), 1],
  [...colourOf('#143f78'), 1],
  [...colourOf('#8f1f0a'), 1],
  [...colourOf('#4f2b12'), 0.9],
];
