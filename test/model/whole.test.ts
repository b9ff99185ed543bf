// What is said only where every file is there and every opening line can be read: that a cut is ready, and that no reamer is at hand. What is
// missing may be the very entry.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import type { FileCheck } from "../../server/model/result.ts";
import { createProject } from "../../server/rules/check.ts";
import { resultOf } from "./check-text.ts";
import { changed, CUT } from "./cut-job.ts";

function checked(text: string, crib: string | null): FileCheck {
  const project = createProject({ root: "" });
  project.setFile("job.thou", readLines(text));
  project.setFile("crib.thou", crib === null ? null : readLines(crib));
  return project.check("job.thou");
}

const USING = changed(
  CUT,
  "  units inch\n",
  '  units inch\n  use "crib.thou"\n',
);
const NAMELESS = `${USING}fit 2nd of journal front in bore front\n`;
const CRIB = "shop crib\n  units inch\n";

const ready = (text: string, crib: string | null): string | undefined =>
  resultOf(checked(text, crib), "step ream", "ready")?.text;

describe("a cut is ready", () => {
  test("where nothing is missing", () => {
    expect(ready(USING, CRIB)).toBe("next");
  });

  test("not while a file that is used is missing, nor while one of its entries can't be told", () => {
    expect(ready(USING, null)).toMatch(/^waits for /u);
    expect(ready(NAMELESS, CRIB)).toMatch(/^waits for /u);
    expect(ready(NAMELESS, null)).toMatch(/^waits for /u);
  });
});

describe("no reamer is at hand", () => {
  const none = (text: string, crib: string | null): number =>
    checked(text, crib).findings.filter(
      ({ code }) => code === "reamer-not-in-crib",
    ).length;
  const bare = (text: string): string =>
    changed(
      changed(
        text,
        "reamer r-875\n  size 0.8750\n  oversize +0.0001 to +0.0003\n",
        "",
      ),
      "  ream with r-875\n",
      "",
    );

  test("where nothing is missing", () => {
    expect(none(bare(USING), CRIB)).toBe(1);
  });

  test("not said while the crib is missing, nor while one of its entries can't be told", () => {
    expect(none(bare(USING), null)).toBe(0);
    expect(none(bare(USING), `${CRIB}reamer 7/8\n  size 0.8750\n`)).toBe(0);
  });
});
