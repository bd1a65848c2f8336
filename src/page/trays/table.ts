import type { TemplateResult } from 'lit-html';
import type { App } from '../app.js';
import type { TrayName } from '../state.js';
import { attendFigures } from './figures/ask.js';
import { view as figures } from './figures/view.js';
import { view as findings } from './findings/view.js';
import { view as lens } from './lens/view.js';
import { view as process } from './process/view.js';
import { attendSheets } from './sheets/seek.js';
import { view as sheets } from './sheets/view.js';
import { view as sitting } from './sitting/view.js';
import { view as survey } from './survey/view.js';
import { view as takeAway } from './take-away/view.js';
import { attendWhatChanged } from './what-changed/deeds.js';
import { view as whatChanged } from './what-changed/view.js';
import { attendWhatIf } from './what-if/ask.js';
import { view as whatIf } from './what-if/view.js';

interface Tray {
  readonly title: string;
  readonly view: (app: App) => TemplateResult;
  /** While it is open: asks for what it still lacks, after each change. */
  readonly attend?: (app: App) => void;
}

/** What lies in the trays beside the camera. */
export const trays: Readonly<Record<TrayName, Tray>> = {
  findings: { title: 'Findings', view: findings },
  figures: { title: 'Figures', view: figures, attend: attendFigures },
  sheets: { title: 'Sheets', view: sheets, attend: attendSheets },
  'what-if': { title: 'What if', view: whatIf, attend: attendWhatIf },
  'what-changed': { title: 'What changed', view: whatChanged, attend: attendWhatChanged },
  lens: { title: 'Lens on the bench', view: lens },
  survey: { title: 'Lens drawer', view: survey },
  sitting: { title: 'Sitting', view: sitting },
  process: { title: 'Process', view: process },
  'take-away': { title: 'Take away', view: takeAway },
};
