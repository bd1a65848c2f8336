import { flowText } from './flow-text.js';

/** Keys of a design as a file may have them; what is left out keeps its default. */
export interface BegunDesign {
  readonly name: string;
  readonly format: unknown;
  readonly lens: Readonly<Record<string, unknown>>;
  /** What stands behind a key of the lens that nobody has measured. */
  readonly guessed: Readonly<Record<string, string>>;
  readonly focus: Readonly<Record<string, unknown>>;
  readonly plywood: unknown;
  readonly groundGlass: unknown;
  readonly holders: readonly unknown[];
  readonly holdersGuessed: string;
  readonly workshop: unknown;
}

/** A design file of what is known by now; what is guessed says so behind it. The width of the cut is for the test piece to tell. */
export function begunDesign(given: BegunDesign): string {
  const { name, format, lens, guessed, focus, plywood, groundGlass, holders, holdersGuessed, workshop } = given;
  const groups = [
    `name: ${flowText(name)}\nformat: ${flowText(format)}\n`,
    `lens:\n${Object.entries(lens)
      .map(([key, value]) => lensKey(key, value, guessed[key]))
      .join('')}`,
    `focus: ${flowText(focus)}\n`,
    `plywood: ${flowText(plywood)}\n`,
    'laser: { kerf: 0.15 mm } # PLACEHOLDER: of your laser and this sheet, from the test piece\n',
    groundGlass === undefined ? '' : `groundGlass: ${flowText(groundGlass)}\n`,
    `${noted('holders:', holdersGuessed)}\n${holders.map((holder) => `  - ${flowText(holder)}\n`).join('')}`,
    workshop === undefined ? '' : `workshop: ${flowText(workshop)}\n`,
  ];
  return groups.filter((group) => group !== '').join('\n');
}

const noted = (text: string, note: string | undefined): string => (note ? `${text} # ${note}` : text);

/** What is guessed of a group is said of each figure in it, so that each can be measured on its own. */
function lensKey(key: string, value: unknown, note: string | undefined): string {
  if (note === undefined || typeof value !== 'object' || value === null)
    return `  ${noted(`${key}: ${flowText(value)}`, note)}\n`;
  const inner = Object.entries(value).map(([name, one]) => `    ${noted(`${name}: ${flowText(one)}`, note)}\n`);
  return `  ${key}:\n${inner.join('')}`;
}
