import type { Build } from '../assembly/build.js';
import { holderOf, isOfHolder } from '../assembly/holders.js';
import type { Finding } from '../model/finding.js';
import type { Part } from '../model/part.js';
import type { LightJoint } from '../model/proof.js';
import { HOLDERS, partsOfObject, partsOfRule } from './rule-parts.js';

/** Where on the camera a finding is. */
export interface FindingPlace {
  /** Ids of the parts that it is about; none where it is about a figure or a key alone. */
  readonly parts: readonly string[];
  /** A set-up in which it can be seen; null where any will do. */
  readonly setup: string | null;
  /** How far the slide is drawn there, mm; null where that does not matter. */
  readonly rear: number | null;
}

type Whole = Pick<Build, 'parts' | 'setups' | 'stations'>;

/**
 * The parts that a finding is about. Findings are written for people, and name their parts as the book does, by number and
 * name: what is named is meant. Where a rule measures a whole object and names none of its parts, a table says where it looks.
 *
 * @param joints ways in for light, for the findings that call one by its name
 */
export function aboutParts(finding: Finding, build: Whole, joints: readonly LightJoint[] = []): FindingPlace {
  const { message, rule } = finding;
  const ids = build.parts.filter(({ id }) => says(message, id)).map(({ id }) => id);
  const joint = joints.find((one) => one.parts.length > 0 && message.includes(`the ${one.joint} (`));
  const named = ids.length > 0 ? ids : (joint?.parts ?? []);
  const setup = setupOf(message, build);
  return {
    parts: known(build, named.length > 0 ? named : [...byRule(rule, build), ...byName(message, build, rule)]),
    setup,
    rear: rearOf(message, build),
  };
}

/** Only what this camera has, each once, in its own order. */
const known = ({ parts }: Whole, wanted: readonly string[]): readonly string[] =>
  parts.map(({ id }) => id).filter((id) => wanted.includes(id));

const byRule = (rule: string, { parts }: Whole): readonly string[] =>
  (partsOfRule[rule] ?? []).flatMap((pattern) =>
    pattern === HOLDERS
      ? parts.filter((part) => isOfHolder(part)).map(({ id }) => id)
      : pattern.endsWith('*')
        ? parts.map(({ id }) => id).filter((id) => id.startsWith(pattern.slice(0, -1)))
        : [pattern],
  );

/** Parts called by name, and all that a holder is made of by the holder's; of a rule that knows where it looks, the holders alone. */
function byName(message: string, { parts }: Whole, rule: string): readonly string[] {
  const isNamed = ({ name, placements }: Part) =>
    [...(partsOfRule[rule] === undefined ? [name] : []), ...placements.flatMap((one) => holderOf(one) ?? [])].some(
      (word) => says(message, word),
    );
  const objects = partsOfRule[rule] === undefined ? Object.entries(partsOfObject) : [];
  return [
    ...parts.filter(isNamed).map(({ id }) => id),
    ...objects.flatMap(([name, ids]) => (says(message, name) ? ids : [])),
  ];
}

/** Whether a text has these words, whole: R4 is not in R4L, nor F1 in F10. */
function says(text: string, words: string): boolean {
  const low = text.toLowerCase();
  const wanted = words.toLowerCase();
  for (let at = low.indexOf(wanted); at >= 0; at = low.indexOf(wanted, at + 1))
    if (!WORD.test(low.charAt(at - 1)) && !WORD.test(low.charAt(at + wanted.length))) return true;
  return false;
}

const WORD = /[\p{L}\p{N}-]/u;

/** The set-up that is named; else one in which the holder that is named has its pictures taken. */
function setupOf(message: string, { setups }: Whole): string | null {
  const told = setups.filter(({ name }) => message.includes(name));
  const longest = told.reduce<string>((long, { name }) => (name.length > long.length ? name : long), '');
  if (longest !== '') return longest;
  const held = setups.find(({ holder, focusing }) => !focusing && says(message, holder));
  return held?.name ?? null;
}

function rearOf(message: string, { setups, stations }: Whole): number | null {
  const drawn = /drawn out (\d+(?:\.\d+)?) mm/.exec(message)?.[1];
  if (drawn !== undefined) return Number(drawn);
  const told = stations.find((station) => setups.some(({ name }) => message.includes(`${name}, ${station.name}`)));
  if (told !== undefined) return told.rear;
  const rears = stations.map(({ rear }) => rear);
  if (/full draw|drawn out/i.test(message)) return Math.max(...rears);
  return /closest position/i.test(message) ? Math.min(...rears) : null;
}
