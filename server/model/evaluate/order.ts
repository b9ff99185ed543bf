// The steps of a job as a graph: what each waits for, which are done, what is next. What is in the way of a cut is gate.ts's.
import { allOf, given, valueIn, type Entry } from "../entry.ts";
import type { FactRule, FactValues, RefSite, Span } from "../values.ts";
import {
  entriesOf,
  entryOf,
  isLoose,
  openingEntry,
  query,
  queryOfShop,
  refOf,
  refsOfKind,
  type Shop,
} from "../shop.ts";

export interface Step {
  readonly ref: string;
  /** Steps that come before it, by `after` and by the route. */
  readonly after: readonly string[];
  readonly done: boolean;
  /** The day it was done, where it is written. */
  readonly date: string | undefined;
  readonly by: string | undefined;
  readonly failed: boolean;
  /** What was found, in words. */
  readonly found: string | undefined;
  /** A line that says how it stands can't be read: nothing is said of it, nor of what waits for it. */
  readonly unread: boolean;
  readonly cuts: readonly string[];
  readonly presses: readonly string[];
  readonly checks: readonly string[];
  readonly cautions: readonly string[];
  readonly text: string | undefined;
}

export interface Order {
  /** Every step of the job, those of its route first and in its order. */
  readonly steps: readonly Step[];
  /** Steps that wait for themselves, each loop once, in the order of waiting. */
  readonly loops: readonly (readonly string[])[];
  /** Steps that are not done and wait for nothing. */
  readonly next: readonly string[];
}

/** The facts of a step: the job's own, and where its route names the step those of the crib's entry too. */
function factsOf<K extends FactRule>(
  shop: Shop,
  ref: string,
  rule: K,
): readonly FactValues[K][] {
  const entries = routeSteps(shop).includes(ref)
    ? entriesOf(shop, ref)
    : entriesOf(shop, ref).slice(0, 1);
  return entries.flatMap((entry) =>
    allOf(entry, rule).flatMap((fact) =>
      fact.value === undefined ? [] : [fact.value],
    ),
  );
}

/** The steps of the route, in order; none where the job follows no route. */
export const routeSteps = queryOfShop<readonly string[]>(
  "route-steps",
  (shop) => {
    const follow = valueIn(openingEntry(shop), "FollowFact");
    const route = refOf(shop, follow);
    const entry = route === undefined ? undefined : entryOf(shop, route);
    if (entry === undefined) return [];
    return allOf(entry, "RouteStepFact").flatMap((fact) =>
      fact.value === undefined ? [] : [`step ${fact.value.name}`],
    );
  },
);

/** False where the job follows a route that is not there, or whose lines can't be read: then its order is not known. */
const routeIsRead = queryOfShop<boolean>("route-is-read", (shop) => {
  const opening = openingEntry(shop);
  const follow =
    opening === undefined ? undefined : given(opening, "FollowFact");
  if (follow === undefined || follow.state === "absent") return true;
  if (follow.state === "damaged") return false;
  const route = refOf(shop, follow.value);
  const entry = route === undefined ? undefined : entryOf(shop, route);
  return (
    entry?.damaged === false &&
    allOf(entry, "RouteStepFact").every(({ value }) => value !== undefined)
  );
});

export const stepValue = query<Step>("step", (shop, ref) => {
  const refs = (sites: readonly (readonly RefSite[])[]): readonly string[] =>
    sites.flat().flatMap((site) => refOf(shop, site) ?? []);
  const route = routeSteps(shop);
  const before = route[route.indexOf(ref) - 1];
  const after = refs(factsOf(shop, ref, "AfterFact"));
  const done = factsOf(shop, ref, "DoneFact")[0];
  const found = factsOf(shop, ref, "FoundFact")[0];
  const failed = found?.outcome === "failed";
  return {
    ref,
    after: [...new Set(before === undefined ? after : [before, ...after])],
    done: done !== undefined && !failed,
    date: done?.date,
    by: done?.who,
    failed,
    found: found?.text,
    unread: isUnread(shop, ref),
    cuts: refs(factsOf(shop, ref, "CutsFact")),
    presses: refs(factsOf(shop, ref, "PressesFact")),
    checks: refs(factsOf(shop, ref, "ChecksFact")),
    cautions: factsOf(shop, ref, "CautionFact").flatMap((list) =>
      list.map((each) => each.name),
    ),
    text: factsOf(shop, ref, "DoFact")[0],
  };
});

