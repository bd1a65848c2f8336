import type { LoadedWorkshop } from '../../src/index.js';
import { lookAtCheck, lookAtPlan, program } from './look.js';
import type { Asked, Seen } from './looker.js';
import { CHUNK, chunkOf } from './soak-design.js';

const compiled = await program();
let workshop: Promise<LoadedWorkshop> | null = null;
let drawn: { readonly key: string; readonly texts: readonly string[] } = { key: '', texts: [] };

function designNumbered({ seed, number }: Asked): string {
  const chunk = Math.floor(number / CHUNK);
  const key = `${seed} ${chunk}`;
  if (drawn.key !== key) drawn = { key, texts: chunkOf(seed, chunk) };
  return drawn.texts[number % CHUNK] as string;
}

async function look(asked: Asked): Promise<Seen> {
  const text = designNumbered(asked);
  try {
    if (asked.stage === 'plan') return { fate: lookAtPlan(text, compiled) };
    workshop ??= compiled.loadWorkshop();
    return { fate: lookAtCheck(text, compiled, await workshop) };
  } catch (error) {
    return { fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

process.on('message', async (asked: Asked) => process.send?.(await look(asked)));
