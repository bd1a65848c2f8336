/**
 * Keeps the page for the workshop without a network: all files of one build, fetched once and each held against its hash,
 * so that no half of an older build stands in for one of this. What is asked for comes from them first.
 */

/** Put in when the page is bundled: what is kept, by name, with its hash; and a name for all of it together. */
declare const BUILD: { readonly name: string; readonly files: readonly (readonly [name: string, integrity: string])[] };

/** The part of a service worker that ours needs; the types of the library know a window alone. */
interface KeepingThread {
  readonly registration: { readonly scope: string };
  readonly clients: { readonly matchAll: () => Promise<readonly unknown[]>; readonly claim: () => Promise<void> };
  readonly skipWaiting: () => Promise<void>;
  oninstall: ((event: Lasting) => void) | null;
  onactivate: ((event: Lasting) => void) | null;
  onmessage: (() => void) | null;
  onfetch: ((event: Asking) => void) | null;
}

interface Lasting {
  readonly waitUntil: (work: Promise<unknown>) => void;
}

interface Asking {
  readonly request: Request;
  readonly respondWith: (answer: Promise<Response>) => void;
}

const worker = self as unknown as KeepingThread;
const { scope } = worker.registration;
// other pages may lie under other paths of the same server
const ours = `tailboard ${scope} `;
const cacheName = `${ours}${BUILD.name}`;

worker.oninstall = (event) => event.waitUntil(keepAll());
// what the page loads late comes from here at the first visit too, where its server may be gone by then
worker.onactivate = (event) => event.waitUntil(Promise.all([worker.clients.claim(), forgetEarlier()]));

// the page asks as it begins: where it is the only one, nothing is in use that an older build would still be needed for
worker.onmessage = async () => {
  const pages = await worker.clients.matchAll();
  if (pages.length <= 1) await worker.skipWaiting();
};

worker.onfetch = (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(scope)) return;
  event.respondWith(keptOrFetched(request));
};

async function keepAll(): Promise<void> {
  const cache = await caches.open(cacheName);
  await Promise.all(
    BUILD.files.map(async ([name, integrity]) => {
      const url = addressOf(name);
      const reply = await fetch(url, { integrity, cache: 'no-cache' });
      if (!reply.ok) throw new Error(`${url} answers ${reply.status}`);
      // one that was led on to another address would not be taken for a page
      const { headers } = reply;
      await cache.put(url, reply.redirected ? new Response(await reply.arrayBuffer(), { headers }) : reply);
    }),
  );
}

async function forgetEarlier(): Promise<void> {
  for (const name of await caches.keys()) if (name.startsWith(ours) && name !== cacheName) await caches.delete(name);
}

async function keptOrFetched(request: Request): Promise<Response> {
  const cache = await caches.open(cacheName);
  const asked = new URL(request.url);
  const kept = await cache.match(addressOf(asked.pathname.slice(new URL(scope).pathname.length)), { ignoreVary: true });
  return kept ?? fetch(request);
}

/** The page is kept under the address by which it is opened. */
const addressOf = (name: string): string => new URL(name === 'index.html' ? './' : name, scope).href;
