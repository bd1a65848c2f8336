import { optimize } from 'svgo/browser';
import type { Palette } from '../model/palette.js';
import type { Sheet } from '../sheets/sheet.js';
import { decimal } from './decimal.js';
import { colourOf } from './layer-colour.js';
import { pathData } from './path-data.js';

export interface SheetSvgGiven {
  /** Name, revision, material and measured thickness: see `sheetTitle`. */
  readonly title: string;
  readonly description: string;
  readonly palette: Palette;
}

/** What a sheet says of itself: whose it is, of which revision, and what it is cut from. */
export const sheetTitle = ({ name, revision, of, despite }: Titled, sheet: Sheet): string =>
  [
    `${name}, revision ${revision}, ${sheet.material} measured ${sheet.thickness} mm, ${sheet.name} of ${of}`,
    ...(sheet.remnant ? [`cut from the remnant ${sheet.remnant.file}`] : []),
    ...(despite.length > 0 ? [`built despite ${despite.join(', ')}`] : []),
  ].join('; ');

interface Titled {
  readonly name: string;
  readonly revision: string;
  readonly of: number;
  /** Rules of level error that are broken and were waived. */
  readonly despite: readonly string[];
}

/** Goes with each sheet, where whoever starts the laser meets it. */
export const laserCaution = [
  'True size in millimetres; the width of the cut is already allowed for, so switch off any offset of the machine.',
  'Order: engrave, cut-inside, cut-nested, cut-window, cut-outside.',
  'Never leave the laser alone while it runs: plywood burns. Keep an extinguisher at hand and the fume extraction on.',
  'Cut only material that you know: never PVC or an unknown plastic; glue and finish in plywood give off fumes too.',
  "The machine's own instructions and local rules go before anything written here.",
].join(' ');

/** A sheet for the laser: true size, y down, one group an operation in cutting order, one loop a path. */
export function sheetSvg(sheet: Sheet, { title, description, palette }: SheetSvgGiven): string {
  const [width, height] = [decimal(sheet.width), decimal(sheet.height)];
  const groups = sheet.operations.map(({ layer, paths }) => {
    const lines = paths.map(({ id, path }) => `<path id="${escaped(id)}" d="${pathData(path, sheet.height)}"/>`);
    const stroke = escaped(colourOf(layer, palette));
    return `<g id="${layer}" fill="none" stroke="${stroke}" stroke-width="0.1">${lines.join('')}</g>`;
  });
  return tidy(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">` +
      `<title>${escaped(title)}</title><desc>${escaped(description)}</desc>${groups.join('')}</svg>`,
  );
}

/** Text in XML. */
export const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** Switches the making of arcs off; the library's types know only its numbers. */
const OFF = false as unknown as { threshold: number; tolerance: number };

/**
 * The last step of every drawing: one habit of numbers, attributes and lines. Only steps that keep ids, groups, arcs
 * and sizes; the usual set of this library would merge paths, drop ids and turn mm into px.
 */
export const tidy = (svg: string): string =>
  optimize(svg, {
    multipass: false,
    floatPrecision: 4,
    js2svg: { pretty: true, indent: 1, eol: 'lf', finalNewline: true },
    plugins: [
      {
        name: 'convertPathData',
        params: {
          floatPrecision: 4,
          transformPrecision: 8,
          makeArcs: OFF,
          straightCurves: false,
          convertToQ: false,
          convertToZ: false,
          curveSmoothShorthands: false,
          smartArcRounding: false,
          removeUseless: false,
          collapseRepeated: false,
          applyTransforms: false,
          applyTransformsStroked: false,
          forceAbsolutePath: true,
          lineShorthands: true,
          leadingZero: false,
          negativeExtraSpace: false,
        },
      },
      {
        name: 'cleanupNumericValues',
        params: { floatPrecision: 4, leadingZero: false, defaultPx: false, convertToPx: false },
      },
      'removeComments',
      'cleanupAttrs',
      'sortAttrs',
    ],
  }).data;
