/** Each flag of a result, and the key of a result that it stands for. */
export const keysOfResultFlags = {
  result: 'looks',
  by: 'by',
  bestStrip: 'strip',
  readDensity: 'density',
  stripDensity: 'densities',
  wanted: 'wanted',
  cast: 'cast',
  castBy: 'castBy',
  gaveEnergy: 'gave.energy',
  gaveTime: 'gave.time',
  bathStart: 'bath.start',
  bathEnd: 'bath.end',
  note: 'note',
} as const;

type ResultFlag = keyof typeof keysOfResultFlags;

/** What came of a sheet as it is typed, each by the name of its flag. */
export type ResultFlags = Partial<Readonly<Record<ResultFlag, string | readonly string[]>>>;

export const isResultFlag = (word: string): word is ResultFlag => Object.hasOwn(keysOfResultFlags, word);
