/** Units that stand behind a number, and what counts in words of one. */
const UNIT = /(\d) (?=(?:[µcm]?m|ms|s|kg|g|k?J|°C|°|%|stops?|minutes?)(?![\w/]))/g;

/** Words for the page alone: a number and its unit stay on one line. */
export const unbroken = (words: string): string => words.replace(UNIT, '$1\u00a0');
