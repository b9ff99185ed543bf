// The pieces of HTML that the bench view is made of. Every text is escaped here, and nothing else makes HTML.
import { escaped } from "../pictures/pictures.ts";

/** A piece of HTML that is already escaped. */
export interface Html {
  readonly html: string;
}

export type HtmlContent = Html | string | readonly Html[];

function inner(content: HtmlContent): string {
  if (typeof content === "string") return escaped(content);
  return "html" in content
    ? content.html
    : content.map((each) => each.html).join("");
}

export function tag(
  name: string,
  attributes: Readonly<Record<string, string | undefined>>,
  ...content: readonly HtmlContent[]
): Html {
  const written = Object.entries(attributes).flatMap(([key, value]) =>
    value === undefined ? [] : [` ${key}="${escaped(value)}"`],
  );
  return {
    html: `<${name}${written.join("")}>${content.map(inner).join("")}</${name}>`,
  };
}

export function joined(...content: readonly HtmlContent[]): Html {
  return { html: content.map(inner).join("") };
}

export const NO_HTML: Html = { html: "" };

/** A picture's SVG, which the pictures have escaped. */
export function figure(svg: string): Html {
  return { html: `<div class="picture">${svg}</div>` };
}

/** An entry's name that leads to its line; a button, so that the keyboard reaches it and Enter takes it. */
export function link(ref: string, text = ref): Html {
  return tag(
    "button",
    { type: "button", class: "ref", "data-ref": ref, title: `Go to ${ref}` },
    text,
  );
}

export function paragraph(...content: readonly HtmlContent[]): Html {
  return tag("p", {}, ...content);
}

export function list(items: readonly HtmlContent[]): Html {
  return items.length === 0
    ? NO_HTML
    : tag(
        "ul",
        {},
        items.map((item) => tag("li", {}, item)),
      );
}

/** A table whose cells carry the name of their column, for a narrow page that stacks them. */
export function table(
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly HtmlContent[])[],
  look?: "short",
): Html {
  return tag(
    "table",
    { class: look },
    tag("caption", {}, caption),
    tag(
      "thead",
      {},
      tag(
        "tr",
        {},
        heads.map((head) => tag("th", { scope: "col" }, head)),
      ),
    ),
    tag(
      "tbody",
      {},
      rows.map((row) =>
        tag(
          "tr",
          {},
          row.map((cell, index) =>
            index === 0
              ? tag("th", { scope: "row" }, cell)
              : tag("td", { "data-head": heads[index] }, cell),
          ),
        ),
      ),
    ),
  );
}
