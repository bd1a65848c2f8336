import type { App } from './app.js';
import { isChanged } from './design/changed.js';
import { areReadingsUnsaved } from './trays/lens/deeds.js';
import { isProcessUnsaved } from './trays/process/deeds.js';
import { isLogUnsaved } from './trays/sitting/deeds.js';
import { isListUnsaved } from './trays/survey/deeds.js';

/** Whether anything would be lost if the page were left: the design, and whatever else was typed to be kept. */
export function isAnythingUnsaved(app: App): boolean {
  const { sitting, process, lens, survey } = app.state();
  return (
    isChanged(app) ||
    isLogUnsaved(sitting) ||
    isProcessUnsaved(process) ||
    areReadingsUnsaved(lens) ||
    survey.lists.some(isListUnsaved)
  );
}
