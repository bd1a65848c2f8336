import type { App } from '../app.js';

/** Whether there is something that no file has yet. */
export const isChanged = (app: App): boolean => {
  const { design, saved, designView, edits } = app.state();
  return design.text !== saved || edits.length > 0 || (designView.typed ?? design.text) !== design.text;
};
