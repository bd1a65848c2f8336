import type { RegisterBudget } from '../model/register-budget.js';
import type { Block } from '../paper/blocks.js';
import { bullets, caution, heading, kept, note, numbered, paragraph, smallPrint } from '../paper/prose.js';
import { table } from '../paper/table.js';
import { magnification, mm, plainNumber } from '../units/print.js';
import type { Chapter } from './chapter.js';

/** What lies on the seat before the glass or the film, and what must be put to it so that it is as high as it should be. */
export interface RegisterStack {
  /** Such as glass frame, or spacer for the paper holder. */
  readonly name: string;
  /** What is measured before its shims are chosen. */
  readonly reading: string;
  /** Plies in it, and how thick they are as drawn. */
  readonly plies: number;
  readonly drawn: number;
  /** How high it must come, shims included. */
  readonly wanted: number;
  /** The same as drawn: differs where glass or film was measured. */
  readonly wantedDrawn: number;
  /** As it was measured; null where nothing was. */
  readonly stands: StackThatStands | null;
  /** Where the shims lie. */
  readonly shimsGo: string;
  readonly rows: readonly ShimRow[];
}

/** A stack that stands, and what brings it nearer to what is wanted. */
export interface StackThatStands {
  /** With its shims; as drawn where what lies on it was measured, and not the stack. */
  readonly measured: number;
  readonly isRead: boolean;
  readonly add: readonly number[];
  readonly takeOut: readonly number[];
}

/** A reading of the plies, and the shims that make up what it lacks. */
export interface ShimRow {
  readonly reading: number;
  /** Thickest first. */
  readonly shims: readonly number[];
  /** What is wanted less plies and shims, signed. */
  readonly remainder: number;
}

export interface RegisterGiven {
  readonly glass: {
    readonly frosted: 'lens' | 'eye';
    readonly thickness: number;
    /** From the seat to the frosted face, as it is to be measured: where the films ask for it, as they stand. */
    readonly depth: number;
    readonly drawn: number;
    /** Null where nobody did. */
    readonly measured: number | null;
    /** It is to be mended before any spacer: they are reckoned from where it stands. */
    readonly isOff: boolean;
    /** How far every picture would be out of focus with the glass the wrong way round. */
    readonly wrongWayRound: number;
  };
  readonly holders: readonly {
    readonly name: string;
    /** From its face to the film, as drawn; effective, as the lens sees it. */
    readonly filmDepth: number;
    /** The same as it was measured; null where nobody did. */
    readonly measured: number | null;
    /** What a window before the film adds, as a depth gauge finds it. */
    readonly behindWindow: number;
    /** As a depth gauge finds the film that stands. */
    readonly measuredDepth: number;
    readonly spacer: {
      readonly under: 'glass' | 'holder' | 'none';
      /** As glass and film stand, and as drawn. */
      readonly thickness: number;
      readonly drawn: number;
      readonly measured: number | null;
    };
  }[];
  /** Allowed either way. */
  readonly tolerance: number;
  /** How near to what is missing the shims must come. */
  readonly within: number;
  readonly shims: readonly number[];
  /** More of them slide about. */
  readonly mostShims: number;
  readonly stacks: readonly RegisterStack[];
  /** Spacers that are made of shims alone. */
  readonly ofShims: readonly (Pick<RegisterStack, 'name' | 'wanted' | 'stands'> & {
    readonly shims: readonly number[];
  })[];
  /** Of the middle of the picture. */
  readonly budgets: readonly RegisterBudget[];
  readonly nearest: number;
}

export const settingTheRegister = (given: RegisterGiven): Chapter => ({
  title: 'Setting the register with shims',
  blocks: [
    ...whatItIs(given),
    ...frostedSide(given),
    ...howItStands(given),
    ...measuring(given),
    ...choosing(given),
    ...toFillIn(given),
    ...proving(given),
  ],
});

function whatItIs({ tolerance }: RegisterGiven): readonly Block[] {
  return [
    paragraph(
      'You focus on the ground glass, and then the film takes its place. Film and glass must stand at the same depth behind the seat, which is the bare rear face of the back that both of them bear on. This is called the register.',
    ),
    paragraph(
      `In this camera the two may differ by ${mm(hundredth(tolerance))} at most. No glue joint is that exact by itself. So the plies are glued and measured before the stack is closed, and what is missing is made up with shims: thin frames of card or plastic sheet.`,
    ),
    caution(
      'Nothing soft may lie between the seat and what bears on it: no paint, no felt, no foam. It would move the focus each time the cords are put on.',
    ),
  ];
}

