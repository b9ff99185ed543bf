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
    [...items, { label: "Back to the record", detail: summary }],
    { title: `${title}, and written`, placeHolder: "What now?" },
  );
  if (chosen?.after?.does === "see")
    await vscode.commands.executeCommand("thou.showBench");
  return chosen?.after?.does === "take"
    ? (chosen.after.target ?? undefined)
    : undefined;
}
