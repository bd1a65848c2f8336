import { svg } from 'lit-html';
import type { PlanDocument } from '../../index.js';
import { type Dimension, dimension, hasRoom, type Measure } from './dimension.js';
import type { FilmPlane, SectionFigures } from './figures.js';
import { ASIDE, BELOW, FIRST_ROW, type Paper, ROW, ROWS, SCALE_ROW } from './paper.js';
import { length, sharp, subject } from './words.js';

/** What moves with the slide besides the rear itself: the light, the films and their names, the dimensions. */
export function moving(figures: SectionFigures, plan: PlanDocument, paper: Paper, measure: Measure) {
  const { planes, film, half } = figures;
  const { z, diameter } = plan.optics.exitPupil;
  const r = diameter / 2;
  return svg`
    <path class="section-light" d=${`M${z},${-r}L${film},${-half}V${half}L${z},${r}z`}></path>
    <path class="section-ray" d=${`M${z},${-r}L${film},${-half}M${z},${r}L${film},${half}`}></path>
    ${planes.map((plane, i) => filmLine(plane, i, figures, paper))}
    ${dimensionsOf(figures, plan, paper, measure).map((one) => dimension(one, paper, measure))}
    ${planes.map((plane, i) => filmName(plane, i, figures, plan, paper))}
  `;
}

/** y of a row of dimensions above the camera, counted from it. */
export const rowAt = ({ bounds, px }: Paper, row: number): number => -bounds.top - (FIRST_ROW + row * ROW) * px;

/** y of the scale of focus above them. */
export const scaleAt = (paper: Paper): number => rowAt(paper, ROWS - 1) - (SCALE_ROW - 16) * paper.px;

/** Where the name of a film stands: y of its leader aside, or of its line below. */
function nameAt(i: number, { half, planes }: SectionFigures, { px, top, height, bounds, namesAside }: Paper): number {
  if (!namesAside) return -bounds.bottom + (BELOW * (i + 1) - 3) * px;
  // beside the image, and above what is said of the limit in the corner below them
  const lowest = top + (height - ASIDE.limit - planes.length * ASIDE.apart) * px;
  return Math.min(-half + 10 * px, lowest) + i * ASIDE.apart * px;
}

/** The plane of a film: from its mark on the scale down through the image; below to its name where that stands there. */
function filmLine({ z, id, names, isIn }: FilmPlane, i: number, figures: SectionFigures, paper: Paper) {
  const foot = paper.namesAside ? figures.half + 6 * paper.px : nameAt(i, figures, paper);
  return svg`<line
    class=${`section-film ${isIn ? 'in' : ''}`}
    data-film=${id}
    data-names=${names.join(', ')}
    x1=${z}
    x2=${z}
    y1=${scaleAt(paper)}
    y2=${foot}
  ></line>`;
}

function filmName(plane: FilmPlane, i: number, figures: SectionFigures, plan: PlanDocument, paper: Paper) {
  const { px, bounds } = paper;
  const y = nameAt(i, figures, paper);
  const name = plane.names.join(', ');
  if (!paper.namesAside)
    return svg`<text class=${plane.isIn ? 'in' : ''} x=${plane.z - 5 * px} y=${y} text-anchor="end" font-size=${13 * px}>${name}</text>`;
  const at = bounds.right + ASIDE.from * px;
  const far = subject(plane.magnification, plan);
  return svg`
    <circle class="section-dot" cx=${plane.z} cy=${y} r=${2.4 * px}></circle>
    <path class="section-thin" d=${`M${plane.z},${y}H${at - 4 * px}`}></path>
    <text class=${plane.isIn ? 'in' : ''} x=${at} y=${y + 3 * px} font-size=${13 * px}>${name}</text>
    <text class="section-aside" x=${at} y=${y + 19 * px} font-size=${13 * px}>${sharp(plane)}${far === '' ? '' : `, ${far}`}</text>
  `;
}

/** Shorter than this an extension is none, mm. */
const NO_EXTENSION = 0.05;

function dimensionsOf(
  figures: SectionFigures,
  plan: PlanDocument,
  paper: Paper,
  measure: Measure,
): readonly Dimension[] {
  const { lensSeat, holderSeat, film, rearBox, frontBox, joint, overlap, overlapRequired, sharpAt } = figures;
  const { px, bounds } = paper;
  const out = -bounds.top + 2 * px;
  const inside = plan.slide.rearBoxInside / 2;
  const isShort = overlap < overlapRequired;
  const extension = film - sharpAt.infinity;
  const seat: Dimension = {
    name: 'seat',
    words: `holder seat ${length(holderSeat)}`,
    from: 0,
    to: holderSeat,
    y: inside - 30 * px,
    beside: 'nowhere',
  };
  const front: Dimension = {
    name: 'front-box',
    words: `front box ${length(frontBox)}`,
    from: 0,
    to: frontBox,
    y: inside - 9 * px,
    beside: 'nowhere',
  };
  // as low as these two leave room: the higher, the more of its words would lie on the lens
  const up = hasRoom(seat, paper, measure) ? 52 : hasRoom(front, paper, measure) ? 31 : 12;
  return [
    {
      name: 'overlap',
      words:
        overlap < 0
          ? `apart by ${length(-overlap)}: too far`
          : isShort
            ? `overlap ${length(overlap)}: too little, ${length(overlapRequired)} needed`
            : `overlap ${length(overlap)}`,
      from: joint[0],
      to: joint[1],
      y: rowAt(paper, 0),
      out,
      beside: 'left',
      wrong: isShort,
    },
    {
      name: 'film',
      words: `lens seat to film ${length(film - lensSeat)}`,
      short: `to film ${length(film - lensSeat)}`,
      from: lensSeat,
      to: film,
      y: rowAt(paper, 1),
      out,
    },
    {
      name: 'rear-box',
      words: `rear box ${length(rearBox[1] - rearBox[0])}`,
      from: rearBox[0],
      to: rearBox[1],
      y: 22 * px - inside,
      beside: 'nowhere',
    },
    seat,
    front,
    ...(Math.abs(extension) < NO_EXTENSION
      ? []
      : [
          {
            name: 'extension',
            words: extension > 0 ? `extension ${length(extension)}` : `past infinity ${length(-extension)}`,
            from: sharpAt.infinity,
            to: film,
            y: inside - up * px,
            beside: 'left' as const,
          },
        ]),
  ];
}
