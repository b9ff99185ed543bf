// Reads a picture back with an XML parser that is none of ours, and refuses what is not well formed: elements with their attributes, what they
// hold, and the texts.
import { SaxesParser } from "saxes";

export interface SvgElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: SvgElement[];
  readonly parent: SvgElement | undefined;
  text: string;
}

/** Throws on anything that is not well-formed XML. */
export function readSvg(markup: string): SvgElement {
  const parser = new SaxesParser();
  let root: SvgElement | undefined;
  let open: SvgElement | undefined;
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name, attributes }) => {
    const element: SvgElement = {
      name,
      attributes,
      children: [],
      parent: open,
      text: "",
    };
    open?.children.push(element);
    root ??= element;
    open = element;
  });
  parser.on("text", (text) => {
    if (open !== undefined) open.text += text;
  });
  parser.on("closetag", () => {
    open = open?.parent;
  });
  parser.write(markup).close();
  if (root === undefined) throw new Error("there is no element");
  return root;
}

export function all(root: SvgElement): readonly SvgElement[] {
  return [root, ...root.children.flatMap(all)];
}

/** What a person reads on the picture, texts in their order. */
export function textOf(root: SvgElement): string {
  return all(root)
    .filter((each) => each.name === "text")
    .map((each) => each.text)
    .join(" ");
}

/** The title of an element's own group. */
export function titleOf(element: SvgElement): string {
  return element.children.find((each) => each.name === "title")?.text ?? "";
}

/** The groups whose title fits. */
export function titled(root: SvgElement, title: RegExp): readonly SvgElement[] {
  return all(root).filter(
    (each) => each.name === "g" && title.test(titleOf(each)),
  );
}

/** The one group whose title fits. */
export function group(root: SvgElement, title: RegExp): SvgElement {
  const [first] = titled(root, title);
  if (first === undefined)
    throw new Error(`nothing is titled ${String(title)}`);
  return first;
}

/** The first child of that name. */
export function childOf(parent: SvgElement, name: string): SvgElement {
  const found = parent.children.find((each) => each.name === name);
  if (found === undefined) throw new Error(`${titleOf(parent)} has no ${name}`);
  return found;
}

export function numberOf(
  element: SvgElement | undefined,
  name: string,
): number {
  return Number(element?.attributes[name]);
}
