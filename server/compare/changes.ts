// What changed in the engineering between two states of a record: results, the reamer of a line, steps, concessions, findings. By entry and
// not by line: a record that was only laid out anew, or moved to the other unit, has not changed. It reads no file and knows no history.
import { isEmpty } from "../../grammar/lines.ts";
import { metresToTenths } from "../core/quantity/exact.ts";
import { showLength, type System } from "../core/quantity/show.ts";
import { settings } from "../model/evaluate/settings.ts";
import type { OpenFile } from "../model/project.ts";
import type { Finding, Result, Verdict } from "../model/result.ts";
import { findingsIn } from "../rules/check.ts";
import { nameOf } from "../model/reference.ts";
import { renamedBetween, type Renamed } from "./renamed.ts";
import { itemsOf, keyOf, type Item, type Standing } from "./items.ts";

export type Tendency = "worse" | "better" | "neither";

export interface Change {
  /** Full reference, e.g. "fit front". */
  readonly entry: string;
  /** A kind of result, or "entry", "name", "reamer", "step", "concession". */
  readonly what: string;
  readonly of: string | null;
  readonly case: number | null;
  /** Null where it was not there. */
  readonly before: Standing | null;
  readonly after: Standing | null;
  /** How far the nominal moved, e.g. "+0.0002 in"; "" where that says nothing. */
  readonly moved: string;
  readonly tendency: Tendency;
}

/** A finding that came or went. */
export type FindingChange = Pick<
  Finding,
  "code" | "level" | "entry" | "message" | "accepted"
> & { readonly tendency: Tendency };

export interface RecordChanges {
  readonly changes: readonly Change[];
  readonly come: readonly FindingChange[];
  readonly gone: readonly FindingChange[];
  /** It held entries and is there, but holds none any more: it was emptied by a slip, more likely than on purpose. */
  readonly isEmptied: boolean;
  /** How many of all these are worse. */
  readonly worse: number;
}

/** Compares two states of one record; undefined stands for a state in which it was not there. */
export function compareRecords(
  before: OpenFile | undefined,
  after: OpenFile | undefined,
): RecordChanges {
  const renamed = renamedBetween(before, after);
  const called = (ref: string): string => renamed.get(ref) ?? ref;
  const one = before === undefined ? [] : itemsOf(before, called);
  const two = after === undefined ? [] : itemsOf(after, (ref) => ref);
  const system = systemOf(after ?? before);
  const old = new Map(one.map((item) => [keyOf(item), item]));
  const now = new Map(two.map((item) => [keyOf(item), item]));
  const isEmptied =
    after !== undefined &&
    isEmpty(after.file.lines) &&
    0 < namesIn(before).size;
  const entries = [
    ...[...renamed].map(([from, to]) => renamedChange(from, to)),
    ...changedEntries(before, after, renamed, isEmptied),
    ...two.flatMap((item) => changeOf(old.get(keyOf(item)), item, system)),
    ...one.flatMap((item) =>
      now.has(keyOf(item)) ? [] : changeOf(item, undefined, system),
    ),
  ];
  const changes = inOrder(withoutThoseOf(entries), before, after);
  const found =
    before === undefined
      ? []
      : findingsIn(before).map((finding) => calledAnew(finding, called));
  const finds = after === undefined ? [] : findingsIn(after);
  const come = beyond(finds, found).map((each) => findingChange(each, true));
  const gone = beyond(found, finds).map((each) => findingChange(each, false));
  return {
    changes,
    come,
    gone,
    isEmptied,
    worse: [...changes, ...come, ...gone].filter(
      ({ tendency }) => tendency === "worse",
    ).length,
  };
}

function changeOf(
  before: Item | undefined,
  after: Item | undefined,
  system: System,
): readonly Change[] {
  const item = after ?? before;
  if (item === undefined || isSame(before, after)) return [];
  const { entry, what, of, case: number } = item;
  return [
    {
      entry,
      what,
      of,
      case: number,
      before: before?.standing ?? null,
      after: after?.standing ?? null,
      moved: movedBy(before?.result, after?.result, system),
      tendency: tendencyOf(before, after),
    },
  ];
}

function isSame(before: Item | undefined, after: Item | undefined): boolean {
  if (before === undefined || after === undefined) return false;
  const { standing: one, result: first } = before;
  const { standing: two, result: second } = after;
  if (one.status !== two.status || one.verdict !== two.verdict) return false;
  // what is unknown on both sides is no change, whatever it waits for
  if (one.status === "unknown") return true;
  // no more digits than are known: what reads alike is alike
  if (one.text === two.text) return true;
  if (first === undefined || second === undefined) return false;
  return (["low", "nominal", "high"] as const).every((end) =>
    sameNumber(first[end], second[end], second.unit),
  );
}

function sameNumber(
  one: number | null,
  two: number | null,
  unit: string,
): boolean {
  if (one === null || two === null) return one === two;
  return unit === "m"
    ? metresToTenths(one) === metresToTenths(two)
    : Math.abs(one - two) <= 1e-9 * Math.max(Math.abs(one), Math.abs(two));
}

