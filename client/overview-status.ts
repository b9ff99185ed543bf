// The record in the status bar and behind the braces beside the language: how many are in, out, unsure, to measure. A click opens the
// overview.
import * as vscode from "vscode";
import type { Overview } from "../server/protocol/overview.ts";
import { called } from "./overview-tree.ts";
import type { Shown } from "./overview.ts";

export interface OverviewStatus {
  show(shown: Shown): void;
  dispose(): void;
}

const command = { title: "Show Overview", command: "thou.showOverview" };

export function overviewStatus(): OverviewStatus {
  // to the left of what the editor says of caret, indent and language
  const item = vscode.window.createStatusBarItem(
    "thou.record",
    vscode.StatusBarAlignment.Right,
    101,
  );
  item.name = "Thou Record";
  item.command = command.command;
  const language = vscode.languages.createLanguageStatusItem("thou.record", {
    language: "thou",
    scheme: "*",
  });
  language.name = "Thou record";
  language.command = command;

  return {
    show(shown) {
      if (!("overview" in shown)) {
        item.hide();
        language.text = "No overview";
        return;
      }
      const { overview } = shown;
      const { summary, next } = overview;
      item.text = `${iconOf(overview)} ${summary}`;
      item.tooltip = tooltipOf(overview);
      item.accessibilityInformation = {
        role: "button",
        label: `Record ${called(overview)}: ${summary}. ${next} Opens the overview.`,
      };
      item.show();
      // what is next stands in the status bar's own tooltip: here a sentence would push the way to the overview off the window
      language.text = summary;
    },
    dispose() {
      item.dispose();
      language.dispose();
    },
  };
}

function iconOf({ counts }: Overview): string {
  if (0 < counts.out) return "$(error)";
  if (0 < counts.faults) return "$(report)";
  if (0 < counts.unsure) return "$(question)";
  if (0 < counts.toMeasure) return "$(pencil)";
  return 0 < counts.in ? "$(pass)" : "$(dash)";
}

/** The names of what is out, unsure and to measure, and what is next. */
function tooltipOf(overview: Overview): vscode.MarkdownString {
  const { name, title, summary, next, groups } = overview;
  const text = new vscode.MarkdownString();
  const paragraph = (line: string): void => {
    if (line !== "") text.appendText(line).appendMarkdown("\n\n");
  };
  paragraph(title === "" ? name : title);
  paragraph(summary);
  const [waiting] = groups.filter(({ label }) => label === "To measure");
  if (waiting !== undefined)
    paragraph(
      `To measure: ${waiting.children.map(({ label }) => label).join(", ")}.`,
    );
  paragraph(next);
  paragraph("Click to see every entry.");
  return text;
}
