import { bullets, caution, heading, note, paragraph } from '../paper/prose.js';
import { table } from '../paper/table.js';
import type { Chapter } from './chapter.js';
import { type BookGiven, type BookStep, inWords, type StandingCamera } from './given.js';

export const AT_THE_CAMERA_THAT_STANDS = 'At the camera that stands';

/** Where parts of an earlier camera are kept: what is made, what stays, and which of the steps are done. */
export function standingCamera(since: StandingCamera, { plan, steps }: Pick<BookGiven, 'plan' | 'steps'>): Chapter {
  const { name, revision, recut, sawn, kept, otherLines } = since;
  return {
    title: AT_THE_CAMERA_THAT_STANDS,
    blocks: [
      paragraph([
        `This book is for ${name}, revision ${revision}, which stands already and becomes ${plan.name}, revision ${plan.revision}. The sheets hold only what that camera does not have.`,
        'All drawings and figures are those of the camera as it stands in the end, kept parts included.',
      ]),
      ...(otherLines.length === 0 ? [] : [caution(otherLinesText(otherLines, revision))]),
      heading('Cut or printed again'),
      ...(recut.length === 0
        ? [paragraph('Nothing: every part is there already.')]
        : table([{ title: 'Part', width: 24 }, { title: 'What it is' }, { title: 'Why' }], recut)),
      ...(sawn.length === 0
        ? []
        : [
            paragraph(
              `${inWords(sawn)} stays where it is glued in: lay the new one on it, mark its opening, and saw that of the old one out. Only in a camera that is not glued up yet does the new one take its place.`,
            ),
          ]),
      heading('Kept'),
      ...kept.map((text) => paragraph(text)),
      paragraph(
        `Kept parts bear the revision that they were cut for, ${revision} or an older one; the new ones bear ${plan.revision}.`,
      ),
      ...hardware(since),
      heading('Which steps to do'),
      ...stepsToDo(steps),
    ],
  };
}

/** What a builder has to know of kept parts before trusting a line on them. */
export const otherLinesText = (ids: readonly string[], revision: string): string =>
  `${inWords(ids)} ${ids.length === 1 ? 'is' : 'are'} kept, and ${ids.length === 1 ? 'bears' : 'bear'} the lines and words of revision ${revision} or an older one, not those of this camera. Trust none of them: cut ${ids.length === 1 ? 'it' : 'them'} again (tailboard part <design file> ${ids.join(' ')}), or scribe the lines by hand as drawn.`;

/** Of parts that bear the focus scale, or the lines that it is read at; null where theirs are right. */
export function otherScaleText(
  { name, revision, otherLines }: StandingCamera,
  { scale, index }: { readonly scale: readonly string[]; readonly index: readonly string[] },
): readonly string[] | null {
  const strips = scale.filter((id) => otherLines.includes(id));
  const lines = index.filter((id) => otherLines.includes(id));
  const ids = [...strips, ...lines];
  if (ids.length === 0) return null;
  const [is, bears, it] = ids.length === 1 ? ['is', 'bears', 'it'] : ['are', 'bear', 'them'];
  const what = lines.length === 0 ? 'scale' : strips.length === 0 ? 'index lines' : 'scale and the index lines';
  return [
    `${inWords(ids)} ${is} kept from ${name}, revision ${revision}, and ${bears} the ${what} of that camera. Every distance, magnification and stop read there is wrong for this one.`,
    `Cut ${it} again (tailboard part <design file> ${ids.join(' ')}), or scribe the lines of this camera by hand. What follows is true of those lines alone; until then trust the ground glass.`,
  ];
}

/** Of a kept sole that has lines of the earlier holders alone; null where it lacks none. */
export function lackingLineText(
  { name, revision, withoutLine }: StandingCamera,
  sole: string,
): readonly string[] | null {
  if (withoutLine.length === 0) return null;
  return [
    `${sole} is kept from ${name}, revision ${revision}, and knows nothing of the ${inWords(withoutLine)}. The lines that it has are right for this camera too.`,
    'What it lacks, a line, or a number at a line that several share, scribe by hand as told below.',
  ];
}

function hardware({ hardware: fresh, fast }: StandingCamera) {
  const used = [
    ...(fast.length === 0
      ? []
      : [
          `Fast in a part that is cut again, and so bought again: ${fast.map(({ part, count }) => `${count} × ${part.name}`).join(', ')}.`,
        ]),
    'Glue, paint and what else is used up: as the steps ask for it.',
  ].join(' ');
  if (fresh === null)
    return [
      heading('Hardware'),
      paragraph(
        `What hardware the camera that stands has is not known: hold the list of bought parts against it. ${used}`,
      ),
    ];
  return [
    heading('New hardware'),
    ...(fresh.length === 0
      ? [paragraph(`None: what is on the list of bought parts is there already. ${used}`)]
      : [
          ...table(
            [
              { title: 'Pieces', align: 'right', width: 14 },
              { title: 'What' },
              { title: 'Size, mm' },
              { title: 'For' },
            ],
            fresh.map(({ count, name, size, for: use }) => [`${count}`, name, size, use]),
          ),
          paragraph(`The rest of the list of bought parts is there already. ${used}`),
        ]),
  ];
}

function stepsToDo(steps: readonly BookStep[]) {
  const says = ({ number, title, since }: BookStep): readonly string[] => {
    if (since === null) return [];
    const { brings, meets, stacks } = since;
    const step = `Step ${number}, ${title}:`;
    const makes = inWords(stacks);
    const too = stacks.length > 0 ? `, and makes ${makes}` : '';
    if (brings.length > 0) return [`${step} brings in ${inWords(brings)}${too}. Do all of it.`];
    if (meets.length > 0)
      return [
        `${step} has to do with ${inWords(meets)}${too}. Do of it what touches ${meets.length + stacks.length === 1 ? 'that part' : 'those parts'}.`,
      ];
    return stacks.length === 0 ? [] : [`${step} makes ${makes}. Do of it what is told of that.`];
  };
  const own = steps.flatMap(says);
  return [
    paragraph(
      own.length === 0
        ? 'None touches a part that is cut again: all of them are done.'
        : `${steps.some(({ since }) => since !== null && since.brings.length > 0) ? 'Take the old parts off first, in the opposite order. Then do these steps' : 'Do these steps'}; all others are done already, and stand in the book to be looked up.`,
    ),
    ...bullets(own),
    note('Set the register and look for leaks of light anew, whatever was changed.'),
  ];
}

/** What is said of a step below its drawing. */
export function stepNote({ brings, meets, stacks, otherLines }: NonNullable<BookStep['since']>): string {
  const lines =
    otherLines.length === 0
      ? ''
      : ` ${inWords(otherLines)}: kept, with other lines than drawn. Scribe them by hand, or cut ${otherLines.length === 1 ? 'the part' : 'the parts'} again.`;
  const made = stacks.length > 0 ? ` Make here: ${inWords(stacks)}.` : '';
  const again =
    brings.length > 0
      ? `Cut again here: ${inWords(brings)}.`
      : meets.length > 0
        ? `Done already, but for what touches ${inWords(meets)}, which ${meets.length === 1 ? 'is' : 'are'} cut again.`
        : `${stacks.length > 0 ? 'All else is done' : 'Done'} already at the camera that stands.`;
  return `${again}${made}${lines}`;
}
