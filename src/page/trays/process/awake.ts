import type { Awake } from './state.js';

interface KeepingAwake {
  readonly follow: (wanted: boolean) => void;
}

/** Keeps the screen on while a clock runs, where the browser can: it lets go by itself whenever the page is hidden. */
export function keepAwake(tell: (awake: Awake) => void): KeepingAwake {
  const box: { wanted: boolean; lock: WakeLockSentinel | null; asked: boolean } = {
    wanted: false,
    lock: null,
    asked: false,
  };
  const ask = async () => {
    box.asked = true;
    try {
      const lock = await navigator.wakeLock.request('screen');
      // the clock may have been stopped while the browser thought about it
      if (!box.wanted) return void lock.release();
      box.lock = lock;
      lock.addEventListener('release', () => {
        if (box.lock === lock) Object.assign(box, { lock: null, asked: false });
      });
      tell('kept');
    } catch {
      // no battery to spare, or not allowed here: asked again when the page is next looked at
      tell('none');
    }
  };
  document.addEventListener('visibilitychange', () => {
    if (box.lock === null) box.asked = false;
  });
  return {
    follow: (wanted) => {
      // older browsers have none, and pages that do not come by a safe way have none either
      if (!('wakeLock' in navigator)) return;
      box.wanted = wanted;
      if (wanted && !box.asked && document.visibilityState === 'visible') void ask();
      if (wanted || !box.asked) return;
      void box.lock?.release();
      Object.assign(box, { lock: null, asked: false });
    },
  };
}
