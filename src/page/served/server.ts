import type { FileContent } from './state.js';

/** What the program that serves the page says to one request. */
export type FromServer =
  | { readonly kind: 'content'; readonly content: FileContent }
  | { readonly kind: 'unchanged' }
  | { readonly kind: 'saved'; readonly tag: string }
  /** Saving was refused, because the file holds this meanwhile. */
  | { readonly kind: 'theirs'; readonly content: FileContent }
  | { readonly kind: 'failed'; readonly words: string };

/**
 * The name of the design that a program serves with the page; empty where it serves the page alone, null where the page
 * comes from any other web server.
 */
export const servedName = (): string | null =>
  document.querySelector<HTMLMetaElement>('meta[name="tailboard-served"]')?.content ?? null;

/** @param known the tag of what the page has already */
export const fetchDesign = (known?: string): Promise<FromServer> =>
  talk({ headers: known === undefined ? {} : { 'if-none-match': known } });

/** @param over the tag of the content that may be replaced */
export const putDesign = (text: string, over: string): Promise<FromServer> =>
  talk({ method: 'PUT', headers: { 'content-type': 'application/yaml', 'if-match': over }, body: text });

async function talk(asked: RequestInit): Promise<FromServer> {
  try {
    const reply = await fetch(new URL('design', document.baseURI), asked);
    const tag = reply.headers.get('etag') ?? '';
    if (reply.status === 304) return { kind: 'unchanged' };
    if (reply.status === 204) return { kind: 'saved', tag };
    if (reply.status === 200) return { kind: 'content', content: { text: await textOf(reply), tag } };
    if (reply.status === 412) return { kind: 'theirs', content: { text: await textOf(reply), tag } };
    return { kind: 'failed', words: (await reply.text()).trim() };
  } catch {
    return { kind: 'failed', words: 'The program that serves this page does not answer. Start it again.' };
  }
}

/** The mark that some editors put at the head of a file is kept, so that it is saved again. */
const textOf = async (reply: Response): Promise<string> =>
  new TextDecoder('utf-8', { ignoreBOM: true }).decode(await reply.arrayBuffer());

/** The remnants that the design in the file names, and in words why some of them are not there. */
export async function fetchRemnants(): Promise<{
  readonly beside: Readonly<Record<string, string>>;
  readonly missing: readonly string[];
}> {
  const beside: Record<string, string> = {};
  const missing: string[] = [];
  try {
    const reply = await fetch(new URL('remnants', document.baseURI));
    // the program answers with each name that stands in the design
    const found = (await reply.json()) as Readonly<Record<string, { readonly text?: string; readonly why?: string }>>;
    for (const [name, { text, why }] of Object.entries(found)) {
      if (text !== undefined) beside[name] = text;
      else if (why !== undefined) missing.push(why);
    }
  } catch {
    missing.push('The remnants that the design names could not be had from the program that serves this page.');
  }
  return { beside, missing };
}
