// The reamers that could cut a line, best first, as a table: for the job sheet and for the choice on the measuring sheet.
import { showLength, showRange } from "../core/quantity/show.ts";
import { rankingOf } from "../model/evaluate/window.ts";
import { fitsAsking, toolWords } from "../model/tool-words.ts";
import type { Subject } from "./facts.ts";
import { el, type Markup } from "../markup/html.ts";
import { table } from "./table.ts";

const MOST_TO_BUY = 4;
/** A reamer further off than this, m, is no near miss. */
const NEAR = 0.5e-3;

/** The crib's reamers, then sizes to buy; undefined where nothing can be ranked. */
export function reamersTable(
  { shop, system }: Subject,
  ref: string,
): Markup | undefined {
  const found = rankingOf(shop, ref);
  if (!found.known) return undefined;
  const { demands, crib, toBuy, toGrind } = found.value;
  const near = crib.filter(
    ({ ranked }) => ranked.serves || -NEAR < ranked.margin.metres,
  );
  const tools = [...near, ...toBuy.slice(0, MOST_TO_BUY)].map((choice) => ({
    ...toolWords(shop, demands, choice),
    isOwn: choice.reamer !== undefined,
  }));
  const ground =
    toGrind === undefined
      ? undefined
      : `To have ground: ${showLength(toGrind.size, system)}${
          toGrind.limits === undefined
            ? "; no size keeps all that its cuts spread inside."
            : `; ${showRange(toGrind.limits.low, toGrind.limits.high, system)} does.`
        }`;
  if (tools.length === 0)
    return el(
      "p",
      {},
      `No reamer of the crib and no size to buy serves ${ref}. ${ground ?? ""}`,
    );
  return el(
    "div",
    {},
    table(
      [
        { head: `Reamer for ${ref}`, percent: 16 },
        { head: "Cuts (predicted)" },
        ...fitsAsking(demands).map((fit) => ({ head: `Clearance, ${fit}` })),
        { head: "Margin", percent: 21 },
        { head: "Chance that it suits", percent: 10 },
        { head: "Serves", percent: 11 },
      ],
      tools.map((tool) => [
        `${tool.name}${tool.isOwn ? "" : ", to buy"}${tool.oversizeAssumed ? " *" : ""}`,
        tool.cuts,
        ...tool.clearances,
        tool.margin,
        tool.chance === "" ? "unknown" : tool.chance,
        tool.serves === "no" ? el("b", {}, "no") : tool.serves,
      ]),
      "small short",
    ),
    ground === undefined
      ? undefined
      : el("p", { class: "small below" }, ground),
    tools.some((tool) => tool.oversizeAssumed)
      ? el(
          "p",
          { class: "small below" },
          "* oversize taken as zero, since none is written for this material: a test cut in a scrap bush tells.",
        )
      : undefined,
  );
}
