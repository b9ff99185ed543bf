// The tree of the overview: entries in groups, each with its state as an icon beside the words that say the same; a click goes to the line.
import * as vscode from "vscode";
import type {
  Overview,
  OverviewItem,
  OverviewState,
} from "../server/protocol/overview.ts";
import type { Shown } from "./overview.ts";

export interface OverviewTree {
  show(shown: Shown): void;
  dispose(): void;
}

/** The editor's own signs, different in shape as well as in colour. */
const ICONS: Readonly<
  Record<
    Exclude<OverviewState, "plain">,
    readonly [icon: string, colour?: string]
  >
> = {
  in: ["pass", "testing.iconPassed"],
  out: ["error", "testing.iconFailed"],
  unsure: ["question", "list.warningForeground"],
  "to-measure": ["pencil"],
  "to-cut": ["tools"],
  accepted: ["verified"],
  fault: ["report", "list.errorForeground"],
  unread: ["warning", "list.warningForeground"],
  done: ["check"],
  ready: ["play", "testing.iconPassed"],
  "look-first": ["eye", "list.warningForeground"],
  blocked: ["circle-slash", "list.warningForeground"],
  waits: ["watch"],
  failed: ["close", "testing.iconFailed"],
};

/** @param more gives what more there is to say of an entry, a line each */
export function overviewTree(
  more: (
    ref: string,
    token: vscode.CancellationToken,
  ) => Promise<readonly string[]>,
): OverviewTree {
  const changed = new vscode.EventEmitter<void>();
  let overview: Overview | undefined;
  const view = vscode.window.createTreeView<OverviewItem>("thou.overview", {
    treeDataProvider: {
      onDidChangeTreeData: changed.event,
      getChildren: (item) => [...(item ?? { children: top() }).children],
      getTreeItem,
      async resolveTreeItem(shown, { label, detail, state }, token) {
        // asked for where someone points at it: of a long record it is more than all the rest
        const lines =
          state === undefined ? [] : await more(label, token).catch(() => []);
        shown.tooltip = [label, detail, ...lines]
          .filter((line) => line !== "")
          .join("\n");
        return shown;
      },
    },
    showCollapseAll: true,
  });

  function top(): readonly OverviewItem[] {
    return overview?.groups ?? [];
  }

  return {
    show(shown) {
      const next = "overview" in shown ? shown.overview : undefined;
      view.description = next === undefined ? "" : called(next);
      // what has not changed keeps its selection and its scroll
      if (JSON.stringify(next) === JSON.stringify(overview)) return;
      overview = next;
      changed.fire();
    },
    dispose() {
      view.dispose();
      changed.dispose();
    },
  };
}

/** "winch-layshaft" of "job winch-layshaft". */
export function called({ name }: Overview): string {
  return name.slice(name.indexOf(" ") + 1);
}

function getTreeItem(item: OverviewItem): vscode.TreeItem {
  const { id, label, detail, state, place, children } = item;
  const shown = new vscode.TreeItem(
    label,
    0 < children.length
      ? vscode.TreeItemCollapsibleState.Expanded
      : vscode.TreeItemCollapsibleState.None,
  );
  shown.id = id;
  shown.description = detail;
  shown.accessibilityInformation = {
    label: detail === "" ? label : `${label}, ${detail}`,
  };
  if (state !== undefined && state !== "plain") {
    const [icon, colour] = ICONS[state];
    shown.iconPath = new vscode.ThemeIcon(
      icon,
      colour === undefined ? undefined : new vscode.ThemeColor(colour),
    );
  }
  if (place !== undefined) {
    const { uri, line, start, end } = place;
    shown.command = {
      command: "vscode.open",
      title: "Go to the Line",
      arguments: [
        vscode.Uri.parse(uri),
        {
          selection: new vscode.Range(line, start, line, end),
        } satisfies vscode.TextDocumentShowOptions,
      ],
    };
  }
  return shown;
}
