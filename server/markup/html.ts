// Writes HTML in which nothing that a person typed can be anything but text. It knows nothing of shops, and of no page what it looks
// like.

/** HTML that has been written by this file, or by a picture: safe to put into a page as it is. */
export interface Markup {
  readonly markup: string;
}

/** Text is escaped wherever it stands. Undefined, null and "" leave nothing. */
export type Child =
  Markup | string | number | undefined | null | readonly Child[];

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Elements that have no end tag (HTML Living Standard, 13.1.2, void elements). */
const VOID: ReadonlySet<string> = new Set(["br", "col", "hr", "meta"]);

/** An element. Tags and the names of attributes are the caller's own words, never a record's. */
export function el(
  tag: string,
  attributes: Attributes = {},
  ...children: readonly Child[]
): Markup {
  const written = Object.entries(attributes)
    .flatMap(([name, value]) =>
      value === undefined ? [] : [` ${name}="${escaped(String(value))}"`],
    )
    .join("");
  const start = `<${tag}${written}>`;
  return {
    markup: VOID.has(tag) ? start : `${start}${inside(children)}</${tag}>`,
  };
}

/** Several things in a row, without an element of their own. */
export function row(...children: readonly Child[]): Markup {
  return { markup: inside(children) };
}

export const NOTHING: Markup = row();

/** A drawing that has been written as markup by ourselves: only server/pictures may be its source. */
export function drawn(svg: string): Markup {
  return { markup: svg };
}

export function isEmpty(child: Child): boolean {
  return inside([child]) === "";
}

/** A whole page. `style` is CSS of our own; what a record says gets into it by `cssText` alone. */
export function page(o: {
  readonly title: string;
  readonly generator: string;
  readonly style: string;
  readonly body: Child;
}): string {
  const head = el(
    "head",
    {},
    el("meta", { charset: "utf-8" }),
    el("meta", { name: "generator", content: o.generator }),
    // nothing is fetched and nothing runs, whatever the record says
    el("meta", {
      "http-equiv": "Content-Security-Policy",
      content: "default-src 'none'; style-src 'unsafe-inline'",
    }),
    el("meta", {
      name: "viewport",
      content: "width=device-width, initial-scale=1",
    }),
    el("title", {}, o.title),
    { markup: `<style>\n${o.style}</style>` },
  );
  return `<!DOCTYPE html>\n${el("html", { lang: "en" }, head, "\n", el("body", {}, o.body), "\n").markup}\n`;
}

/** A text as a CSS string, each sign but letters and digits of ASCII as its number, so that no text can end the string or the style. */
export function cssText(text: string): string {
  const signs = Array.from(plain(text), (sign) =>
    /[A-Za-z0-9]/.test(sign)
      ? sign
      : `\\${(sign.codePointAt(0) ?? 0xfffd).toString(16).padStart(6, "0")}`,
  );
  return `"${signs.join("")}"`;
}

/** A sentence of the model, its words in backquotes set off as words of the record. */
export function sentence(text: string): Child {
  return text
    .split(/`([^`]*)`/)
    .map((part, index) => (index % 2 === 0 ? part : el("code", {}, part)));
}

function inside(children: readonly Child[]): string {
  return children
    .map((child): string => {
      if (child === undefined || child === null) return "";
      if (typeof child === "string" || typeof child === "number")
        return escaped(String(child));
      return "markup" in child ? child.markup : inside(child);
    })
    .join("");
}

const NAMED: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** A text as HTML and XML hold it, in element and in attribute. */
export function escaped(text: string): string {
  return plain(text).replace(/[&<>"']/g, (sign) => NAMED[sign] ?? "");
}

/**
 * Signs that HTML or XML does not allow, halves of characters, and those that turn the direction of writing or can't be seen, as the sign for
 * "something stood here": a name must read as what it is. The joiners that some scripts need stay.
 */
function plain(text: string): string {
  return text.replace(
    /(?![\n\t\u{200C}\u{200D}])[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}\p{Noncharacter_Code_Point}]/gu,
    "\u{FFFD}",
  );
}
