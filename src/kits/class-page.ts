import type { KitAround, KitHardware, KitsDocument } from '../model/kits.js';
import type { Block } from '../paper/blocks.js';
import { bullets, caution, chapterTitle, heading, SMALL } from '../paper/prose.js';

/** What everybody uses from one bottle, and nobody gets in a box: common practice, no source. */
export const SET_OUT: readonly string[] = ['matte black', 'wood glue', 'contact adhesive', 'wax', 'silicone', 'epoxy'];

export const isSetOut = ({ name }: Pick<KitHardware, 'name'>): boolean => SET_OUT.includes(name);

/** The one page that hangs in the room: what each gets, what stands on the tables, in which order, and what to beware of. */
export function classPage({ name, copies, hardware, prints, kits, around }: KitsDocument): readonly Block[] {
  const cut = kits[0]?.parts.reduce((sum, { pieces }) => sum + pieces.length, 0) ?? 0;
  const kinds = kits[0]?.parts.length ?? 0;
  const isPrinted = ({ size }: KitHardware) => prints.some(({ file }) => size === `${file}.stl`);
  // what is printed stands on its own line
  const bag = inBag(hardware.filter((line) => !isSetOut(line) && !isPrinted(line)));
  const setOut = hardware.filter(isSetOut);
  const list = (items: readonly string[]) => bullets(items, { size: SMALL });
  return [
    { ...chapterTitle(`${name}: ${copies === 1 ? 'a kit' : `${copies} kits`} for the class`), above: 0 },
    heading('Each of you gets'),
    ...list([
      `a box with ${cut} cut pieces of ${kinds} parts, by its packing list; a part’s number is engraved on it wherever it does not show`,
      ...(prints.length === 0
        ? []
        : [`printed: ${prints.map(({ each, name: what }) => `${each} × ${what}`).join(', ')}`]),
      `a bag: ${bag.map(thing).join('; ')}`,
      `what the camera is built round: ${around.map((one) => (one.each === 1 ? aroundName(one) : `${one.each} × ${aroundName(one)}`)).join(', ')}`,
      'the build book, which says every step; parts of another revision do not fit',
    ]),
    heading('The teacher sets out'),
    ...list([
      ...(setOut.length === 0
        ? []
        : [
            `for all: ${setOut.map(({ name: what, size, each }) => `${what} (${each === 1 ? '' : `${each} × `}${size} for each)`).join('; ')}`,
          ]),
      'for each table: caliper, steel ruler, try square, clamps and masking tape, a flat board with film on it, fine sandpaper on a block, brush and cloth, drill bits and screwdrivers',
      'spare hardware in boxes with lids, apart from the bags; safety glasses and dust masks for everybody',
    ]),
    heading('In this order'),
    ...list([
      'Tick the packing list: what is missing is asked for now, not with glue on the fingers.',
      'Sort the pieces by their numbers as the book lays them out. Put every joint together dry first.',
      'Glue and blacken step by step as the book says; let each box dry clamped on the flat board.',
      'Set the register with the glass in, then look for leaks of light, then the lens and the first picture.',
    ]),
    caution(
      [
        ...cautionsFor(hardware, prints.length > 0),
        'The instructions of machines, glues and paints and the rules of this place go before anything written here.',
      ],
      { size: SMALL },
    ),
  ];
}

/** With what it is sold with. */
export const aroundName = ({ name, with: sold }: KitAround): string => (sold === null ? name : `${name}, with ${sold}`);

interface BagThing {
  readonly each: number;
  readonly what: string;
}

/** What a bag is filled by: things that are alike in one, whatever each of them is for. */
function inBag(hardware: readonly KitHardware[]): readonly BagThing[] {
  const things = new Map<string, number>();
  for (const { each, name, size } of hardware) {
    const what = `${name}${size === '' ? '' : ` ${size.split(',')[0]}`}`;
    things.set(what, (things.get(what) ?? 0) + each);
  }
  return [...things].map(([what, each]) => ({ what, each }));
}

const thing = ({ each, what }: BagThing): string => `${each === 1 ? '' : `${each} × `}${what}`;

function cautionsFor(hardware: readonly KitHardware[], isPrinted: boolean): readonly string[] {
  const has = (...names: readonly string[]) => hardware.some(({ name }) => names.some((word) => name.includes(word)));
  return [
    'Laser: only whoever has been shown the machine starts it, and stays with it: wood burns. Extraction on, extinguisher at hand, lid shut. Just cut pieces are hot, and their edges soot hands and eyes.',
    ...(has('glass')
      ? [
          'Glass: edges are ground before it is handed out. Carry it flat with both hands, one pane at a time; glasses on. Whoever breaks one says so, and nobody picks splinters with bare fingers.',
        ]
      : []),
    'Glue and paint: window open; none of it on skin or in eyes; wash hands before eating. Cloths with glue or paint dry spread out, not in a heap.',
    ...(has('contact adhesive', 'epoxy', 'silicone')
      ? ['Contact adhesive, epoxy and silicone are handed out by the teacher: gloves, fresh air, no flame near.']
      : []),
    ...(has('elastic cord')
      ? [
          'Elastic cord and sharp tools: nobody’s eyes in line when a cord is let go; cut away from the hand, drill with the piece clamped.',
        ]
      : []),
    ...(isPrinted
      ? ['Prints come off a hot bed and have sharp threads of plastic: let them cool, then trim them.']
      : []),
  ];
}
