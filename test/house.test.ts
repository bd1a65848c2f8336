import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, test } from 'vitest';

/**
 * The rules of the house, on the text of the source. Each is a function from one file to what it complains of, and is
 * shown to fail on a planted sample before it is let loose on the house: a rule that cannot fail checks nothing.
 */
interface SourceFile {
  /** From the root of the project, such as src/sheets/cut-line.ts. */
  readonly path: string;
  readonly text: string;
}

type Rule = (file: SourceFile) => readonly string[];

const root = join(import.meta.dirname, '..');
const house = readdirSync(join(root, 'src'), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry): SourceFile => {
    const path = posix.join(
      'src',
      join(entry.parentPath, entry.name).slice(join(root, 'src').length).replaceAll('\\', '/'),
    );
    return { path, text: readFileSync(join(root, path), 'utf8') };
  });

test('there is a house to look at', () => expect(house.length).toBeGreaterThan(50));

const low = ['units', 'standards', 'statistics', 'optics', 'liquids', 'geometry', 'model', 'joinery', 'assembly'];

/** Which folders and files each folder may import beside its own; the rest of ours is closed to it. */
const directions: Readonly<Record<string, readonly string[]>> = {
  units: [],
  standards: [],
  statistics: [],
  optics: [],
  liquids: ['standards'],
  geometry: [],
  model: ['geometry'],
  joinery: ['geometry', 'model', 'standards'],
  assembly: ['geometry', 'model'],
  design: ['units', 'standards', 'model'],
  camera: [...low, 'design/design.js'],
  proof: [...low, 'design/design.js', 'camera/objects.js'],
  explain: [...low, 'design', 'camera'],
  forms: ['units', 'standards', 'model', 'design'],
  'lens-bench': ['units', 'standards', 'statistics', 'optics', 'geometry', 'model'],
  exposure: ['units', 'standards', 'statistics', 'optics', 'liquids', 'geometry', 'model', 'design/design.js'],
  'step-sheet': ['units', 'model'],
  survey: [...low, 'design', 'camera', 'forms', 'packing', 'pipeline.js'],
  compare: ['assembly', 'geometry', 'model', 'units'],
  packing: ['geometry'],
  sheets: ['geometry', 'model', 'packing'],
  coupon: ['units', 'standards', 'geometry', 'model', 'joinery', 'sheets', 'design/design.js'],
  paper: ['geometry', 'model'],
  drawings: ['paper', 'assembly', 'geometry', 'model', 'units'],
  book: ['drawings', 'paper', 'sheets', 'standards', 'geometry', 'model', 'units'],
  kits: ['paper', 'sheets', 'geometry', 'model', 'units'],
  files: ['sheets', 'paper', 'geometry', 'model', 'units'],
  shown: ['assembly', 'drawings', 'geometry', 'model', 'units'],
  'what-if': ['design', 'model', 'units', 'pipeline.js', 'cutting.js'],
  cli: ['index.js'],
  // of the records their types alone: the page's own thread loads nothing of the core but how figures are printed
  page: ['index.js', 'model', 'units/print.js'],
};

/** Single files that may import more than their folder. */
const exceptions: Readonly<Record<string, readonly string[]>> = {
  'src/files/parts-json.ts': ['assembly'],
  'src/files/plan-json.ts': [
    'assembly',
    'design/design.js',
    'camera/camera.js',
    'camera/figure.js',
    'camera/plan-figures.js',
  ],
};

