// The pictures of a sheet, drawn for paper, each with a line that says of what.
import { kindOf } from "../model/reference.ts";
import {
  fitPicture,
  linePicture,
  stackPicture,
  type PictureOptions,
} from "../pictures/pictures.ts";
import type { Subject } from "./facts.ts";
import { drawn, el, type Markup } from "../markup/html.ts";

/** The pictures of fits, lines or stacks; nothing for other entries. */
export function picturesOf(
  { shop }: Subject,
  refs: readonly string[],
): Markup | undefined {
  const fit = 1 < refs.length ? BESIDE : ALONE;
  const figures = refs.flatMap((ref): readonly Markup[] => {
    switch (kindOf(ref)) {
      case "fit":
        return [figure(fitPicture(shop, ref, fit), ref, fit.style)];
      case "line":
        return [figure(linePicture(shop, ref, WHOLE), ref)];
      case "stack":
        return [figure(stackPicture(shop, ref, WHOLE), ref)];
      default:
        return [];
    }
  });
  return figures.length === 0
    ? undefined
    : el("div", { class: "pictures" }, figures);
}

/** CSS pixels. Each is printed a twelfth larger than it is drawn, so that the least of its words has 9 pt: a page is about 700 wide. */
const WHOLE: PictureOptions = { theme: "paper", width: 640 };
/** A fit by itself takes three quarters of the page; more of them stand two and two, as side by side as in their table. */
const ALONE = { theme: "paper", width: 480, style: "alone" } as const;
const BESIDE = { theme: "paper", width: 316, style: "beside" } as const;

function figure(svg: string, ref: string, style?: string): Markup {
  return el("figure", { class: style }, drawn(svg), el("figcaption", {}, ref));
}
