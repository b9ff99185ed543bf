// How the results were come by: the working of each entry with its sources, the budget of each measured size, and what was taken as given.
import { significant } from "../core/quantity/show.ts";
import type { Budget } from "../core/readings/budget.ts";
import { assumptionsOf } from "../model/assumptions.ts";
import { boreSize } from "../model/evaluate/bore.ts";
import { bushId, bushOd } from "../model/evaluate/bush-size.ts";
import {
  boresOfLine,
  namedIn,
  pressesOfBush,
} from "../model/evaluate/index-of.ts";
import { clearance } from "../model/evaluate/fit.ts";
import { sizeOf, type Size } from "../model/evaluate/size.ts";
import { groupedBy } from "../model/groups.ts";
import type { Known } from "../model/known.ts";
import { kindOf } from "../model/reference.ts";
import type { Result, Working } from "../model/result.ts";
import { refsOfKind, type Shop } from "../model/shop.ts";
import type { Subject } from "./facts.ts";
import { el, type Child, type Markup } from "../markup/html.ts";
import type { Sources } from "./sources.ts";
import { table } from "./table.ts";

/** What was taken as given, each sentence once, with the entries whose results rest on it. */
export function assumptionsSection({
  shop,
  check,
}: Subject): Markup | undefined {
  const said = new Map<string, string[]>();
  for (const [ref, results] of groupedBy(check.results, ({ entry }) => entry))
    for (const text of assumptionsOf(shop, ref, results))
      said.set(text, [...(said.get(text) ?? []), ref]);
  if (said.size === 0) return undefined;
  return el(
    "section",
    {},
    el("h2", {}, "Taken as given"),
    el(
      "p",
      { class: "small heads" },
      "Nobody wrote these: the tool took them, and the results named rest on them.",
    ),
    el(
      "ul",
      {},
      [...said].map(([text, refs]) =>
        el(
          "li",
          {},
          `${text} `,
          el("span", { class: "small" }, `(${refs.join(", ")})`),
        ),
      ),
    ),
  );
}

/** The budget of every measured size and clearance. */
export function budgetsSection(subject: Subject): Markup | undefined {
  const { shop, system } = subject;
  const of = (ref: string, label: string, size: Known<Size>) =>
    size.known && size.value.budget !== undefined
      ? [{ label, budget: size.value.budget, ref }]
      : [];
  const budgets = [
    ...(["journal", "hole"] as const).flatMap((kind) =>
      refsOfKind(shop, kind).flatMap((ref) => of(ref, ref, sizeOf(shop, ref))),
    ),
    ...refsOfKind(shop, "bush").flatMap((ref) => [
      ...of(ref, `${ref}, od as bought`, bushOd(shop, ref)),
      ...of(ref, `${ref}, id as bought`, bushId(shop, ref)),
    ]),
    ...refsOfKind(shop, "bore").flatMap((ref) =>
      of(ref, ref, boreSize(shop, ref)),
    ),
    ...refsOfKind(shop, "fit").flatMap((ref) => {
      const found = clearance(shop, ref);
      return found.known && found.value.budget !== undefined
        ? [{ label: `clearance of ${ref}`, budget: found.value.budget, ref }]
        : [];
    }),
  ].filter(({ ref }) => shop.places.get(ref)?.file === 0);
  if (budgets.length === 0) return undefined;
  const { symbol, size } = FINE[system];
  const fine = (metres: number): string => significant(metres / size, 2);
  return el(
    "section",
    {},
    el("h2", {}, "Uncertainty of what was measured"),
    el(
      "p",
      { class: "small heads" },
      `Each part is a standard uncertainty as it acts on the size, in ${symbol}; combined as a root of the sum of squares, times k for 95 % (JCGM 100:2008). Of several readings the least certain counts.`,
    ),
    table(
      [
        { head: "Size", percent: 20 },
        { head: "Parts" },
        { head: `u, ${symbol}`, percent: 9 },
        { head: "Degrees of freedom", percent: 11 },
        { head: "k", percent: 8 },
        { head: `U, ${symbol}`, percent: 9 },
      ],
      budgets.map(({ label, budget }): readonly Child[] => [
        label,
        partsOf(budget, fine),
        fine(budget.combined),
        degrees(budget.effectiveDegreesOfFreedom),
        budget.coverageFactor.toFixed(2),
        el("b", {}, fine(budget.expanded)),
      ]),
      "small",
    ),
  );
}

