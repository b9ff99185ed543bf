// The pieces that the bench view is made of, as HTML. How HTML is written, and that no text is taken for it, is markup/html.ts's.
import {
  drawn,
  el,
  NOTHING,
  sentence,
  type Child,
  type Markup,
} from "../markup/html.ts";

/** A picture's SVG, which the pictures have escaped. */
export function figure(svg: string): Markup {
  return el("div", { class: "picture" }, drawn(svg));
}

/** An entry's name that leads to its line; a button, so that the keyboard reaches it and Enter takes it. */
export function link(ref: string, text = ref): Markup {
  return el(
    "button",
    { type: "button", class: "ref", "data-ref": ref, title: `Go to ${ref}` },
    text,
  );
}

export function paragraph(...content: readonly Child[]): Markup {
  return el("p", {}, ...content.map(said));
}

/** Words of the record stand as such in a sentence, as on a sheet. */
function said(child: Child): Child {
  return typeof child === "string" ? sentence(child) : child;
}

export function list(items: readonly Child[]): Markup {
  return items.length === 0
    ? NOTHING
    : el(
        "ul",
        {},
        items.map((item) => el("li", {}, said(item))),
      );
}

/** A table whose cells carry the name of their column, for a narrow page that stacks them. */
export function table(
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly Child[])[],
  look?: "short",
): Markup {
  return el(
    "table",
    { class: look },
    el("caption", {}, caption),
    el(
      "thead",
      {},
      el(
        "tr",
        {},
        heads.map((head) => el("th", { scope: "col" }, head)),
      ),
    ),
    el(
      "tbody",
      {},
      rows.map((row) =>
        el(
          "tr",
          {},
          row.map((cell, index) =>
            index === 0
              ? el("th", { scope: "row" }, cell)
              : el("td", { "data-head": heads[index] }, said(cell)),
          ),
        ),
      ),
    ),
  );
}
