// Departures that someone has signed for: what each concession says, and whether a value keeps to its bound. Which findings it turns into
// information is the rules' (rules/concessions.ts); the gate before a cut asks here too.
import { metresToTenths } from "../../core/quantity/exact.ts";
import type { Dimension } from "../../core/quantity/units.ts";
import { given, valueIn, type Entry } from "../entry.ts";
import { entryOf, query, refOf, refsOfKind, type Shop } from "../shop.ts";
import type { AnyQuantity } from "../values.ts";
import { kindOf } from "../reference.ts";

/** Findings that nobody may sign away: they have no bound that keeps a job safe. */
export const NEVER: ReadonlySet<string> = new Set([
  "cut-unchecked",
  "press-yields",
  "heat-over",
]);

/** A finding as far as a concession looks at it. */
export interface Departure {
  readonly code: string;
  /** SI */
  readonly value?: number | undefined;
  /** A length where left off. */
  readonly dimension?: Dimension | undefined;
}

export interface Concession {
  readonly ref: string;
  readonly name: string;
  readonly code: string;
  /** Full reference of the entry that it is for. */
  readonly on: string;
  readonly bound: AnyQuantity | undefined;
  readonly who: string | undefined;
  readonly date: string | undefined;
}

/** What a concession says; undefined where a line of it can't be read, or what it is for is not there. */
export const concessionOf = query<Concession | undefined>(
  "concession",
  (shop, ref) => {
    const entry = entryOf(shop, ref);
    if (entry === undefined) return undefined;
    const allows = given(entry, "AllowsFact");
    const bound = given(entry, "UpToFact");
    const why = given(entry, "WhyFact");
    if (
      allows.state !== "given" ||
      bound.state === "damaged" ||
      why.state === "damaged"
    )
      return undefined;
    const on = refOf(shop, allows.value.on);
    if (on === undefined || kindOf(on) === "concession") return undefined;
    const signature = why.state === "given" ? why.value.signature : undefined;
    return {
      ref,
      name: entry.name ?? "",
      code: allows.value.code,
      on,
      bound: bound.state === "given" ? bound.value : undefined,
      who: signature?.who,
      date: signature?.date,
    };
  },
);

/** Signed by someone, on a day, and up to some value. */
export function isWhole({ who, date, bound }: Concession): boolean {
  return who !== undefined && date !== undefined && bound !== undefined;
}

/** The concessions for an entry, in the order that they are written. */
export const concessionsOn = query<readonly Concession[]>(
  "concessions-on",
  (shop, ref) =>
    refsOfKind(shop, "concession").flatMap((each) => {
      const concession = concessionOf(shop, each);
      return concession?.on === ref ? [concession] : [];
    }),
);

/** The concession that accepts this value (SI) of a finding of an entry; undefined where none does. */
export function acceptedBy(
  shop: Shop,
  ref: string,
  finding: Departure,
): Concession | undefined {
  const entry = entryOf(shop, ref);
  return concessionsOn(shop, ref).find(
    (each) =>
      isWhole(each) &&
      each.code === finding.code &&
      isWithin(finding, each, entry) === true,
  );
}

/** Whether a value keeps to the bound; undefined where there is none, or the bound is of another kind. */
export function isWithin(
  { code, value, dimension = "length" }: Departure,
  { bound }: Concession,
  entry: Entry | undefined,
): boolean | undefined {
  const limit = boundIn(bound, dimension);
  if (value === undefined || limit === undefined || NEVER.has(code))
    return undefined;
  const under = isUnder(code, value, entry);
  if (under === undefined) return undefined;
  return under
    ? isAtMost(limit, value, dimension)
    : isAtMost(value, limit, dimension);
}

function boundIn(
  bound: AnyQuantity | undefined,
  dimension: Dimension,
): number | undefined {
  if (bound === undefined) return undefined;
  if (bound.dimension === dimension) return bound.value;
  if (bound.dimension !== undefined) return undefined;
  return dimension === "length"
    ? bound.asLength
    : dimension === "ratio"
      ? bound.value
      : undefined;
}

/** Findings of too little: their value may go down to the bound. All others may go up to it. */
const UNDER: ReadonlySet<string> = new Set([
  "fit-tight",
  "fit-interferes",
  "hot-tight",
  "cold-tight",
  "press-light",
  "bush-slips-hot",
  "stock-thin",
  "line-crooked",
  "film-thin",
  "gauge-coarse",
]);

/** Findings that may lie on either side of what the entry says. */
const EITHER: ReadonlySet<string> = new Set([
  "reading-off-limits",
  "worn",
  "float-off",
]);

function isUnder(
  code: string,
  value: number,
  entry: Entry | undefined,
): boolean | undefined {
  if (!EITHER.has(code)) return UNDER.has(code);
  const says =
    valueIn(entry, code === "worn" ? "ServiceLimitFact" : "LimitsFact") ??
    valueIn(entry, "WantFact");
  // which side it is off can't be told, so neither can whether it is within
  return says === undefined ? undefined : value < (says.low + says.high) / 2;
}

function isAtMost(a: number, b: number, dimension: Dimension): boolean {
  return dimension === "length"
    ? metresToTenths(a) <= metresToTenths(b)
    : a <= b + 1e-9 * Math.abs(b);
}
