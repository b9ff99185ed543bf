// Reads a sheet as a browser would, by a parser of its own (parse5, the WHATWG's algorithm), so that the tests hold the sheet against
// something that knows HTML better than we do.
import { parse, type DefaultTreeAdapterTypes, type ParserError } from "parse5";

type Node = DefaultTreeAdapterTypes.Node;
type Element = DefaultTreeAdapterTypes.Element;

export interface ReadPage {
  /** What the standard calls parse errors: a page of ours has none. */
  readonly errors: readonly string[];
  readonly elements: readonly Element[];
  /** All that a person reads, blanks run together. */
  readonly text: string;
}

export function readPage(html: string): ReadPage {
  const errors: ParserError[] = [];
  const document = parse(html, {
    sourceCodeLocationInfo: true,
    onParseError: (error) => errors.push(error),
  });
  const elements: Element[] = [];
  const texts: string[] = [];
  const walk = (node: Node): void => {
    if ("tagName" in node) {
      elements.push(node);
      if (node.tagName === "style") return;
    }
    if ("value" in node) texts.push(node.value);
    else if ("childNodes" in node) {
      node.childNodes.forEach(walk);
      // what stands in one element is a word apart from what stands in the next
      texts.push(" ");
    }
  };
  walk(document);
  return {
    errors: errors.map(
      ({ code, startLine, startCol }) =>
        `${code} at ${String(startLine)}:${String(startCol)}`,
    ),
    elements,
    text: oneLine(texts.join("")),
  };
}

export function oneLine(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}

/** A text without any blank: for what a sheet may break into elements, such as a sentence with words of the record in it. */
export function squeezed(text: string): string {
  return text.replace(/\s+/g, "");
}

export function attribute(element: Element, name: string): string | undefined {
  return element.attrs.find((each) => each.name === name)?.value;
}

/** All that a person reads in an element. */
export function textOf(element: Element): string {
  const texts = (node: Node): string =>
    "value" in node
      ? node.value
      : "childNodes" in node
        ? node.childNodes.map(texts).join("")
        : "";
  return oneLine(texts(element));
}

/** The cells of a table's body, row by row. */
export function rowsOf(table: Element): readonly (readonly string[])[] {
  const below = (node: Node, name: string): readonly Element[] =>
    "childNodes" in node
      ? node.childNodes.flatMap((each) =>
          "tagName" in each && each.tagName === name
            ? [each]
            : below(each, name),
        )
      : [];
  return below(table, "tbody").flatMap((body) =>
    below(body, "tr").map((row) => below(row, "td").map(textOf)),
  );
}
