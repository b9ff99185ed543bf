// The command that compares a record with the last commit: it asks the server for the page, shows it as a read-only document beside the record,
// and says why where there is none. What has changed is the server's to say. It runs in a browser as well.
import * as vscode from "vscode";
import type { Compared, CompareParams } from "../server/protocol/compare.ts";
import type { ActiveRecord } from "./active-record.ts";
import { NO_ANSWER, recordOf, sayWhyNot } from "./record-command.ts";

/** Asks the server what has changed. */
export type AskToCompare = (params: CompareParams) => Promise<Compared>;

const SCHEME = "thou-compare";
const PREVIEW = "vscode.markdown.preview.editor";

export function registerComparing(
  ask: AskToCompare,
  active: ActiveRecord,
): vscode.Disposable {
  /** Pages that were just made, by their address: showing one asks no second time. */
  const made = new Map<string, string>();
  let count = 0;

  async function compare(given: unknown): Promise<vscode.Uri | undefined> {
    const record = recordOf(given, active);
    if (record === undefined) {
      void vscode.window.showInformationMessage(
        "Open a record first: it is compared with its last commit.",
      );
      return undefined;
    }
    const answer = await asked(record, ask);
    if (answer.state === "not") {
      void sayWhyNot(answer.because);
      return undefined;
    }
    // the editor keeps what stood at an address for a while after it is closed: each comparison has its own
    const page = pageOf(record, ++count);
    made.set(page.toString(), answer.markdown);
    const before = tabsOf(record);
    const viewColumn = before[0]?.group.viewColumn ?? vscode.ViewColumn.Beside;
    await vscode.commands.executeCommand("vscode.openWith", page, PREVIEW, {
      viewColumn,
      preview: true,
    });
    // the new page may have taken the place of the one before
    await vscode.window.tabGroups.close(
      before.filter((tab) => tab.group.tabs.includes(tab)),
      true,
    );
    return page;
  }

  return vscode.Disposable.from(
    vscode.commands.registerCommand("thou.compareWithCommit", compare),
    vscode.workspace.registerTextDocumentContentProvider(SCHEME, {
      async provideTextDocumentContent(page) {
        const ready = made.get(page.toString());
        made.delete(page.toString());
        if (ready !== undefined) return ready;
        // a window that was opened again
        const answer = await asked(vscode.Uri.parse(recordIn(page)), ask);
        return answer.state === "compared" ? answer.markdown : answer.because;
      },
    }),
  );
}

/** A page of a record: it is named after it, and holds its address. */
function pageOf(record: vscode.Uri, count: number): vscode.Uri {
  const name = record.path.slice(record.path.lastIndexOf("/") + 1);
  return vscode.Uri.from({
    scheme: SCHEME,
    path: `/${name} since the last commit.md`,
    query: `${String(count)} ${record.toString()}`,
  });
}

function recordIn(page: vscode.Uri): string {
  return page.query.replace(/^\d+ /u, "");
}

/** The tabs in which pages of a record stand. */
function tabsOf(record: vscode.Uri): readonly vscode.Tab[] {
  return vscode.window.tabGroups.all
    .flatMap(({ tabs }) => tabs)
    .filter(
      ({ input }) =>
        (input instanceof vscode.TabInputCustom ||
          input instanceof vscode.TabInputText) &&
        input.uri.scheme === SCHEME &&
        recordIn(input.uri) === record.toString(),
    );
}

async function asked(record: vscode.Uri, ask: AskToCompare): Promise<Compared> {
  try {
    return await ask({
      uri: record.toString(),
      isTrusted: vscode.workspace.isTrusted,
      link: linkTo(record),
    });
  } catch {
    return { state: "not", because: NO_ANSWER };
  }
}

/** The Markdown preview takes an address that begins with a slash from the first folder of the workspace, and no other that leads out of a page. */
function linkTo(record: vscode.Uri): string | null {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri.toString();
  const address = record.toString();
  return folder !== undefined && address.startsWith(`${folder}/`)
    ? address.slice(folder.length)
    : null;
}
