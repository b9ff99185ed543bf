// Writes Markdown that holds what a person typed without ever obeying it: no link, image, tag, heading or code comes out of a record.
// It knows nothing of shops.

/** A text of a record as Markdown that reads just so: one line, every sign that Markdown or HTML could take for its own set off. */
export function escaped(text: string): string {
  return (
    shortened(oneLine(text))
      .replace(/[\\`*_{}[\]<>&|~$]/g, "\\$&")
      // addresses are made into links by themselves: take them apart
      .replace(/[:@](?=\S)/g, "\\$&")
      .replace(/(?<=\p{L})\.(?=\S)/gu, "\\.")
      // at the start these make lists, headings and rules
      .replace(/^[-+=#]/, "\\$&")
      .replace(/^(\d+)([.)])(?=\s|$)/, "$1\\$2")
  );
}

/** A text as code; in a table it must hold no upright stroke. */
export function code(text: string): string {
  return `\`${shortened(oneLine(text)).replaceAll("`", "'")}\``;
}

/** A sentence of the model, its words in backquotes set off as words of the record. */
export function sentence(text: string): string {
  return shortened(oneLine(text))
    .split(/`([^`]*)`/)
    .map((part, index) => {
      if (part.trim() === "") return part;
      // in a table an upright stroke would end the cell, in a word set off as well
      if (index % 2 === 1 && !part.includes("|")) return code(part);
      const [before = "", , after = ""] =
        /^( ?)(.*?)( ?)$/u.exec(part)?.slice(1) ?? [];
      return `${before}${escaped(part)}${after}`;
    })
    .join("");
}

const LONGEST = 400;

function shortened(text: string): string {
  return text.length <= LONGEST
    ? text
    : `${text.slice(0, LONGEST).replace(/[\uD800-\uDBFF]$/, "")}…`;
}

/** Line ends and signs that can't be seen become blanks; those that turn the direction of writing go. */
function oneLine(text: string): string {
  return text
    .replace(
      /[\u{202A}-\u{202E}\u{2066}-\u{2069}\u{200E}\u{200F}\u{FEFF}]/gu,
      "",
    )
    .replace(/[\p{Cc}\u{2028}\u{2029}\s]+/gu, " ")
    .trim();
}

/** A sentence with words set off as code, for a place that shows no Markdown: they stand in quotes. */
export function plain(sentence: string): string {
  return sentence.replaceAll(/`([^`]*)`/gu, "‘$1’");
}

/**
 * A table of cells that are Markdown already; columns that stay empty are left out. "" for no rows. An editor sets columns close together and
 * headings in their middle: blanks that stay keep columns apart, and headings stand over the beginning of what they name.
 */
export function table(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): string {
  if (rows.length === 0) return "";
  const kept = heads.flatMap((_, column) =>
    rows.some((row) => (row[column] ?? "") !== "") ? [column] : [],
  );
  const last = kept.at(-1);
  const line = (cells: readonly string[]): string =>
    `| ${kept.map((column) => cells[column] ?? "").join(" | ")} |`;
  const apart = heads.map((head, column) =>
    column === last ? head : `${head}&nbsp;&nbsp;&nbsp;`,
  );
  return [line(apart), line(heads.map(() => ":--")), ...rows.map(line)].join(
    "\n",
  );
}

export function list(items: readonly string[]): string {
  return items.map((item) => `- ${item}`).join("\n");
}

/** Blocks one under the other; empty ones leave no gap. */
export function blocks(...parts: readonly string[]): string {
  return parts.filter((part) => part !== "").join("\n\n");
}
