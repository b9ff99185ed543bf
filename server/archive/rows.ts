// What the archive keeps of one record, as rows of its tables: from the record as it is opened and what a check says of it. It evaluates
// nothing anew, reads no file and knows no engine. Readings and references are rows-of-entries.ts's.
import type { Dimension } from "../core/quantity/units.ts";
import { valueIn, type Entry } from "../model/entry.ts";
import { concessionOf } from "../model/evaluate/concessions.ts";
import { gaugeValue } from "../model/evaluate/gauge.ts";
import { orderOf } from "../model/evaluate/order.ts";
import type { OpenFile } from "../model/project.ts";
import type { FileCheck, Finding, Level } from "../model/result.ts";
import {
  openingEntry,
  refOf,
  type Shop,
  isFirstOfName,
} from "../model/shop.ts";
import type { AnyQuantity } from "../model/values.ts";
import { figuresOf } from "../rules/figures.ts";
import {
  entryRows,
  linkRows,
  readingRows,
  swingRows,
  type Naming,
} from "./rows-of-entries.ts";
import type { Row, Rows, Value } from "./schema.ts";

/** A file that a record rests on; `content` is null where it was not there or could not be read. */
export interface UsedFile {
  readonly name: string;
  readonly content: string | null;
  /** Of the names of the records in its folder; null where it was there. */
  readonly beside: string | null;
}

export interface RecordFacts {
  /** The name that the archive has for the file. */
  readonly name: string;
  /** SHA-256 of its bytes. */
  readonly content: string;
  readonly uses: readonly UsedFile[];
  /** Version of the tool. */
  readonly version: string;
}

/**
 * All rows of one record.
 * @param check findings in the order and with the levels that a report shows
 * @param naming what the archive calls a file, by its path
 */
export function rowsOf(
  open: OpenFile,
  check: FileCheck,
  facts: RecordFacts,
  naming: Naming,
): Rows {
  const { name } = facts;
  const { shop } = open;
  const own = countingEntries(open);
  return {
    jobs: [jobRow(open, check, facts)],
    uses: facts.uses.map((used) => [
      name,
      used.name,
      used.content,
      used.beside,
    ]),
    entries: entryRows(open, name),
    links: own.flatMap(({ entry }) => linkRows(shop, entry, name, naming)),
    readings: own.flatMap(({ entry, start }) =>
      readingRows(shop, entry, start, name, naming),
    ),
    swings: own.flatMap(({ entry, start }) =>
      swingRows(shop, entry, start, name, naming),
    ),
    ...resultRows(check, name),
    findings: check.findings.map((finding, index) =>
      findingRow(finding, index, name),
    ),
    steps: stepRows(shop, name),
    concessions: own.flatMap(({ entry }) =>
      entry.kind === "concession" ? [concessionRow(shop, entry, name)] : [],
    ),
    gauges: own.flatMap(({ entry }) =>
      entry.kind === "gauge" ? [gaugeRow(shop, entry, name)] : [],
    ),
  };
}

/** The year that a record is kept under: 0 where it says no day. */
export function yearOf(open: OpenFile): number {
  const opened = valueIn(openingOf(open), "OpenedFact")?.date;
  return opened === undefined ? 0 : Number(opened.slice(0, 4));
}

/** The entries that have results, with their first line, from 0. */
function countingEntries({ file, shop }: OpenFile): readonly {
  readonly entry: Entry;
  readonly start: number;
}[] {
  return file.entries.flatMap((entry, index) =>
    isFirstOfName(shop, entry.ref, index)
      ? [{ entry, start: file.lines.starts[index] ?? 0 }]
      : [],
  );
}

/** The job or shop of the file itself. */
function openingOf({ file, shop }: OpenFile): Entry | undefined {
  const opening = openingEntry(shop);
  return opening !== undefined && file.entries.includes(opening)
    ? opening
    : undefined;
}

