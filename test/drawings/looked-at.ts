import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { workbench as solids } from '../../src/assembly/workbench.js';
import { bodiesOf, standingIn } from '../../src/drawings/scene.js';
import { type PieceLines, seenLines } from '../../src/drawings/seen-lines.js';
import {
  backView,
  bottomView,
  frontView,
  leftView,
  rightView,
  topView,
  type View,
  viewFrom,
} from '../../src/drawings/view.js';
import { partsJson } from '../../src/files/parts-json.js';
import { stl } from '../../src/files/stl.js';
import { type Kernel, realise } from '../../src/geometry/kernel.js';
import { buildPrism } from '../../src/geometry/modelling.js';
import { planCamera } from '../../src/pipeline.js';
import { keptDesign } from '../designs/kept-design.js';
import { type PartsFile, readParts } from '../pictures/parts-file.js';
import { type PutTogether, workbench as pictured } from '../pictures/workpieces.js';
import type { Solid } from './depth-picture.js';

/** One look at a camera: in which set-up, how far open, sawn or whole, from where. */
export interface Look {
  readonly name: string;
  readonly view: View;
  readonly open: boolean;
  /** The half that is left of the plane x = 0: with x above or below. */
  readonly sawn?: 'above' | 'below';
  readonly setUp: 'glass' | 'holder' | 'lengthwise';
}

const from = (x: number, y: number, z: number): View => viewFrom({ x, y, z });

/** Elevations, sections and views from a corner, closed and open. */
export const looks: readonly Look[] = (
  [
    { name: 'front', view: frontView },
    { name: 'back', view: backView },
    { name: 'left', view: leftView },
    { name: 'right', view: rightView },
    { name: 'top', view: topView },
    { name: 'bottom', view: bottomView },
    { name: 'from the back corner', view: from(0.6, 0.5, 0.8) },
    { name: 'from the front corner', view: from(-0.75, 0.45, -0.7) },
    { name: 'from below', view: from(0.45, -0.8, 0.6) },
    { name: 'sawn, from the left', view: leftView, sawn: 'above' },
    { name: 'sawn, from the right', view: rightView, sawn: 'below' },
    { name: 'sawn, from a corner', view: from(-1, 0.3, 0.4), sawn: 'above' },
  ] as const
).flatMap((look) =>
  (['glass', 'holder', 'lengthwise'] as const).flatMap((setUp) =>
    [false, true].map((open): Look => ({ ...look, open, setUp })),
  ),
);

/** A camera seen twice: as its drawings are made, and from the files that were written of it. */
export interface SeenTwice {
  readonly lines: (look: Look) => readonly PieceLines[];
  readonly solids: (look: Look) => readonly Solid[];
}

export async function seenTwice(name: string, kernel: Kernel): Promise<SeenTwice> {
  const { build } = planCamera(keptDesign(name));
  const { file, put } = await written(build, kernel);
  const setUpOf = ({ setUp }: Look) => {
    const wanted = build.setups.find(
      ({ focusing, orientation }) =>
        focusing === (setUp !== 'holder') && orientation === (setUp === 'lengthwise' ? 'lengthwise' : 'upright'),
    );
    if (wanted === undefined) throw new Error(`${name} has no ${setUp}`);
    return wanted;
  };
  const rearOf = ({ open }: Look) => build.stations.find((s) => s.name === (open ? 'farthest' : 'closest'))?.rear ?? 0;
  return {
    lines: (look) =>
      kernel.stage((bench) => {
        const saw = look.sawn === undefined ? {} : { saw: { normal: { x: look.sawn === 'above' ? 1 : -1, y: 0, z: 0 }, offset: 0 } }; // biome-ignore format: one line
        const shown = standingIn(build.parts, setUpOf(look)).map((piece) => ({ piece, rear: rearOf(look), ...saw }));
        return seenLines(bodiesOf(solids(bench), shown), look.view);
      }),
    solids: (look) => {
      const setUp = file.setups.find((one) => one.name === setUpOf(look).name);
      if (setUp === undefined) throw new Error(`${setUpOf(look).name} is not in the file`);
      const saw = look.sawn === undefined ? {} : { saw: { axis: 0 as const, at: 0, ...(look.sawn === 'above' ? { keeps: 'beyond' as const } : {}) } }; // biome-ignore format: one line
      return put({ setUp, rear: rearOf(look), ...saw }, () => true);
    },
  };
}

/** The camera read back from its files: parts.json and the prints. */
async function written(
  build: ReturnType<typeof planCamera>['build'],
  kernel: Kernel,
): Promise<{ readonly file: PartsFile; readonly put: PutTogether }> {
  const folder = mkdtempSync(join(tmpdir(), 'seen-'));
  try {
    mkdirSync(join(folder, 'prints'));
    const prints = new Map<string, { readonly mesh: string; readonly volume: number }>();
    for (const part of build.parts) {
      if (part.kind !== 'printed') continue;
      const { mesh, volume } = realise(kernel, part.solid, buildPrism);
      writeFileSync(join(folder, 'prints', `${part.id}.stl`), stl(mesh));
      prints.set(part.id, { mesh: `prints/${part.id}.stl`, volume });
    }
    writeFileSync(join(folder, 'parts.json'), partsJson(build, 'test', prints));
    const file = readParts(folder);
    return { file, put: await pictured(folder, file) };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
