// The shapes that all pictures are made of: the frame, texts that fit their room, blocks with a hatch, lines, bars, arrows.
import { plain } from "../markup/markdown.ts";
import type { Ink } from "./ink.ts";
import { digits, element, together, type Content, type Markup } from "./svg.ts";

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const TEXT = 12;
export const SMALL = 11;

/** The whole picture: named for those who can't see it, its ground left open so that it stands on any page. */
export function picture(
  size: { readonly width: number; readonly height: number },
  says: string,
  ink: Ink,
  ref: string | undefined,
  ...content: readonly Content[]
): string {
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 0 ${digits(size.width)} ${digits(Math.ceil(size.height))}`,
      width: size.width,
      height: Math.ceil(size.height),
      role: "img",
      "aria-label": says,
      "data-ref": ref,
      "font-family": ink.font,
      "font-size": TEXT,
      fill: "none",
      "stroke-linejoin": "round",
    },
    element("title", {}, says),
    ...content,
  ).markup;
}

/** What belongs together under one title; a click on it leads to the entry. */
export function about(
  ref: string | undefined,
  title: string,
  ...content: readonly Content[]
): Markup {
  return element(
    "g",
    { "data-ref": ref },
    element("title", {}, plain(title)),
    ...content,
  );
}

/** A picture that only says something. */
export function sentencePicture(
  sentence: string,
  width: number,
  ink: Ink,
  ref: string | undefined,
): string {
  const lines = wrapped(sentence, width - 12);
  return picture(
    { width, height: lines.length * 15 + 14 },
    sentence,
    ink,
    ref,
    lettering(6, 18, lines, { fill: ink.text }),
  );
}

export interface Lettering {
  readonly anchor?: "start" | "middle" | "end";
  readonly size?: number;
  readonly fill: string;
  readonly bold?: boolean;
  /** Colour of a rim that keeps the letters clear of what lies under them. */
  readonly rim?: string;
}

export function label(
  x: number,
  y: number,
  text: string,
  { anchor = "start", size = TEXT, fill, bold, rim }: Lettering,
): Markup {
  return element(
    "text",
    {
      x,
      y,
      fill,
      "text-anchor": anchor === "start" ? undefined : anchor,
      "font-size": size === TEXT ? undefined : size,
      "font-weight": bold === true ? "bold" : undefined,
      ...(rim === undefined
        ? {}
        : { stroke: rim, "stroke-width": 3, "paint-order": "stroke" }),
    },
    plain(text),
  );
}

/** How wide a text will be, about: nobody can measure it here, so a little too wide. */
export function lengthOf(text: string, size: number = TEXT): number {
  return Array.from(text).length * size * 0.57;
}

/** A text in lines that fit the room, broken between words; a word longer than the room goes on in the next line. */
export function wrapped(
  text: string,
  room: number,
  size: number = TEXT,
): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && lengthOf(longer, size) <= room)
      lines[lines.length - 1] = longer;
    else lines.push(...piecesOf(word, room, size));
  }
  return lines;
}

/** No word has more of them: a longer one is cut. */
const MOST_PIECES = 12;

/** A word in pieces that fit the room, broken after a hyphen where there is one. */
function piecesOf(word: string, room: number, size: number): readonly string[] {
  const most = Math.max(2, Math.floor(room / lengthOf("x", size)));
  const pieces: string[] = [];
  let left = Array.from(word);
  while (most < left.length && pieces.length < MOST_PIECES - 1) {
    const hyphen = left.slice(0, most).lastIndexOf("-") + 1;
    const at = hyphen === 0 ? most : hyphen;
    pieces.push(left.slice(0, at).join(""));
    left = left.slice(at);
  }
  const isCut = most < left.length;
  return [
    ...pieces,
    isCut ? `${left.slice(0, most - 1).join("")}…` : left.join(""),
  ];
}

export function lettering(
  x: number,
  y: number,
  lines: readonly string[],
  how: Lettering,
  leading = 15,
): Markup {
  return together(
    lines.map((line, index) => label(x, y + index * leading, line, how)),
  );
}

export interface Stroke {
  readonly stroke: string;
  readonly width?: number;
  readonly dashes?: string;
}

function strokeOf({ stroke, width = 1, dashes }: Stroke) {
  return { stroke, "stroke-width": width, "stroke-dasharray": dashes };
}

export function line(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  how: Stroke,
): Markup {
  return element("line", { x1, y1, x2, y2, ...strokeOf(how) });
}

/** A rectangle; its sides may be given in either order. One without height or width is the line that it comes to: no browser draws a rectangle without one. */
export function block(
  { x, y, width, height }: Box,
  how: Partial<Stroke> & { readonly fill?: string; readonly opacity?: number },
): Markup {
  const stroke =
    how.stroke === undefined ? {} : strokeOf({ ...how, stroke: how.stroke });
  return width === 0 || height === 0
    ? element("line", {
        x1: x,
        y1: y,
        x2: x + width,
        y2: y + height,
        ...stroke,
      })
    : element("rect", {
        x: Math.min(x, x + width),
        y: Math.min(y, y + height),
        width: Math.abs(width),
        height: Math.abs(height),
        fill: how.fill,
        "fill-opacity": how.opacity,
        ...stroke,
      });
}

/**
 * Slanting lines over a rectangle, cut at its sides. They are drawn one by one and not as a pattern, which would need a name that is
 * unique over every picture of a page.
 */
export function hatch(
  { x, y, width, height }: Box,
  {
    stroke,
    spacing = 6,
    lean = "right",
  }: {
    readonly stroke: string;
    readonly spacing?: number;
    readonly lean?: "right" | "left";
  },
): Markup {
  const path: string[] = [];
  // x' + y' = at, within the rectangle; leaning left, it is turned over
  for (let at = spacing / 2; at < width + height; at += spacing) {
    const x1 = Math.max(0, at - height);
    const x2 = Math.min(at, width);
    const [y1, y2] = [at - x1, at - x2];
    const place = (px: number, py: number): string =>
      `${digits(x + (lean === "right" ? px : width - px))} ${digits(y + py)}`;
    path.push(`M${place(x1, y1)}L${place(x2, y2)}`);
  }
  return element("path", { d: path.join(""), stroke, "stroke-width": 0.8 });
}

/** Dots over a rectangle. */
export function dots(
  { x, y, width, height }: Box,
  fill: string,
  spacing = 6,
): Markup {
  const path: string[] = [];
  for (let py = spacing / 2; py < height; py += spacing) {
    for (let px = spacing / 2; px < width; px += spacing)
      path.push(`M${digits(x + px - 0.7)} ${digits(y + py)}h1.4`);
  }
  return element("path", {
    d: path.join(""),
    stroke: fill,
    "stroke-width": 1.4,
  });
}

/** A bar with a foot at both ends, upright or lying. */
export function bar(
  from: { readonly x: number; readonly y: number },
  to: { readonly x: number; readonly y: number },
  foot: number,
  how: Stroke,
): Markup {
  const upright = from.x === to.x;
  const [fx, fy] = upright ? [foot, 0] : [0, foot];
  return together(
    line(from.x, from.y, to.x, to.y, how),
    ...[from, to].map((end) =>
      line(end.x - fx, end.y - fy, end.x + fx, end.y + fy, how),
    ),
  );
}

/** The head of an arrow at a point, along the x axis. */
export function arrowHead(
  x: number,
  y: number,
  towards: "left" | "right",
  fill: string,
): Markup {
  const back = towards === "right" ? -7 : 7;
  return element("path", {
    d: `M${digits(x)} ${digits(y)}l${digits(back)} -3.5v7z`,
    fill,
  });
}
