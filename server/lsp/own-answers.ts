// The answers to our own requests. What comes in has been through the editor, or comes from an editor that nobody has met: nothing of it
// is taken for granted.
import type { CancellationToken } from "vscode-languageserver";
import type { OwnRequest, ResultOf } from "../protocol.ts";
import { pages } from "../rules/pages.ts";
import { member } from "./settings.ts";

export type OwnAnswers = {
  readonly [N in OwnRequest]: (
    params: unknown,
    token: CancellationToken,
  ) => ResultOf<N> | Promise<ResultOf<N>>;
};

export function createOwnAnswers(): OwnAnswers {
  return {
    "thou/page": (params) => {
      const code = member(params, "code");
      const page =
        typeof code === "string" && Object.hasOwn(pages, code)
          ? pages[code]
          : undefined;
      return page === undefined ? null : { markdown: page };
    },
  };
}
