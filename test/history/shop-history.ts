// The records of a made-up harbour over the years, drawn from a seed, with what is true of it: reamers that wear or don't, a lot of bushes
// that closes more, a gauge that drifts, journals that wear or don't. For tests of trend, learning and the archive.
//
// Record i depends on the seed and on i alone, and is made when it is asked for: 100,000 of them cost no memory. Each 60 records are of a
// shop of their own, with its own crib, machines, and truths: 12 winches, five visits to each over seven years, in the order of time.
import { cribText, jobText, STATES } from "./text.ts";
import { RECORDS_A_SHOP, shopFolder, truthsOf, type Truths } from "./truths.ts";
import { jobValues, type Flaw } from "./values.ts";

export interface HistoryVersion {
  /** The day of the state that the record then stood in, ISO 8601. */
  readonly date: string;
  /** What the machine had run by then since the shop's first day, hours. */
  readonly hours: number;
  readonly text: string;
}

export interface HistoryRecord {
  readonly index: number;
  readonly shop: number;
  /** Its place in the shop's order, from 0. */
  readonly within: number;
  readonly path: string;
  /** Path of the crib that it uses. */
  readonly crib: string;
  /** The day it was opened. */
  readonly date: string;
  /** Of its shaft and its case. */
  readonly serials: readonly string[];
  /** As opened, with its bushes pressed, reamed, and looked at after it ran. */
  readonly versions: readonly HistoryVersion[];
  /** What is wrong with it on purpose: nothing may be learned from the reading that it is about. Only "damaged" is a fault of the text. */
  readonly flaw: Flaw | undefined;
}

export interface ShopHistory {
  readonly records: Iterable<HistoryRecord>;
  /** One for each shop, as paths and texts. */
  readonly cribs: Iterable<{ readonly path: string; readonly text: string }>;
  /** What is true of each shop, in the order of the shops. */
  readonly truths: Iterable<Truths>;
}

export function shopHistory(
  seed: number,
  options: { readonly records: number },
): ShopHistory {
  const shops = Math.ceil(options.records / RECORDS_A_SHOP);
  return {
    records: lazily(options.records, (index) => recordOf(seed, index)),
    cribs: lazily(shops, (shop) => ({
      path: `${shopFolder(shop)}/crib.thou`,
      text: cribText(shop),
    })),
    truths: lazily(shops, (shop) => truthsOf(seed, shop)),
  };
}

/** One record by itself. */
export function recordOf(seed: number, index: number): HistoryRecord {
  const shop = Math.floor(index / RECORDS_A_SHOP);
  const within = index % RECORDS_A_SHOP;
  const job = jobValues(seed, shop, within);
  const { machine, dates, visit } = job;
  return {
    index,
    shop,
    within,
    path: `${shopFolder(shop)}/${dates.opened.slice(0, 4)}/${machine.name}-${String(visit + 1)}.thou`,
    crib: `${shopFolder(shop)}/crib.thou`,
    date: dates.opened,
    serials: [`${machine.serial}-LS`, `${machine.serial}-C`],
    versions: STATES.map((state) => ({
      date: dates[state],
      hours: job.hours[state],
      text: jobText(job, state),
    })),
    flaw: job.flaw,
  };
}

function lazily<T>(count: number, make: (index: number) => T): Iterable<T> {
  return {
    *[Symbol.iterator]() {
      for (let index = 0; index < count; index++) yield make(index);
    },
  };
}
