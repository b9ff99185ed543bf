// The sections of the bench view: what is next, what stands at the caret, each line with its reamers, each fit, each stack.
import { valueIn } from "../model/entry.ts";
import {
  cautionNamed,
  cautionsOfStep,
  LIMIT_OF_RECORD,
} from "../model/cautions.ts";
import { gateOf } from "../model/evaluate/gate.ts";
import {
  boresOfHost,
  fitsOfBore,
  fitsOfJournal,
  namedIn,
} from "../model/evaluate/index-of.ts";
import { orderOf, stepValue, type Order } from "../model/evaluate/order.ts";
import { sharingReason } from "../model/groups.ts";
import type { Result } from "../model/result.ts";
import {
  resultName,
  statusWord,
  VERDICT_WORDS,
} from "../model/result-kinds.ts";
import { resultsOf } from "../model/results.ts";
import { standsAgainst } from "../rules/entry-findings.ts";
import { standCount } from "../rules/order/stands.ts";
import { entryOf, type Shop } from "../model/shop.ts";
import {
  fitPicture,
  linePicture,
  rankingTable,
  type RankedTool,
} from "../pictures/pictures.ts";
import { figure, link, list, paragraph, table } from "./bench-html.ts";
import {
  el,
  NOTHING,
  row,
  sentence,
  type Child,
  type Markup,
} from "../markup/html.ts";
import { kindOf } from "../model/reference.ts";

/** What the next step is, what is in its way, and how not to be hurt by it. */
export function nextSection(shop: Shop): Markup {
  const order = orderOf(shop);
  if (order.steps.length === 0)
    return paragraph(
      "No steps are written. A step says what is done next and what it waits for: ",
      code("step ream"),
      ", and indented under it ",
      code("cuts line NAME"),
      ".",
    );
  const done = order.steps.filter((step) => step.done).length;
  const count = `${String(done)} of ${String(order.steps.length)} steps are done.`;
  if (order.next.length === 0)
    return paragraph(
      done === order.steps.length
        ? "All steps are done."
        : `${count} No step can be done next: ${stuckWords(order)}`,
    );
  return row(
    order.next.map((ref) => stepBlock(shop, ref)),
    paragraph(count),
  );
}

function stuckWords({ loops }: Order): string {
  return 0 < loops.length
    ? "some wait for each other in a ring."
    : "a line that says how they stand can't be read.";
}

function stepBlock(shop: Shop, ref: string): Markup {
  const step = stepValue(shop, ref);
  const { wanting, unread } = gateOf(shop, ref);
  const waits = step.after.filter((each) => !stepValue(shop, each).done);
  const said = step.text === undefined ? NOTHING : paragraph(step.text);
  const stands = step.done ? [] : standsAgainst(shop, ref);
  const inTheWay: Child[] = [
    ...wanting.map(({ ref: wants, text }) =>
      // the sentence begins with the entry's name in most cases
      text.startsWith(`${wants} `)
        ? row(link(wants), sentence(text.slice(wants.length)))
        : row(sentence(text), " (", link(wants), ")"),
    ),
    ...(unread ? ["A line that it hangs on has an error."] : []),
    ...waits.map((each) => row("It waits for ", link(each), ".")),
  ];
  return row(
    el(
      "h3",
      {},
      link(ref),
      step.done
        ? ": done"
        : inTheWay.length === 0
          ? stands.length === 0
            ? ": nothing in the record is in its way"
            : ": look first"
          : step.cuts.length + step.presses.length === 0
            ? ": waits"
            : step.cuts.length === 0
              ? ": waits; don't press yet"
              : ": waits; don't cut yet",
    ),
    said,
    step.failed ? paragraph("It was found failed and is still open.") : NOTHING,
    inTheWay.length === 0 || step.done
      ? NOTHING
      : row(paragraph("In its way:"), list(inTheWay)),
    stands.length === 0
      ? NOTHING
      : row(
          paragraph(`${standCount(stands)}:`),
          list(
            stands.map(({ ref: at, level, code: name, message }) =>
              row(link(at), sentence(`: ${level} ${name}. ${message}`)),
            ),
          ),
        ),
    step.done ? NOTHING : cautions(shop, ref),
  );
}

function cautions(shop: Shop, step: string): Markup {
  const found = cautionsOfStep(shop, step).flatMap(
    (name) => cautionNamed(name) ?? [],
  );
  if (found.length === 0) return NOTHING;
  // their titles always show; the rest is one key away, so that the pictures are not far down
  return el(
    "details",
    { class: "cautions" },
    el(
      "summary",
      {},
      el("strong", {}, "Take care: "),
      `${found.map(({ title }) => title).join(" · ")}.`,
    ),
    list(
      found.map(({ title, text, source }) =>
        row(
          el("strong", {}, `${title}. `),
          text,
          source === "" ? NOTHING : el("small", {}, ` (${source})`),
        ),
      ),
    ),
    el("p", { class: "limit" }, LIMIT_OF_RECORD),
  );
}

