// Tables of a sheet: heads that repeat on every page, columns of set widths so that no long word pushes the page wide.
import { el, isEmpty, type Child, type Markup } from "../markup/html.ts";

export interface Column {
  readonly head: Child;
  /** A share of the table's width; columns without one share what is left. */
  readonly percent?: number;
}

/** So many columns can be read on the screen of a telephone. */
const MOST_NARROW = 2;

export function table(
  columns: readonly Column[],
  rows: readonly (readonly Child[])[],
  style = "",
): Markup {
  const whole = el(
    "table",
    style === "" ? {} : { class: style },
    el(
      "colgroup",
      {},
      columns.map(({ percent }) =>
        el("col", {
          style:
            percent === undefined ? undefined : `width: ${String(percent)}%`,
        }),
      ),
    ),
    el(
      "thead",
      {},
      el(
        "tr",
        {},
        columns.map(({ head }) => el("th", { scope: "col" }, head)),
      ),
    ),
    el(
      "tbody",
      {},
      rows.map((cells) =>
        el(
          "tr",
          {},
          cells.map((cell) => el("td", {}, cell)),
        ),
      ),
    ),
  );
  return columns.length <= MOST_NARROW
    ? whole
    : el("div", { class: "wide" }, whole);
}

/** Facts side by side: a label and what it says. */
export function labelled(
  rows: readonly (readonly [label: string, value: Child])[],
  style: string,
): Markup {
  return el(
    "table",
    { class: style },
    el(
      "tbody",
      {},
      rows.map(([label, value]) =>
        el("tr", {}, el("th", { scope: "row" }, label), el("td", {}, value)),
      ),
    ),
  );
}

/** A line of its own inside a cell; nothing where there is nothing. */
export function line(...children: readonly Child[]): Markup | undefined {
  return isEmpty(children) ? undefined : el("div", {}, ...children);
}
