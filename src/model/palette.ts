/** A colour for each operation of the laser, as #rrggbb. The names of the layers carry the meaning; colours only help the eye. */
export interface Palette {
  readonly engrave: string;
  readonly cutInside: string;
  readonly cutNested: string;
  readonly cutWindow: string;
  readonly cutOutside: string;
}

/**
 * Slate, plum, ochre, moss and walnut: dull workshop tones, told from each other on a pale ground. A program that gives a
 * meaning to pure red, blue or black finds none of them here.
 */
export const workshopPalette: Palette = {
  engrave: '#5b7a8c',
  cutInside: '#8a4f7d',
  cutNested: '#b98a44',
  cutWindow: '#4f7f5f',
  cutOutside: '#5e3a30',
};
