// The bores of a line with where they lie on it, in the order of cutting, and what reams them. What each is cut to is bore.ts's.
import { allOf, given, valueIn } from "../entry.ts";
import { known, SILENT, type Known } from "../known.ts";
import { kindOf, nameOf } from "../reference.ts";
import { entryOf, query, refOf, type Shop } from "../shop.ts";
import type { LengthRange, Point } from "../values.ts";
import { namedIn } from "./index-of.ts";
import { hostOf } from "./size.ts";

export interface LineBore {
  readonly bore: string;
  /** Along the line's axis, m. */
  readonly from: number;
  readonly to: number;
  /** Of its ends, off the line's datum; empty where nobody checked them. */
  readonly centres: readonly Point[];
}

/** The bores of a line in the order of cutting; silent while one of them can't be read. */
export const lineBoresOf = query<Known<readonly LineBore[]>>(
  "line-bores",
  (shop, line) => {
    const entry = entryOf(shop, line);
    if (entry === undefined || entry.damaged) return SILENT;
    const bores: LineBore[] = [];
    for (const { value } of allOf(entry, "LineBoreFact")) {
      const bore = refOf(shop, value?.bore);
      if (value === undefined || bore === undefined) return SILENT;
      const { from, to, centres } = value;
      bores.push({ bore, from, to, centres });
    }
    return known(bores);
  },
);

/** The reamer that a line names; undefined where it is bored or honed, or says nothing. */
export const reamerOfLine = query<Known<string | undefined>>(
  "line-reamer",
  (shop, line) => {
    const entry = entryOf(shop, line);
    const ream = entry === undefined ? undefined : given(entry, "ReamFact");
    if (ream === undefined || ream.state === "damaged") return SILENT;
    if (ream.state === "absent") return known(undefined);
    const reamer = refOf(shop, ream.value);
    return reamer === undefined ? SILENT : known(reamer);
  },
);

export interface ReamerTool {
  readonly drive: "hand" | "machine" | undefined;
  readonly material: "hss" | "carbide" | undefined;
  /** m */
  readonly chamfer: number | undefined;
  readonly point: number | undefined;
  readonly flutes:
    | { readonly count: number; readonly hand: "straight" | "left" | "right" }
    | undefined;
  /** What its maker or the shop lets it take off, on diameter. */
  readonly stock: LengthRange | undefined;
  /** Facts that can't be read: what hangs on them is not said. */
  readonly damaged: readonly string[];
}

/** What a reamer's entry says of the tool, but for its size. */
export const reamerTool = query<ReamerTool | undefined>(
  "reamer-tool",
  (shop, ref) => {
    const entry = entryOf(shop, ref);
    if (entry === undefined || entry.damaged) return undefined;
    return {
      drive: valueIn(entry, "DriveFact"),
      material: valueIn(entry, "ReamerMaterialFact"),
      chamfer: valueIn(entry, "ChamferFact")?.value,
      point: valueIn(entry, "PointFact")?.value,
      flutes: valueIn(entry, "FlutesFact"),
      stock: valueIn(entry, "StockFact"),
      damaged: entry.facts
        .filter((fact) => fact.value === undefined)
        .map((fact) => fact.word),
    };
  },
);

/** The hole that a bore lies in: its bush's, or for a bore in a part the hole of its name there. */
export const holeOfBore = query<string | undefined>(
  "bore-hole",
  (shop, bore) => {
    const host = hostOf(shop, bore);
    if (host === undefined) return undefined;
    if (kindOf(host) === "bush") return namedIn(shop, host)[0];
    const hole = `hole ${nameOf(bore)}`;
    return entryOf(shop, hole) !== undefined && hostOf(shop, hole) === host
      ? hole
      : undefined;
  },
);

/** The bush that a bore lies in; undefined for one in a part. */
export function bushOfBore(shop: Shop, bore: string): string | undefined {
  const host = hostOf(shop, bore);
  return host?.startsWith("bush ") === true ? host : undefined;
}

/** The part that a bore lies in, through its bush and hole where it has them. */
export function partOfBore(shop: Shop, bore: string): string | undefined {
  const host = hostOf(shop, bore);
  if (host?.startsWith("bush ") !== true) return host;
  const hole = namedIn(shop, host)[0];
  return hole === undefined ? undefined : hostOf(shop, hole);
}
