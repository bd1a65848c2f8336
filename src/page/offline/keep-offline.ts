/**
 * Has the browser keep the page, so that it opens where there is no network. Where a newer one was fetched meanwhile, it
 * takes the place of this one now, before anything was begun; the browser allows none of this to a page without a secure
 * address, which then works as long as its server does.
 */
export async function keepOffline(): Promise<void> {
  const { serviceWorker } = navigator as { readonly serviceWorker?: ServiceWorkerContainer };
  if (serviceWorker === undefined) return;
  try {
    const before = await serviceWorker.getRegistration(document.baseURI);
    if (before?.waiting) {
      serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
      before.waiting.postMessage('begin');
    }
    // what the user waits for comes first
    await figuresDrawn();
    await serviceWorker.register(new URL('offline-worker.js', document.baseURI));
  } catch {
    // a browser that keeps nothing for us: the page works all the same
  }
}

const figuresDrawn = (): Promise<void> =>
  new Promise((resolve) => {
    new PerformanceObserver((marks, observer) => {
      if (marks.getEntriesByName('tailboard:figures').length === 0) return;
      observer.disconnect();
      resolve();
    }).observe({ type: 'mark', buffered: true });
  });
