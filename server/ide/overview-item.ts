// One line of the overview: an entry with how it stands, and where it is written.
import type { Entry } from "../model/entry.ts";
import type { Finding } from "../model/result.ts";
import type { Shop } from "../model/shop.ts";
import type { OverviewItem, OverviewPlace } from "../protocol/overview.ts";
import { standingOf, stepStanding } from "./overview-standing.ts";
import { plain } from "../markup/markdown.ts";
import { locationOf } from "./position.ts";
import { kindOf } from "../model/reference.ts";

export interface View {
  readonly shop: Shop;
  /** The entries of the file itself, the first of each name. */
  readonly own: readonly Entry[];
  readonly findings: ReadonlyMap<string, readonly Finding[]>;
  readonly uriOf: (path: string) => string;
}

export function itemOf(
  view: View,
  group: string,
  ref: string,
  children: readonly OverviewItem[] = [],
): OverviewItem {
  const { shop, findings } = view;
  const found = findings.get(ref) ?? [];
  const { state, detail } =
    kindOf(ref) === "step"
      ? stepStanding(shop, ref)
      : standingOf(shop, ref, found);
  return {
    id: `${group}/${ref}`,
    label: ref,
    detail: plain(detail),
    state,
    ...placed(view, ref),
    children,
  };
}

export function placed(
  { shop, uriOf }: View,
  ref: string,
): { readonly place: OverviewPlace } | undefined {
  const found = locationOf(shop, ref);
  if (found === undefined) return undefined;
  const { start, end } = found.range;
  return {
    place: {
      uri: uriOf(found.path),
      line: start.line,
      start: start.character,
      end: end.character,
    },
  };
}
