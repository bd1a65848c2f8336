import makerjs from 'makerjs';
import { arcOf, type Path, type Vertex } from '../geometry/path.js';
import { type Layer, layers, type Sheet } from '../sheets/sheet.js';
import { rounded } from './decimal.js';

/** Colour numbers of the layers, dull ones; the layers' names carry the meaning. */
const colours: { readonly [L in Layer]: number } = {
  engrave: 153,
  'cut-inside': 215,
  'cut-nested': 43,
  'cut-window': 107,
  'cut-outside': 23,
};

/** ENGRAVE, CUT_INSIDE and so on. */
const dxfLayer = (layer: Layer): string => layer.toUpperCase().replaceAll('-', '_');

const options = {
  usePOLYLINE: true,
  units: 'mm',
  // six decimals: positions are rounded to four before, bulges need the rest, and no number ever gets an exponent
  accuracy: 1e-6,
  pointMatchingDistance: 1e-4,
  layerOptions: Object.fromEntries(layers.map((layer) => [dxfLayer(layer), { color: colours[layer] }])),
};

/**
 * A sheet for programs that want DXF: closed polylines with bulges of release 12, whole circles as circles, y up, mm.
 *
 * The library writes all polylines of a drawing before its circles, so each path is written alone and the entities are
 * joined in cutting order.
 */
export function sheetDxf(sheet: Sheet): string {
  const head = written(Object.fromEntries(layers.map((layer) => [layer, mark(dxfLayer(layer))])));
  const entities = sheet.operations.flatMap(({ layer, paths }) =>
    paths.map(({ path }) => split(written({ path: model(path, dxfLayer(layer)) })).entities),
  );
  const { before, after } = split(head);
  return `${[before, ...entities, after].join('\n')}\n`;
}

/** Any stroke on a layer puts the layer into the table at the head of the file, though nothing may be cut on it. */
const mark = (layer: string): makerjs.IModel => ({
  layer,
  paths: { stroke: new makerjs.paths.Line([0, 0], [1, 0]) },
});

const written = (models: Record<string, makerjs.IModel>): string =>
  // the exporter writes its findings into the options that it is given
  makerjs.exporter.toDXF({ models }, { ...options });

/** A file cut before its first entity and after its last. */
function split(dxf: string): { before: string; entities: string; after: string } {
  const begin = '2\nENTITIES\n';
  const end = '\n0\nENDSEC\n0\nEOF';
  const from = dxf.indexOf(begin) + begin.length;
  const to = dxf.lastIndexOf(end);
  return { before: dxf.slice(0, from - 1), entities: dxf.slice(from, to), after: dxf.slice(to + 1) };
}

function model({ vertices, closed }: Path, layer: string): makerjs.IModel {
  const at = (i: number): Vertex => {
    const { x, y, bulge } = vertices[i % vertices.length] as Vertex;
    return { x: rounded(x), y: rounded(y), bulge };
  };
  const whole = closed && vertices.length === 2 && vertices.every(({ bulge }) => Math.abs(bulge) === 1);
  if (whole) {
    const { centre, radius } = arcOf(vertices[0] as Vertex, vertices[1] as Vertex);
    return {
      layer,
      paths: { circle: new makerjs.paths.Circle([rounded(centre.x), rounded(centre.y)], rounded(radius)) },
    };
  }
  const paths: Record<string, makerjs.IPath> = {};
  vertices.forEach((_, i) => {
    if (closed || i < vertices.length - 1) paths[`edge${i}`] = edge(at(i), at(i + 1));
  });
  const [only] = closed ? [] : [edge(at(0), at(1))];
  if (only && vertices.length === 2 && makerjs.isPathLine(only)) {
    // a stroke of one edge would come out as a loose LINE; in two halves it is a polyline like all the others
    const middle = { x: rounded((at(0).x + at(1).x) / 2), y: rounded((at(0).y + at(1).y) / 2), bulge: 0 };
    return { layer, paths: { edge0: edge(at(0), middle), edge1: edge(middle, at(1)) } };
  }
  return { layer, paths };
}

/** Flatter than this an arc is a line to every reader. */
const STRAIGHT = 1e-6;

function edge(from: Vertex, to: Vertex): makerjs.IPath {
  if (Math.abs(from.bulge) < STRAIGHT) return new makerjs.paths.Line([from.x, from.y], [to.x, to.y]);
  const { centre, radius } = arcOf(from, to);
  const degrees = ({ x, y }: Vertex) => (Math.atan2(y - centre.y, x - centre.x) * 180) / Math.PI;
  // arcs of the library run anticlockwise only
  const [start, end] = from.bulge > 0 ? [degrees(from), degrees(to)] : [degrees(to), degrees(from)];
  return new makerjs.paths.Arc([centre.x, centre.y], radius, start, end < start ? end + 360 : end);
}
