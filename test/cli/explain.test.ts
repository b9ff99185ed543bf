// `thou explain`: pages as a terminal shows them, and what is said where there is none.
import { describe, expect, test } from "vitest";
import { ENTRIES } from "../../grammar/vocabulary.ts";
import { WORDS, wordPage } from "../../server/cli/explain-word.ts";
import { summaryOf } from "../../server/cli/page.ts";
import { folderWith, thou, type Ran } from "./in-process.ts";

const PAGE = `---
level: error
---
# fit-tight

The least clearance of a running fit is under the least that is **wanted**, 0.8 thou say. It may seize
when it is warm; see [hot-tight](hot-tight.md).

## What to do

- Cut the bore larger with \`r-8760\`, or the next reamer that the crib holds and that leaves enough to cut.
- Size the journal down.

1. First
2. Second

\`\`\`thou
fit front of journal front in bore front
  want   0.8 to 1.6 thou
\`\`\`

| at | by |
| -- | -- |
`;

const PAGES = {
  "fit-loose":
    "# fit-loose\n\nThe most clearance is over the most that is wanted.\n",
  "fit-tight": PAGE,
  "hot-tight": "Hot, it runs e.g. metal to metal! Second sentence.",
};

async function explain(
  words: readonly string[],
  look: { columns?: number; terminal?: boolean } = {},
): Promise<Ran> {
  return thou(["explain", ...words], {
    cwd: await folderWith({}),
    parts: { pages: PAGES },
    ...look,
  });
}

describe("a page", () => {
  test("is laid out for the width of the terminal, without the marks of Markdown", async () => {
    const { out, code } = await explain(["fit-tight"], { columns: 60 });
    expect(code).toBe(0);
    await expect(out).toMatchFileSnapshot("golden/page-60.txt");
    for (const line of out.split("\n"))
      expect(line.length).toBeLessThanOrEqual(60);
  });

  test.each([60, 100, 300])(
    "lines are as full as the marks that go allow, and no longer than an eye follows: %i columns",
    async (columns) => {
      const words = "`ab` **cd** `ef` [gh](gh.md) ".repeat(60).trim();
      const { out } = await thou(["explain", "a"], {
        cwd: await folderWith({}),
        parts: { pages: { a: `# a\n\n${words}\n` } },
        columns,
      });
      const lines = out.trim().split("\n").slice(2);
      const room = Math.min(columns, 100);
      for (const line of lines.slice(0, -1)) {
        expect(line.length).toBeLessThanOrEqual(room);
        expect(line.length).toBeGreaterThan(room - 3);
      }
    },
  );

  test("keeps every word of it, and its code as written", async () => {
    const { out } = await explain(["fit-tight"], { columns: 60 });
    const words = PAGE.replace(/^---[^]*?---\n|```(?:thou)?|[#*`]/g, " ")
      .replace(/\[([^\]]*)\]\([^)]*\)/g, "$1")
      .match(/[\w.]+/g);
    expect(out.match(/[\w.]+/g)).toEqual(words);
    expect(out).toContain(
      "\n    fit front of journal front in bore front\n      want   0.8 to 1.6 thou\n",
    );
  });

  test("has bold headings and coloured code where there are colours", async () => {
    const { out } = await explain(["fit-tight"], {
      columns: 60,
      terminal: true,
    });
    expect(out).toContain("\u{1B}[1mWhat to do\u{1B}[22m");
    expect(out).toContain("\u{1B}[36mr-8760\u{1B}[39m");
  });
});

describe("without a code", () => {
  test("every finding is listed with its first sentence", async () => {
    const { out, code } = await explain([], { columns: 60 });
    expect(code).toBe(0);
    expect(out.slice(0, out.indexOf("\nEntries"))).toBe(
      [
        "Findings",
        "fit-loose  The most clearance is over the most that is",
        "           wanted.",
        "fit-tight  The least clearance of a running fit is under the",
        "           least that is wanted, 0.8 thou say.",
        "hot-tight  Hot, it runs e.g. metal to metal!",
        "",
      ].join("\n"),
    );
  });
});

describe("a bad and a good sample", () => {
  test("are told apart in words, and a file that one uses has its name", async () => {
    const page =
      "# a\n\nA.\n\n```thou bad\njob a\n```\n\n```thou bad crib.thou\nshop b\n```\n\n```thou good\njob c\n```\n";
    const { out } = await thou(["explain", "a"], {
      cwd: await folderWith({}),
      parts: { pages: { a: page } },
    });
    expect(out).toBe(
      "a\n\nA.\n\n  Bad:\n    job a\n\n  with crib.thou:\n    shop b\n\n  Good:\n    job c\n",
    );
  });
});

