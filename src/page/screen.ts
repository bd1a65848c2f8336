import type { App } from './app.js';
import { type Theme, themes } from './state.js';

/** Below this width all lies in one column; board.css says the same. */
const ONE_COLUMN = '(max-width: 900px)';
const PLACE = 'tailboard-theme';

/** Follows the width of the window, and light and dark of the system. */
export function watchScreen(app: App): void {
  const narrow = matchMedia(ONE_COLUMN);
  const follow = () => app.change(() => ({ narrow: narrow.matches }));
  narrow.addEventListener('change', follow);
  // pictures that are not drawn by the style sheet take their colours anew
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', follow);
  setTheme(app, remembered());
  follow();
}

export function setTheme(app: App, theme: Theme): void {
  const { classList } = document.documentElement;
  classList.toggle('light', theme === 'light');
  classList.toggle('dark', theme === 'dark');
  try {
    if (theme === 'system') localStorage.removeItem(PLACE);
    else localStorage.setItem(PLACE, theme);
  } catch {
    // a browser that keeps nothing for us: the theme lasts as long as the page
  }
  app.change(() => ({ theme }));
}

function remembered(): Theme {
  try {
    return themes.find((theme) => theme === localStorage.getItem(PLACE)) ?? 'system';
  } catch {
    return 'system';
  }
}
