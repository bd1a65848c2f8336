import type { Build } from '../../src/assembly/build.js';
import { workbench } from '../../src/assembly/workbench.js';
import type { Design } from '../../src/design/design.js';
import { elevationDrawings } from '../../src/drawings/elevation.js';
import { lightTrapDrawing } from '../../src/drawings/light-trap.js';
import { pouringDrawings } from '../../src/drawings/pouring.js';
import { sectionDrawing } from '../../src/drawings/section.js';
import { pageSvg } from '../../src/files/page-svg.js';
import type { Kernel } from '../../src/geometry/kernel.js';
import type { Drawing } from '../../src/model/page.js';
import type { PlanDocument } from '../../src/model/plan.js';
import { planCamera, planOf } from '../../src/pipeline.js';
import { keptDesign } from '../designs/kept-design.js';
import { type ReadLine, type ReadWords, readDrawing } from './read-drawing.js';

export interface Drawn {
  readonly design: Design;
  readonly build: Build;
  readonly plan: PlanDocument;
  readonly drawings: readonly (Drawing & {
    readonly lines: readonly ReadLine[];
    readonly words: readonly ReadWords[];
  })[];
}

/** The least of both papers of the book. */
export const ROOM = { width: 174, height: 225 };

/** Sections, elevations, light trap and what is poured into, of a design that comes with the program, read back from their files. */
export function drawnCamera(name: string, kernel: Kernel): Drawn {
  const design = keptDesign(name);
  const planned = planCamera(design);
  const plan = planOf(planned);
  const { build } = planned;
  const drawings = kernel.stage((bench) => {
    const given = { build, plan, on: workbench(bench), room: ROOM };
    return [
      sectionDrawing(given, 'infinity'),
      sectionDrawing(given, 'nearest'),
      ...elevationDrawings(given),
      lightTrapDrawing(given),
      ...pouringDrawings(given),
    ];
  });
  return {
    design,
    build,
    plan,
    drawings: drawings.map((drawing) => ({ ...drawing, ...readDrawing(pageSvg(drawing)) })),
  };
}
