import { nearestWord, rules } from '../index.js';
import { EXIT, Stop } from './stop.js';

/** Refuses a rule that does not exist: a misspelt one would quietly look at nothing, or waive nothing. */
export function refuseUnknownRules(option: string, named: readonly string[]): void {
  const ids = rules.map(({ id }) => id);
  for (const name of named) {
    if (ids.includes(name)) continue;
    const near = nearestWord(name, ids);
    throw new Stop(EXIT.wrongCall, `${option}: there is no rule "${name}".${near ? ` Did you mean ${near}?` : ''}`);
  }
}
