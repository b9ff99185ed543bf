// What a file lacks at its head: a job or a shop, or the unit of its bare lengths. Said once a file.
import { isName, nameOutOf } from "../../../grammar/names.ts";
import { given, type Entry } from "../../model/entry.ts";
import { isOpening } from "../../model/file-entries.ts";
import type { OpenFile } from "../../model/project.ts";
import type { FileDraft } from "../file-rules.ts";
import type { DraftFix } from "../rule.ts";

/** `fact-missing`: no job and no shop. */
export function openingMissing({ file, path }: OpenFile): readonly FileDraft[] {
  if (file.context.isJob || file.context.system !== undefined) return [];
  const first = file.entries.findIndex((entry) => entry.block.opens);
  const entry = file.entries[first];
  if (entry === undefined) return [];
  // a word that can't be read may be the job's, and is said there
  if (file.entries.some((each) => isOpening(each) || mayBeOpening(each)))
    return [];
  const name = nameFrom(path);
  const start =
    file.entries[0]?.block.lines[0]?.text.startsWith("\u{FEFF}") === true
      ? 1
      : 0;
  const fix = (kind: string, units: string): DraftFix => ({
    title: `Begin with \`${kind} ${name}\`, lengths in ${units === "mm" ? "mm" : "inches"}`,
    safe: false,
    edits: [
      {
        span: {
          line: headLine(entry),
          start: first === 0 ? start : 0,
          end: first === 0 ? start : 0,
        },
        text: `${kind} ${name}\n  units ${units}\n\n`,
      },
    ],
  });
  return [
    {
      entry: first,
      span: entry.nameSpan,
      message:
        "This file has no job and no shop, so that it is not known what its lengths are in or which files it uses: begin it with `job NAME`, or `shop NAME` for a crib.",
      fixes: [
        fix("job", "inch"),
        fix("job", "mm"),
        fix("shop", "inch"),
        fix("shop", "mm"),
      ],
    },
  ];
}

/** `fact-missing`: a job or a shop that does not say the unit of the lengths that stand bare. */
export function unitsMissing({ file }: OpenFile): readonly FileDraft[] {
  if (file.context.system !== undefined) return [];
  const index = file.entries.findIndex(isOpening);
  const opening = file.entries[index];
  // a line that can't be read may be the one that says it
  if (opening === undefined || given(opening, "UnitsFact").state !== "absent")
    return [];
  if (opening.problems.some(({ code }) => code === "word-unknown")) return [];
  const bare = file.entries.findIndex((entry) =>
    entry.problems.some(({ code }) => code === "units-unwritten"),
  );
  if (bare === -1) return [];
  const head = opening.block.lines[0];
  const end = head === undefined ? 0 : head.text.length;
  const fix = (units: string): DraftFix => ({
    title: `Write \`units ${units}\``,
    safe: false,
    edits: [
      {
        span: { line: 0, start: end, end },
        text: `\n  units ${units}`,
      },
    ],
  });
  return [
    {
      entry: index,
      span: opening.nameSpan,
      message: `Lengths stand here without a unit, and this ${opening.kind ?? "job"} does not say which they are in, so none of them is used: write \`units inch\` or \`units mm\`.`,
      fixes: [fix("inch"), fix("mm")],
    },
  ];
}

function mayBeOpening({ kind, block }: Entry): boolean {
  return kind === undefined && block.lines.some((line) => line.body !== "");
}

/** The opening line, from the block's first. */
function headLine({ block }: Entry): number {
  return Math.max(
    0,
    block.lines.findIndex((line) => line.body !== ""),
  );
}

/** A name for a job from its file's: letters, digits and hyphens, beginning with a letter. */
export function nameFrom(path: string): string {
  const file = path.slice(path.lastIndexOf("/") + 1).replace(/\.[^.]*$/, "");
  const name = nameOutOf(file).toLowerCase();
  return isName(name) ? name : "record";
}