function frostedSide({ glass }: RegisterGiven): readonly Block[] {
  const towards = glass.frosted === 'lens' ? 'the lens' : 'your eye';
  const smooth = glass.frosted === 'lens' ? 'your eye' : 'the lens';
  return [
    heading('Which side of the glass'),
    paragraph(
      `The frosted side faces ${towards}. To tell the sides apart, breathe on the glass: the smooth side turns dull and clears again, and a fingernail glides on it; on the frosted side it rasps.`,
    ),
    paragraph(
      `A small mark scratched near the edge of the smooth side, before the glass is set in, tells it for good. The mark must face ${smooth}. The wrong way round, every picture is ${mm(hundredth(glass.wrongWayRound))} out of focus.`,
    ),
  ];
}

/** Whether the camera stands otherwise than drawn as far as anybody measured it. */
const isMeasured = ({ glass, holders }: Pick<RegisterGiven, 'glass' | 'holders'>): boolean =>
  glass.measured !== null || holders.some(({ measured, spacer }) => measured !== null || spacer.measured !== null);

function howItStands(given: RegisterGiven): readonly Block[] {
  const { holders, budgets, tolerance } = given;
  const asRead = isMeasured(given);
  const rows = holders.map(({ name, filmDepth, measured, spacer }) => {
    const budget = budgets.find(({ holder, at }) => holder === name && at === 'centre');
    return [
      name,
      plainNumber(filmDepth, 2),
      ...(asRead ? [measured === null ? '' : plainNumber(measured, 2)] : []),
      spacer.under === 'none'
        ? 'none'
        : `${plainNumber(spacer.thickness, 2)} under the ${spacer.under}${asRead ? besides(spacer) : ''}`,
      budget === undefined ? '' : signed(budget.nominal),
      budget === undefined ? '' : range(budget.worst),
      budget === undefined ? '' : range(budget.measured.worst),
    ];
  });
  return [
    heading('How the holders of this camera stand'),
    ...table(
      [
        { title: 'Holder' },
        ...(asRead
          ? ([
              { title: 'Film depth as drawn, mm', align: 'right', width: 20 },
              { title: 'as measured, mm', align: 'right', width: 18 },
            ] as const)
          : ([{ title: 'Film depth, mm', align: 'right', width: 22 }] as const)),
        { title: 'Spacer, mm' },
        { title: `Glass less film, as ${asRead ? 'it stands' : 'drawn'}`, align: 'right', width: asRead ? 20 : 27 },
        { title: `At worst, ${asRead ? 'as it stands' : 'unmeasured'}`, align: 'right', width: asRead ? 26 : 30 },
        { title: 'At worst, measured and shimmed', align: 'right', width: asRead ? 28 : 34 },
      ],
      rows,
    ),
    smallPrint(
      `Film depth counts from the face of the holder to the film. The last three columns say how far the glass may stand behind the film (+) or ahead of it (−), mm; ±${plainNumber(tolerance, 2)} is allowed.`,
    ),
    ...holders.flatMap(({ name }) => {
      const budget = budgets.find(({ holder, at }) => holder === name && at === 'centre');
      return budget === undefined || widest(budget.measured.worst) <= tolerance
        ? []
        : [
            smallPrint(
              `${upper(name)}: the last column goes beyond what is allowed. It takes every error the same way at once; in 19 of 20 cameras it is ${range(budget.measured.interval95)}. Your own measuring in the camera, below, has the last word.`,
            ),
          ];
    }),
    ...[
      ...new Set(budgets.filter(({ at }) => at === 'centre').map(({ holder, toHalve }) => `${holder}: ${toHalve}`)),
    ].map((text) => smallPrint(text)),
  ];
}

/** What was drawn, where that is something else, and what was measured. */
function besides({ thickness, drawn, measured }: RegisterGiven['holders'][number]['spacer']): string {
  const [wanted, asDrawn] = [plainNumber(thickness, 2), plainNumber(drawn, 2)];
  return [
    ...(asDrawn === wanted ? [] : [`; ${asDrawn} as drawn`]),
    ...(measured === null ? [] : [`; ${plainNumber(measured, 2)} as measured`]),
  ].join('');
}

