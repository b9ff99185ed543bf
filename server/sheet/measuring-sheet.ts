// The measuring sheet: what to take to the bench and fill in. A table for every journal, hole, bush and bore, with the stations and angles
// to read and what to hold the readings against; then the reamer's choice. It holds no result that would tempt a reader to copy it.
import { showLength, showRange } from "../core/quantity/show.ts";
import { LIMIT_OF_RECORD } from "../model/cautions.ts";
import { allOf, valueIn, type Entry } from "../model/entry.ts";
import { gaugeValue } from "../model/evaluate/gauge.ts";
import { boresOfLine } from "../model/evaluate/index-of.ts";
import type { OpenFile } from "../model/project.ts";
import { kindOf, nameOf } from "../model/reference.ts";
import type { FileCheck } from "../model/result.ts";
import { entryOf, refsOfKind } from "../model/shop.ts";
import type { MemberValue } from "../model/values.ts";
import {
  GENERATOR,
  jobName,
  subjectOf,
  titleOf,
  type SheetFacts,
  type Subject,
} from "./facts.ts";
import { asWritten } from "./gauges.ts";
import { headOfSheet } from "./head.ts";
import { el, page, type Child, type Markup } from "../markup/html.ts";
import { asked, blank, box, inOrOut, penLine } from "./blanks.ts";
import {
  featureTable,
  featureTables,
  limitsBox,
  refsOf,
} from "./measuring-tables.ts";
import { reamersTable } from "./reamers.ts";
import { table } from "./table.ts";
import { styleOf } from "./style.ts";
import { capitalised } from "../model/sentences.ts";

/** A sheet to measure with, as one page of HTML that needs nothing else. */
export function measuringSheet(
  open: OpenFile,
  check: FileCheck,
  facts: SheetFacts,
): string {
  const subject = subjectOf(open, check, facts);
  const body: Child = [
    headOfSheet(subject, "Measuring sheet"),
    howTo(subject),
    gaugesTable(subject),
    ...featureTables(subject),
    ...refsOf(subject, "stack").map((ref) => stackTable(subject, ref)),
    ...refsOf(subject, "line").map((ref) => reamerChoice(subject, ref)),
    ...(["reamer", "pilot"] as const).flatMap((kind) =>
      refsOf(subject, kind).map((ref) => toolTable(subject, ref)),
    ),
    signatures(),
  ];
  return page({
    title: `${titleOf(subject)}: measuring sheet`,
    generator: `${GENERATOR} ${facts.version}`,
    style: styleOf(jobName(subject), `Measuring sheet, ${facts.date}`),
    body: el("main", {}, body),
  });
}

function howTo({ system }: Subject): Markup {
  const unit = system === "inch" ? "inches" : "millimetres";
  return el(
    "section",
    {},
    el("h2", {}, "How to read"),
    el(
      "ul",
      {},
      [
        `Write every digit that the gauge shows, in ${unit}, as it is read: the record adds the gauge's correction and the temperature.`,
        "Clean and deburr first. Let parts and gauges lie side by side until they are equally warm, and write that temperature.",
        "Near and far: as close to the ends as the edge, the fillet and the chamfer allow. Mark 0° on the part, at the joint or the oil hole.",
        "Two opposite points can't see a three-lobed form. Turn a journal once in a vee with an indicator opposite, or a gauge of three contacts in a bore: write how far the pointer swings from least to most, the vee's angle, and how often it rises (lobes).",
        "A reading that is off by much more than its neighbours: wipe, read again, and write both.",
        `In the record each row is one line: read near V V V with GAUGE at ${system === "inch" ? "68 F" : "20 C"} by WHO on DATE; a swing: swing near V on vee 60 deg, 3 lobes with GAUGE by WHO on DATE, or on three points.`,
      ].map((text) => el("li", {}, text)),
    ),
    penLine(asked("Parts measured by"), asked("on"), asked("room at")),
  );
}

