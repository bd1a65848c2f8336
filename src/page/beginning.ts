import type { App } from './app.js';
import type { Keeping } from './design/keeping.js';
import type { DesignText } from './worker/questions.js';

/** What the page begins with: a design, where it is kept, and what is to be done with it once there is a page. */
export interface Beginning {
  readonly design: DesignText;
  readonly keeping: Keeping;
  readonly attend: (app: App) => void;
}
