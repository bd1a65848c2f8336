import { wanted } from './wanted.js';

const usage = `npm run bench                        what is promised of speed and memory
npm run bench -- page                what the page promises, in Chromium
npm run bench -- pack FILE …         the packer on lists of rectangles or parts
npm run bench -- order FILE …        the order of cuts on cutting jobs
  --seconds 1     time for an instance      --seeds 1      runs with so many seeds
  --turns         rectangles may be turned  --layouts OUT  writes what was found, one file a seed
  --json          figures as data
`;

const { kind, file, options } = wanted(process.argv.slice(2));
if (kind === undefined) await (await import('./promises.js')).measurePromises(options.json);
else if (kind === 'page') await inBrowser(options.json);
else if (kind === 'pack' && file !== undefined) (await import('./pack.js')).measurePacking(file, options);
else if (kind === 'order' && file !== undefined) (await import('./order.js')).measureOrder(file, options);
else {
  process.stderr.write(usage);
  process.exit(2);
}

/** What runs in a browser is compiled with its types, which this is not. */
async function inBrowser(asJson: boolean): Promise<void> {
  const bench: { readonly measurePage: (asJson: boolean) => Promise<void> } = await import(
    new URL('./page.ts', import.meta.url).href
  );
  await bench.measurePage(asJson);
}
