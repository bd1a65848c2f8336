/** Several ways out as sentences of a hint: the first, and each other one after an Or. */
export const inWords = ([first = '', ...others]: readonly string[]): string =>
  [upper(first), ...others.map((cure) => `Or ${cure}`)].map((cure) => `${cure}.`).join(' ');

export const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
