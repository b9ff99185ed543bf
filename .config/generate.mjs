// Writes the files that are made from others; `--check` fails, with their names, where one is stale.
//   node .config/generate.mjs [--check]
import { readFile, readdir, writeFile } from "node:fs/promises";
import { build } from "esbuild";
import { grammar } from "ohm-js";
import { shapesOf } from "./shapes.mjs";

/** The compiled grammar: read at start in a few milliseconds, where compiling takes some two hundred. */
async function grammarBundle() {
  const source = await readFile("grammar/thou.ohm", "utf8");
  const recipe = grammar(source.replace(/^\s*\/\/.*\n/gm, "")).toRecipe();
  const words = new Set();
  // ["terminal", where it stands, the word]
  JSON.stringify(JSON.parse(recipe), (_, value) => {
    if (Array.isArray(value) && value[0] === "terminal") words.add(value[2]);
    return value;
  });
  return `// Made from thou.ohm by npm run generate: do not edit.
/** The words and marks that thou.ohm names. */
export const keywords: readonly string[] = ${JSON.stringify([...words])};
/** What Ohm makes the grammar of: read when it is asked for, since usual lines need none of it. */
export const recipe = (): readonly unknown[] => ${recipe};
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

/** The records that stand in a page. */
const recordsIn = (page) =>
  [...page.matchAll(/```thou.*\n([^]*?)```/g)].map(([, record]) => record);

/** The shapes of lines that records usually have. */
async function usualShapes() {
  const below = async (folder, ending) =>
    (await readdir(folder))
      .filter((file) => file.endsWith(ending))
      .map((file) => `${folder}/${file}`);
  const files = [
    ...(await below("samples", ".thou")),
    ...(await below("samples/shop", ".thou")),
    ...(await below("docs/guide", ".md")),
    ...(await below("test/rules", ".md")),
    "README.md",
  ];
  const texts = await Promise.all(files.map((file) => readFile(file, "utf8")));
  const records = texts.flatMap((text, index) =>
    files[index].endsWith(".md") ? recordsIn(text) : [text],
  );
  return `// Made from thou.ohm and the records on pages and in samples by npm run generate: do not edit.
export const usualShapes: Readonly<Record<string, string>> = ${JSON.stringify(await shapesOf(records, run), undefined, 2)};
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
  const { RESULT_SUMMARIES } = await run("server/cli/explain-word.ts");
  const results = RESULT_SUMMARIES.map(
    ([kind, means]) => `| \`${kind}\` | ${cell(means)} |`,
  );
  return `# Every entry and its facts

<!-- Made from grammar/vocabulary.ts and server/model/result-kinds.ts by npm run generate: do not edit. -->

CAPITALS stand for what is filled in, \`a|b\` for a choice, \`[ ]\` for what may be left off. A fact marked * may stand more than once, or list.

${entries.join("\n\n")}

## Results of a check

What \`thou check\` works out, by the word that stands before the figure.

| result | |
|---|---|
${results.join("\n")}
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

/** Every setting of the editor, from the manifest. */
async function settings() {
  const { contributes } = JSON.parse(await manifest());
  const { properties } = contributes.configuration;
  const sections = Object.entries(properties).map(([name, setting]) =>
    [
      `## ${name}`,
      "",
      setting.markdownDescription.replace(/`#([\w.]+)#`/g, "`$1`"),
      "",
      `Shipped as \`${JSON.stringify(setting.default)}\`.`,
    ].join("\n"),
  );
  return `# Every setting

<!-- Made from package.json by npm run generate: do not edit. -->

They change what an editor shows, never what a record comes to. [The guide](guide/settings.md) says when to use which; [findings.md](findings.md) has the codes for
\`thou.findings.levels\`.

${sections.join("\n\n")}
`;
}

/** Every finding with its level as shipped and what it means, from the pages. */
async function findings() {
  const { summaryOf } = await run("server/cli/page.ts");
  const { CODES } = await run("server/rules/codes.ts");
  const { canBeAllowed, figuresOf } = await run("server/rules/figures.ts");
  const rows = [];
  for (const code of [...CODES].sort()) {
    const page = await readFile(`test/rules/${code}.md`, "utf8");
    const [, level] = /^Level: (\w+)/m.exec(page);
    const own = 0 < figuresOf(code).warn.length ? "yes" : "";
    const allowed = canBeAllowed(code) ? "yes" : "";
    rows.push(
      `| [${code}](../test/rules/${code}.md) | ${level} | ${own} | ${allowed} | ${summaryOf(page)} |`,
    );
  }
  return `# Every finding

<!-- Made from test/rules/*.md by npm run generate: do not edit. -->

The page of each says what it means for the job, what to do, where its threshold comes from, with a bad and a good record. \`thou explain CODE\` shows it in a terminal.

| finding | level | \`warn\` sets it | can be conceded | what it says |
|---|---|---|---|---|
${rows.join("\n")}
`;
}

