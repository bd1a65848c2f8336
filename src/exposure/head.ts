/** From chin to crown of a grown sitter, mm: about a quarter of a metre, common practice, no source. */
export const HEAD = 250;

/** Magnification of a sitter from the height of the head on the film or the glass, mm. */
export const magnificationOfHead = (onFilm: number, head = HEAD): number => onFilm / head;
