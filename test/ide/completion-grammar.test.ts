// The examples of the grammar, word by word: wherever an example has a word, a choice or a unit, completion offers it. The grammar's own
// examples are not written for completion, so that what it forgets shows here.
import { expect, test } from "vitest";
import { parseBody } from "../../grammar/parse.ts";
import { nodesIn, type Node } from "../../grammar/tree.ts";
import { ENTRIES } from "../../grammar/vocabulary.ts";
import { unitOf } from "../../server/core/quantity/units.ts";
import { completionAt } from "../../server/ide/completion.ts";
import { exampleLines, type ExampleLine } from "../client/example-lines.ts";
import { opened } from "./caret.ts";

const examples = exampleLines();

/** Leaves that a person picks from what the language has; names, numbers, texts and dates are the writer's own. */
const OWN = new Set([
  "kind",
  "name",
  "number",
  "decimal",
  "text",
  "date",
  "class",
  "count",
  "code",
  "place",
  "member",
  "serialWord",
  "sign",
  "dashed",
  "letterSize",
  "saeGrade",
  "stepName",
  "caution",
]);

/** The lines of a record that an example stands in, and the line it is. */
function home({ rule, body }: ExampleLine): {
  text: string;
  line: number;
  indent: number;
} {
  const head = "job j\n  units inch\n";
  if (rule.endsWith("Entry"))
    return { text: `${head}${body}\n`, line: 2, indent: 0 };
  const entry = ENTRIES.find((each) =>
    each.facts.some((fact) => fact.rule === rule),
  );
  if (entry === undefined) throw new Error(`no entry has ${rule}`);
  // an opening line that says nothing but its kind and its name is damaged, and holds its facts all the same
  return { text: `${head}${entry.kind} a\n  ${body}\n`, line: 3, indent: 2 };
}

function labels(
  example: ExampleLine,
  node: Node,
  character: number,
): readonly string[] {
  const { text, line, indent } = home(example);
  const open = opened({ "job.thou": text }, "job.thou");
  return completionAt(
    open,
    { line, character: indent + character },
    "2026-11-25",
  )
    .filter(
      ({ replaceRange }) =>
        replaceRange.start.character === indent + node.start,
    )
    .map((each) => each.label);
}

const words = examples.flatMap((example) => {
  const { tree, damagedAt } = parseBody(example.body, example.rule);
  if (damagedAt !== undefined) throw new Error(`${example.body} is an example`);
  return (
    nodesIn(tree)
      .filter(
        (node) =>
          node.children.length === 0 && !OWN.has(node.type) && node.start !== 0,
      )
      .map((node) => ({
        example,
        node,
        word: example.body.slice(node.start, node.end),
      }))
      // marks stand as they are
      .filter(({ word }) => /^[\p{L}%]/u.test(word))
  );
});

test("the examples are there, and have words", () => {
  expect(examples.length).toBeGreaterThan(100);
  expect(words.length).toBeGreaterThan(130);
});

test.each(
  words.map((each) => [`${each.example.body} @ ${each.word}`, each] as const),
)("%s", (_, { example, node, word }) => {
  // a unit is offered by the symbol that the tool writes
  const label = node.type === "unit" ? (unitOf(word)?.symbol ?? word) : word;
  // before its first character, after it, and at its end
  for (const at of new Set([node.start, node.start + 1, node.end]))
    expect(labels(example, node, at)).toContain(label);
});
