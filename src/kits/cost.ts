import type { CostLine, KitCost, KitsDocument } from '../model/kits.js';
import type { BoughtPrice, Prices } from '../model/prices.js';
import { sameWord } from '../model/same-thing.js';
import { plainNumber } from '../units/print.js';
import { priceOf, sheetPriceOf } from './price-of.js';

type Priced = Pick<KitsDocument, 'copies' | 'sheets' | 'laser' | 'prints' | 'hardware' | 'around'>;

/** Amounts are of hundredths, so that what stands on a list adds up to what stands below it. */
const hundredths = (amount: number): number => Math.round(amount * 100 + 1e-6) / 100;

/**
 * What a run costs by the prices of its user. Nothing is guessed: what has no price is named, and so is a price that
 * nothing goes by, which most often is a name written otherwise.
 */
export function costOf(run: Priced, prices: Prices | null): KitCost {
  if (prices === null)
    return {
      currency: null,
      lines: [],
      total: 0,
      perKit: 0,
      notPriced: [...new Set(needsOf(run).map(({ what }) => what))],
      notUsed: [],
    };
  const used = new Set<object>();
  const lines: CostLine[] = [];
  const notPriced: string[] = [];
  const line = (what: string, quantity: number, unit: string, price: number) =>
    lines.push({ what, quantity, unit, price, amount: hundredths(quantity * price) });
  for (const kind of run.sheets) {
    const entry = sheetPriceOf(kind, prices.sheets);
    if (entry !== null) used.add(entry);
    if (kind.buy === 0) continue;
    if (entry === null) notPriced.push(sheetName(kind));
    else line(sheetName(kind), kind.buy, kind.buy === 1 ? 'sheet' : 'sheets', entry.price);
  }
  const things = thingsOf(run);
  const byEntry = new Map<BoughtPrice, typeof things>();
  for (const thing of things) {
    const entry = priceOf(thing, prices.bought);
    if (entry !== null) used.add(entry);
    if (entry === null || entry.price === null) notPriced.push(thingName(thing));
    else byEntry.set(entry, [...(byEntry.get(entry) ?? []), thing]);
  }
  for (const [entry, own] of byEntry) {
    const pieces = own.reduce((sum, { total }) => sum + total, 0);
    const packs = Math.ceil(pieces / entry.pack);
    const what =
      own.length === 1
        ? own.map(thingName).join('')
        : `${own[0]?.name} ${[...new Set(own.map(({ size }) => sizeOf(size)))].join('; ')}`;
    const unit =
      entry.pack === 1 ? (packs === 1 ? 'piece' : 'pieces') : `${packs === 1 ? 'pack' : 'packs'} of ${entry.pack}`;
    line(what, packs, unit, entry.price ?? 0);
  }
  for (const material of materialsOf(run)) {
    const entry = prices.printed.find((one) => sameWord(one.material, material));
    if (entry !== undefined) used.add(entry);
    if (entry === undefined) notPriced.push(`${material} to print`);
    else line(`${material} to print`, massOf(run, material), 'kg', entry.perKg);
  }
  if (run.laser.minutes > 0) {
    if (prices.perMinute === null) notPriced.push('time at the laser');
    else line('time at the laser', run.laser.minutes, 'min', prices.perMinute);
  }
  const total = hundredths(lines.reduce((sum, { amount }) => sum + amount, 0));
  return {
    currency: prices.currency,
    lines,
    total,
    perKit: hundredths(total / run.copies),
    notPriced: [...new Set(notPriced)],
    notUsed: [
      ...prices.sheets.filter((entry) => !used.has(entry)).map(({ material }) => material),
      ...prices.bought
        .filter((entry) => !used.has(entry))
        .map(({ name, size }) => (size === null ? name : `${name} ${size}`)),
      ...prices.printed.filter((entry) => !used.has(entry)).map(({ material }) => `${material} to print`),
    ],
  };
}

interface Thing {
  readonly name: string;
  readonly size: string;
  readonly total: number;
}

/** What is bought one by one; what is printed has its own list and its own price. */
const thingsOf = ({ hardware, around, prints }: Priced): readonly Thing[] => [
  ...hardware.filter(({ size }) => !prints.some(({ file }) => size === `${file}.stl`)),
  ...around.map(({ name, wanted }) => ({ name, size: '', total: wanted })),
];

const needsOf = (run: Priced): readonly { readonly what: string }[] => [
  ...run.sheets.filter(({ buy }) => buy > 0).map((kind) => ({ what: sheetName(kind) })),
  ...thingsOf(run).map((thing) => ({ what: thingName(thing) })),
  ...materialsOf(run).map((material) => ({ what: `${material} to print` })),
  ...(run.laser.minutes > 0 ? [{ what: 'time at the laser' }] : []),
];

const sheetName = ({ material, width, height }: Priced['sheets'][number]): string =>
  `${material}, ${plainNumber(width, 1)} × ${plainNumber(height, 1)} mm`;

/** What a size says before its first comma: the rest is how the thing is to be. */
const sizeOf = (size: string): string => size.split(',')[0] ?? size;

const thingName = ({ name, size }: Thing): string => [name, sizeOf(size)].filter((word) => word !== '').join(' ');

const materialsOf = ({ prints }: Priced): readonly string[] => [...new Set(prints.map(({ material }) => material))];

/** To the gram. */
const massOf = ({ prints }: Priced, material: string): number =>
  Math.round(1000 * prints.reduce((sum, one) => (one.material === material ? sum + one.wanted * one.mass : sum), 0)) /
  1000;
