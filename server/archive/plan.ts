// Which parts of a year stay as they are, and which records go together into new ones. Pure: it sees counts, not files.
import type { Part } from "./layout.ts";

/** What a part takes at most: one record more than that only where it is by itself. */
export interface Limits {
  readonly records: number;
  /** Of all tables together. */
  readonly rows: number;
}

/**
 * Few enough that one changed record costs little and that memory holds a part whole, many enough that the parts of a year are few. Of records
 * that are longer than usual the rows fill it first.
 */
export const FULL: Limits = { records: 512, rows: 250_000 };
/** A year keeps no more parts than this that are less than half full; past it they are put together. */
export const MOST_SMALL = 8;

/** A part of the former state. */
export interface OldPart {
  readonly part: Part;
  /** How many of its records are no more or have changed. */
  readonly gone: number;
  /** Rows of the others. */
  readonly rows: number;
}

/** Records of one year that were worked out anew. */
export interface Chunk {
  readonly number: number;
  readonly records: number;
  readonly rows: number;
}

/** What goes into one new part. */
export interface NewPart {
  readonly year: number;
  readonly from: readonly Part[];
  readonly chunks: readonly Chunk[];
  readonly records: number;
}

export interface Plan {
  readonly kept: readonly Part[];
  readonly made: readonly NewPart[];
}

/** How much of a part some records take. */
function shareOf({ records, rows }: Limits, full: Limits): number {
  return Math.max(records / full.records, rows / full.rows);
}

export function isFull(size: Limits, full: Limits): boolean {
  return 1 <= shareOf(size, full);
}

export function planYear(
  year: number,
  old: readonly OldPart[],
  chunks: readonly Chunk[],
  full: Limits = FULL,
): Plan {
  const clean = old.filter(({ gone }) => gone === 0);
  const touched = old.filter(({ gone }) => 0 < gone);
  const isSmall = ({ part, rows }: OldPart): boolean =>
    shareOf({ records: part.records, rows }, full) < 1 / 2;
  const small = clean.filter(isSmall);
  const comes = 0 < touched.length + chunks.length ? 1 : 0;
  const isMany = MOST_SMALL < small.length + comes;
  const sources = [
    ...[...touched, ...(isMany ? small : [])].map(({ part, gone, rows }) => ({
      from: [part],
      chunks: [] as Chunk[],
      records: part.records - gone,
      rows,
    })),
    ...chunks.map((chunk) => ({
      from: [] as Part[],
      chunks: [chunk],
      records: chunk.records,
      rows: chunk.rows,
    })),
  ].filter(({ records }) => 0 < records);
  const bins: typeof sources = [];
  // the largest first, each where it fits
  for (const source of sources.sort(
    (a, b) => shareOf(b, full) - shareOf(a, full),
  )) {
    const bin = bins.find(
      ({ records, rows }) =>
        records + source.records <= full.records &&
        rows + source.rows <= full.rows,
    );
    if (bin === undefined) bins.push(source);
    else {
      bin.from.push(...source.from);
      bin.chunks.push(...source.chunks);
      bin.records += source.records;
      bin.rows += source.rows;
    }
  }
  return {
    kept: clean
      .filter((each) => !isMany || !isSmall(each))
      .map(({ part }) => part),
    made: bins.map(({ from, chunks: fresh, records }) => ({
      year,
      from,
      chunks: fresh,
      records,
    })),
  };
}