/** What was drawn and measured of the glass, beside where it should stand; nothing where nothing was measured. */
function glassBesides({ depth, drawn, measured }: RegisterGiven['glass']): string {
  const [wanted, asDrawn] = [mm(hundredth(depth)), mm(hundredth(drawn))];
  return [
    ...(asDrawn === wanted ? [] : [` as the films stand; ${asDrawn} was drawn`]),
    ...(measured === null ? [] : [`; ${mm(hundredth(measured))} was measured`]),
  ].join('');
}

function measuring({ glass, holders, stacks }: RegisterGiven): readonly Block[] {
  const windows = holders.filter(({ behindWindow }) => behindWindow !== 0);
  const behindPane =
    glass.frosted === 'eye'
      ? [
          `The frosted side faces away from the seat here: measure to the smooth face, and add the thickness of the glass, ${mm(glass.thickness)}.`,
        ]
      : [];
  return [
    heading('How to measure a depth'),
    paragraph(
      'How thick a stack is: put the jaws of the caliper through its window, over its rim, near all four corners. The depth rod is of no use there: from the front it falls through the window.',
    ),
    ...bullets(stacks.map(({ name, reading }) => `${upper(name)}: ${reading}`)),
    paragraph(
      'How deep the glass or the film lies: you need the depth rod of the caliper, and a straight edge: a steel rule set on its edge, or a strip of thick glass. Measure the height of the straight edge first, and write it down.',
    ),
    ...numbered([
      'Lay the frame or the holder down with the face that bears on the seat upwards.',
      'Set the straight edge across it, from rim to rim, so that it bears on bare wood at both ends.',
      'Stand the end of the caliper on the straight edge, and push the rod down until it touches. Take the height of the straight edge off what you read.',
      'Measure near all four corners of the picture, and take the mean. If the four differ by more than 0.1 mm, look for glue or dirt under a rim.',
    ]),
    ...bullets([
      `Glass, set in its frame: through the window in G1, to the frosted face. It should stand at ${mm(hundredth(glass.depth))}${glassBesides(glass)}.`,
      ...behindPane,
      'Film: load a spoiled sheet, draw the dark slide, and measure to the sheet. Touch it as lightly as you can: film gives way.',
      ...windows.map(
        ({ name, measuredDepth }) =>
          `${upper(name)}: a window stands before its film. Measure before the window is set in; the film must then stand at ${mm(hundredth(measuredDepth))}.`,
      ),
    ]),
  ];
}

function choosing({ glass, stacks, ofShims, shims, within, mostShims }: RegisterGiven): readonly Block[] {
  const sizes = [...shims].sort((a, b) => b - a).map((one) => plainNumber(one));
  return [
    heading('Which shims'),
    paragraph(
      `The order is that of the steps: glue the plies and let them dry under weights on a flat board; measure them; choose the shims in the table; close the stack. Shims are ${sizes.join(', ')} mm thick: measure all that you have of a size in one pile, and divide, for their thickness is seldom what is printed on them. “Left over” may be up to ${mm(hundredth(within))} either way.`,
    ),
    ...(stacks.length > 1 ? [paragraph('Set the glass frame first. Every spacer is reckoned from it.')] : []),
    ...(glass.isOff && stacks.length + ofShims.length > 1
      ? [
          caution(
            'Mend the glass first, measure it again, write that under groundGlass.measured, and ask for the spacers again: what is said of them here is reckoned from the glass as it stands now.',
          ),
        ]
      : []),
    ...stacks.flatMap((stack, i) => {
      // the first is the glass frame: what spacers lack is not known before it is mended
      const known = glass.isOff && i > 0 ? { ...stack, stands: null } : stack;
      return shimTable(known, { mostShims, within });
    }),
    ...ofShims.map((one) =>
      paragraph(
        `${upper(one.name)}: shims alone, ${shimsInWords(one.shims)}, glued with spots of contact adhesive to ${mm(hundredth(one.wanted))}. Choose them by what they measure together in one pile.${glass.isOff ? '' : mending(one, within)}`,
      ),
    ),
    note(
      'A reading between two rows: take the row that leaves less over. A reading outside the table: something is glued in that does not belong there, or the sheet is not the one of this book.',
    ),
  ];
}

