import type { App } from '../app.js';
import { panelOf } from './panel.js';

/**
 * The camera in three dimensions. It has a life of its own, for it moves many times a second without the page being drawn
 * anew: what stands here is always the same element.
 */
export function cameraView(app: App) {
  const panel = panelOf(app);
  panel.follow();
  return panel.element;
}
