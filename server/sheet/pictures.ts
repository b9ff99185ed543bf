// The pictures of a sheet, drawn for paper, each with a line that says of what.
import { kindOf } from "../model/reference.ts";
import {
  fitPicture,
  linePicture,
  stackPicture,
  type PictureOptions,
} from "../pictures/pictures.ts";
import type { Subject } from "./facts.ts";
import { drawn, el, type Markup } from "./html.ts";

/** About as wide as the print of a page, in CSS pixels: 186 mm. */
const PAPER: PictureOptions = { theme: "paper", width: 700 };

const DRAWN = {
  fit: { draw: fitPicture, says: "the sizes of its parts and what is wanted" },
  line: { draw: linePicture, says: "in section" },
  stack: { draw: stackPicture, says: "its members and what they leave" },
} as const;

/** The picture of a fit, a line or a stack; nothing for other entries. */
export function picturesOf({ shop }: Subject, ref: string): Markup | undefined {
  const kind = kindOf(ref);
  if (kind !== "fit" && kind !== "line" && kind !== "stack") return undefined;
  const { draw, says } = DRAWN[kind];
  return el(
    "figure",
    {},
    drawn(draw(shop, ref, PAPER)),
    el("figcaption", {}, `${ref}: ${says}.`),
  );
}
