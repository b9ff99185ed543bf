// A reading that someone took wrong and signed, in a record that is sound otherwise: a digit misread. No flaw of the text tells it.
import type { HistoryRecord } from "./shop-history.ts";

export function isPlain({ flaw }: HistoryRecord): boolean {
  return flaw === undefined;
}

/** The first sound record of the second half of a shop, by its place. */
export function misreadIn(records: readonly HistoryRecord[]): number {
  return records.findIndex((each) => 30 <= each.within && isPlain(each));
}

/** What is cut in it: "r-8755 in tin-bronze". */
export function cutIn(record: HistoryRecord | undefined): string {
  const text = record?.versions.at(-1)?.text ?? "";
  const [, reamer = ""] = /^ {2}ream with (\S+)$/mu.exec(text) ?? [];
  const [, material = ""] =
    /^bush rear .*\n {2}material (\S+)$/mu.exec(text) ?? [];
  return `${reamer} in ${material}`;
}

/** Every reading of the finished rear bore of one record a thou over what it was, or 0.025 mm. */
export function misread(
  within: number,
): (record: HistoryRecord, text: string) => string {
  return (record, text) => {
    if (record.within !== within) return text;
    const isInch = text.includes("\n  units inch\n");
    const [before = "", after = ""] = text.split("\nbore rear in ");
    const over = (size: string): string =>
      isInch
        ? (Number(size) + 0.001).toFixed(5)
        : (Number(size) + 0.025).toFixed(3);
    const end = after.indexOf("\npress ");
    if (end < 0) throw new Error("a bore without a press behind it");
    const changed = after
      .slice(0, end)
      .replace(
        /^( {2}read (?:near|far)) (\S+) (\S+) /gmu,
        (_, head: string, one: string, other: string) =>
          `${head} ${over(one)} ${over(other)} `,
      );
    return `${before}\nbore rear in ${changed}${after.slice(end)}`;
  };
}