function gaugesTable({ shop }: Subject): Markup | undefined {
  const refs = refsOfKind(shop, "gauge");
  const rows = [
    ...refs.map((ref): readonly Child[] => {
      const gauge = gaugeValue(shop, ref);
      return [
        box(),
        [
          el("b", {}, nameOf(ref)),
          gauge?.kind === undefined ? "" : `, ${gauge.kind}`,
        ],
        asWritten(shop, ref, "ResolutionFact") ?? "",
        gauge?.due ?? "",
        asWritten(shop, ref, "SetFact")?.replace(/^(?:on|with) /, "") ?? "zero",
        "",
        "",
      ];
    }),
    [box(), "", "", "", "", "", ""],
  ];
  return el(
    "section",
    { class: "keep" },
    el("h2", {}, "Gauges"),
    table(
      [
        { head: "Used", percent: 7 },
        { head: "Gauge" },
        { head: "Resolution", percent: 13 },
        { head: "Due", percent: 13 },
        { head: "Set on", percent: 15 },
        { head: "Reads on it before", percent: 14 },
        { head: "and after", percent: 14 },
      ],
      rows,
      "fill",
    ),
  );
}

function stackTable(subject: Subject, ref: string): Markup {
  const { shop, system } = subject;
  const entry = entryOf(shop, ref);
  const want = valueIn(entry, "WantFact");
  const shims = valueIn(entry, "ShimsFact");
  const rows = membersOf(entry).map(
    ({ sign, name, range }): readonly Child[] => [
      [`${sign} `, el("b", {}, name)],
      showRange(range.low, range.high, system, range.step),
      "",
      "",
      "",
      inOrOut(),
    ],
  );
  return el(
    "section",
    { class: "keep" },
    el("h3", {}, capitalised(ref)),
    limitsBox(
      want === undefined
        ? []
        : [
            {
              label: "End float wanted",
              range: showRange(want.low, want.high, system, want.step),
              note: "",
            },
          ],
    ),
    table(
      [
        { head: "Member" },
        { head: "Limits", percent: 23 },
        { head: "Read", percent: 14 },
        { head: "Read again", percent: 14 },
        { head: "Gauge", percent: 14 },
        { head: "Verdict", percent: 14 },
      ],
      rows,
      "fill",
    ),
    penLine(asked("Parts at"), asked("by"), asked("on")),
    penLine(
      asked("End float felt:"),
      shims === undefined
        ? ""
        : `Shims to choose from: ${shims.map((each) => showLength(each, system)).join(", ")}.`,
      shims === undefined ? "" : asked("Fitted:", true),
    ),
  );
}

/** The members of a stack in the order that they are written. */
function membersOf(
  entry: Entry | undefined,
): readonly (MemberValue & { readonly sign: "plus" | "minus" })[] {
  if (entry === undefined) return [];
  return [...allOf(entry, "PlusFact"), ...allOf(entry, "MinusFact")]
    .sort((a, b) => a.span.line - b.span.line)
    .flatMap(({ value, rule }) =>
      value === undefined
        ? []
        : [{ ...value, sign: rule === "PlusFact" ? "plus" : "minus" }],
    );
}

/** The choice of the reamer, to be made at the bench and signed. */
function reamerChoice(subject: Subject, ref: string): Markup {
  const { shop, system } = subject;
  const entry = entryOf(shop, ref);
  const cut = valueIn(entry, "CutFact");
  return el(
    "section",
    {},
    el("h2", {}, `The cut of ${ref}`),
    el(
      "p",
      {},
      `Bores in the order of cutting: ${boresOfLine(shop, ref).join(", ")}.`,
    ),
    cut === undefined
      ? reamersTable(subject, ref)
      : el(
          "p",
          {},
          `Cut to ${showRange(cut.low, cut.high, system, cut.step)}.`,
        ),
    el(
      "div",
      { class: "keep" },
      penLine(asked("Reamer taken:", true), asked("measured with")),
      penLine(asked("It measures"), blank(), blank(), asked("tool at")),
      penLine(
        asked("Test cut in a scrap bush reads"),
        asked("so it cuts over by"),
        asked("part at"),
      ),
      penLine(asked("Chosen by", true), asked("on"), asked("checked by", true)),
    ),
  );
}

/** A reamer or a pilot of a crib, read at three angles of its front, middle and back. */
function toolTable(subject: Subject, ref: string): Markup {
  const { shop, system } = subject;
  const entry = entryOf(shop, ref);
  const size = valueIn(entry, "SizeFact")?.range ?? valueIn(entry, "OdFact");
  return featureTable(
    subject,
    ref,
    size === undefined
      ? []
      : [
          {
            label: kindOf(ref) === "reamer" ? "Size" : "Od",
            range: showRange(size.low, size.high, system, size.step),
            note: "as written",
          },
        ],
    [""],
  );
}

function signatures(): Markup {
  return el(
    "footer",
    { class: "end" },
    penLine(asked("Readings entered in the record by", true), asked("on")),
    el("p", {}, LIMIT_OF_RECORD),
  );
}
