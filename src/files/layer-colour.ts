import type { Palette } from '../model/palette.js';
import type { Layer } from '../sheets/sheet.js';

/** The colour by which a laser's program knows a layer. */
export function colourOf(layer: Layer, palette: Palette): string {
  const colours: { readonly [L in Layer]: string } = {
    engrave: palette.engrave,
    'cut-inside': palette.cutInside,
    'cut-nested': palette.cutNested,
    'cut-window': palette.cutWindow,
    'cut-outside': palette.cutOutside,
  };
  return colours[layer];
}