/** Lengths only: of other numbers both texts say enough. To no more digits than the later text has; "" where they show no move. */
function movedBy(
  before: Result | undefined,
  after: Result | undefined,
  system: System,
): string {
  const from = before?.nominal ?? null;
  const to = after?.nominal ?? null;
  if (from === null || to === null || after?.unit !== "m") return "";
  const by = to - from;
  const shown = showLength(Math.abs(by), system, after.step);
  return /[1-9]/u.test(shown) ? `${by < 0 ? "−" : "+"}${shown}` : "";
}

const RANKS: Readonly<Record<Verdict, number | undefined>> = {
  in: 0,
  unsure: 1,
  out: 2,
  none: undefined,
};

function tendencyOf(
  before: Item | undefined,
  after: Item | undefined,
): Tendency {
  if (after === undefined) return "neither";
  const one =
    before?.rank ??
    (before === undefined ? undefined : RANKS[before.standing.verdict]);
  const two = after.rank ?? RANKS[after.standing.verdict];
  if (two === undefined)
    return one === 0 && after.standing.status === "unknown"
      ? "worse"
      : "neither";
  // what had no verdict is worse only once it is known to be out; a step that was not there and is open is new work
  const from = one ?? Math.min(two, 1);
  if (two === from) return "neither";
  return from < two ? "worse" : "better";
}

/** It stands under its new name. */
function renamedChange(from: string, to: string): Change {
  const standing = (text: string): Standing => ({
    text,
    status: "measured",
    verdict: "none",
  });
  return {
    entry: to,
    what: "name",
    of: null,
    case: null,
    before: standing(from),
    after: standing(to),
    moved: "",
    tendency: "neither",
  };
}

/** A finding as the later names have it, so that it is known again. */
function calledAnew(
  finding: Finding,
  called: (ref: string) => string,
): Finding {
  const { entry, accepted } = finding;
  return {
    ...finding,
    entry: entry === null ? null : called(entry),
    accepted:
      accepted === null ? null : nameOf(called(`concession ${accepted}`)),
  };
}

/** Entries that came or went, by name. */
function changedEntries(
  before: OpenFile | undefined,
  after: OpenFile | undefined,
  renamed: Renamed,
  isEmptied: boolean,
): readonly Change[] {
  const old = new Set(
    [...namesIn(before)].map((ref) => renamed.get(ref) ?? ref),
  );
  const now = namesIn(after);
  const here: Standing = { text: "there", status: "measured", verdict: "none" };
  const change = (entry: string, isNew: boolean): Change => ({
    entry,
    what: "entry",
    of: null,
    case: null,
    before: isNew ? null : here,
    after: isNew ? here : null,
    moved: "",
    tendency: isEmptied ? "worse" : "neither",
  });
  return [
    ...[...now].filter((ref) => !old.has(ref)).map((ref) => change(ref, true)),
    ...[...old].filter((ref) => !now.has(ref)).map((ref) => change(ref, false)),
  ];
}

function namesIn(open: OpenFile | undefined): ReadonlySet<string> {
  return new Set(
    open?.file.entries.flatMap(({ ref }) => (ref === "" ? [] : [ref])) ?? [],
  );
}

/** Of an entry that went, only that it went. */
function withoutThoseOf(changes: readonly Change[]): readonly Change[] {
  const went = new Set(
    changes
      .filter(({ what, after }) => what === "entry" && after === null)
      .map(({ entry }) => entry),
  );
  return changes.filter(
    ({ entry, what }) => what === "entry" || !went.has(entry),
  );
}

/** In the order of the later record, what is gone last. */
function inOrder(
  changes: readonly Change[],
  before: OpenFile | undefined,
  after: OpenFile | undefined,
): readonly Change[] {
  const places = new Map<string, number>();
  for (const ref of [...namesIn(after), ...namesIn(before)])
    if (!places.has(ref)) places.set(ref, places.size);
  const place = ({ entry }: Change): number => places.get(entry) ?? places.size;
  return [...changes].sort((one, two) => place(one) - place(two));
}

/** The findings of a list that have no partner of the same code, entry and acceptance in the other. */
function beyond(
  findings: readonly Finding[],
  others: readonly Finding[],
): readonly Finding[] {
  const left = new Map<string, number>();
  for (const other of others)
    left.set(likeness(other), (left.get(likeness(other)) ?? 0) + 1);
  return findings.filter((finding) => {
    const count = left.get(likeness(finding)) ?? 0;
    left.set(likeness(finding), count - 1);
    return count <= 0;
  });
}

function likeness({ code, level, entry, accepted }: Finding): string {
  return JSON.stringify([code, level, entry, accepted]);
}

function findingChange(finding: Finding, isNew: boolean): FindingChange {
  const { code, level, entry, message, accepted } = finding;
  const isFault = level === "error" || level === "warning";
  const tendency = !isFault ? "neither" : isNew ? "worse" : "better";
  return { code, level, entry, message, accepted, tendency };
}

function systemOf(open: OpenFile | undefined): System {
  return open === undefined ? "mm" : settings(open.shop).system;
}
