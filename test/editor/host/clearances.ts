// Host tests of what is worked out: the clearance beside a fit, its working, and that both follow the record.
import { equal, match, notEqual } from "node:assert/strict";
import * as vscode from "vscode";
import {
  clearanceBeside,
  firstFit,
  fitsOf,
  hintsOn,
  length,
  lineWith,
  openRecord,
  until,
  withEdit,
  wordOn,
  type HostTest,
} from "./record.ts";

export const clearances: readonly HostTest[] = [
  {
    name: "a clearance with its unit stands beside a fit, and every fit has a hint",
    async test() {
      const document = await openRecord();
      match(await clearanceBeside(document, firstFit(document)), length);
      for (const fit of fitsOf(document)) {
        const hints = await hintsOn(document, fit.line);
        notEqual(
          hints.join(""),
          "",
          `fit ${fit.name}: its clearance, or what it needs`,
        );
      }
    },
  },
  {
    name: "changing a reading changes the clearance beside the fit",
    async test() {
      const document = await openRecord();
      const fit = firstFit(document);
      const before = await clearanceBeside(document, fit);
      const journal = lineWith(
        document,
        new RegExp(`^journal ${fit.journal}\\b`),
      );
      const reading = document.lineAt(
        lineWith(document, /^\s+read\s.*\d\.\d/, journal),
      ).text;
      // All the readings of the place move by twenty of their last digits: 0.87432 becomes 0.87452.
      const other = reading.replace(/(?<= )\d*\.\d{3,}/g, (written) => {
        const digits = written.length - written.indexOf(".") - 1;
        return (Number(written) + 20 * 10 ** -digits).toFixed(digits);
      });
      const edit = (text: string) => text.replace(reading, other);
      await withEdit(edit, async () => {
        notEqual(await clearanceBeside(document, fit, before), before);
      });
      await until("the clearance of before", async () =>
        (await clearanceBeside(document, fit)) === before ? true : undefined,
      );
    },
  },
  {
    name: "hovering over a fit's name shows the working of its clearance",
    async test() {
      const document = await openRecord();
      const fit = firstFit(document);
      const shown = await until("a hover", async () => {
        const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
          "vscode.executeHoverProvider",
          document.uri,
          wordOn(document, fit.line, fit.name).start,
        );
        const contents = hovers.flatMap((hover) => hover.contents);
        const texts = contents.map((content) =>
          content instanceof vscode.MarkdownString ? content.value : "",
        );
        return texts.length === 0 ? undefined : texts.join("\n");
      });
      match(shown, /clearance/i);
      match(shown, /\bbore\b/i);
      match(shown, /\bjournal\b/i);
      match(shown, length);
    },
  },
  {
    name: "restarting the server brings the clearances back",
    async test() {
      const document = await openRecord();
      const fit = firstFit(document);
      const before = await clearanceBeside(document, fit);
      await vscode.commands.executeCommand("thou.restartServer");
      equal(await clearanceBeside(document, fit), before);
    },
  },
];
