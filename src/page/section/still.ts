import { nothing, svg } from 'lit-html';
import type { PlanDocument } from '../../index.js';
import type { ShownFace, ShownSection, Stuff } from '../../model/shown.js';
import { magnification } from '../../units/print.js';
import type { Pose } from '../pose.js';
import type { Measure } from './dimension.js';
import type { SectionFigures } from './figures.js';
import { rowAt, scaleAt } from './moving.js';
import type { Paper } from './paper.js';

/** What stands still while the slide is drawn, the rear among it: that is moved as a whole. */
export function still(
  section: ShownSection,
  figures: SectionFigures,
  plan: PlanDocument,
  paper: Paper,
  pose: Pose,
  measure: Measure,
) {
  const { bounds, px } = paper;
  const standing = section.faces.filter(({ when, over }) => over === undefined && when.includes(figures.setup.name));
  return svg`
    <defs>${patterns(px)}</defs>
    ${scale(plan, figures, paper, measure)}
    ${(['beyond', 'cut'] as const).map((layer) =>
      (['slides', 'drawn', 'stands'] as const).map(
        (how) =>
          svg`<g class=${how === 'stands' ? '' : `section-${how}`}>${standing
            .filter((one) => motionOf(one) === how && (one.as === 'beyond') === (layer === 'beyond'))
            .map((one) => face(one, pose))}</g>`,
      ),
    )}
    <path class="section-axis" d=${`M${bounds.left - 6 * px},0H${bounds.right + 6 * px}`}></path>
    ${plan.slide.middleBox ? nothing : leastOverlap(figures, paper)}
  `;
}

/** A middle box is drawn along when the slide is half out. */
const motionOf = ({ slides, drawnFrom }: ShownFace): 'slides' | 'drawn' | 'stands' =>
  slides ? 'slides' : drawnFrom === undefined ? 'stands' : 'drawn';

function face({ key, part, name, stuff, slides, as, loops }: ShownFace, { chosen, pointed }: Pose) {
  const d = loops.map((loop) => `M${loop.map((n, i) => (i % 2 === 0 ? n : -n)).join(' ')}z`).join('');
  const marked = part === chosen ? 'chosen' : pointed.includes(part) ? 'pointed' : '';
  return svg`<path
    class=${`section-face ${as === 'cut' ? stuff : as} ${marked}`}
    data-key=${key}
    data-part=${part}
    d=${d}
    fill-rule="evenodd"
    fill=${as === 'cut' ? `url(#section-${filling(stuff, slides)})` : nothing}
  ><title>${part} ${name}</title></path>`;
}

/** Front and rear are hatched against each other, so that boxes that slide in one another are told apart. */
const filling = (stuff: Stuff, slides: boolean): string =>
  stuff === 'plywood' ? (slides ? 'plywood-rear' : 'plywood-front') : stuff;

interface Pattern {
  readonly name: string;
  readonly turn: number;
  /** From line to line, px. */
  readonly apart: number;
  readonly crossed?: boolean;
}

/** ISO 128-50 (from memory) wants hatching, and gives no patterns for materials: these are ours. */
const hatchings: readonly Pattern[] = [
  { name: 'plywood-front', turn: 45, apart: 5 },
  { name: 'plywood-rear', turn: -45, apart: 5 },
  { name: 'printed', turn: 45, apart: 6, crossed: true },
  { name: 'wood', turn: 90, apart: 4 },
  { name: 'metal', turn: 45, apart: 3 },
  { name: 'glass', turn: -35, apart: 3.5 },
  { name: 'felt', turn: 0, apart: 2 },
  { name: 'card', turn: 0, apart: 2 },
  { name: 'lens', turn: 30, apart: 9 },
  { name: 'holder', turn: -30, apart: 8 },
];

const patterns = (px: number) =>
  hatchings.map(
    ({ name, turn, apart, crossed }) => svg`<pattern
      id=${`section-${name}`}
      class=${`section-filling ${name}`}
      width=${apart}
      height=${apart}
      patternUnits="userSpaceOnUse"
      patternTransform=${`scale(${px}) rotate(${turn})`}
    ><rect width=${apart} height=${apart}></rect><path d=${`M0,0H${apart}${crossed === true ? `M0,0V${apart}` : ''}`}></path></pattern>`,
  );

/** Magnifications that may stand on the scale of focus. */
const MARKS = [1 / 20, 1 / 10, 1 / 7, 1 / 5, 1 / 4, 1 / 3, 1 / 2.5, 1 / 2, 1 / 1.5, 1, 1.5, 2, 3] as const;

/**
 * The scale of focus: where on the axis a film is sharp at infinity, at the nearest and between; the stretch of it that the
 * film of the holder that is in can be brought to, with its two ends.
 */
function scale(plan: PlanDocument, { sharpAt, lensSeat, half, ends }: SectionFigures, paper: Paper, measure: Measure) {
  const { px } = paper;
  const { optics } = plan;
  const y = scaleAt(paper);
  const placeOf = (m: number) => lensSeat + optics.flangeDistance + optics.focalLength * m;
  const wide = (m: number) => (measure(nameOf(m)) + 8) * px;
  const kept = [0, optics.nearest.magnification].filter((m, i, all) => all.indexOf(m) === i);
  for (const m of MARKS)
    if (
      m < optics.nearest.magnification &&
      kept.every((one) => Math.abs(placeOf(one) - placeOf(m)) > (wide(one) + wide(m)) / 2)
    )
      kept.push(m);
  return svg`
    <g class="section-scale">
      <path class="section-sharp" d=${[sharpAt.infinity, sharpAt.nearest].map((z) => `M${z},${y}V${half}`).join('')}></path>
      <path class="section-reach" d=${`M${ends[0]},${y}H${ends[1]}`}></path>
      <path class="section-end" d=${ends.map((z) => `M${z},${y - 5 * px}V${y + 5 * px}`).join('')}></path>
      ${kept.map(
        (m) => svg`
          <path class="section-thin" d=${`M${placeOf(m)},${y}V${y - 6 * px}`}></path>
          <text x=${placeOf(m)} y=${y - 9 * px} text-anchor="middle" font-size=${13 * px}>${nameOf(m)}</text>`,
      )}
    </g>`;
}

const nameOf = (m: number): string => (m === 0 ? '∞' : magnification(m));

/** What limits: the front edge of the rear box may not come nearer to the end of the front box than this. */
function leastOverlap({ frontBox, overlapRequired }: SectionFigures, paper: Paper) {
  const { px } = paper;
  // beneath the line of the overlap: its words stand above
  const y = rowAt(paper, 0) + 5 * px;
  const z = frontBox - overlapRequired;
  return svg`
    <g class="section-least">
      <title>the rear box may be drawn out until its front edge is here</title>
      <path d=${`M${z},${y}V${-paper.bounds.top + 10 * px}`}></path>
      <path class="section-flag" d=${`M${z},${y}l${-7 * px},${-3 * px}v${6 * px}z`}></path>
    </g>`;
}
