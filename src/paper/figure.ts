import type { Drawing, Mark } from '../model/page.js';
import { type Block, words } from './blocks.js';
import { FAINT, SMALL } from './prose.js';
import { TEXT_WIDTH } from './sheet-size.js';

/** A drawing of its own size in the middle of the page, and what it is called under it. */
export function figure(drawing: Drawing, { caption = drawing.title }: { readonly caption?: string } = {}): Block {
  const title = caption === '' ? null : words(caption, { size: SMALL, colour: FAINT, width: TEXT_WIDTH });
  const left = (TEXT_WIDTH - drawing.width) / 2;
  return {
    height: drawing.height + (title === null ? 0 : 1 + title.height),
    marks: ({ x, y }) => [
      ...drawing.marks.map((mark) => shifted(mark, x + left, y)),
      ...(title === null ? [] : title.marks({ x, y: y + drawing.height + 1 })),
    ],
    above: 3,
  };
}

/** A mark elsewhere. A name would no longer be its own among all drawings of a document. */
export function shifted({ id: _id, ...mark }: Mark, dx: number, dy: number): Mark {
  const by = <P extends { readonly x: number; readonly y: number }>(point: P): P => ({
    ...point,
    x: point.x + dx,
    y: point.y + dy,
  });
  switch (mark.kind) {
    case 'line':
      return { ...mark, points: mark.points.map(by) };
    case 'strokes':
      return { ...mark, paths: mark.paths.map((points) => points.map(by)) };
    case 'circle':
      return { ...mark, centre: by(mark.centre) };
    case 'words':
      return { ...mark, at: by(mark.at) };
  }
}