function jobRow(open: OpenFile, check: FileCheck, facts: RecordFacts): Row {
  const opening = openingOf(open);
  const opened = valueIn(opening, "OpenedFact");
  const follow = valueIn(opening, "FollowFact");
  const count = (level: Level): number =>
    check.findings.filter(
      (finding) => finding.accepted === null && finding.level === level,
    ).length;
  return [
    facts.name,
    opening?.kind ?? null,
    opening?.name ?? null,
    valueIn(opening, "TitleFact") ?? null,
    valueIn(opening, "UnitsFact") ?? null,
    opened?.date ?? null,
    opened?.who ?? null,
    refOf(open.shop, follow) ?? null,
    count("error"),
    count("warning"),
    count("information"),
    count("hint"),
    check.findings.filter((finding) => finding.accepted !== null).length,
    facts.content,
    facts.version,
  ];
}

function resultRows(
  { results }: FileCheck,
  name: string,
): Pick<Rows, "results" | "workings" | "needs"> {
  const numbered = results.map((result, index) => ({
    result,
    number: index + 1,
  }));
  return {
    results: numbered.map(({ result, number }) => [
      name,
      number,
      result.entry,
      result.kind,
      result.of,
      result.case,
      result.low,
      result.nominal,
      result.high,
      result.unit,
      result.status,
      result.verdict,
      result.text,
    ]),
    workings: numbered.flatMap(({ result, number }) =>
      result.working.map(({ formula, with: numbers, source }, index) => [
        name,
        number,
        index + 1,
        formula,
        numbers,
        source,
      ]),
    ),
    needs: numbered.flatMap(({ result, number }) =>
      result.needs.map(({ ref, fact, text }, index) => [
        name,
        number,
        index + 1,
        ref,
        fact,
        text,
      ]),
    ),
  };
}

function findingRow(finding: Finding, index: number, name: string): Row {
  const { line, start, end } = finding.place;
  return [
    name,
    index + 1,
    finding.code,
    finding.level,
    line + 1,
    start + 1,
    line + 1,
    end + 1,
    finding.message,
    finding.entry,
    finding.accepted !== null,
    finding.accepted,
  ];
}

function stepRows(shop: Shop, name: string): readonly Row[] {
  const { steps, next } = orderOf(shop);
  return steps.map((step, index) => [
    name,
    index + 1,
    step.ref,
    step.text ?? null,
    step.done,
    step.date ?? null,
    step.by ?? null,
    step.failed,
    step.found ?? null,
    next.includes(step.ref),
  ]);
}

function concessionRow(shop: Shop, entry: Entry, name: string): Row {
  const allows = valueIn(entry, "AllowsFact");
  const why = valueIn(entry, "WhyFact");
  const concession = concessionOf(shop, entry.ref);
  const [bound, unit] = boundOf(valueIn(entry, "UpToFact"), allows?.code ?? "");
  return [
    name,
    entry.ref,
    entry.name ?? "",
    allows?.code ?? null,
    concession?.on ?? null,
    bound,
    unit,
    why?.text ?? null,
    why?.signature.who ?? null,
    why?.signature.date ?? null,
  ];
}

const SI: Readonly<Record<Dimension, string>> = {
  length: "m",
  area: "m2",
  temperature: "degC",
  angle: "rad",
  force: "N",
  torque: "N.m",
  pressure: "Pa",
  rotation: "1/s",
  frequency: "1/s",
  speed: "m/s",
  viscosity: "m2/s",
  "dynamic-viscosity": "Pa.s",
  expansion: "1/K",
  density: "kg/m3",
  pv: "Pa.m/s",
  time: "s",
  ratio: "1",
};

/** A bare number is a length where the finding takes one, else a plain factor where it takes a ratio. */
function boundOf(
  bound: AnyQuantity | undefined,
  code: string,
): readonly [Value, Value] {
  if (bound === undefined) return [null, null];
  if (bound.dimension !== undefined) return [bound.value, SI[bound.dimension]];
  const takes = figuresOf(code).value;
  if (takes.includes("length") && bound.asLength !== undefined)
    return [bound.asLength, "m"];
  return takes.includes("ratio") ? [bound.value, "1"] : [null, null];
}

function gaugeRow(shop: Shop, entry: Entry, name: string): Row {
  const gauge = gaugeValue(shop, entry.ref);
  return [
    name,
    entry.ref,
    gauge?.kind ?? null,
    gauge?.resolution ?? null,
    gauge?.uncertainty ?? null,
    gauge?.mpe ?? null,
    gauge?.adds ?? null,
    gauge?.calibrated?.date ?? null,
    gauge?.due ?? null,
  ];
}