const FINE = {
  inch: { symbol: "µin", size: 25.4e-9 },
  mm: { symbol: "µm", size: 1e-6 },
} as const;

function partsOf(budget: Budget, fine: (metres: number) => string): string {
  return budget.rows
    .map(
      ({ name, contribution, distribution, degreesOfFreedom }) =>
        `${name} ${fine(contribution)} (${distribution}${Number.isFinite(degreesOfFreedom) ? `, ${degrees(degreesOfFreedom)}` : ""})`,
    )
    .join("; ");
}

function degrees(value: number): string {
  return Number.isFinite(value) ? String(value) : "∞";
}

/** The working of each entry: each line once, and what an entry that it rests on has worked already only by that entry's name. */
export function workingSection(
  { check, shop }: Subject,
  sources: Sources,
): Markup | undefined {
  const worked = new Map<string, readonly Working[]>();
  for (const [ref, results] of inOrderOfWork(check.results))
    worked.set(ref, workingOf(results));
  const entries = [...worked].flatMap(([ref, lines]) => {
    const below = [...restsOn(shop, ref)].filter((each) => worked.has(each));
    const from = new Set<string>();
    const own = lines.filter((each) => {
      const where = below.find((other) =>
        worked.get(other)?.some((line) => isSame(line, each)),
      );
      if (where !== undefined) from.add(where);
      return where === undefined;
    });
    return own.length + from.size === 0 ? [] : [{ ref, own, from: [...from] }];
  });
  if (entries.length === 0) return undefined;
  return el(
    "section",
    {},
    el("h2", {}, "Working"),
    el(
      "div",
      { class: "columns working" },
      entries.map(({ ref, own, from }) => [
        el("h3", {}, ref),
        from.length === 0
          ? undefined
          : el("p", {}, `Rests on ${from.join(", ")}.`),
        own.map(({ formula, with: numbers, source }) =>
          el(
            "div",
            { class: "rule" },
            formula,
            el("div", {}, numbers, ` ${sources.mark(source)}`),
          ),
        ),
      ]),
    ),
  );
}

/** What others rest on first. */
const ORDER = ["journal", "hole", "bush", "bore", "press", "line", "fit"];

function inOrderOfWork(
  results: readonly Result[],
): readonly (readonly [string, readonly Result[]])[] {
  const rank = (ref: string): number => {
    const at = ORDER.indexOf(kindOf(ref));
    return at === -1 ? ORDER.length : at;
  };
  return [...groupedBy(results, ({ entry }) => entry)].sort(
    ([a], [b]) => rank(a) - rank(b),
  );
}

/** The entries that the results of one rest on, however far. */
function restsOn(shop: Shop, ref: string): ReadonlySet<string> {
  const found = new Set<string>();
  const waiting = [ref];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const beside =
      kindOf(next) === "bush"
        ? pressesOfBush(shop, next)
        : kindOf(next) === "line"
          ? boresOfLine(shop, next)
          : [];
    for (const each of [...namedIn(shop, next), ...beside]) {
      if (each === undefined || each === ref || found.has(each)) continue;
      found.add(each);
      waiting.push(each);
    }
  }
  return found;
}

function isSame(a: Working, b: Working): boolean {
  return a.formula === b.formula && a.with === b.with && a.source === b.source;
}

function workingOf(results: readonly Result[]): readonly Working[] {
  const once: Working[] = [];
  for (const result of results) {
    // its budget has a table of its own
    if (result.kind === "uncertainty") continue;
    for (const step of result.working)
      if (!once.some((each) => isSame(each, step))) once.push(step);
  }
  return once;
}