function shimTable(
  stack: RegisterStack,
  { mostShims, within }: Pick<RegisterGiven, 'mostShims' | 'within'>,
): readonly Block[] {
  const { name, wanted, wantedDrawn, plies, drawn, shimsGo, rows } = stack;
  const [head, ...lines] = table(
    [
      { title: 'Plies measure, mm', align: 'right', width: 38 },
      { title: 'Missing, mm', align: 'right', width: 26 },
      { title: 'Put to them', width: 66 },
      { title: 'Left over, mm', align: 'right', width: 28 },
    ],
    rows.map(({ reading, shims, remainder }) => [
      `${reading.toFixed(2)}${Math.abs(reading - drawn) < 1e-6 ? ', as drawn' : ''}`,
      minus((wanted - reading).toFixed(2)),
      putTo({ reading, shims, remainder }, { within, mostShims }),
      shims.length > mostShims ? '' : signed(remainder),
    ]),
    { width: 170 },
  );
  if (head === undefined) return [];
  const layers = plies === 1 ? 'one ply' : `${plies} plies`;
  const [size, asDrawn] = [mm(hundredth(wanted)), mm(hundredth(wantedDrawn))];
  const height = size === asDrawn ? size : `${size} as glass and film stand, ${asDrawn} as drawn`;
  const title = paragraph(
    `${upper(name)}: ${layers}, ${mm(hundredth(drawn))} as drawn; with its shims ${height}. ${shimsGo}${mending(stack, within)}`,
  );
  const many = rows.some(({ shims }) => shims.length > mostShims)
    ? [
        smallPrint(
          `More than ${mostShims} shims slide about: glue one ply of a thinner sheet on instead, and measure again.`,
        ),
      ]
    : [];
  return [{ ...kept([title, head]), withNext: true }, ...lines, ...many];
}

/** What is done to a stack that stands, as a sentence or two with a blank before them. */
function mending({ stands, wanted }: Pick<RegisterStack, 'stands' | 'wanted'>, within: number): string {
  if (stands === null) return '';
  const { measured, isRead, add, takeOut } = stands;
  const lacks = wanted - measured;
  const deeds = [
    ...(takeOut.length > 0 ? [`take out ${shimsInWords(takeOut)}`] : []),
    ...(add.length > 0 ? [`put in ${shimsInWords(add)}`] : []),
  ];
  const todo =
    deeds.length > 0
      ? `${deeds.join(' and ')}, and measure it again`
      : Math.abs(lacks) <= within + ROUNDING
        ? 'nothing need be changed'
        : `it is ${mm(hundredth(Math.abs(lacks)))} too ${lacks > 0 ? 'low' : 'high'}, and no shim at hand mends that`;
  return ` ${isRead ? 'Measured with the shims that are in it' : 'With the shims that are drawn in it'}, ${mm(hundredth(measured))}: ${todo}.`;
}

function putTo(
  { shims, remainder }: ShimRow,
  { within, mostShims }: Pick<RegisterGiven, 'mostShims' | 'within'>,
): string {
  if (remainder < -within - ROUNDING) return 'too thick: sand the plies';
  return shims.length > mostShims ? 'one ply of a thinner sheet' : shimsInWords(shims);
}

/** As they are counted out of the box: 2 × 0.5 + 1 × 0.25. */
function shimsInWords(shims: readonly number[]): string {
  if (shims.length === 0) return 'nothing';
  const sizes = [...new Set(shims)];
  return sizes.map((size) => `${shims.filter((one) => one === size).length} × ${plainNumber(size)}`).join(' + ');
}

interface RowToFillIn {
  readonly what: string;
  readonly wanted: number;
  readonly drawn: number;
  readonly measured: number | null;
}

