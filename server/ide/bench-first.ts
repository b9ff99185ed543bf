// What the bench view says where there is little or nothing to draw yet: what to write first, with a line that shows how.
import { refsOfKind, type Shop } from "../model/shop.ts";
import type { OpenFile } from "../model/project.ts";
import { link, list, paragraph } from "./bench-html.ts";
import { el, NOTHING, row, type Child, type Markup } from "../markup/html.ts";
import { showCount } from "../core/quantity/show.ts";
import { ENTRY_KINDS, type EntryKind } from "../../grammar/vocabulary.ts";
import { OF_CRIB } from "./crib-kinds.ts";

interface Want {
  readonly kind: EntryKind;
  readonly what: string;
  readonly write: string;
}

/** What a job has before its fits can be drawn, in the order that a shop would write it. */
const WANTS: readonly Want[] = [
  {
    kind: "job",
    what: "what job this is, and its units",
    write: "job winch-layshaft\n  units inch",
  },
  {
    kind: "part",
    what: "the shaft and the case",
    write: "part layshaft\npart case",
  },
  {
    kind: "journal",
    what: "where the shaft runs",
    write: "journal front on layshaft\n  limits 0.8740 to 0.8745",
  },
  {
    kind: "bore",
    what: "the bore that it runs in",
    write: "bore front in case",
  },
  {
    kind: "fit",
    what: "that the one runs in the other, and the clearance wanted",
    write: "fit front of journal front in bore front\n  want 0.0008 to 0.0016",
  },
];

/** What may stand in a crib. */
const IN_CRIB: ReadonlySet<EntryKind> = new Set([...OF_CRIB, "step", "lesson"]);

/** What stands in place of the pictures, with its heading: what is still to write before there is anything to draw, or what a crib holds; undefined where there is something to draw. */
export function firstSection({
  shop,
  file,
}: OpenFile): { readonly name: string; readonly body: Markup } | undefined {
  const has = (kind: EntryKind): boolean => 0 < refsOfKind(shop, kind).length;
  if (has("fit") || has("line") || has("stack")) return undefined;
  const kinds = file.entries.flatMap(({ kind }) => kind ?? []);
  const isCrib =
    !has("job") &&
    0 < kinds.length &&
    kinds.every((kind) => kind === "shop" || IN_CRIB.has(kind));
  if (isCrib) return { name: "A crib", body: cribPart(kinds) };
  const missing = WANTS.filter(({ kind }) => !has(kind));
  const body = row(
    paragraph(
      missing.length === WANTS.length
        ? "Nothing is written yet that could be drawn. Write first:"
        : "Nothing can be drawn yet. Write next:",
    ),
    el(
      "ol",
      {},
      missing.map(({ what, write }) =>
        el("li", {}, `${what}:`, el("pre", {}, el("code", {}, write))),
      ),
    ),
  );
  return { name: "Write first", body };
}

function cribPart(kinds: readonly EntryKind[]): Markup {
  const held = ENTRY_KINDS.filter((kind) => IN_CRIB.has(kind))
    .flatMap((kind) => {
      const count = kinds.filter((each) => each === kind).length;
      return count === 0 ? [] : showCount(count, kind);
    })
    .join(", ");
  return row(
    paragraph(
      held === ""
        ? "This is a crib: it holds what the shop has, and nothing stands in it yet. Write first:"
        : `This is a crib: it holds what the shop has, ${held}. Nothing of it is drawn by itself: open a job that uses it.`,
    ),
    held === ""
      ? el(
          "pre",
          {},
          el("code", {}, "gauge mic-1\n  kind micrometer\n  resolution 0.0001"),
        )
      : NOTHING,
  );
}

/** Entries whose text can't be read, so that what hangs on them is not drawn. */
export function damagedPart(
  shop: Shop,
  { file }: OpenFile,
): Markup | undefined {
  const items = file.entries.flatMap((entry): readonly Child[] => {
    const count = entry.facts.filter((fact) => fact.value === undefined).length;
    const isOpening = entry.damaged && 0 < entry.problems.length;
    if (!isOpening && count === 0) return [];
    if (entry.ref === "" || shop.places.get(entry.ref)?.file !== 0)
      return ["An entry whose opening line can't be read."];
    return [
      row(
        link(entry.ref),
        isOpening
          ? ": its opening line can't be read"
          : count === 1
            ? ": one line of it can't be read"
            : `: ${String(count)} lines of it can't be read`,
      ),
    ];
  });
  return items.length === 0
    ? undefined
    : row(
        paragraph(
          "Lines can't be read. What hangs on them is not drawn until they are mended; the findings say how:",
        ),
        list(items),
      );
}
