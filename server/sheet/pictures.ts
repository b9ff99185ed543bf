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
  const figures = refs.flatMap((ref): readonly Markup[] => {
    switch (kindOf(ref)) {
      case "fit":
        return [figure(fitPicture(shop, ref, FIT), ref)];
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

/** CSS pixels: the print of a page is about 700 wide; a fit needs no more than this for all of its words. */
const WHOLE: PictureOptions = { theme: "paper", width: 700 };
const FIT: PictureOptions = { theme: "paper", width: 520 };

function figure(svg: string, ref: string): Markup {
  return el("figure", {}, drawn(svg), el("figcaption", {}, ref));
}