/** What the table of a line's reamers says in its own way. */
const TOLD_OF_REAMERS = new Set(["cut-size", "chance"]);

/**
 * The picture of the entry at the caret, or of the fit that it is part of, and all that is worked out of it; of a line, which is drawn on its
 * own, the reamers before all else.
 */
export function caretSection(shop: Shop, ref: string, width: number): Markup {
  const kind = kindOf(ref);
  if (kind === "step") return stepBlock(shop, ref);
  const pictures = caretFits(shop, ref, kind).map((fit) =>
    figure(fitPicture(shop, fit, { theme: "editor", width })),
  );
  const isLine = kind === "line";
  const results = resultsOf(shop, ref).filter(
    (result) => !isLine || !TOLD_OF_REAMERS.has(result.kind),
  );
  return row(
    isLine ? reamerTable(shop, ref) : pictures,
    results.length === 0
      ? pictures.length === 0
        ? paragraph("Nothing is worked out of this entry by itself.")
        : NOTHING
      : resultTable(ref, results),
  );
}

function caretFits(shop: Shop, ref: string, kind: string): readonly string[] {
  if (kind === "fit") return [ref];
  if (kind === "journal") return fitsOfJournal(shop, ref);
  if (kind === "bore") return fitsOfBore(shop, ref);
  if (kind === "bush")
    return boresOfHost(shop, ref).flatMap((bore) => fitsOfBore(shop, bore));
  if (kind === "press") {
    const bush = namedIn(shop, ref)[0];
    return bush === undefined ? [] : caretFits(shop, bush, "bush");
  }
  return [];
}

/** What is unknown for one reason shares a row: the reason is the news. */
function resultTable(ref: string, results: readonly Result[]): Markup {
  const rows = sharingReason(results, ({ status, text }) =>
    status === "unknown" ? text : undefined,
  ).flatMap((group): readonly (readonly string[])[] => {
    const [result] = group;
    return result === undefined
      ? []
      : [
          [
            group.map(nameOf).join(", "),
            // before what it needs: after a list of it the word would seem to be one more of them
            ...(result.status === "unknown"
              ? [["unknown", result.text].filter(Boolean).join(": "), ""]
              : [result.text, statusWord(result)]),
            VERDICT_WORDS[result.verdict],
          ],
        ];
  });
  return table(
    `What is worked out of ${ref}`,
    ["what", "value", "how sure", "verdict"],
    rows,
    "short",
  );
}

function nameOf(result: Result): string {
  const number = result.case === null ? "" : `case ${String(result.case)}`;
  return [resultName(result.kind), result.of ?? "", number]
    .filter((word) => word !== "")
    .join(" ");
}

/** The line in section, and the reamers for it. */
export function linePart(shop: Shop, ref: string, width: number): Markup {
  return row(
    figure(linePicture(shop, ref, { theme: "editor", width })),
    reamerTable(shop, ref),
  );
}

function reamerTable(shop: Shop, line: string): Markup {
  if (valueIn(entryOf(shop, line), "CutFact") !== undefined)
    return paragraph("The line is bored or honed, so no reamer is asked for.");
  const { tools, notes } = rankingTable(shop, line);
  const heading = el("h3", {}, "Which reamer");
  if (tools.length === 0)
    return row(
      heading,
      notes.map((note) => paragraph(note)),
    );
  const [first] = tools;
  const heads = [
    "reamer",
    "cuts, predicted",
    ...(first?.left ?? []).map(({ ref }) =>
      kindOf(ref) === "fit"
        ? `clearance left in ${ref}`
        : `over the lower limit of ${ref}`,
    ),
    "chance that the bores suit",
    "verdict",
  ];
  return row(
    heading,
    table(
      "Best first. Clearances are diametral and predicted.",
      heads,
      tools.map((tool) => toolRow(tool)),
    ),
    notes.map((note) => paragraph(note)),
  );
}

function toolRow(tool: RankedTool): readonly Child[] {
  const marks = [
    ...(tool.oversizeAssumed ? ["*"] : []),
    ...(tool.named ? ["(named by the line)"] : []),
    ...(tool.from === "crib" ? [] : [`(${tool.from})`]),
  ].join(" ");
  return [
    row(
      tool.ref === undefined ? tool.name : link(tool.ref),
      marks === "" ? "" : ` ${marks}`,
    ),
    tool.cuts,
    ...tool.left.map((left) =>
      row(`${left.text}: `, left.isIn ? left.words : el("em", {}, left.words)),
    ),
    tool.chance,
    tool.serves ? tool.verdict : el("strong", {}, tool.verdict),
  ];
}

function code(text: string): Markup {
  return el("code", {}, text);
}