function isUnread(shop: Shop, ref: string): boolean {
  const standing: readonly FactRule[] = [
    "DoneFact",
    "FoundFact",
    "AfterFact",
    "CutsFact",
    "PressesFact",
  ];
  const named = [
    ...factsOf(shop, ref, "AfterFact"),
    ...factsOf(shop, ref, "CutsFact"),
    ...factsOf(shop, ref, "PressesFact"),
  ].flat();
  return (
    !routeIsRead(shop) ||
    isLoose(shop, ref) ||
    named.some((site) => refOf(shop, site) === undefined) ||
    entriesOf(shop, ref).some(
      (entry) =>
        entry.damaged ||
        entry.facts.some(
          (fact) => fact.value === undefined && standing.includes(fact.rule),
        ),
    )
  );
}

export const orderOf = queryOfShop<Order>("order", (shop) => {
  const route = routeSteps(shop);
  // a crib only keeps steps for the jobs that follow its routes
  if (openingEntry(shop)?.kind !== "job")
    return { steps: [], loops: [], next: [] };
  const own = refsOfKind(shop, "step").filter(
    (ref) => !route.includes(ref) && isJobs(shop, ref),
  );
  const steps = withThoseBefore(
    shop,
    [...route, ...own].map((ref) => stepValue(shop, ref)),
  );
  const done = new Set(
    steps.filter((step) => step.done).map((step) => step.ref),
  );
  const loops = loopsIn(steps);
  const inLoop = new Set(loops.flat());
  const next = steps.filter(
    (step) =>
      !step.done &&
      !step.unread &&
      !inLoop.has(step.ref) &&
      step.after.every((each) => done.has(each)),
  );
  return { steps, loops, next: next.map((step) => step.ref) };
});

/** The steps, and those of a crib that one of them comes after by name. */
function withThoseBefore(shop: Shop, steps: readonly Step[]): readonly Step[] {
  const all = [...steps];
  const seen = new Set(all.map((step) => step.ref));
  // the list grows while it is walked
  for (const step of all) {
    for (const before of step.after) {
      if (seen.has(before)) continue;
      seen.add(before);
      all.push(stepValue(shop, before));
    }
  }
  return all;
}

/** The first file of a shop is the job's own; other files' steps count only where the route names them. */
function isJobs(shop: Shop, ref: string): boolean {
  return entryOf(shop, ref) !== undefined && shop.places.get(ref)?.file === 0;
}

/** Each set of steps that wait for each other, found once, in the order of waiting. */
function loopsIn(steps: readonly Step[]): readonly (readonly string[])[] {
  const byRef = new Map(steps.map((step) => [step.ref, step]));
  const state = new Map<string, "open" | "closed">();
  const loops: string[][] = [];
  for (const { ref: root } of steps) {
    if (state.has(root)) continue;
    // its own stack: a chain of steps may be longer than the engine's
    const path: { readonly ref: string; next: number }[] = [
      { ref: root, next: 0 },
    ];
    state.set(root, "open");
    for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
      const before = byRef.get(top.ref)?.after[top.next++];
      if (before === undefined) {
        state.set(top.ref, "closed");
        path.pop();
      } else if (state.get(before) === "open") {
        loops.push(
          path
            .slice(path.findIndex((each) => each.ref === before))
            .map((each) => each.ref),
        );
      } else if (!state.has(before)) {
        state.set(before, "open");
        path.push({ ref: before, next: 0 });
      }
    }
  }
  return loops;
}

/** Where a step's own entry says that it is done. */
export function doneSpan(entry: Entry): Span | undefined {
  const done = given(entry, "DoneFact");
  return done.state === "given" ? done.span : undefined;
}
