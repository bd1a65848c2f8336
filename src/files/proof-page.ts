import type { Clearance, Direction, Layer, ProofDocument } from '../model/proof.js';
import { mm } from '../units/print.js';
import type { Colour } from './plan-page.js';
import { wrap } from './text-layout.js';

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

/** What was looked at, in figures, so that a builder can tell what a silent check stands for. Ends with a line break. */
export function proofPage({ pieces, pairs, setups, clearances, assembly }: ProofDocument, page: Page): string {
  const rows: readonly (readonly [string, string])[] = [
    [
      'Put together',
      `${pieces} pieces in ${setups.length} set-ups; ${pairs} pairs that come near each other, each looked at over the whole way of the slide`,
    ],
    ...LAYERS.flatMap((inner): readonly (readonly [string, string])[] => {
      const own = clearances.filter(({ between }) => between[1] === inner);
      return own.length === 0 ? [] : [[AIR[inner] ?? '', own.map(side).join(', ')]];
    }),
    [
      'Brought in',
      `${new Set(assembly.flatMap((move) => move.pieces)).size} pieces, each along a straight line past those already in, in ${new Set(assembly.map(({ step }) => step)).size} steps`,
    ],
  ];
  const labels = Math.max(...rows.map(([label]) => label.length)) + 2;
  const lines = rows.flatMap(([label, text]) =>
    wrap(text, page.width - labels - 2).map((line, i) => `  ${(i === 0 ? label : '').padEnd(labels)}${line}`),
  );
  return `${[page.colour.heading('Looked at'), ...lines].join('\n')}\n`;
}

const LAYERS: readonly Layer[] = ['rear', 'back', 'seated'];

const AIR: Readonly<Partial<Record<Layer, string>>> = {
  rear: 'Slide in the front',
  back: 'Back in the slide',
  seated: 'Glass, holders in the well',
};

const WAYS: Readonly<Record<Direction, string>> = { left: 'left', right: 'right', up: 'above', down: 'below' };

const side = ({ direction, air, parts }: Clearance): string =>
  air === null || parts === null
    ? `${WAYS[direction]} it bears or is free`
    : `${WAYS[direction]} ${mm(Math.round(air * 100) / 100)} (${parts[0]})`;
