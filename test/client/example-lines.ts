// The example lines of thou.ohm, each with the rule that it is an example of: what the tests of this folder are run on.
import { readFileSync } from "node:fs";

export interface ExampleLine {
  readonly rule: string;
  readonly body: string;
}

export function exampleLines(): readonly ExampleLine[] {
  const examples: ExampleLine[] = [];
  let rule = "";
  for (const line of readFileSync("grammar/thou.ohm", "utf8").split("\n")) {
    rule = /^ {2}(\w+(?:Fact|Entry)) =/.exec(line)?.[1] ?? rule;
    const body = /^ *\/\/= (.*)$/.exec(line)?.[1];
    if (body !== undefined) examples.push({ rule, body });
  }
  return examples;
}
