// Which parts of a year stay as they are, and which records go together into new ones. Pure: it sees counts, not files.
import type { Part } from "./layout.ts";

/** Records in a full part: few enough that one changed record costs little, many enough that the parts of a year are few. */
export const FULL = 4096;
/** A year keeps no more parts than this that are less than half full; past it they are put together. */
export const MOST_SMALL = 8;

/** A part of the former state, and how many of its records are no more or have changed. */
export interface OldPart {
  readonly part: Part;
  readonly gone: number;
}

/** Records of one year that were worked out anew, in the order that they came. */
export interface Chunk {
  readonly number: number;
  readonly records: number;
}

/** What goes into one new part. */
export interface NewPart {
  readonly year: number;
  readonly from: readonly Part[];
  readonly chunks: readonly number[];
  readonly records: number;
}

export interface Plan {
  readonly kept: readonly Part[];
  readonly made: readonly NewPart[];
}

export function planYear(
  year: number,
  old: readonly OldPart[],
  chunks: readonly Chunk[],
): Plan {
  const clean = old.filter(({ gone }) => gone === 0);
  const touched = old.filter(({ gone }) => 0 < gone);
  const isSmall = ({ part }: OldPart): boolean => part.records < FULL / 2;
  const small = clean.filter(isSmall);
  const comes = 0 < touched.length + chunks.length ? 1 : 0;
  const isMany = MOST_SMALL < small.length + comes;
  const sources = [
    ...[...touched, ...(isMany ? small : [])].map(({ part, gone }) => ({
      from: [part],
      chunks: [] as number[],
      records: part.records - gone,
    })),
    ...chunks.map(({ number, records }) => ({
      from: [] as Part[],
      chunks: [number],
      records,
    })),
  ].filter(({ records }) => 0 < records);
  const bins: { from: Part[]; chunks: number[]; records: number }[] = [];
  // the largest first, each where it fits
  for (const source of sources.sort((a, b) => b.records - a.records)) {
    const bin = bins.find(({ records }) => records + source.records <= FULL);
    if (bin === undefined) bins.push(source);
    else {
      bin.from.push(...source.from);
      bin.chunks.push(...source.chunks);
      bin.records += source.records;
    }
  }
  return {
    kept: clean
      .filter((each) => !isMany || !isSmall(each))
      .map(({ part }) => part),
    made: bins.map((bin) => ({ year, ...bin })),
  };
}
