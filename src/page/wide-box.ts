import { html } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';

const watched = new WeakMap<Element, ResizeObserver>();

/** Says of a box whether it holds more than it shows: not every browser shows a bar for that. */
function watch(found: Element | undefined): void {
  if (found === undefined || watched.has(found)) return;
  const look = () => found.parentElement?.classList.toggle('cut', found.scrollWidth > found.clientWidth + 1);
  const watcher = new ResizeObserver(look);
  watcher.observe(found);
  for (const child of found.children) watcher.observe(child);
  watched.set(found, watcher);
}

/** A picture that may be wider than its tray, in a box of its own that can be moved. */
export const wideBox = (name: string, label: string, picture: unknown) => html`
  <div class="wide">
    <p class="wide-more">It goes on to the right: scroll it sideways, or spread the tray out.</p>
    <div class=${name} role="region" aria-label=${label} tabindex="0" ${ref(watch)}>${picture}</div>
  </div>
`;