describe("a word of the language", () => {
  test("an entry has how it is written and every fact that it takes", async () => {
    const { out, code } = await explain(["journal"], { columns: 100 });
    expect(code).toBe(0);
    expect(out).toContain("journal front on layshaft");
    const facts = ENTRIES.find(({ kind }) => kind === "journal")?.facts ?? [];
    expect(facts.length).toBeGreaterThan(5);
    for (const { word } of facts)
      expect(out).toMatch(new RegExp(`^  - ${word}\\b`, "m"));
  });

  test("a fact has each entry that takes it, once, with how it is written there", async () => {
    const { out } = await explain(["want"], { columns: 100 });
    const heads = [...out.matchAll(/^In (.*)$/gm)].flatMap(([, kinds = ""]) =>
      kinds.split(", "),
    );
    expect(heads.sort()).toEqual(["fit", "press", "stack"]);
  });

  test("a finding of the same name comes first, and then the word", async () => {
    const { out } = await thou(["explain", "taper"], {
      cwd: await folderWith({}),
      parts: { pages: { taper: "# taper\n\nA finding.\n" } },
    });
    expect(out.indexOf("A finding.")).toBeLessThan(out.indexOf("In journal"));
    expect(out).toContain("A finding.");
  });

  test.each([
    ["material", "bronze-c932"],
    ["oil", "sae-30"],
    ["caution", "reamer-one-way"],
    ["units", "MPa-m/s"],
  ])("%s lists what is shipped", async (word, shipped) => {
    expect((await explain([word])).out).toContain(shipped);
  });

  test("a result has what it is, and a fact of the same name comes first", async () => {
    const { out, code } = await explain(["reamer-window"], { columns: 200 });
    expect(code).toBe(0);
    expect(out).toContain("Bore sizes that suit every journal of a line.\n");
    expect(out).toContain("predicted: a limit or a tool stands for one");
    const stock = (await explain(["stock"])).out;
    expect(stock.indexOf("In reamer")).toBeLessThan(
      stock.indexOf("Among the results of a check"),
    );
  });

  test.each([
    ["bronze-c932", "A shipped material: leaded tin bronze"],
    ["iso-vg-68", "A shipped oil: ISO VG 68, industrial."],
  ])("%s is told to be shipped", async (name, said) => {
    const { out, code } = await explain([name], { columns: 200 });
    expect([code, out.includes(said)]).toEqual([0, true]);
  });

  test("a word that stands within facts leads to them, each once with its entries", async () => {
    const { out, code } = await explain(["blind"], { columns: 200 });
    expect(code).toBe(0);
    expect(out).toBe(
      "blind\n\nA word within these facts:\n\n  - In hole: depth VALUE blind|through: How deep the hole is, and whether it goes through.\n",
    );
    expect((await explain(["gasket"])).out).toContain("In part, line: joint");
    // what is filled in is no word
    expect((await explain(["VALUE"])).code).toBe(2);
  });

  test("every word has a page", () => {
    expect(WORDS.filter((word) => wordPage(word) === undefined)).toEqual([]);
  });
});

describe("a code that is none", () => {
  test.each([
    ["10w-40", "sae-10w-40"],
    ["SAE 15W40", "sae-15w40"],
  ])(
    "%s, an oil of two grades, is told how it is written",
    async (code, name) => {
      const { code: exit, err } = await explain([code]);
      expect(exit).toBe(2);
      expect(err.replaceAll(/\s+/gu, " ")).toBe(
        `thou: no oil of two grades is shipped, such as "${code}": write it as the shop's own, with \`oil ${name}\` from column 1 and the line \`viscosity VALUE cSt at 40 C, VALUE cSt at 100 C\` from its sheet set in below; "thou explain oil" lists those of one grade. `,
      );
    },
  );

  test.each([
    ["fit-tigth", "did you mean fit-tight?"],
    ["FIT-TIGHT", "did you mean fit-tight?"],
    ["hot-tigt", "did you mean hot-tight?"],
    ["quintessence", '"thou explain" lists them all.'],
    ["jurnal", "did you mean journal?"],
    ["iron-gray", "did you mean iron-grey?"],
    ["steel", "did you mean steel-1018, steel-1045 or steel-12l14?"],
    [
      "cast-iron",
      "did you mean iron-grey, iron-grey-class-40 or\n  iron-ductile?",
    ],
    ["iso-vg-86", "did you mean iso-vg-46 or iso-vg-68?"],
    ["bushing", "did you mean bush?"],
    ["housing", "did you mean hole?"],
    ["check", 'of a command, "thou help check" says what it does.'],
    ["mm", '"thou explain units" has the units.'],
    ["H7", 'of a class, thou limits "25 H7" says the limits.'],
    ["js6", 'of a class, thou limits "25 js6" says the limits.'],
    ["RC4", 'of a class, thou limits "0.875 in RC4" says the\n  limits.'],
    ["toString", '"thou explain" lists them all.'],
    ["__proto__", '"thou explain" lists them all.'],
  ])("%s: %s", async (code, way) => {
    expect(await explain([code])).toEqual({
      code: 2,
      out: "",
      err: `thou: there is no finding and no word "${code}"; ${way}\n`,
    });
  });
});

test("a summary is one sentence, whatever the page is", () => {
  expect(summaryOf("")).toBe("");
  expect(summaryOf("# only a heading\n")).toBe("");
  expect(summaryOf("No full stop")).toBe("No full stop");
  expect(summaryOf("# a\n\nOver two\nlines. Next.")).toBe("Over two lines.");
});