/** Units, materials, oils and cautions that come with the tool, each with its source. */
async function shipped() {
  const { UNITS } = await run("server/core/quantity/units.ts");
  const { materials } = await run("server/core/materials/material.ts");
  const { oils } = await run("server/core/materials/oils.ts");
  const { CAUTIONS } = await run("server/model/cautions.ts");
  const cell = (text) => text.replaceAll("|", "\\|");
  const range = (figure, size) => {
    if (figure === undefined) return "";
    const [low, high] = [figure.low, figure.high].map((each) =>
      String(Number((each / size).toPrecision(3))),
    );
    return low === high ? low : `${low} to ${high}`;
  };
  const dimensions = [...new Set(UNITS.map(({ dimension }) => dimension))];
  const units = dimensions.map((dimension) => {
    const words = UNITS.filter((unit) => unit.dimension === dimension).map(
      ({ symbol, also = [] }) =>
        [symbol, ...also].map((word) => `\`${word}\``).join(" or "),
    );
    return `| ${dimension} | ${words.join(", ")} |`;
  });
  const sources = (each) =>
    [
      ...new Set(
        Object.values(each)
          .filter((value) => typeof value?.source === "string")
          .map(({ source }) => source),
      ),
    ].join("; ");
  return `# What is shipped

<!-- Made from the tables in server/core and server/model by npm run generate: do not edit. -->

Units are the whole list. Figures of materials and oils are typical ones, as ranges: what your maker says goes first, as a \`material\` or \`oil\` entry in the crib. "Seen" means that the text was at hand
when the figure was taken; what is from memory says so.

## Tables

- **Limits and fits, ISO 286**: ISO 286-1:2010, tables 1 to 5. Written from memory, then held row by row against printed copies and against the standard's own formulas; what was held
  against the formulas alone, or against nothing, is named at the head of \`server/core/fits/iso-286-tables.ts\`.
- **Limits and fits, ANSI B4.1**: ANSI B4.1-1967, tables 1 to 6, as reprinted in Machinery's Handbook. Written from memory, then held row by row against printed copies; what was in none is
  named at the head of \`server/core/fits/b4-1-tables.ts\`.
- **Sizes of reamers**: fractions and metric steps are counted out; numbers and letters are from public tables that the head of \`server/core/line/gauge-sizes.ts\` names.
- **The oil film**: worked out by \`test/oracle/film/make-film-table.mjs\` from Reynolds' equation; [what it was checked against](checks.md).

## Units

| of | written |
|---|---|
${units.join("\n")}

## Materials

| name | what it is | expansion, um/m-K | modulus, GPa | yield, MPa | load, MPa | speed, m/s | PV, MPa-m/s | sources |
|---|---|---|---|---|---|---|---|---|
${materials
  .map(
    (each) =>
      `| \`${each.name}\` | ${cell(each.what)} | ${range(each.expansion, 1e-6)} | ${range(each.modulus, 1e9)} | ${range(each.yield, 1e6)} | ${range(each.specificLoad, 1e6)} | ${range(each.speed, 1)} | ${range(each.pv, 1e6)} | ${cell(sources(each))} |`,
  )
  .join("\n")}

## Oils

| name | grade | at 40 °C, cSt | at 100 °C, cSt | sources |
|---|---|---|---|---|
${oils
  .map(
    (each) =>
      `| \`${each.name}\` | ${each.grade} | ${range(each.at40, 1e-6)} | ${range(each.at100, 1e-6)} | ${cell(sources(each))} |`,
  )
  .join("\n")}

## Cautions

They rest on common practice and no source, but where one is named. Local codes come first.

${CAUTIONS.map(({ name, title, text, source }) => `- \`${name}\`. **${title}.** ${text}${source === "" ? "" : ` (${source})`}`).join("\n")}
`;
}

/** file -> function that gives its text, in the order that they are made from each other */
const made = {
  "server/rules/pages.ts": findingPages,
  "grammar/thou.ohm-bundle.ts": grammarBundle,
  "grammar/examples.ts": grammarExamples,
  "grammar/usual-shapes.ts": usualShapes,
  "client/syntaxes/thou.tmLanguage.json": colours,
  "docs/words.md": words,
  "server/archive/question-texts.ts": questionTexts,
  "docs/archive-tables.md": archiveTables,
  "package.json": manifest,
  "docs/settings.md": settings,
  "docs/findings.md": findings,
  "docs/shipped.md": shipped,
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