const importsOnlyWhatItMay: Rule = ({ path, text }) => {
  const [, folder = '', ...rest] = path.split('/');
  if (rest.length === 0) return importsOf(text).filter((from) => /^\.\/(?:cli|page)\//.test(from));
  const may = directions[folder];
  if (may === undefined) return [`the folder ${folder} is not on the plan of the house`];
  const allowed = [folder, ...may, ...(exceptions[path] ?? [])];
  return importsOf(text)
    .filter((from) => from.startsWith('.'))
    .map((from) => posix.join(posix.dirname(path), from).slice('src/'.length))
    .filter((target) => !allowed.some((door) => target === door || target.startsWith(`${door}/`)));
};

const noObjectFromAnother: Rule = ({ path, text }) => {
  const own = /^src\/camera\/([^/]+)\//.exec(path)?.[1];
  if (own === undefined) return [];
  const forbidden = ['camera.js', 'objects.js', ...(path.endsWith('/checks.ts') ? ['setting-out.js'] : [])];
  return importsOf(text)
    .filter((from) => from.startsWith('.'))
    .map((from) => posix.join(posix.dirname(path), from))
    .filter((target) => target.startsWith('src/camera/') && !target.startsWith(`src/camera/${own}/`))
    .map((target) => target.slice('src/camera/'.length))
    .filter((target) => target.includes('/') || forbidden.includes(target));
};

/** Each package has one door, and what is awkward about it stops there. */
const doors: Readonly<Record<string, RegExp>> = {
  '@clack/prompts': /^src\/cli\//,
  '@jscad/modeling': /^src\/geometry\/modelling\.ts$/,
  '@jscad/stl-serializer': /^src\/files\/stl\.ts$/,
  'clipper2-ts': /^src\/geometry\/clip\.ts$/,
  commander: /^src\/cli\//,
  'dejavu-fonts-ttf': /^src\/cli\//,
  fflate: /^src\/files\/zip\.ts$/,
  esbuild: /^src\/page\/bundle\//,
  hersheytext: /^src\/(?:geometry\/lettering|page\/bundle\/write-page)\.ts$/,
  makerjs: /^src\/files\/dxf\.ts$/,
  'lit-html': /^src\/page\//,
  'manifold-3d': /^src\/geometry\/kernel\.ts$/,
  picocolors: /^src\/cli\//,
  svgo: /^src\/files\/svg\.ts$/,
  three: /^src\/page\/camera\//,
  pdfkit: /^src\/files\/pdf\.ts$/,
  yaml: /^src\/design\//,
  zod: /^src\/(?:design|forms)\//,
};

const packagesAtTheirDoors: Rule = ({ path, text }) =>
  importsOf(text).filter((from) => {
    if (from.startsWith('.') || from.startsWith('node:')) return false;
    const name = from
      .split('/')
      .slice(0, from.startsWith('@') ? 2 : 1)
      .join('/');
    return doors[name]?.test(path) !== true;
  });

const nodeInTheCommandLineOnly: Rule = ({ path, text }) =>
  /^src\/(?:cli|page\/bundle)\//.test(path) ? [] : importsOf(text).filter((from) => from.startsWith('node:'));

/** What differs from one run or machine to the next, or reaches past the arguments. A date of a given number does not. */
const OUTSIDE_WORLD =
  /\b(?:Date\.now|new Date(?!\(\d+\))|Math\.random|performance\.|process\.|console\.|globalThis|crypto\.|fetch\(|setTimeout|setInterval|localeCompare|toLocale\w*|Intl\.)/g;

const pure: Rule = ({ path, text }) =>
  /^src\/(?:cli|page)\//.test(path) ? [] : (codeOf(text).match(OUTSIDE_WORLD) ?? []);

/** The kernel is loaded once and handed in; from there on no stage waits. */
const WAITING = /^src\/(?:cli\/.*|page\/.*|index\.ts|workshop\.ts|geometry\/kernel\.ts)$/;
const noStageWaits: Rule = ({ path, text }) =>
  WAITING.test(path) ? [] : (codeOf(text).match(/\b(?:await|async)\b/g) ?? []);

/** Parts are finished pieces: only what reads, moves, hands on or prints this figure may name it. */
const KERF_HOMES = [
  /^src\/design\//,
  /^src\/sheets\/cut-line\.ts$/,
  /^src\/sheets\/lay-out\.ts$/,
  /^src\/coupon\//,
  /^src\/files\/layout-json\.ts$/,
  /^src\/book\/test-piece\.ts$/,
  /^src\/(?:test-piece|workshop|cutting)\.ts$/,
  /^src\/index\.ts$/,
  /^src\/model\/rules\.ts$/,
  /^src\/cli\/(?:coupon|new|run)\.ts$/,
  /^src\/page\/(?:design|worker)\/new-design\.ts$/,
  // how far the cut strays, not how wide it is: that widens the play of the rails, and no part
  /^src\/proof\/register\.ts$/,
];
const kerfHasOneHome: Rule = ({ path, text }) =>
  KERF_HOMES.some((home) => home.test(path)) ? [] : (withoutComments(text).match(/.*kerf.*/gi) ?? []);

const noMachinePaths: Rule = ({ text }) => text.match(/["'` (]\/(?:work|root|home|tmp|Users|mnt)\/\S*/g) ?? [];

const kebabCase: Rule = ({ path }) =>
  path.split('/').every((step) => /^[a-z0-9]+(?:-[a-z0-9]+)*(?:(?:\.d)?\.ts|\.html|\.css|\.json)?$/.test(step))
    ? []
    : [path];

/** What a package without types of its own exports is not for us to choose. */
const namedExports: Rule = ({ path, text }) =>
  path.endsWith('.d.ts') ? [] : (codeOf(text).match(/\bexport\s+(?:\*|default\b)/g) ?? []);

const noStateInModules: Rule = ({ text }) => codeOf(text).match(/^(?:export )?(?:let|var)\s.*/gm) ?? [];

const throwsErrors: Rule = ({ text }) =>
  (codeOf(text).match(/\bthrow\s+\S+(?: \w+)?/g) ?? []).filter((thrown) =>
    /throw\s+(?:['"`{[]|null|undefined)/.test(thrown),
  );

const nothingLeftToDo: Rule = ({ text }) => text.match(/\b(?:TODO|FIXME|XXX|HACK)\b.*/g) ?? [];

const rules: readonly {
  readonly name: string;
  readonly rule: Rule;
  readonly fails: readonly SourceFile[];
  readonly passes: SourceFile;
}[] = [
  {
    name: 'imports point one way',
    rule: importsOnlyWhatItMay,
    fails: [
      { path: 'src/sheets/pack.ts', text: "import { sizeCamera } from '../camera/camera.js';" },
      { path: 'src/sheets/pack.ts', text: "import type { Camera } from '../camera/camera.js';" },
      { path: 'src/sheets/pack.ts', text: "import {\n  a,\n  b,\n} from '../design/design.js';" },
      { path: 'src/units/mass.ts', text: "export { inch } from '../standards/inch.js';" },
      { path: 'src/cli/plan.ts', text: "const { planPage } = await import('../files/plan-page.js');" },
      { path: 'src/proof/light.ts', text: "import { setOut } from '../camera/setting-out.js';" },
      { path: 'src/files/svg.ts', text: "import type { Camera } from '../camera/camera.js';" },
      { path: 'src/explain/explain.ts', text: "import { planDocument } from '../files/plan-json.js';" },
      { path: 'src/camera/back/size.ts', text: "import { readDesign } from '../../design/read.js';" },
      { path: 'src/pipeline.ts', text: "import { run } from './cli/run.js';" },
      { path: 'src/pipeline.ts', text: "import { board } from './page/board.js';" },
      { path: 'src/page/board.ts', text: "import { readDesign } from '../design/read.js';" },
      { path: 'src/helpers/things.ts', text: '' },
    ],
    passes: {
      path: 'src/sheets/pack.ts',
      text: "import { area } from '../geometry/path.js';\nimport { cutLine } from './cut-line.js';",
    },
  },
  {
    name: 'no object is marked from another object',
    rule: noObjectFromAnother,
    fails: [
      { path: 'src/camera/back/size.ts', text: "import { sizeSpacer } from '../spacer/size.js';" },
      { path: 'src/camera/back/parts.ts', text: "import type { Camera } from '../camera.js';" },
      { path: 'src/camera/back/checks.ts', text: "import type { Rod } from '../setting-out.js';" },
    ],
    passes: {
      path: 'src/camera/back/size.ts',
      text: "import type { Claim } from '../claim.js';\nimport { area } from '../../geometry/path.js';\nimport { ring } from './ring.js';",
    },
  },
  {
    name: 'each package has one door',
    rule: packagesAtTheirDoors,
    fails: [
      { path: 'src/files/plan-page.ts', text: "import pc from 'picocolors';" },
      { path: 'src/geometry/solid.ts', text: "import jscad from '@jscad/modeling';" },
      { path: 'src/files/dxf.ts', text: "import { optimize } from 'svgo/browser';" },
      { path: 'src/design/read.ts', text: "import lodash from 'lodash';" },
    ],
    passes: { path: 'src/files/svg.ts', text: "import { optimize } from 'svgo/browser';" },
  },
  {
    name: 'Node lives in the command line',
    rule: nodeInTheCommandLineOnly,
    fails: [{ path: 'src/design/read.ts', text: "import { readFileSync } from 'node:fs';" }],
    passes: { path: 'src/cli/read-design-file.ts', text: "import { readFileSync } from 'node:fs';" },
  },
  {
    name: 'no clock, no chance, no globals, no locale',
    rule: pure,
    fails: [
      { path: 'src/sheets/pack.ts', text: 'const now = Date.now();' },
      { path: 'src/sheets/pack.ts', text: 'const seed = Math.random();' },
      { path: 'src/sheets/pack.ts', text: 'const start = performance.now();' },
      { path: 'src/files/svg.ts', text: 'const today = new Date();' },
      { path: 'src/files/svg.ts', text: 'const today = new Date;' },
      { path: 'src/files/svg.ts', text: 'const local = new Date(2026, 1, 1);' },
      { path: 'src/proof/light.ts', text: 'console.log(ray);' },
      { path: 'src/design/read.ts', text: 'const home = process.env.HOME;' },
      { path: 'src/sheets/pack.ts', text: 'names.sort((a, b) => a.localeCompare(b));' },
    ],
    passes: {
      path: 'src/sheets/pack.ts',
      text: "// the process. Date.now() would differ\nconst name = 'process lens';\nconst start = new Date(0);",
    },
  },
  {
    name: 'no stage waits',
    rule: noStageWaits,
    fails: [{ path: 'src/proof/prove.ts', text: 'export async function prove() {}' }],
    passes: { path: 'src/geometry/kernel.ts', text: 'export async function loadKernel() {}' },
  },
  {
    name: 'the width of the cut has one home',
    rule: kerfHasOneHome,
    fails: [
      { path: 'src/camera/back/parts.ts', text: 'const side = width + kerf / 2;' },
      { path: 'src/joinery/finger-joint.ts', text: 'const slot = tab - laserKerf;' },
    ],
    passes: { path: 'src/sheets/cut-line.ts', text: 'const half = kerf / 2;' },
  },
  {
    name: 'no path of somebody’s machine',
    rule: noMachinePaths,
    fails: [{ path: 'src/cli/build.ts', text: `const folder = '${'/home'}/somebody/output';` }],
    passes: { path: 'src/cli/build.ts', text: "import { a } from '../paper/index.js';" },
  },
  {
    name: 'files and folders are called in kebab-case',
    rule: kebabCase,
    fails: [
      { path: 'src/camera/lensBoard/size.ts', text: '' },
      { path: 'src/camera/lens-board/Size.ts', text: '' },
      { path: 'src/camera/lens_board/size.ts', text: '' },
      { path: 'src/camera/lens-board/size.js', text: '' },
    ],
    passes: { path: 'src/files/3mf.ts', text: '' },
  },
  {
    name: 'exports are named, one by one',
    rule: namedExports,
    fails: [
      { path: 'src/index.ts', text: "export * from './units/length.js';" },
      { path: 'src/units/length.ts', text: 'export default 25.4;' },
    ],
    passes: { path: 'src/index.ts', text: "export { parseLength } from './units/length.js'; // not export * from it" },
  },
  {
    name: 'modules keep no state',
    rule: noStateInModules,
    fails: [{ path: 'src/geometry/kernel.ts', text: 'let loaded = null;' }],
    passes: { path: 'src/geometry/clip.ts', text: 'function f() {\n  let sum = 0;\n  return sum;\n}' },
  },
  {
    name: 'what is thrown is an Error',
    rule: throwsErrors,
    fails: [{ path: 'src/geometry/clip.ts', text: "throw 'a string';" }],
    passes: { path: 'src/geometry/clip.ts', text: "throw new Error('a mistake of ours');\nthrow error;" },
  },
  {
    name: 'nothing is left to do',
    rule: nothingLeftToDo,
    fails: [{ path: 'src/geometry/clip.ts', text: `// ${'TO'}DO holes` }],
    passes: { path: 'src/geometry/clip.ts', text: '// what remains to be done is done here' },
  },
];

describe.each(rules)('$name', ({ rule, fails, passes }) => {
  test.each(fails)('fails on: $text', (planted) => expect(rule(planted)).not.toEqual([]));
  test('passes what is right', () => expect(rule(passes)).toEqual([]));
  test('holds in the whole house', () => {
    expect(house.flatMap((file) => rule(file).map((complaint) => `${file.path}: ${complaint}`))).toEqual([]);
  });
});

/** What the page is bundled with: its users get the bundle. */
const BUNDLED = ['esbuild', 'lit-html', 'three'];

test('every dependency has a door, and every door a dependency', () => {
  const { dependencies, devDependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Record<
    'dependencies' | 'devDependencies',
    object
  >;
  expect(Object.keys(devDependencies)).toEqual(expect.arrayContaining(BUNDLED));
  expect(Object.keys(doors).sort()).toEqual([...Object.keys(dependencies), ...BUNDLED].sort());
});

/** What a file imports or hands on, types and late imports included. */
function importsOf(text: string): readonly string[] {
  const found = withoutComments(text).matchAll(/\b(?:from\s+|import\s*\(\s*|import\s+)(?:'([^'\n]+)'|"([^"\n]+)")/g);
  return [...found].flatMap(([, single, double]) => single ?? double ?? []);
}

/** The code without its comments and texts. What stands in `${}` of a template is lost with it. */
function codeOf(text: string): string {
  return text.replace(TEXT_OR_COMMENT, (piece) => (piece.startsWith('/') ? '' : "''"));
}

function withoutComments(text: string): string {
  return text.replace(TEXT_OR_COMMENT, (piece) => (piece.startsWith('/') ? '' : piece));
}

const TEXT_OR_COMMENT = /\/\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\.|[^`\\])*`/g;
