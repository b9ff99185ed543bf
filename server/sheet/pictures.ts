// The pictures of a sheet, drawn for paper, each with a line that says of what.
import { kindOf } from "../model/reference.ts";
import {
  fitPictures,
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
  const figures = [
    ...byTwos(
      refs
        .filter((ref) => kindOf(ref) === "fit")
        .map((ref) => figuresOf(fitPictures(shop, ref, BESIDE), ref)),
    ),
    ...refs.flatMap((ref): readonly Markup[] => {
      switch (kindOf(ref)) {
        case "line":
          return [figure(linePicture(shop, ref, WHOLE), ref)];
        case "stack":
          return [figure(stackPicture(shop, ref, WHOLE), ref)];
        default:
          return [];
      }
    }),
  ];
  return figures.length === 0
    ? undefined
    : el("div", { class: "pictures" }, figures);
}

/** CSS pixels. Each is printed a twelfth larger than it is drawn, so that the least of its words has 9 pt: a page is about 700 wide. */
const WHOLE: PictureOptions = { theme: "paper", width: 640 };
const BESIDE: PictureOptions = { theme: "paper", width: 316 };

/** Sizes and clearances of a fit: no picture so tall that it leaves half a page empty before it. */
function figuresOf(
  pictures: readonly string[],
  ref: string,
): readonly Markup[] {
  const words = pictures.length === 1 ? [""] : [": sizes", ": clearance"];
  return pictures.map((svg, at) =>
    figure(svg, `${ref}${words[at] ?? ""}`, "beside"),
  );
}

/** Two fits stand side by side as in their table, their clearances below their sizes; the last of an odd number has its clearances beside. */
function byTwos(fits: readonly (readonly Markup[])[]): readonly Markup[] {
  return fits.flatMap((own, at) => {
    if (at % 2 === 1) return [];
    const next = fits[at + 1];
    return next?.length !== own.length
      ? [...own, ...(next ?? [])]
      : own.flatMap((each, row) => [each, ...next.slice(row, row + 1)]);
  });
}

function figure(svg: string, caption: string, style?: string): Markup {
  return el(
    "figure",
    { class: style },
    drawn(svg),
    el("figcaption", {}, caption),
  );
}
