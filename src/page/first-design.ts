import type { Beginning } from './beginning.js';
import { downloads } from './design/keeping.js';
import { fetchServed } from './served/served.js';
import { servedName } from './served/server.js';

/** Where the page has nothing else to show, it shows the camera of the README. */
const SAMPLE = 'heron.yaml';

/** The design that a program serves with the page, or the sample. */
export async function firstDesign(): Promise<Beginning> {
  const name = servedName();
  if (name === null || name === '') return sample(() => {});
  const served = await fetchServed(name);
  return typeof served === 'string' ? sample((app) => app.change(() => ({ notice: served }))) : served;
}

async function sample(attend: Beginning['attend']): Promise<Beginning> {
  const reply = await fetch(new URL(SAMPLE, document.baseURI));
  return { design: { file: SAMPLE, text: await reply.text(), beside: {} }, keeping: downloads, attend };
}
