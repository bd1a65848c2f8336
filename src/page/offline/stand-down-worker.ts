/**
 * `tailboard serve` gives this for the worker that keeps the page. Where another page of ours was kept under the same
 * address before, its worker would answer for the program; the browser looks for a newer one each time, finds this, and
 * what was kept goes. Pages that it had opened are opened anew, and ask first where something is not saved.
 */

/** The part of a service worker that ours needs; the types of the library know a window alone. */
interface LeavingThread {
  readonly registration: { readonly scope: string; readonly unregister: () => Promise<boolean> };
  readonly clients: {
    readonly matchAll: () => Promise<readonly { readonly url: string; readonly navigate: (url: string) => unknown }[]>;
  };
  readonly skipWaiting: () => Promise<void>;
  oninstall: ((event: { readonly waitUntil: (work: Promise<unknown>) => void }) => void) | null;
  onactivate: ((event: { readonly waitUntil: (work: Promise<unknown>) => void }) => void) | null;
}

const worker = self as unknown as LeavingThread;

worker.oninstall = (event) => event.waitUntil(worker.skipWaiting());
worker.onactivate = (event) => event.waitUntil(standDown());

async function standDown(): Promise<void> {
  const { registration, clients } = worker;
  const kept = (await caches.keys()).filter((name) => name.startsWith(`tailboard ${registration.scope} `));
  await Promise.all(kept.map((name) => caches.delete(name)));
  await registration.unregister();
  // not waited for: a page is opened when this is done
  for (const client of await clients.matchAll()) void client.navigate(client.url);
}
