import type { State, TrayName } from '../state.js';

/** Draws with each tray where it was left: they lie in the same place one after another, and the next is no further down. */
export function withTraysLeft(draw: () => void): (now: State) => void {
  const left = new Map<TrayName, number>();
  const drawn: { open: string; tray: TrayName } = { open: '', tray: 'findings' };
  return (now) => {
    const box = document.getElementById('tray');
    const turned = drawn.open !== '' && drawn.open !== openOf(now);
    if (turned && box !== null) left.set(drawn.tray, box.scrollTop);
    draw();
    const after = document.getElementById('tray');
    if (turned && after !== null) after.scrollTop = left.get(now.tray) ?? 0;
    if (turned && now.narrow) underTabs(now.atDesign ? 'design' : 'tray');
    Object.assign(drawn, { open: openOf(now), tray: now.tray });
  };
}

const openOf = ({ tray, narrow, atDesign }: State): string => (narrow && atDesign ? 'design' : tray);

/** In one column the page itself scrolls: a tray opens with its beginning, where the one before had been read past that. */
function underTabs(id: string): void {
  const [tabs, panel] = [document.querySelector('.tabs'), document.getElementById(id)];
  if (tabs === null || panel === null) return;
  const past = tabs.getBoundingClientRect().bottom - panel.getBoundingClientRect().top;
  if (past > 1) window.scrollBy(0, -past);
}
