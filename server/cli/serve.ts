// `thou serve`: starts the language server, which lies beside this command as a bundle of its own; it takes over the streams.
import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import type { Command } from "commander";
import { CannotRun, type Context } from "./io.ts";
import { shown } from "./terminal-text.ts";

export function addServe(program: Command, { parts }: Context): void {
  program
    .command("serve")
    .summary("run the language server, for an editor")
    .description(
      "Runs the language server on standard input and output, for any editor that speaks the Language Server Protocol. An editor starts it; " +
        "typed into a terminal it only waits.",
    )
    .option(
      "--stdio",
      "speak over standard input and output; there is no other way",
    )
    // editors add their own, such as --clientProcessId=…: the server reads them
    .allowUnknownOption()
    .allowExcessArguments()
    .addHelpText(
      "after",
      '\nExample, as the command that an editor starts:\n  ["thou", "serve", "--stdio"]',
    )
    .action((options: { readonly stdio?: true }) => {
      if (options.stdio !== true)
        throw new CannotRun(
          'The server speaks over standard input and output only; write "thou serve --stdio".',
        );
      if (!existsSync(parts.serverFile))
        throw new CannotRun(
          `The language server is missing (it should lie at ${shown(parts.serverFile)}); install thou again.`,
        );
      createRequire(parts.serverFile)(parts.serverFile);
    });
}
