// The record in the status bar and behind the braces beside the language. The editor's own items are stood in for here.
import { expect, test, vi } from "vitest";
import { overviewStatus } from "../../client/overview-status.ts";
import type { Overview } from "../../server/protocol/overview.ts";

const { item, language } = vi.hoisted(() => ({
  item: { text: "", tooltip: { text: "" }, show: vi.fn(), hide: vi.fn() },
  language: { text: "", detail: "" },
}));

vi.mock("vscode", () => ({
  MarkdownString: class {
    text = "";
    appendText(text: string) {
      this.text += text;
      return this;
    }
    appendMarkdown(text: string) {
      return this.appendText(text);
    }
  },
  StatusBarAlignment: { Right: 2 },
  languages: { createLanguageStatusItem: () => language },
  window: { createStatusBarItem: () => item },
}));

const OVERVIEW: Overview = {
  name: "job winch",
  title: "",
  counts: { in: 5, out: 0, unsure: 1, toMeasure: 1, faults: 0 },
  summary: "1 unsure, 1 to measure, 5 in tolerance",
  next: "Next: step ream, but it waits: journal rear is not measured.",
  groups: [],
};

test("what is next is said where a sentence has room, and not in the row behind the braces, which does not wrap", () => {
  overviewStatus().show({ state: "record", overview: OVERVIEW });
  expect(item.text).toBe(`$(question) ${OVERVIEW.summary}`);
  expect(item.tooltip.text).toContain(OVERVIEW.next);
  expect(language.text).toBe(OVERVIEW.summary);
  expect(language.detail).toBe("");
});

test("where there is no record nothing stands in the bar", () => {
  overviewStatus().show({ state: "none" });
  expect(item.hide).toHaveBeenCalled();
  expect(language.text).toBe("No overview");
});
