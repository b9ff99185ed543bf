// What a fit asks of its bearing material against what that bears: the common part of pv-over, load-over and speed-over.
import type { Dimension } from "../../core/quantity/units.ts";
import {
  isOverLimit,
  isRun,
  runningLimit,
} from "../../model/evaluate/running.ts";
import type { Entry } from "../../model/entry.ts";
import type { Estimate, Known } from "../../model/known.ts";
import type { Shop } from "../../model/shop.ts";
import { hostOf } from "../../model/evaluate/size.ts";
import { namedIn } from "../../model/evaluate/index-of.ts";
import type { Draft, DraftRelated } from "../rule.ts";

interface Asked {
  /** "PV", as it begins the sentence. */
  readonly what: string;
  readonly of: "pv" | "specificLoad" | "speed";
  readonly dimension: Dimension;
  readonly found: Known<Estimate>;
  readonly show: (value: number) => string;
  /** The facts that it is written in, first that stands. */
  readonly words: readonly string[];
  readonly todo: string;
}

/** The job's own limit where it writes one with `warn CODE at VALUE`, else the material's. */
export function overDrafts(
  shop: Shop,
  fit: string,
  entry: Entry,
  asked: Asked,
): readonly Draft[] {
  const { what, of, dimension, found, show, words, todo } = asked;
  if (!isRun(shop, fit) || !found.known) return [];
  const limit = runningLimit(shop, fit, of);
  if (limit === undefined || !isOverLimit(found.value.high, limit)) return [];
  const span = words
    .map((word) => entry.facts.find((fact) => fact.word === word)?.span)
    .find((each) => each !== undefined);
  return [
    {
      span: span ?? entry.nameSpan,
      message: `${what} is ${show(found.value.high)}, over the ${show(limit.value)} ${limit.whose}: ${todo}.`,
      related: bearingPlace(shop, fit),
      value: found.value.high,
      dimension,
    },
  ];
}

function bearingPlace(shop: Shop, fit: string): readonly DraftRelated[] {
  const bore = namedIn(shop, fit)[1];
  const host = bore === undefined ? undefined : hostOf(shop, bore);
  return host === undefined
    ? []
    : [{ ref: host, message: `${host}, which bears it` }];
}
