// The bench view of a record: what is next, what stands at the caret, then lines, fits and stacks in pictures. It gives pieces of HTML and where
// the entries that they name are written; the page round them, its style and its script are the client's.
import { valueIn } from "../model/entry.ts";
import type { OpenFile } from "../model/project.ts";
import { openingEntry, refsOfKind, type Shop } from "../model/shop.ts";
import { escaped, el, row, type Markup } from "../markup/html.ts";
import { fitPicture, stackPicture, UNREAD } from "../pictures/pictures.ts";
import type { BenchSection, BenchView } from "../protocol/bench.ts";
import type { OverviewPlace } from "../protocol/overview.ts";
import type { EntryKind } from "../../grammar/vocabulary.ts";
import { damagedPart, firstSection } from "./bench-first.ts";
import { figure, link, paragraph } from "./bench-html.ts";
import { caretSection, linePart, nextSection } from "./bench-sections.ts";
import { locationOf, spotAt } from "./position.ts";
import { capitalised } from "../model/sentences.ts";

/** More pictures than this of one kind would be no view any more: the others come by the caret. */
const MOST = 12;

/** A picture on its own row is drawn no wider than this; two of fits stand side by side where there is room. */
const WIDEST = 860;
const FIT_WIDTH = 420;

/**
 * @param line the caret's, from 0
 * @param width of the page's inside, in CSS pixels
 * @param uriOf the address by which whoever asks knows a path
 */
export function benchOf(
  open: OpenFile,
  line: number,
  width: number,
  uriOf: (path: string) => string,
): BenchView {
  const { shop } = open;
  const opening = openingEntry(shop);
  const title = valueIn(opening, "TitleFact") ?? opening?.ref ?? "No job yet";
  const sections = sectionsOf(open, line, width);
  return { title, sections, places: placesIn(shop, sections, uriOf) };
}

function sectionsOf(
  open: OpenFile,
  line: number,
  width: number,
): readonly BenchSection[] {
  const { shop } = open;
  const wide = Math.min(width, WIDEST);
  const fitWidth =
    width < 2 * 330 ? wide : Math.min(FIT_WIDTH, Math.floor((width - 12) / 2));
  const damaged = damagedPart(shop, open);
  const first = firstSection(open);
  const caret = spotAt(open, { line, character: 0 })?.entry.ref;
  const isJob = refsOfKind(shop, "job").length !== 0;
  const drawn: readonly BenchSection[] = [
    ...several(shop, "line", (ref) => linePart(shop, ref, wide)),
    ...several(
      shop,
      "fit",
      (ref) =>
        figure(fitPicture(shop, ref, { theme: "editor", width: fitWidth })),
      true,
    ),
    ...several(
      shop,
      "stack",
      (ref) =>
        figure(stackPicture(shop, ref, { theme: "editor", width: fitWidth })),
      true,
    ),
  ];
  return [
    ...(damaged === undefined
      ? []
      : [section("damaged", "Can't be read", damaged)]),
    ...(first === undefined ? [] : [section("first", first.name, first.body)]),
    ...(first === undefined && isJob
      ? [section("next", "Next", nextSection(shop))]
      : []),
    ...(caret === undefined || /^(?:|job .*|shop .*)$/.test(caret)
      ? []
      : [
          section(
            "caret",
            `At the caret: ${caret}`,
            caretSection(shop, caret, Math.min(wide, 560)),
            caret,
          ),
        ]),
    ...drawn,
  ];
}

/** The job's own entries of a kind; what a crib holds is not drawn. */
function several(
  shop: Shop,
  kind: EntryKind,
  draw: (ref: string) => Markup,
  half = false,
): readonly BenchSection[] {
  const refs = refsOfKind(shop, kind).filter(
    (ref) => shop.places.get(ref)?.file === 0,
  );
  const more = refs.length - MOST;
  return [
    ...refs.slice(0, MOST).map((ref) => ({
      ...section(ref, capitalised(ref), draw(ref), ref),
      half,
    })),
    ...(0 < more
      ? [
          section(
            `more ${kind}`,
            `More of ${kind}`,
            paragraph(
              `${String(more)} more are not drawn here: put the caret on one to see it.`,
            ),
          ),
        ]
      : []),
  ];
}

function section(
  key: string,
  name: string,
  body: Markup,
  ref?: string,
): BenchSection {
  const heading = el(
    "h2",
    { tabindex: "-1" },
    name,
    ref === undefined ? "" : row(" ", link(ref, "Go to its line")),
  );
  const { markup: html } = row(heading, body);
  return {
    key,
    name,
    html,
    unread: html.includes(escaped(UNREAD)),
    half: false,
  };
}

/** Where every entry is written that a section names. */
function placesIn(
  shop: Shop,
  sections: readonly BenchSection[],
  uriOf: (path: string) => string,
): Readonly<Record<string, OverviewPlace>> {
  const named = new Set(
    sections.flatMap(({ html }) =>
      // a reference is a kind and a name: neither has a sign that is escaped
      [...html.matchAll(/ data-ref="([^"&]+)"/g)].map(
        (match) => match[1] ?? "",
      ),
    ),
  );
  const places: [string, OverviewPlace][] = [];
  for (const ref of named) {
    const found = locationOf(shop, ref);
    if (found === undefined) continue;
    const { start, end } = found.range;
    places.push([
      ref,
      {
        uri: uriOf(found.path),
        line: start.line,
        start: start.character,
        end: end.character,
      },
    ]);
  }
  return Object.fromEntries(places);
}
