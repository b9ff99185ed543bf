// The list of host tests: what the extension gives an editor through its interface, seen from inside the extension host with
// the sample shop open. What is drawn is for the checks of the page (ui-check.mjs); whether the engineering is right is for
// the tests of the server.
import { equal, ok } from "node:assert/strict";
import * as vscode from "vscode";
import type { Thou } from "../../../client/extension.ts";
import { clearances } from "./clearances.ts";
import { findings } from "./findings.ts";
import { openRecord, until, type HostTest } from "./record.ts";
import { text } from "./text.ts";

const start: HostTest = {
  name: "opening a record starts the extension and its server, and the record is in the language thou",
  async test() {
    const extension = vscode.extensions.getExtension<Thou>("thou.thou");
    ok(extension, "the extension is there");
    equal((await openRecord()).languageId, "thou");
    await until(
      "the extension is active without being called",
      () => extension.isActive || undefined,
    );
    equal(await extension.exports.ready, true, "the server is up");
  },
};

// The first one first: it is about an extension that nothing has called yet.
export const tests: readonly HostTest[] = [
  start,
  ...findings,
  ...clearances,
  ...text,
];
