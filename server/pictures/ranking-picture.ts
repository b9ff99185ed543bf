// The reamers that could cut a line, each with the clearance that it leaves in each bore over the clearance that is wanted there.
import { settings } from "../model/evaluate/settings.ts";
import type { Shop } from "../model/shop.ts";
import { bandStrip, type BandRow } from "./band-strip.ts";
import { inkOf, widthOf, type PictureOptions } from "./ink.ts";
import { rankingTable, type RankedTool } from "./ranking.ts";
import {
  lettering,
  picture,
  sentencePicture,
  SMALL,
  wrapped,
} from "./shapes.ts";

const EDGE = 6;

/** The picture as SVG text; where nothing can be ranked it says why. */
export function rankingPicture(
  shop: Shop,
  line: string,
  options: PictureOptions,
): string {
  const ink = inkOf(options.theme);
  const width = widthOf(options);
  const { tools, notes } = rankingTable(shop, line);
  if (tools.length === 0)
    return sentencePicture(`${line}: ${notes.join(" ")}`, width, ink, line);
  const title = wrapped(
    "Clearance that each reamer would leave, over what is wanted (dotted)",
    (width - 2 * EDGE) * 0.95,
  );
  const top = EDGE + title.length * 15 + 4;
  const strip = bandStrip(
    tools.flatMap((tool) => rowsOf(tool, line)),
    {
      x: EDGE,
      y: top,
      width: width - 2 * EDGE,
      system: settings(shop).system,
      ink,
      zero: "no clearance",
      reach: 1.5,
    },
  );
  const noted = wrapped(notes.join(" "), width - 2 * EDGE, SMALL);
  const below = top + strip.height + 6;
  const [best] = tools;
  return picture(
    { width, height: below + noted.length * 14 + EDGE },
    `reamers for ${line}; first: ${best?.name ?? ""}, ${best?.verdict ?? ""}`,
    ink,
    line,
    lettering(EDGE, EDGE + 11, title, { fill: ink.text, bold: true }),
    strip.markup,
    lettering(EDGE, below + 10, noted, { fill: ink.muted, size: SMALL }, 14),
  );
}

function rowsOf(tool: RankedTool, line: string): readonly BandRow[] {
  const star = tool.oversizeAssumed ? " *" : "";
  return tool.left.map((left) => ({
    ref: tool.ref ?? line,
    name: `${tool.name}${star}${tool.named ? " (named)" : ""}, ${left.ref}`,
    words: `${left.text}, predicted, ${left.words}`,
    band: left,
    wanted: left.wanted,
    measured: false,
    wrong: !tool.serves,
  }));
}
