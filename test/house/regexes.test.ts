// No text, however it is made, keeps a regular expression busy for long. What takes time that doubles with every character is one repetition
// within another, so none of ours has that, but for those named here with what sets their rounds apart. What grows with the square of a line
// is borne: a line is read up to 2,000 characters.
import {
  RegExpParser,
  visitRegExpAST,
  type AST,
} from "@eslint-community/regexpp";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import ts from "typescript";

const root = path.join(import.meta.dirname, "..", "..");

/** More rounds than these are as good as any number. */
const FEW = 10;

/** Each is safe because every round of the outer repetition has a sign, a comma, stroke, hyphen or the like, that no inner one can take. */
const SET_APART: readonly string[] = [
  String.raw`(?<![\p{L}\d_-])(?:\.?\d[\dOolI.]*(?:\s*[,;]\s+|;))+\.?\d[\dOolI.]*`,
  String.raw`(?<![\p{L}\d_./-])\d*\.\d+(?:\s*\/\s*\d*\.\d+)+(?![\p{L}\d./])`,
  String.raw`(?<![\w.,])\d+(?:,\d+){2,}(?:\.\d+)?`,
  String.raw`(?<open>\[)|(?<close>\])|(?<comma>,)|"(?<text>[A-Z]+)"|(?<choice>[\w-]+(?:\|[\w-]+)+(?: NAME)?)|[+-]?(?<capital>[A-Z]{2,}|[XYZ])(?![\w-])|(?<word>\S+?)(?=[\s,\]]|$)`,
  String.raw`([\w-]+(?:\|[\w-]+)+(?: NAME)?|"[A-Z]+"|[A-Z]{2,}|X|Z)`,
  String.raw`[\w-]+(?:\|[\w-]+)+(?: NAME)?|"[A-Z]+"|[A-Z]{2,}|X|Z`,
  String.raw`^[\w-]+(?:, [\w-]+)* or [\w-]+$`,
  String.raw`^[\w-]+(?:\|[\w-]+)+$`,
  String.raw`^[a-z]+(?:-[a-z]+)*$`,
  String.raw`^\w+(?:, \w+)* or \w+$`,
];

interface Found {
  readonly file: string;
  readonly pattern: string;
  readonly flags: string;
}

function sources(room: string): readonly string[] {
  return readdirSync(path.join(root, room), {
    recursive: true,
    encoding: "utf8",
  })
    .map((file) => `${room}/${file.replaceAll("\\", "/")}`)
    .filter(
      (file) =>
        file.endsWith(".ts") && !/thou\.ohm-bundle|rules\/pages/u.test(file),
    );
}

/** Every literal of a file. */
function literals(file: string): readonly Found[] {
  const found: Found[] = [];
  const look = (node: ts.Node): void => {
    if (ts.isRegularExpressionLiteral(node)) {
      const end = node.text.lastIndexOf("/");
      found.push({
        file,
        pattern: node.text.slice(1, end),
        flags: node.text.slice(end + 1),
      });
    }
    ts.forEachChild(node, look);
  };
  look(
    ts.createSourceFile(
      file,
      readFileSync(path.join(root, file), "utf8"),
      ts.ScriptTarget.Latest,
    ),
  );
  return found;
}

/** Patterns of the editor's configuration and of its grammar of colours, by whatever name they stand. */
function patternsIn(file: string): readonly Found[] {
  const text = readFileSync(path.join(root, file), "utf8").replace(
    /^\s*\/\/.*$/gmu,
    "",
  );
  const found: Found[] = [];
  const look = (value: unknown, key: string): void => {
    if (typeof value === "string") {
      if (/^(?:match|begin|end|pattern|beforeText|afterText)$/u.test(key))
        found.push({ file, pattern: value, flags: "u" });
    } else if (typeof value === "object" && value !== null)
      for (const [name, each] of Object.entries(value)) look(each, name);
  };
  look(JSON.parse(text), "");
  return found;
}

/** Whether a repetition holds another, whatever sets their rounds apart. */
function nested({ pattern, flags }: Found): boolean {
  const parsed = new RegExpParser().parsePattern(pattern, 0, pattern.length, {
    unicode: flags.includes("u"),
  });
  const open: AST.Quantifier[] = [];
  let isNested = false;
  visitRegExpAST(parsed, {
    onQuantifierEnter(quantifier) {
      if (quantifier.max <= FEW) return;
      if (0 < open.length) isNested = true;
      open.push(quantifier);
    },
    onQuantifierLeave(quantifier) {
      if (FEW < quantifier.max) open.pop();
    },
  });
  return isNested;
}

/** The expressions that a file puts together out of pieces as it is loaded. */
async function builtBy(files: readonly string[]): Promise<readonly Found[]> {
  const found: Found[] = [];
  const own = RegExp;
  let file = "";
  globalThis.RegExp = new Proxy(own, {
    construct(made, [pattern, flags]: [string | RegExp, string?], by) {
      const expression = Reflect.construct(
        made,
        [pattern, flags],
        by,
      ) as RegExp;
      found.push({ file, pattern: expression.source, flags: expression.flags });
      return expression;
    },
  });
  try {
    for (file of files) await import(/* @vite-ignore */ path.join(root, file));
  } finally {
    globalThis.RegExp = own;
  }
  return found;
}

const rooms = ["grammar", "server", "client"].flatMap(sources);
const building = rooms.filter((file) =>
  readFileSync(path.join(root, file), "utf8").includes("new RegExp("),
);
const all = [
  ...(await builtBy(building)),
  ...rooms.flatMap(literals),
  ...patternsIn("client/language-configuration.json"),
  ...patternsIn("client/syntaxes/thou.tmLanguage.json"),
];

test("the check sees what it is for", () => {
  for (const pattern of ["(a+)+$", "(?:a|b*)*c", "(\\s*,\\s*)*", "((a{2,})x)*"])
    expect(nested({ file: "", pattern, flags: "u" }), pattern).toBe(true);
  for (const pattern of ["a+b+", "(?:ab)*", "(?:a{1,3})*", "[a+]*"])
    expect(nested({ file: "", pattern, flags: "u" }), pattern).toBe(false);
});

test("no expression repeats a repetition", () => {
  expect(all.length).toBeGreaterThan(150);
  // those that are put together are among them
  for (const file of building)
    expect(
      all.some((each) => each.file === file),
      file,
    ).toBe(true);
  const wrong = all.filter(nested).map(({ pattern }) => pattern);
  expect(wrong.toSorted()).toEqual(SET_APART.toSorted());
});
