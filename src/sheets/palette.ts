/** A colour for each operation, as #rrggbb. The names of the layers carry the meaning; colours only help the eye. */
export interface SheetPalette {
  readonly engrave: string;
  readonly cutInside: string;
  readonly cutNested: string;
  readonly cutWindow: string;
  readonly cutOutside: string;
}

/** Dull workshop tones, far enough apart to be told from each other on a pale ground. */
export const defaultPalette: SheetPalette = {
  engrave: '#5b7a8c',
  cutInside: '#8a4f7d',
  cutNested: '#c07f2f',
  cutWindow: '#3f7f5f',
  cutOutside: '#a8483e',
};
