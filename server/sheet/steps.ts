// The steps of a job in order, each with a box to tick, what blocks it, what it checks against, its cautions and a line to sign; and the
// cautions in full. What a step waits for is the model's.
import { showRange } from "../core/quantity/show.ts";
import { valueIn } from "../model/entry.ts";
import {
  CAUTIONS,
  cautionNamed,
  cautionsOfStep,
  LIMIT_OF_RECORD,
} from "../model/cautions.ts";
import { orderOf, type Step } from "../model/evaluate/order.ts";
import { wanted } from "../model/evaluate/wanted.ts";
import { nameOf } from "../model/reference.ts";
import { resultsOf } from "../model/results.ts";
import { entriesOf, entryOf, refOf } from "../model/shop.ts";
import type { Subject } from "./facts.ts";
import { signed } from "./head.ts";
import { standsAgainst } from "../rules/entry-findings.ts";
import { standWords } from "../rules/order/stands.ts";
import { type Child, el, type Markup, sentence } from "../markup/html.ts";
import { asked } from "./blanks.ts";
import { nameOfResult } from "./results.ts";
import { line, table } from "./table.ts";

export function stepsSection(subject: Subject): Markup | undefined {
  const { steps } = orderOf(subject.shop);
  if (steps.length === 0) return undefined;
  return el(
    "section",
    {},
    el("h2", {}, "Steps"),
    table(
      [
        { head: "", percent: 5 },
        { head: "Step" },
        { head: "How it stands", percent: 21 },
        { head: "Done by, and the day", percent: 20 },
      ],
      steps.map((step, index) => stepRow(subject, step, index + 1)),
    ),
    cautionList(subject, steps),
  );
}

function stepRow(
  subject: Subject,
  step: Step,
  number: number,
): readonly Child[] {
  const { shop } = subject;
  const ready = resultsOf(shop, step.ref).find((each) => each.kind === "ready");
  const cautions = cautionsOfStep(shop, step.ref).flatMap(
    (name) => cautionNamed(name)?.title ?? [],
  );
  const stands = step.done ? "" : standWords(standsAgainst(shop, step.ref));
  return [
    el("span", { class: "box" }, step.done ? "x" : ""),
    [
      el("b", {}, `${String(number)} ${nameOf(step.ref)}`),
      line(step.text),
      workOf(subject, step),
      stands === ""
        ? undefined
        : line(el("b", {}, "Look first: "), `${stands}.`),
      cautions.length === 0
        ? undefined
        : line(el("b", {}, "Caution: "), `${cautions.join("; ")}.`),
    ],
    standsText(subject, step, ready?.text),
    signCell(subject, step),
  ];
}

/** What it cuts, presses and checks, with what is asked of each. */
function workOf({ shop, system }: Subject, step: Step): Child {
  const want = (ref: string): string => {
    const band = wanted(shop, ref);
    return band?.known === true
      ? `, wanted ${showRange(band.value.low, band.value.high, system, band.value.step)}`
      : "";
  };
  const cuts = step.cuts.map((ref) => {
    const entry = entryOf(shop, ref);
    const reamer = refOf(shop, valueIn(entry, "ReamFact"));
    const cut = valueIn(entry, "CutFact");
    if (reamer !== undefined) return `${ref} with ${reamer}`;
    return cut === undefined
      ? `${ref}, the tool not chosen`
      : `${ref} to ${showRange(cut.low, cut.high, system, cut.step)}`;
  });
  const presses = step.presses.map((ref) => {
    const force = resultsOf(shop, ref).find(
      (each) => each.kind === "press-force" && each.status !== "unknown",
    );
    return `${ref}${want(ref)}${force === undefined ? "" : `, force ${force.text} (${force.status})`}`;
  });
  return [
    line(said("Cuts", cuts)),
    line(said("Presses", presses)),
    ...step.checks.map((ref) => {
      const found = resultsOf(shop, ref).find(
        (each) => each.status !== "unknown" && each.of === null,
      );
      return line(
        `Checks ${ref}${want(ref)}`,
        found === undefined
          ? ""
          : `; ${nameOfResult(found)} ${found.text} ${found.status}`,
        el("div", { class: "pen" }, asked("Found")),
      );
    }),
  ];
}

function said(verb: string, what: readonly string[]): string {
  return what.length === 0 ? "" : `${verb} ${what.join("; ")}.`;
}

function standsText(
  { shop }: Subject,
  step: Step,
  text: string | undefined,
): Child {
  const found = entriesOf(shop, step.ref)
    .map((entry) => valueIn(entry, "FoundFact"))
    .find((each) => each !== undefined);
  const looked =
    found === undefined
      ? undefined
      : `found ${found.outcome}${found.text === undefined ? "" : `: ${found.text}`}`;
  const after = step.after.map(nameOf).join(", ");
  return [
    line(step.done ? "done" : el("b", {}, sentence(text ?? "unknown"))),
    line(looked ?? ""),
    step.done || after === "" ? undefined : line(`after ${after}`),
  ];
}

/** Who signed the record for it, or a line to sign on. */
function signCell({ shop }: Subject, step: Step): Child {
  const done = entriesOf(shop, step.ref)
    .map((entry) => valueIn(entry, "DoneFact"))
    .find((each) => each !== undefined);
  const who = signed(done?.date, done?.who);
  return step.done && who !== ""
    ? who
    : ["by", "on"].map((word) => el("div", { class: "pen" }, asked(word)));
}

/** Every caution that a step names, once, in full, in the order of the list. */
function cautionList(
  { shop }: Subject,
  steps: readonly Step[],
): Markup | undefined {
  const names = new Set(steps.flatMap(({ ref }) => cautionsOfStep(shop, ref)));
  if (names.size === 0) return undefined;
  return el(
    "section",
    {},
    el("h3", {}, "The cautions in full"),
    el("p", { class: "heads" }, el("b", {}, LIMIT_OF_RECORD)),
    el(
      "div",
      { class: "columns cautions" },
      CAUTIONS.filter(({ name }) => names.has(name)).map(
        ({ title, text, source }) =>
          el(
            "div",
            {},
            el("b", {}, `${title}. `),
            text,
            source === "" ? "" : ` (${source})`,
          ),
      ),
    ),
  );
}
