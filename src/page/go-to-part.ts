import type { App } from './app.js';

/** Opens the sheets at the pieces of a part, and the focus goes along. */
export const goToPart = (app: App, part: string): void =>
  app.change(({ sheets }) => {
    const { shown, open } = sheets;
    const opened = shown?.sheets.find(({ name }) => name === open?.sheet);
    const stays = opened?.parts.some((piece) => piece.part === part) === true;
    return {
      tray: 'sheets',
      atDesign: false,
      sheets: { ...sheets, open: stays ? open : null, sought: { part, led: true } },
    };
  });
