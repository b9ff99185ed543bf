// Writes the files that are made from others; `--check` fails, with their names, where one is stale.
//   node .config/generate.mjs [--check]
import { readFile, readdir, writeFile } from "node:fs/promises";
import { build } from "esbuild";
import { grammar } from "ohm-js";

/** The compiled grammar: read at start in a few milliseconds, where compiling takes some two hundred. */
async function grammarBundle() {
  const source = await readFile("grammar/thou.ohm", "utf8");
  const recipe = grammar(source.replace(/^\s*\/\/.*\n/gm, "")).toRecipe();
  return `// Made from thou.ohm by npm run generate: do not edit.
const recipe: readonly unknown[] = ${recipe};
export default recipe;
`;
}

/** The grammar's own examples by rule, for whoever shows how a line is written. */
async function grammarExamples() {
  const examples = {};
  let rule = "";
  for (const line of (await readFile("grammar/thou.ohm", "utf8")).split("\n")) {
    rule = /^ {2}(\w+(?:Fact|Entry)) =/.exec(line)?.[1] ?? rule;
    const body = /^ *\/\/= (.*)$/.exec(line)?.[1];
    if (body !== undefined) (examples[rule] ??= []).push(body);
  }
  return `// Made from thou.ohm by npm run generate: do not edit.
export const examples: Readonly<Record<string, readonly string[]>> = ${JSON.stringify(examples, undefined, 2)};
`;
}

/** The pages of findings by code, so that explain, the server and the sheet have them without a file. */
async function findingPages() {
  const files = (await readdir("test/rules"))
    .filter((file) => file.endsWith(".md"))
    .sort();
  const pages = {};
  for (const file of files)
    pages[file.slice(0, -".md".length)] = await readFile(
      `test/rules/${file}`,
      "utf8",
    );
  return `// Made from test/rules/*.md by npm run generate: do not edit.
export const pages: Readonly<Record<string, string>> = ${JSON.stringify(pages, undefined, 2)};
`;
}

/** What a module in TypeScript gives, run as it stands. */
async function run(module) {
  const { outputFiles } = await build({
    entryPoints: [module],
    bundle: true,
    format: "esm",
    platform: "node",
    write: false,
  });
  return import(
    `data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`
  );
}

/** The colours, from the vocabulary and the grammar's words. */
async function colours() {
  return (await run("client/syntaxes/generate.ts")).tmLanguage();
}

/** Every entry with its facts, from the vocabulary. */
async function words() {
  const { ENTRIES } = await run("grammar/vocabulary.ts");
  const cell = (text) => text.replaceAll("|", "\\|");
  const entries = ENTRIES.map(({ kind, form, means, facts }) =>
    [
      `## ${kind}`,
      "",
      `\`${form}\`. ${means}`,
      "",
      "| fact | |",
      "|---|---|",
      ...facts.map(
        (fact) =>
          `| \`${cell(fact.form)}\`${fact.many ? " *" : ""} | ${cell(fact.means)} |`,
      ),
    ].join("\n"),
  );
  return `# Every entry and its facts

<!-- Made from grammar/vocabulary.ts by npm run generate: do not edit. -->

CAPITALS stand for what is filled in, \`a|b\` for a choice, \`[ ]\` for what may be left off. A fact marked * may stand more than once, or list.

${entries.join("\n\n")}
`;
}

/** The ready questions to the archive by name, so that they need no file where they are asked. */
async function questionTexts() {
  const folder = "server/archive/questions";
  const texts = {};
  for (const file of (await readdir(folder)).sort())
    texts[file.slice(0, -".sql".length)] = await readFile(
      `${folder}/${file}`,
      "utf8",
    );
  return `// Made from questions/*.sql by npm run generate: do not edit.
export const questionTexts: Readonly<Record<string, string>> = ${JSON.stringify(texts, undefined, 2)};
`;
}

/** Every table of the archive with its columns. */
async function archiveTables() {
  const { SCHEMA, TABLES } = await run("server/archive/schema.ts");
  const tables = TABLES.map(({ name, rows, columns }) =>
    [
      `## ${name}`,
      "",
      `One row for each ${rows}.`,
      "",
      "| column | type | unit | null | meaning |",
      "|---|---|---|---|---|",
      ...columns.map(
        (each) =>
          `| \`${each.name}\` | ${each.type} | ${each.unit ?? ""} | ${each.nullable ? "yes" : ""} | ${each.means} |`,
      ),
    ].join("\n"),
  );
  return `# The tables of the archive, schema ${SCHEMA}

<!-- Made from server/archive/schema.ts by npm run generate: do not edit. -->

[archive.md](archive.md) says how they are laid out and asked. Units are SI, with degC for °C; diameters, clearances and interferences are diametral. DOUBLE is IEEE 754 binary64, INTEGER
32 bits with sign, DATE a day without a time, VARCHAR UTF-8. Every file lies in a folder \`year=YEAR\`, the year of \`jobs.opened\` or 0: engines that read partitions from folders
have it as a column \`year\` of every table.

${tables.join("\n\n")}
`;
}

/** The manifest, with the schema of the levels of findings from the codes and their pages. */
async function manifest() {
  const { CODES } = await run("server/rules/codes.ts");
  const { SET_LEVELS } = await run("server/ide/levels.ts");
  const text = JSON.parse(await readFile("package.json", "utf8"));
  const setting =
    text.contributes.configuration.properties["thou.findings.levels"];
  setting.properties = {};
  for (const code of [...CODES].sort()) {
    const page = await readFile(`test/rules/${code}.md`, "utf8");
    const [, means, level] = page.split(/\n{2,}/);
    setting.properties[code] = {
      type: "string",
      enum: SET_LEVELS,
      description: `${means} Shipped as: ${level.replace(/^Level: /, "")}`,
    };
  }
  return `${JSON.stringify(text, undefined, 2)}\n`;
}

/** file -> function that gives its text, in the order that they are made from each other */
const made = {
  "server/rules/pages.ts": findingPages,
  "grammar/thou.ohm-bundle.ts": grammarBundle,
  "grammar/examples.ts": grammarExamples,
  "client/syntaxes/thou.tmLanguage.json": colours,
  "docs/words.md": words,
  "server/archive/question-texts.ts": questionTexts,
  "docs/archive-tables.md": archiveTables,
  "package.json": manifest,
};

let stale = 0;
for (const [file, text] of Object.entries(made)) {
  const now = await readFile(file, "utf8").catch(() => undefined);
  const want = await text();
  if (now === want) continue;
  if (process.argv.includes("--check")) {
    console.error(`${file} is stale: run npm run generate`);
    stale++;
  } else await writeFile(file, want);
}
process.exit(stale ? 1 : 0);
