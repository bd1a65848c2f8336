import type { Clearance, Direction, Layer, LightJoint, ProofDocument } from '../model/proof.js';
import { mm } from '../units/print.js';
import type { Colour } from './plan-page.js';
import { table, wrap } from './text-layout.js';

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

/** What was looked at, in figures, so that a builder can tell what a silent check stands for. Ends with a line break. */
export function proofPage({ pieces, pairs, setups, clearances, assembly, joints }: ProofDocument, page: Page): string {
  const rows: readonly (readonly [string, string])[] = [
    ['Places', 'x to the right and y up from the axis, seen from behind; z from the inner face of the front panel'],
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
  const ways = table(
    [
      { title: 'way in for light', align: 'left' },
      { title: 'turns', align: 'right' },
      { title: 'land', align: 'right' },
      { title: 'least', align: 'right' },
    ],
    joints.map(way),
    page.width - 2,
  );
  const dark = [page.colour.faint(ways.titles.join('\n  ')), ...ways.rows.flat()].map((line) => `  ${line}`);
  return `${[page.colour.heading('Looked at'), ...lines, ...(joints.length > 0 ? ['', ...dark] : [])].join('\n')}\n`;
}

/** Felt stands for turns: it shuts a gap in which nothing turns. */
const way = ({ joint, turns, land, needed, felt }: LightJoint): readonly string[] => [
  joint,
  felt > 1 ? `${felt} felts` : `${turns}`,
  mm(Math.round(land * 10) / 10),
  needed.land > 0 ? mm(needed.land) : '',
];

const LAYERS: readonly Layer[] = ['rear', 'back', 'seated'];

const AIR: Readonly<Partial<Record<Layer, string>>> = {
  rear: 'Slide in the front',
  back: 'Back in the slide',
  seated: 'Glass, holders in the well',
};

const WAYS: Readonly<Record<Direction, string>> = { left: 'left', right: 'right', up: 'above', down: 'below' };

const side = ({ direction, air, parts }: Clearance): string =>
  air === null || parts === null
    ? `${WAYS[direction]} nothing within reach`
    : `${WAYS[direction]} ${mm(Math.round(air * 100) / 100)} (${parts[0]})`;
