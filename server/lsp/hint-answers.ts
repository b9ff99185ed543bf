// The texts beside the lines. How a hint was worked out is told when someone points at it: the hint itself says then what it is of.
import {
  MarkupKind,
  type InlayHint,
  type InlayHintParams,
} from "vscode-languageserver";
import { hintsIn, hintWorking, type HintSource } from "../ide/hints.ts";
import { hintOf, type Conversion } from "./convert.ts";
import { member, type Settings } from "./settings.ts";
import type { Workspace } from "./workspace.ts";

export function createHintAnswers(
  workspace: Pick<Workspace, "open">,
  conversion: Conversion,
  settings: () => Pick<Settings, "hints">,
) {
  return {
    async hints({
      textDocument,
      range,
    }: InlayHintParams): Promise<InlayHint[]> {
      if (!settings().hints) return [];
      const open = await workspace.open(textDocument.uri);
      return open === undefined
        ? []
        : hintsIn(open, range.start.line, range.end.line).map((hint) =>
            hintOf(hint, open.path, conversion),
          );
    },
    async workingOf(hint: InlayHint): Promise<InlayHint> {
      const about = aboutHint(hint.data);
      if (about === undefined) return hint;
      const open = await workspace.open(about.uri);
      const value =
        open === undefined ? undefined : hintWorking(open, about.source);
      return value === undefined
        ? hint
        : { ...hint, tooltip: { kind: MarkupKind.Markdown, value } };
    },
  };
}

/** What a hint's own data says of it; it has been to the editor and back. */
function aboutHint(
  data: unknown,
): { readonly uri: string; readonly source: HintSource } | undefined {
  const uri = member(data, "uri");
  const source = member(data, "source");
  const ref = member(source, "ref");
  const kind = member(source, "kind");
  const number = member(source, "case");
  if (
    typeof uri !== "string" ||
    typeof ref !== "string" ||
    typeof kind !== "string"
  )
    return undefined;
  return {
    uri,
    source: { ref, kind, case: typeof number === "number" ? number : null },
  };
}
