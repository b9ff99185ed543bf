// Text of SVG from shapes: elements with escaped attributes and texts, and numbers that are always finite. It draws nothing by itself.
import { escaped } from "../markup/html.ts";

/** A piece of SVG that is already escaped. Only this file makes one. */
export interface Markup {
  readonly markup: string;
}

export type Attributes = Readonly<Record<string, string | number | undefined>>;
export type Content = Markup | string | readonly Markup[];

/** An element; strings among its content are text and are escaped, attributes that are undefined are left out. */
export function element(
  name: string,
  attributes: Attributes,
  ...content: readonly Content[]
): Markup {
  const written = Object.entries(attributes).flatMap(([key, value]) =>
    value === undefined
      ? []
      : [
          ` ${key}="${typeof value === "number" ? digits(value) : escaped(value)}"`,
        ],
  );
  const inner = content.map(contentText).join("");
  return {
    markup:
      inner === ""
        ? `<${name}${written.join("")}/>`
        : `<${name}${written.join("")}>${inner}</${name}>`,
  };
}

/** Several pieces one after another, with nothing round them. */
export function together(...parts: readonly Content[]): Markup {
  return { markup: parts.map(contentText).join("") };
}

export const NOTHING: Markup = { markup: "" };

function contentText(content: Content): string {
  if (typeof content === "string") return escaped(content);
  return "markup" in content
    ? content.markup
    : content.map((each) => each.markup).join("");
}

/** A coordinate to a hundredth of a pixel. Refuses, by throwing, what is no number: a picture with one is no picture. */
export function digits(value: number): string {
  if (!Number.isFinite(value))
    throw new RangeError(`${String(value)} is no coordinate`);
  return String(Number(value.toFixed(2)) + 0);
}
