/** More kits than any class, and more pieces than the search was made for. */
export const MOST_COPIES = 100;

export const kitsInWords = (copies: number): string => (copies === 1 ? '1 kit' : `${copies} kits`);

/** The name that the folder of a run has, beside that of the camera: heron-10-kits. */
export const runSlug = (slug: string, copies: number): string => `${slug}-${kitsInWords(copies).replace(' ', '-')}`;
