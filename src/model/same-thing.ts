/*
 * Whether two people mean the same thing by what they wrote: letters large or small, blanks one or many, the cross between
 * two lengths drawn as a cross or typed as an x.
 */

const plain = (text: string): string => text.toLowerCase().replaceAll('×', 'x').replace(/\s+/g, ' ').trim();

export const sameWord = (one: string, other: string): boolean => plain(one) === plain(other);

const tight = (size: string): string => plain(size).replaceAll(' ', '');

export const sameSize = (one: string, other: string): boolean => tight(one) === tight(other);
