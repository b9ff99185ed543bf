// The lines above fits, presses and lines of bores: where they stand is known at once, what each says only when it comes into sight.
import type { CodeLens, CodeLensParams } from "vscode-languageserver";
import { lensesIn, lensSays } from "../ide/lenses.ts";
import { LENS_COMMANDS } from "../protocol.ts";
import type { Client } from "./client.ts";
import { rangeOf } from "./convert.ts";
import { member, type Settings } from "./settings.ts";
import type { Workspace } from "./workspace.ts";

export function createLensAnswers(
  workspace: Pick<Workspace, "document" | "open">,
  client: Pick<Client, "lensCommands">,
  settings: () => Pick<Settings, "lenses" | "levels">,
) {
  return {
    lenses({ textDocument: { uri } }: CodeLensParams): CodeLens[] {
      const lines = workspace.document(uri)?.lines;
      return lines === undefined || !settings().lenses
        ? []
        : lensesIn(lines).map(({ ref, range }) => ({
            range: rangeOf(range),
            data: { uri, ref },
          }));
    },
    async says(lens: CodeLens): Promise<CodeLens> {
      const uri = member(lens.data, "uri");
      const ref = member(lens.data, "ref");
      if (typeof uri !== "string" || typeof ref !== "string") return lens;
      const open = await workspace.open(uri);
      const says =
        open === undefined ? undefined : lensSays(open, ref, settings().levels);
      // an editor shows no lens without a command, and an empty one is its sign for words alone
      if (says === undefined)
        return { ...lens, command: { title: "", command: "" } };
      const { title, finding } = says;
      const command =
        finding === undefined ? LENS_COMMANDS.uses : LENS_COMMANDS.finding;
      const range = finding === undefined ? lens.range : rangeOf(finding);
      return {
        ...lens,
        command: client.lensCommands
          ? { title, command, arguments: [uri, range.start] }
          : { title, command: "" },
      };
    },
  };
}