function toFillIn({ holders, stacks, glass }: RegisterGiven): readonly Block[] {
  const asRead = isMeasured({ holders, glass });
  // spacers are reckoned from the glass as it stands
  const glassStands = glass.measured ?? glass.drawn;
  const all: readonly RowToFillIn[] = [
    ...stacks.map(({ name, wanted, wantedDrawn, stands }) => ({
      what: `${name}, plies and shims`,
      wanted,
      drawn: wantedDrawn,
      measured: stands?.isRead ? stands.measured : null,
    })),
    { what: 'glass in its frame', wanted: glass.depth, drawn: glass.drawn, measured: glass.measured },
    ...holders.flatMap(({ name, filmDepth, measured, behindWindow, measuredDepth, spacer }): RowToFillIn[] => [
      {
        what: `${name}, film`,
        wanted: measuredDepth,
        drawn: filmDepth + behindWindow,
        measured: measured === null ? null : measuredDepth,
      },
      ...(spacer.under === 'glass'
        ? [
            {
              what: `glass on the spacer for the ${name}`,
              wanted: glassStands + spacer.thickness,
              drawn: glass.drawn + spacer.drawn,
              measured: null,
            },
          ]
        : []),
      ...(spacer.under === 'holder'
        ? [
            {
              what: `${name} on its spacer, film`,
              wanted: measuredDepth + spacer.thickness,
              drawn: filmDepth + behindWindow + spacer.drawn,
              measured: null,
            },
          ]
        : []),
    ]),
  ];
  const rows = all.map(({ what, wanted, drawn, measured }) => [
    what,
    ...(asRead ? [plainNumber(drawn, 2)] : []),
    plainNumber(wanted, 2),
    measured === null ? '' : plainNumber(measured, 2),
  ]);
  return [
    heading('Your register'),
    paragraph('Fill it in with a pencil, and again whenever you change a shim, a glass or a holder.'),
    ...table(
      [
        { title: 'What', width: 38 },
        ...(asRead ? [{ title: 'As drawn, mm', width: 16 }] : []),
        { title: 'Should be, mm', width: 18 },
        { title: 'Measured in four places; mean', width: asRead ? 28 : 34 },
        { title: 'Difference', width: asRead ? 20 : 22 },
        { title: 'Shims put in', width: asRead ? 18 : 20 },
        { title: 'Date', width: 18 },
      ],
      [...rows, [], []],
      { toFillIn: true },
    ),
  ];
}

function proving({ nearest, tolerance, holders }: RegisterGiven): readonly Block[] {
  if (nearest === 0) return [];
  const perMm = nearest * nearest;
  const spaced = holders.some(({ spacer }) => spacer.under === 'glass');
  const raised = holders.filter(({ spacer }) => spacer.under === 'holder').map(({ name }) => name);
  return [
    heading('Proof by a picture'),
    ...numbered([
      `Lay a tape measure on a table so that it runs towards the camera, slanting, and draw the camera out to its nearest focus, ${magnification(nearest)}.`,
      'Open the lens fully. Focus on one figure of the tape with a magnifier, and lock the slide. Note the figure.',
      'Put the holder in and take the picture. On it, look for the figure that is sharpest.',
    ]),
    paragraph(
      `If it is a figure nearer to the camera, the film stands behind the glass: the glass must go back, so add a shim ${spaced ? 'to the spacer of that holder, or to the glass frame where it has none' : 'to the glass frame'}. If it is one farther away, the film stands ahead of the glass: take a shim out. For each millimetre between the two figures, along the axis of the lens, the shim is ${mm(hundredth(perMm))} thick. Up to ${mm(Math.floor((10 * tolerance) / perMm) / 10)} of the tape is within what is allowed.`,
    ),
    ...(raised.length > 0
      ? [
          paragraph(
            `The ${raised.join(' and the ')} ${raised.length === 1 ? 'stands on a spacer itself' : 'stand on spacers themselves'}: there it is the other way round. A shim more moves the film back, and not the glass.`,
          ),
        ]
      : []),
  ];
}

/** A remainder at the limit is within it. */
const ROUNDING = 1e-6;

const hundredth = (value: number): number => Math.round(value * 100) / 100 || 0;
const widest = (ends: readonly [number, number]): number => Math.max(...ends.map(Math.abs));
const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const minus = (text: string): string => (Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−'));

/** With its sign, in hundredths: a register has one. */
const signed = (value: number): string => {
  const text = Math.abs(value).toFixed(2);
  return Number(text) === 0 ? '0' : `${value < 0 ? '−' : '+'}${text}`;
};

const range = ([low, high]: readonly [number, number]): string => `${signed(low)} … ${signed(high)}`;
