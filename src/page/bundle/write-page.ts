import { createHash } from 'node:crypto';
import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, join } from 'node:path';
import { build, type Plugin } from 'esbuild';
import hershey from 'hersheytext';
import { licences } from './licences.js';

/**
 * Writes the page as a folder that any web server can serve: scripts with their late parts split off, the solid kernel,
 * the letters of the book, a design and a process to begin with. Part of the compiling, not of the program.
 *
 * It is written into the folder that is given, or where `tailboard serve` looks for it.
 */
const root = join(import.meta.dirname, '..', '..', '..');
const out = process.argv[2] ?? join(root, 'dist', 'page');
const require = createRequire(import.meta.url);

/** The one font that parts are engraved with, as a table: in Node its package reads files, which a browser has not got. */
const glyphs: Plugin = {
  name: 'glyphs',
  setup(bundle) {
    bundle.onResolve({ filter: /^hersheytext$/ }, () => ({ path: 'hersheytext', namespace: 'glyphs' }));
    bundle.onLoad({ filter: /.*/, namespace: 'glyphs' }, () => {
      const { chars } = hershey.getFontData('hershey_sans_1');
      return { contents: `export default { getFontData: () => ({ chars: ${JSON.stringify(chars)} }) };` };
    });
  },
};

rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });
const { metafile } = await build({
  entryPoints: [
    'main.ts',
    'style.css',
    'worker/desk-worker.ts',
    'worker/survey-worker.ts',
    'worker/proof-worker.ts',
    'worker/light-worker.ts',
    'worker/sheets-worker.ts',
  ].map((name) => ({
    in: join(root, 'src', 'page', name),
    out: name.replace(/^.*\/|\.\w+$/g, ''),
  })),
  bundle: true,
  splitting: true,
  format: 'esm',
  target: 'es2022',
  minify: true,
  legalComments: 'linked',
  outdir: out,
  chunkNames: 'part-[hash]',
  // the kernel asks for it in Node alone
  external: ['node:*'],
  plugins: [glyphs],
  logLevel: 'warning',
  absWorkingDir: root,
  metafile: true,
});
writeFileSync(
  join(out, 'index.html'),
  readFileSync(join(root, 'src', 'page', 'index.html'), 'utf8').replace(
    /^( *)<script type="module"/m,
    (script, indent) => [...preloads(`${indent}<link rel="modulepreload" href="`, '" />'), script].join('\n'),
  ),
);
copyFileSync(join(root, 'designs', 'heron.yaml'), join(out, 'heron.yaml'));
copyFileSync(join(root, 'designs', 'dunlin', 'process.yaml'), join(out, 'process.yaml'));
copyFileSync(require.resolve('manifold-3d/manifold.wasm'), join(out, 'manifold.wasm'));
for (const face of ['DejaVuSans', 'DejaVuSans-Bold', 'DejaVuSansCondensed', 'DejaVuSansCondensed-Bold'])
  copyFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${face}.ttf`), join(out, `${face}.ttf`));
writeFileSync(
  join(out, 'licences.txt'),
  licences(join(root, 'node_modules'), Object.keys(metafile.inputs), ['hersheytext', 'dejavu-fonts-ttf']),
);

// last, for it knows all of them by their hash
const files = readdirSync(out)
  .filter((name) => !name.endsWith('.LEGAL.txt'))
  .sort()
  .map((name) => [
    name,
    `sha256-${createHash('sha256')
      .update(readFileSync(join(out, name)))
      .digest('base64')}`,
  ]);
const name = createHash('sha256').update(JSON.stringify(files)).digest('hex').slice(0, 16);
await build({
  entryPoints: ['offline-worker.ts', 'stand-down-worker.ts'].map((script) =>
    join(root, 'src', 'page', 'offline', script),
  ),
  bundle: true,
  format: 'esm',
  target: 'es2022',
  minify: true,
  outdir: out,
  define: { BUILD: JSON.stringify({ name, files }) },
  logLevel: 'warning',
});

/** What the first script needs in any case is asked for with it, not when it has come. */
function preloads(before: string, after: string): readonly string[] {
  const outputs = new Map(Object.entries(metafile.outputs).map(([path, output]) => [basename(path), output]));
  const needed = new Set<string>();
  const follow = (script: string): void => {
    for (const { path, kind } of outputs.get(script)?.imports ?? [])
      if (kind === 'import-statement' && !needed.has(basename(path))) {
        needed.add(basename(path));
        follow(basename(path));
      }
  };
  follow('main.js');
  return [...needed].map((script) => `${before}${script}${after}`);
}
