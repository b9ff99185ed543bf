// What a person does next once readings stand in the record: a box that the keyboard is in already, since hands are on a gauge and a notice in a
// corner wants a mouse. What may follow is the server's.
import * as vscode from "vscode";
import type { AfterTaking, TakingPrompt } from "../server/protocol/guide.ts";

interface Item extends vscode.QuickPickItem {
  readonly after?: AfterTaking;
}

/** The answer to what is read next; undefined where nothing is. */
export async function chooseAfter({
  title,
  summary,
  after,
}: TakingPrompt): Promise<string | undefined> {
  const items: Item[] = after.map((each) => ({
    label: each.label,
    detail: each.below,
    after: each,
  }));
  const chosen = await vscode.window.showQuickPick<Item>(
    [
      ...items,
      { label: "Back to the record" },
      { label: "written", kind: vscode.QuickPickItemKind.Separator },
      ...rowsOf(summary).map((label) => ({ label })),
    ],
    { title: `${title}, and written`, placeHolder: "What now?" },
  );
  if (chosen?.after?.does === "see")
    await vscode.commands.executeCommand("thou.showBench");
  return chosen?.after?.does === "take"
    ? (chosen.after.target ?? undefined)
    : undefined;
}

/** Characters that a row of the box has room for in a window of 800 px: what is longer is cut off there. */
const ROOM = 60;

/** What the readings come to in rows, each sentence from a row of its own on: a row of the box does not wrap. */
function rowsOf(summary: string): readonly string[] {
  return summary.split(/(?<=\.) (?=\p{Lu})/u).flatMap((sentence) => {
    const rows: string[] = [];
    for (const word of sentence.split(" ")) {
      const longer = `${rows.at(-1) ?? ""} ${word}`;
      if (rows.length === 0) rows.push(word);
      else if (longer.length <= ROOM) rows[rows.length - 1] = longer;
      else rows.push(word);
    }
    return rows;
  });
}
