// The sample shop, and single records beside it, opened for tests of the pictures.
import { readLines } from "../../grammar/lines.ts";
import { refsOfKind, type Shop } from "../../server/model/shop.ts";
import {
  fitPicture,
  linePicture,
  rankingPicture,
  stackPicture,
  type PictureOptions,
} from "../../server/pictures/pictures.ts";
import { createProject } from "../../server/rules/check.ts";
import { samples } from "../samples.ts";

const project = createProject({ root: "/" });
for (const { path, text } of samples)
  project.setFile(`/${path}`, readLines(text));

/** A sample, by its path, e.g. "shop/winch.thou". */
export function sampleShop(path: string): Shop {
  return shopOf(project.open(`/${path}`));
}

/** A sample with other text in its place; the others stay as they are. */
export function changed(path: string, change: (text: string) => string): Shop {
  return changedIn(path, path, change);
}

/** A sample whose other file, its crib, has other text. */
export function changedIn(
  path: string,
  other: string,
  change: (text: string) => string,
): Shop {
  const own = createProject({ root: "/" });
  for (const each of samples)
    own.setFile(
      `/${each.path}`,
      readLines(each.path === other ? change(each.text) : each.text),
    );
  return shopOf(own.open(`/${path}`));
}

export function textShop(text: string): Shop {
  const own = createProject({ root: "" });
  own.setFile("job.thou", readLines(text));
  return shopOf(own.open("job.thou"));
}

function shopOf(open: { readonly shop: Shop } | undefined): Shop {
  if (open === undefined) throw new Error("the record is not there");
  return open.shop;
}

/** Every picture that a record has, each with what it is of. */
export function picturesOf(
  shop: Shop,
  options: PictureOptions,
): readonly (readonly [string, string])[] {
  return [
    ...refsOfKind(shop, "fit").map(
      (ref) => [ref, fitPicture(shop, ref, options)] as const,
    ),
    ...refsOfKind(shop, "line").flatMap((ref) => [
      [ref, linePicture(shop, ref, options)] as const,
      [`ranking of ${ref}`, rankingPicture(shop, ref, options)] as const,
    ]),
    ...refsOfKind(shop, "stack").map(
      (ref) => [ref, stackPicture(shop, ref, options)] as const,
    ),
  ];
}
