import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { workbench } from '../../src/assembly/workbench.js';
import { explodedDrawings } from '../../src/drawings/exploded.js';
import { stepDrawing } from '../../src/drawings/step-drawing.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import { readDesign } from '../../src/index.js';
import { stepsOfCamera } from '../../src/model/assembly-steps.js';
import type { Drawing } from '../../src/model/page.js';
import { type Planned, planCamera, planOf } from '../../src/pipeline.js';
import { orderOf } from '../../src/proof/order.js';
import { randomDesign } from '../random-design.js';
import { firstOf } from './first-of.js';

const kernel = await loadKernel();
const room = { width: 174, height: 225 };

/** Cameras that nobody has looked at: the first of a row of designs that go together. */
const strangers: readonly Planned[] = fc
  .sample(randomDesign, { seed: 6, numRuns: 40 })
  .flatMap((text) => {
    const reading = readDesign(text, 'drawn by lot');
    return 'design' in reading ? [planCamera(reading.design)] : [];
  })
  .filter(({ drawable, findings }) => drawable && findings.every(({ level }) => level !== 'error'))
  .slice(0, 2);

const numbersIn = ({ marks }: Drawing): readonly string[] =>
  marks.flatMap((mark) => (mark.kind === 'words' && mark.role === 'number' ? [mark.text.replace(/^\d+ × /u, '')] : []));

test('there are such cameras', () => {
  expect(strangers).toHaveLength(2);
});

describe.each(strangers.map((planned, i) => [i + 1, planned] as const))(
  'stranger %i',
  { timeout: 300_000 },
  (_, planned) => {
    test('every made part has its number in the exploded view and where a step brings it', () => {
      const { build } = planned;
      const { moves } = orderOf(build, kernel);
      const mark = new Map(
        build.parts.flatMap(({ id, kind }) => (kind === 'bought' ? [] : [[id, id.replace('-', ' ')]])),
      );
      kernel.stage((bench) => {
        const given = { build, plan: planOf(planned), on: workbench(bench), room, moves };
        expect([...numbersIn(firstOf(explodedDrawings(given)))].sort()).toEqual([...mark.values()].sort());
        for (const { number } of stepsOfCamera(build.parts)) {
          const brought = moves.filter(({ step, whole }) => step === number && whole === undefined);
          // several pieces that come as one bear the number of the heaviest
          const single = brought.filter(({ pieces }) => pieces.length === 1);
          const texts = numbersIn(stepDrawing(given, number));
          for (const {
            pieces: [key = ''],
          } of single) {
            const own = mark.get(key.replace(/#.*$/u, ''));
            if (own !== undefined) expect(texts, `step ${number}`).toContain(own);
          }
        }
      });
    });
  },
);
