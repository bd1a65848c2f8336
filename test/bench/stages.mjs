// One build of a design by the compiled program, in a process of its own: seconds that each stage took, as JSON.
import { readFileSync } from 'node:fs';
import { bookLetters } from '../../dist/cli/letters.js';
import { loadDocuments, loadWorkshop, readDesign } from '../../dist/index.js';

const [file] = process.argv.slice(2);
const { design } = readDesign(readFileSync(file, 'utf8'), file);
const { build } = await loadWorkshop();
const { pagePdf } = await loadDocuments();
const writeDocument = (pages, about) => pagePdf(pages, bookLetters(), about);

const seconds = {};
let [name, since] = ['', performance.now()];
const onProgress = ({ stage }) => {
  const now = performance.now();
  if (name !== '') seconds[name] = (seconds[name] ?? 0) + (now - since) / 1000;
  [name, since] = [stage, now];
};
build(design, { despite: [], effort: 0, onProgress, writeDocument });
process.stdout.write(JSON.stringify(seconds));
