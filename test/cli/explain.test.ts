// `thou explain`: pages as a terminal shows them, and what is said where there is none.
import { describe, expect, test } from "vitest";
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
    expect(out).toBe(
      [
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

describe("a code that is none", () => {
  test.each([
    ["fit-tigth", "did you mean fit-tight?"],
    ["FIT-TIGHT", "did you mean fit-tight?"],
    ["hot-tigt", "did you mean hot-tight?"],
    ["seized", '"thou explain" lists them all.'],
    ["toString", '"thou explain" lists them all.'],
    ["__proto__", '"thou explain" lists them all.'],
  ])("%s: %s", async (code, way) => {
    expect(await explain([code])).toEqual({
      code: 2,
      out: "",
      err: `thou: There is no finding with the code "${code}"; ${way}\n`,
    });
  });
});

test("a summary is one sentence, whatever the page is", () => {
  expect(summaryOf("")).toBe("");
  expect(summaryOf("# only a heading\n")).toBe("");
  expect(summaryOf("No full stop")).toBe("No full stop");
  expect(summaryOf("# a\n\nOver two\nlines. Next.")).toBe("Over two lines.");
});
